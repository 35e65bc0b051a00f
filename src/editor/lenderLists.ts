import {checkedByStep} from "../workbook/checks/checked"
import {toTheEnd} from "../workbook/checks/checks"
import {isInput, sourceColumn} from "../workbook/checks/sources"
import {ownValue} from "../workbook/checks/typedOver"
import {isFormula, isTypedOver, type CellAddress, type Document} from "../workbook/document"
import {columnAt, extraAt} from "../workbook/extras"
import {regionOf} from "../workbook/region"
import {sheetsBehind} from "../workbook/sheetsBehind"
import type {Value} from "../workbook/value"
import type {Workbook} from "../workbook/workbook"
import {checkWords} from "./checks"
import {textOf, textWithUnit} from "./display"
import {rowNames} from "./words"

/** A worked-out cell that holds something else, as a reader is told of it. */
export interface TypedOverCell {
  readonly at: CellAddress
  /** "Cover of 2027, Cash and debt" */
  readonly name: string
  readonly typed: string
  /** What its formula gives; "not known" where that shows only once it stands there. */
  readonly formula: string
  /** What was noted at the cell, and by whom. */
  readonly note: string
}

/** An input without a source. */
export interface Unsourced {
  readonly at: CellAddress
  readonly name: string
  readonly value: string
}

export interface LenderLists {
  readonly typedOver: readonly TypedOverCell[]
  /** Inputs beside which the place for a source is blank. */
  readonly unsourced: readonly Unsourced[]
  /** Sheets with inputs but no column that says where they are from. */
  readonly silent: readonly string[]
}

/** What a reader of the lender's page has to know of the sheets that it rests on; looked for once for each document. */
export function lenderLists(workbook: Workbook, page: number): LenderLists {
  const held = lists.get(workbook.document) ?? listsOf(workbook, page)
  lists.set(workbook.document, held)
  return held
}
const lists = new WeakMap<Document, LenderLists>()

function listsOf(workbook: Workbook, page: number): LenderLists {
  const {document} = workbook
  const checked = toTheEnd(checkedByStep(workbook, checkWords(workbook)))
  const shown = (at: CellAddress, value: Value) =>
    textWithUnit(value, columnAt(document, at), workbook.isDateAt(at), regionOf(document))
  const typedOver: TypedOverCell[] = []
  const unsourced: Unsourced[] = []
  const silent: string[] = []
  for (const index of [...sheetsBehind(document, page)].toSorted((a, b) => a - b)) {
    const sheet = document.sheets[index]!
    const source = sourceColumn(sheet)
    let hasInput = false
    for (const [row, contents] of sheet.rows.entries()) {
      for (const col of sheet.columns.keys()) {
        const at = {sheet: index, row, col}
        const content = contents[col] ?? null
        if (isTypedOver(document, at)) {
          const own = ownValue(checked, at)
          typedOver.push({
            at,
            name: nameOf(workbook, at),
            typed: content === null ? "blank" : shown(at, workbook.valueAt(at)),
            formula: own === undefined ? "not known" : shown(at, own) || "nothing",
            note: noteAt(document, at),
          })
        }
        if (content === null || isFormula(content) || !isInput(sheet, col)) continue
        hasInput = true
        const isFirst = !unsourced.some((one) => one.at.sheet === index && one.at.row === row)
        if (source >= 0 && (contents[source] ?? null) === null && isFirst)
          unsourced.push({at, name: nameOf(workbook, at), value: shown(at, workbook.valueAt(at))})
      }
    }
    if (hasInput && source < 0) silent.push(sheet.name)
  }
  return {typedOver, unsourced, silent}
}

/** A cell by its heading, the name of its row or else the value that it begins with, and its sheet; a named value by its name. */
function nameOf(workbook: Workbook, at: CellAddress): string {
  const {name, names, columns, rows} = workbook.document.sheets[at.sheet]!
  if (names) return String(rows[at.row]?.[0] ?? columns[at.col]!.heading)
  const first = {...at, col: 0}
  const key = rowNames(workbook)(first) || textOf(workbook.valueAt(first), columns[0])
  return `${columns[at.col]!.heading}${at.col > 0 && key ? ` of ${key}` : ""}, ${name}`
}

function noteAt(document: Document, at: CellAddress): string {
  const note = extraAt(document, at)?.note
  if (!note) return "no reason noted"
  return note.by ? `${note.text} (${note.by})` : note.text
}
