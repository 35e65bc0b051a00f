import type {CellMove} from "./cellsMoved"
import type {CellAddress, Column, Content, Document, FieldEntry, Region} from "./document"
import type {ExtraChange} from "./extras"
import {insertingRefused, removingRefused} from "./columns"
import {revised} from "./revised"
import {currencyRefused} from "./region"
import {sheetNameRefused} from "./sheets"

/** One change a planner makes. Plain data, so it can be saved, logged and replayed in a test. */
export type Edit =
  | {
      readonly type: "enter"
      readonly cells: readonly Entry[]
      /** What the act is called in the history, where its cells alone do not say it. */
      readonly name?: string
      /** What the cells carry anew besides, such as the reason why a number was kept. */
      readonly extras?: readonly ExtraChange[]
    }
  /** Cells that come to other places: what points at them follows. */
  | {readonly type: "moveCells"; readonly moves: readonly CellMove[]}
  /** The names of all cases, and what single cells carry anew for them. */
  | {
      readonly type: "changeCases"
      readonly names: readonly string[]
      readonly changes: readonly ExtraChange[]
      /** What the act is called in the history. */
      readonly name: string
    }
  /** How many columns stay in view while the others scroll sideways. */
  | {readonly type: "keepColumns"; readonly sheet: number; readonly count: number}
  | {readonly type: "changeExtras"; readonly changes: readonly ExtraChange[]}
  | {readonly type: "insertRows"; readonly sheet: number; readonly before: number; readonly count: number}
  | {readonly type: "removeRows"; readonly sheet: number; readonly first: number; readonly count: number}
  | {
      readonly type: "changeColumn"
      readonly sheet: number
      readonly col: number
      readonly change: ColumnChange
    }
  /** `order[i]` is the row that comes to row i. */
  | {readonly type: "moveRows"; readonly sheet: number; readonly order: readonly number[]}
  | {readonly type: "insertColumns"; readonly sheet: number; readonly before: number; readonly count: number}
  | {readonly type: "removeColumns"; readonly sheet: number; readonly first: number; readonly count: number}
  | {readonly type: "addSheet"; readonly name: string; readonly group: string}
  | {readonly type: "renameSheet"; readonly sheet: number; readonly name: string}
  | {readonly type: "moveSheet"; readonly from: number; readonly to: number}
  | {readonly type: "copySheet"; readonly sheet: number; readonly name: string}
  | {readonly type: "removeSheet"; readonly sheet: number}
  /** Several changes that are one act of the planner, each made on what the one before left. */
  | {readonly type: "several"; readonly edits: readonly Edit[]; readonly name: string}
  /** Acts of the field, entered here or on another device: each is added once. */
  | {
      readonly type: "addField"
      readonly entries: readonly FieldEntry[]
      readonly from: "here" | "elsewhere"
      readonly name: string
    }
  /** How numbers and dates are typed and shown from now on; what is stored stays as it is. */
  | {readonly type: "setRegion"; readonly region: Region}
  /** A reading copy becomes a workbook of one's own, under a name of its own. */
  | {readonly type: "makeOwn"}

/** What can be said anew of a column; `undefined` takes it away. Its formula and its part in the pictures stay. */
export type ColumnChange = Partial<Pick<Column, "heading" | "unit" | "format" | "width" | "rule" | "about">>

/** New content of one cell. A row below the last one is added, with the formulas of its worked-out columns. */
export interface Entry {
  readonly at: CellAddress
  readonly content: Content
}

/** Why an edit cannot be made, in a sentence that says what to do, or null. To be asked before; what is refused throws. */
export function editRefused(document: Document, edit: Edit): string | null {
  const {sheets} = document
  switch (edit.type) {
    case "insertColumns":
      return insertingRefused(sheets[edit.sheet]!, edit.before)
    case "removeColumns":
      return removingRefused(sheets[edit.sheet]!, edit.first, edit.count)
    case "addSheet":
      if (edit.group.trim() === "")
        return "A sheet stands under a group in the contents: type the group's name"
      return sheetNameRefused(document, edit.name)
    case "renameSheet":
      return sheetNameRefused(document, edit.name, edit.sheet)
    case "copySheet":
      return sheetNameRefused(document, edit.name)
    case "removeSheet":
      return sheets.length > 1
        ? null
        : `${sheets[0]!.name} is the only sheet, and a workbook needs one: add another first`
    case "several":
      return edit.edits.length ? severalRefused(document, edit.edits) : "There is nothing to do"
    case "setRegion":
      return currencyRefused(edit.region.currency)
    case "makeOwn":
      return document.reading ? null : "This workbook is yours already"
    default:
      return null
  }
}

function severalRefused(document: Document, edits: readonly Edit[]): string | null {
  let next = document
  for (const edit of edits) {
    const refused = editRefused(next, edit)
    if (refused !== null) return refused
    next = revised(next, edit)
  }
  return null
}
