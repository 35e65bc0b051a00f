import {
  COLUMN_FORMULA,
  contentAt,
  isFormula,
  type CellAddress,
  type Column,
  type Content,
  type Document,
  type Sheet,
} from "../document"
import {namesIn, type Named} from "../names"
import {isFault, type Fault} from "../value"
import type {Workbook} from "../workbook"
import type {Words} from "./finding"

/** A formula that is written once: in a cell, for a column, or under it as its total. */
export interface Written {
  /** The cell it stands in; for that of a column or a total, the first row that has it. */
  readonly at: CellAddress
  /** As written: that of a column reads as in the first row of the sheet. */
  readonly formula: string
  readonly stands: "cell" | "column" | "total"
}

/** A workbook that is looked through, with what several rules ask of it. */
export interface Checked {
  readonly workbook: Workbook
  readonly document: Document
  readonly words: Words
  /** The named values, by their names in lower case. */
  readonly names: ReadonlyMap<string, Named>
  readonly written: readonly Written[]
  /** The cells that show an error. */
  readonly faults: readonly {readonly at: CellAddress; readonly fault: Fault}[]
}

/** Read some cells at a time, so that the page can answer in between. */
export function* checkedByStep(workbook: Workbook, words: Words): Generator<void, Checked> {
  const {document} = workbook
  const names = new Map(namesIn(document).map((named) => [named.name.toLowerCase(), named]))
  const faults: Checked["faults"][number][] = []
  const written = [...writtenByColumn(document)]
  let cells = 0
  for (const sheet of document.sheets.keys())
    for (const at of besideNumbersOn(document, sheet)) {
      if (++cells % CELLS_A_STEP === 0) yield
      const content = contentAt(document, at)
      if (content !== null && !isFormula(content)) continue // words are no error
      if (isFormula(content) && content !== COLUMN_FORMULA)
        written.push({at, formula: content, stands: "cell"})
      const fault = workbook.valueAt(at) // that of a blank cell may have been spilt into it
      if (isFault(fault)) faults.push({at, fault})
    }
  return {workbook, document, words, names, written, faults}
}

const CELLS_A_STEP = 1000 // chosen: some milliseconds

function* writtenByColumn(document: Document): Generator<Written> {
  for (const [sheet, {columns, rows}] of document.sheets.entries())
    for (const [col, {formula, total}] of columns.entries()) {
      if (formula === undefined && total === undefined) continue
      const first = rows.findIndex((contents) => contents[col] === COLUMN_FORMULA)
      const at = {sheet, row: Math.max(0, first), col}
      if (formula !== undefined) yield {at, formula, stands: "column"}
      if (total !== undefined) yield {at, formula: total, stands: "total"}
    }
}

/** The cells of a sheet that hold something else than a number, or nothing, row by row. */
function* besideNumbersOn({sheets}: Document, sheet: number): Generator<CellAddress> {
  const {columns, rows} = sheets[sheet]!
  for (const [row, contents] of rows.entries())
    for (const col of colsBesideNumbers(contents, columns.length)) yield {sheet, row, col}
}

/** Looked through once for each row: an edit leaves the others as they are, and a sheet may have a million cells. */
function colsBesideNumbers(contents: readonly Content[], width: number): readonly number[] {
  const held = besides.get(contents)
  if (held?.width === width) return held.cols
  const cols: number[] = []
  for (let col = 0; col < width; col++) if (typeof contents[col] !== "number") cols.push(col)
  besides.set(contents, {width, cols})
  return cols
}
const besides = new WeakMap<readonly Content[], {readonly width: number; readonly cols: readonly number[]}>()

/** What a formula is called: "Close of Long Acre", "Column Close of Season plan", "The total of Area, Plantings". */
export function writtenName({document, words}: Checked, {at, stands}: Written): string {
  const sheet = document.sheets[at.sheet]!
  const {heading} = sheet.columns[at.col]!
  if (stands === "column") return `Column ${heading} of ${sheet.name}`
  return stands === "total" ? `The total of ${heading}, ${sheet.name}` : words.name(at)
}

/** Which contents of a column are wanted; null where none is. */
type Wanted = (column: Column, sheet: Sheet, col: number) => ((content: Content) => boolean) | null

/** The cells of the sheets that are wanted, row by row. A sheet may have a million cells: nothing is made for the others. */
export function* cellsOfSheets({sheets}: Document, wanted: Wanted) {
  for (const [index, sheet] of sheets.entries()) {
    const columns = sheet.columns.flatMap((column, col) => {
      const isWanted = wanted(column, sheet, col)
      return isWanted ? [{column, col, isWanted}] : []
    })
    if (columns.length === 0) continue
    for (const [row, contents] of sheet.rows.entries())
      for (const {column, col, isWanted} of columns) {
        const content = contents[col] ?? null
        if (isWanted(content)) yield {at: {sheet: index, row, col}, sheet, column, content}
      }
  }
}

/** The words in a cell, or null: a formula, a number and a blank are none. */
export const wordsIn = (content: Content): string | null =>
  typeof content === "string" && content.trim() !== "" && !content.startsWith("=") ? content : null

/** The rows of a sheet by the words in their first column; read once for each sheet. */
export function rowsByKey(sheet: Sheet): ReadonlyMap<string, readonly number[]> {
  const held = keyed.get(sheet)
  if (held) return held
  const byKey = new Map<string, number[]>()
  for (const [row, [first]] of sheet.rows.entries()) {
    const key = wordsIn(first ?? null)
    if (key !== null && !byKey.get(key)?.push(row)) byKey.set(key, [row])
  }
  keyed.set(sheet, byKey)
  return byKey
}
const keyed = new WeakMap<Sheet, ReadonlyMap<string, readonly number[]>>()

export const isDateFormat = (format: unknown) => format === "date" || format === "day"

export const keyOf = ({sheet, row, col}: CellAddress) => `${sheet}:${row}:${col}`
