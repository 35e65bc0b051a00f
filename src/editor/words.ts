import {
  COLUMN_FORMULA,
  isFormula,
  type CellAddress,
  type Content,
  type Document,
  type Region,
  type Sheet,
} from "../workbook/document"
import type {Edit, Entry} from "../workbook/edit"
import type {ExtraChange} from "../workbook/extras"
import {cellText} from "../workbook/formula"
import {planSheet} from "../workbook/plan"
import {columnAt} from "../workbook/extras"
import {keyOfRow, type RowName} from "../workbook/trace"
import {decimalOf, regionOf} from "../workbook/region"
import {isFault, type Change, type Value} from "../workbook/value"
import type {Workbook} from "../workbook/workbook"
import {measureAt} from "./cellColumn"
import {dateText, dayText, numberText, textOf} from "./display"
import {shownNumber} from "./measures"

/** What a cell is called: "Close of Long Acre". */
export function cellName(document: Document, at: CellAddress, rowName?: RowName): string {
  const heading = document.sheets[at.sheet]?.columns[at.col]?.heading ?? ""
  return at.col === 0 ? heading : `${heading} of ${keyOfRow(document, at, rowName)}`
}

/** The same within a sentence: "close of Long Acre". */
export const loweredName = (document: Document, at: CellAddress, rowName?: RowName): string =>
  loweredFirst(cellName(document, at, rowName))

const loweredFirst = (words: string) => words.replace(/^./, (letter) => letter.toLowerCase())

/**
 * What tells a row from the others of its name, by its second cell, for every column behind that: ", plant 2", ", 23 Apr 2026".
 * "" where no other row has the name.
 */
export function toldApart(
  workbook: Pick<Workbook, "document" | "valueAt" | "isDateAt">,
  at: CellAddress,
): string {
  const {document} = workbook
  const sheet = document.sheets[at.sheet]!
  const name = sheet.rows[at.row]?.[0] ?? null
  if (at.col < 2 || name === null || isFormula(name) || !sharedNames(sheet).has(name)) return ""
  const second = {...at, col: 1}
  const column = columnAt(document, second)
  const value = workbook.valueAt(second)
  const isDate = workbook.isDateAt(second)
  const text = isFault(value) ? "" : textOf(value, column, isDate, regionOf(document))
  if (text === "" || column === undefined) return ""
  const isBare = typeof value === "number" && !isDate && !NAMING.has(column.format)
  return `, ${isBare ? `${loweredFirst(column.heading)} ${text}` : text}`
}

/** The names that several rows of a sheet have in their first cells. */
function sharedNames(sheet: Sheet): ReadonlySet<Content> {
  const known = shared.get(sheet)
  if (known) return known
  const seen = new Set<Content>()
  const several = new Set<Content>()
  for (const [name = null] of sheet.rows) (seen.has(name) ? several : seen).add(name)
  shared.set(sheet, several)
  return several
}
const shared = new WeakMap<Sheet, ReadonlySet<Content>>()

/**
 * Rows by the word, year or date that their first cell works out. A count there names nothing, since several rows may share it:
 * such a row goes by the word and the year or date that come next, "Shed loan, 2027", before its first measure.
 */
export const rowNames =
  (workbook: Pick<Workbook, "document" | "valueAt">): RowName =>
  (first) => {
    const {columns} = workbook.document.sheets[first.sheet]!
    const own = partOfName(workbook, first)
    if (own || NAMING.has(columns[0]!.format)) return own?.text ?? ""
    const told: string[] = []
    for (const [col, {unit}] of columns.entries()) {
      if (unit !== undefined) break
      const part = partOfName(workbook, {...first, col})
      if (part && (part.isDay || told.length === 0)) told.push(part.text)
      if (part?.isDay) break
    }
    return told.join(", ")
  }

const NAMING: ReadonlySet<unknown> = new Set(["text", "date", "day"])

/** What a cell gives to the name of its row; null where it is a count, a measure, blank or an error. */
function partOfName(workbook: Pick<Workbook, "document" | "valueAt">, at: CellAddress) {
  const column = columnAt(workbook.document, at)
  const value = workbook.valueAt(at)
  if (!NAMING.has(column?.format) || isFault(value)) return null
  const text = textOf(value, column)
  return text === "" ? null : {text, isDay: typeof value === "number"}
}

/** What an act is called in the history, for "Undo: …": "close of Well Field". */
export function editName(document: Document, edit: Edit, rowName?: RowName): string {
  const sheet = (index: number) => document.sheets[index]!.name
  switch (edit.type) {
    case "enter":
      return edit.name ?? entryName(document, edit.cells, rowName)
    case "several":
    case "addField":
    case "changeCases":
      return edit.name
    case "keepColumns":
      return `${counted(edit.count, "column")} of ${sheet(edit.sheet)} kept in view`
    case "moveCells": {
      const taken = edit.moves.map(({from, content}) => ({at: from, content}))
      return `move of ${entryName(document, taken, rowName)}`
    }
    case "changeExtras":
      return extrasName(document, edit.changes, rowName)
    case "insertRows":
      return `${counted(edit.count, "row")} put into ${sheet(edit.sheet)}`
    case "removeRows":
      return `${counted(edit.count, "row")} taken out of ${sheet(edit.sheet)}`
    case "changeColumn":
      return `column ${document.sheets[edit.sheet]!.columns[edit.col]!.heading} of ${sheet(edit.sheet)} changed`
    case "moveRows":
      return `rows of ${sheet(edit.sheet)} sorted`
    case "insertColumns":
      return `${counted(edit.count, "column")} put into ${sheet(edit.sheet)}`
    case "removeColumns":
      return `${counted(edit.count, "column")} taken out of ${sheet(edit.sheet)}`
    case "addSheet":
      return `sheet ${edit.name} added`
    case "renameSheet":
      return `sheet ${sheet(edit.sheet)} renamed`
    case "moveSheet":
      return `sheet ${sheet(edit.from)} moved`
    case "copySheet":
      return `sheet ${sheet(edit.sheet)} copied`
    case "removeSheet":
      return `sheet ${sheet(edit.sheet)} taken out`
    case "setRegion":
      return `region and units: ${regionName(edit.region)}`
    case "makeOwn":
      return "own copy of the reading copy"
  }
}

/** "decimal comma, US measures, money in $" */
export function regionName({decimal, measures, currency, dates}: Region): string {
  const said = [
    `decimal ${decimal === "," ? "comma" : "point"}`,
    measures === "US" ? "US measures" : "metric",
    currency !== undefined && `money in ${currency}`,
    dates !== undefined && `${dates} in dates`,
  ]
  return said.filter(Boolean).join(", ")
}

/** An edit of cells, called by what is done where it changes several: "paste of 8 cells in Plan". Null where there are none. */
export function entering(document: Document, done: string, cells: readonly Entry[]): Edit | null {
  if (!cells.length) return null
  return {
    type: "enter",
    cells,
    ...(cells.length > 1 ? {name: `${done} of ${entryName(document, cells)}`} : {}),
  }
}

/** What an entry is called in the history: by its cell, or by how many there are. */
export function entryName(
  document: Document,
  [first, ...others]: readonly Entry[],
  rowName?: RowName,
): string {
  if (others.length) return `${others.length + 1} cells in ${document.sheets[first!.at.sheet]!.name}`
  const name = loweredName(document, first!.at, rowName)
  return first!.content === COLUMN_FORMULA ? `formula of ${name}` : name
}

function extrasName(document: Document, changes: readonly ExtraChange[], rowName?: RowName): string {
  const what = changes.some(({note}) => note !== undefined) ? "note" : "format"
  return `${what} of ${entryName(
    document,
    changes.map(({at}) => ({at, content: null})),
    rowName,
  )}`
}

const counted = (count: number, thing: string) => (count === 1 ? thing : `${count} ${thing}s`)

export const guardedWords = (count: number) =>
  count === 1 ? "1 worked-out cell stays as it is." : `${count} worked-out cells stay as they are.`

/** "1 cell", "30 cells" */
export const ofCells = (count: number) => (count === 1 ? "1 cell" : `${count} cells`)

/** A cell that cannot take what it was to be given, and why. */
export interface LeftOut {
  readonly at: CellAddress
  readonly why: string
}

const MOST_TOLD = 4

/** "2 of 5 cells cannot be pasted. B3: Length 90 cm is above 30 cm; …" */
export function leftOutWords(leftOut: readonly LeftOut[], of: number, done: string): string {
  const told = leftOut.slice(0, MOST_TOLD).map(({at, why}) => `${cellText(at.row, at.col)}: ${why}`)
  const more = leftOut.length > MOST_TOLD ? "; …" : "."
  return `${leftOut.length} of ${ofCells(of)} cannot be ${done}. ${told.join("; ")}${more}`
}

/** What an act moved, for the line at the foot: the close and limit dates that changed, then how many values in all. */
export function whatMoved(document: Document, changes: readonly Change[]): string {
  if (changes.length === 0) return "Nothing else changed."
  const sheet = planSheet(document)
  const dates = changes.filter(({at, was, now}) => {
    const part = document.sheets[at.sheet]?.columns[at.col]?.part
    return (
      at.sheet === sheet && (part === "close" || part === "limit") && day(was) !== null && day(now) !== null
    )
  })
  const closes = dates.filter(({at}) => document.sheets[at.sheet]!.columns[at.col]!.part === "close")
  const told = (closes.length ? closes : dates).slice(0, 2).map(({at, was, now}) => {
    const {part} = document.sheets[at.sheet]!.columns[at.col]!
    const name = part === "close" ? `Close of ${keyOfRow(document, at)}` : `Limit “${cellName(document, at)}”`
    return `${name} moved from ${dayText(was as number)} to ${dayText(now as number)}.`
  })
  const values = `${changes.length} value${changes.length === 1 ? "" : "s"} changed.`
  return [...told, values].join(" ")
}

/** "moved from 6 Jun", or what it was, for a value that the last act changed. */
export function movedFrom(document: Document, change: Change | undefined, isDate: boolean): string {
  if (!change) return ""
  if (isDate && day(change.was) !== null) return `moved from ${dateText(change.was as number)}`
  if (typeof change.was !== "number") return ""
  const was = Number(shownNumber(change.was, measureAt(document, change.at)).toPrecision(6))
  return `was ${numberText(was, undefined, decimalOf(document))}`
}

const day = (value: Value) => (typeof value === "number" ? value : null)
