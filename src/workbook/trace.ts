import type {Described} from "../../functions/define"
import {described} from "../../functions/described"
import {
  COLUMN_FORMULA,
  columnWith,
  contentAt,
  isFormula,
  isTypedOver,
  sheetNamed,
  type CellAddress,
  type Document,
  type Sheet,
} from "./document"
import {columnLetters, referenceOf, tokens, type Reference, type Token} from "./formula"
import {decimalOf} from "./region"
import {pieceOnScreen} from "./screenFormula"
import {isFault, type Value} from "./value"
import {formulaIn} from "./cells"
import {namesIn} from "./names"
import {isQuestioned} from "./questioned"
import {type Workbook} from "./workbook"

/** What a cell is to a reader, marked on the sheet before any colour. */
export type CellKind =
  "typed" | "measured" | "carried over" | "worked out" | "typed over" | "missing" | "questioned"

/** Something a formula uses: one cell, or the cells of a range that bear on this row. */
export interface Input {
  /** The reference or name as written in the formula. */
  readonly text: string
  /** What it is, in the words of headings: "Area of Long Acre, Plantings". */
  readonly words: string
  /** The cells it stands for; for a whole column of a sheet kept by planting, those of this row's planting. */
  readonly cells: readonly CellAddress[]
}

/** Where a value came from: the formula, the words for it, what it uses, and the functions with their sources. */
export interface Origin {
  readonly at: CellAddress
  readonly kind: CellKind
  readonly formula: string | null
  /** The formula with every reference put as the heading it points at. */
  readonly inWords: string | null
  readonly inputs: readonly Input[]
  readonly functions: readonly Described[]
}

/** `taken` are the rows that count of its ranges, where that is known (`rowsTaken.ts`); of the others every row is told. */
export function originOf(
  {document}: Pick<Workbook, "document">,
  at: CellAddress,
  rowName: RowName = () => "",
  taken: RowsTaken = new Map(),
): Origin {
  const formula = formulaIn(document, at)
  const pieces = formula === null ? [] : tokens(formula)
  const inputs = new Map<string, Input>()
  const words = pieces.map(({kind, text}) => {
    const input =
      kind === "reference" || kind === "name" ? inputOf(document, at, {kind, text}, rowName, taken) : null
    if (!input) return pieceOnScreen({kind, text}, decimalOf(document))
    inputs.set(input.text, input)
    return `‹${headingOf(document, at, input)}›`
  })
  const called = new Set(pieces.filter(({kind}) => kind === "function").map(({text}) => text.toUpperCase()))
  return {
    at,
    kind: kindAt(document, at),
    formula,
    inWords: formula === null ? null : words.join("").slice(1),
    inputs: [...inputs.values()],
    functions: described.filter(({name}) => called.has(name)),
  }
}

/** The kind of a cell, from its column and what it holds. */
export function kindAt(document: Document, at: CellAddress): CellKind {
  const sheet = document.sheets[at.sheet]
  const column = sheet?.columns[at.col]
  const content = contentAt(document, at)
  if (!sheet || !column) return "typed"
  if (isTypedOver(document, at)) return "typed over"
  if (isQuestioned(document, at)) return "questioned"
  if (content === null && column.kind === "measured" && holdsAnything(sheet, at.row))
    return isMeasuredOtherwise(document, at) ? "measured" : "missing"
  return isFormula(content) ? "worked out" : column.kind
}

/** Whether a root sample has the other of its two measurements, either of which will do: the laboratory's sugar or a reading. */
export function isMeasuredOtherwise(document: Document, at: CellAddress): boolean {
  const part = document.sheets[at.sheet]?.columns[at.col]?.part
  const other = part === "sample reading" ? "sample sugar" : part === "sample sugar" ? "sample reading" : null
  if (other === null) return false
  const col = columnWith(document, at.sheet, other)
  return col >= 0 && contentAt(document, {...at, col}) !== null
}

/** The rows that a formula takes of a range, by the range as written. */
export type RowsTaken = ReadonlyMap<string, ReadonlySet<number>>

/** What the worked-out first cell of a row calls it, such as its year; "" where it calls it nothing. */
export type RowName = (first: CellAddress) => string

/** What a row is about: the word in its first column, such as a planting's name. */
export function keyOfRow(
  {sheets}: Document,
  {sheet, row}: Pick<CellAddress, "sheet" | "row">,
  rowName: RowName = () => "",
): string {
  const key = sheets[sheet]?.rows[row]?.[0] ?? null
  const name = isFormula(key) ? rowName({sheet, row, col: 0}) : String(key ?? "")
  return name || `row ${row + 1}`
}

/** "10 of 10 used", "8 of 10 used, 2 blank": how many cells of a range give something; a formula may give "" for nothing. */
export function usedOf(cells: readonly CellAddress[], valueAt: (at: CellAddress) => Value): string {
  const blank = cells.filter((at) => [null, ""].includes(valueAt(at) as null)).length
  return `${cells.length - blank} of ${cells.length} used${blank ? `, ${blank} blank` : ""}`
}

/** The cell where an error began, which may lie on another sheet; null for a value that is none, or of no cell. */
export const errorBegan = (value: Value): CellAddress | null => (isFault(value) ? value.began : null)

function inputOf(
  document: Document,
  at: CellAddress,
  {kind, text}: Token,
  rowName: RowName,
  taken: RowsTaken,
): Input | null {
  if (kind === "name") {
    const named = namesIn(document).find(({name}) => name.toLowerCase() === text.toLowerCase())
    return named ? {text, words: text.replaceAll("_", " "), cells: [named.at]} : null
  }
  const reference = referenceOf(text)
  const sheet = sheetOf(document, at, reference)
  if (sheet < 0) return null
  const rows = taken.get(text)
  const cells = cellsOf(document, at, sheet, reference).filter(({row}) => rows?.has(row) ?? true)
  return {text, words: wordsFor(document, at, sheet, reference, cells, rowName), cells}
}

/** The sheet that a reference in a cell points at; -1 where there is none of the name. */
export const sheetOf = ({sheets}: Document, at: CellAddress, {sheet}: Reference) =>
  sheet === null ? at.sheet : sheetNamed(sheets, sheet)

/** The cells of a sheet that a reference stands for; for a whole column of a sheet kept by planting, those of this row's planting. */
export function cellsOf(
  document: Document,
  at: CellAddress,
  index: number,
  {from, to}: Reference,
): CellAddress[] {
  const sheet = document.sheets[index]!
  const last = sheet.rows.length - 1
  const cols = columnsOf(sheet, {from, to})
  const [top, bottom] = from.row === null || to.row === null ? [0, last] : inOrder(from.row, to.row)
  let rows = span(top, Math.min(bottom, last))
  if (from.row === null && index !== at.sheet) {
    const key = plantingOf(document.sheets[at.sheet]!, at.row)
    const own = rows.filter((row) => plantingOf(sheet, row) === key)
    if (key !== null && own.length) rows = own
  }
  if (from.row !== null && from.row === to.row) rows = [from.row]
  return rows.flatMap((row) => cols.map((col) => ({sheet: index, row, col})))
}

/** What the first column holds, as formulas compare it, without regard to case; null when that is nothing or a formula. */
function plantingOf({rows}: Sheet, row: number): string | null {
  const key = rows[row]?.[0] ?? null
  return key === null || isFormula(key) ? null : String(key).toLowerCase()
}

const columnsOf = ({columns}: Sheet, {from, to}: Pick<Reference, "from" | "to">) =>
  span(...inOrder(from.col ?? 0, to.col ?? columns.length - 1))

function wordsFor(
  document: Document,
  at: CellAddress,
  index: number,
  reference: Reference,
  cells: readonly CellAddress[],
  rowName: RowName,
): string {
  const sheet = document.sheets[index]!
  const headingAt = (col: number) => sheet.columns[col]?.heading ?? `column ${columnLetters(col)}`
  const headings = [...new Set(columnsOf(sheet, reference).map(headingAt))]
  const heading = headings.length > 2 ? `${headings[0]} to ${headings.at(-1)}` : headings.join(" and ")
  const keys = [...new Set(cells.map(({row}) => keyOfRow(document, {sheet: index, row}, rowName)))]
  const of = keys.length === 1 && keys[0] !== keyOfRow(document, at, rowName) ? ` of ${keys[0]}` : ""
  const rows = cells.map(({row}) => row)
  const counted =
    cells.length > 1 && headings.length === 1 && reference.from.row === null ? `, ${rowsWords(rows)}` : ""
  return `${heading}${of}${index === at.sheet ? "" : `, ${sheet.name}`}${counted}`
}

/** "rows 1 to 10"; "rows 10, 20 and 30" where others lie between. */
function rowsWords(rows: readonly number[]): string {
  const [first, last] = [rows[0]! + 1, rows.at(-1)! + 1]
  if (last - first === rows.length - 1) return `rows ${first} to ${last}`
  if (rows.length > MOST_NUMBERED) return `${rows.length} rows from ${first} to ${last}`
  return `rows ${rows
    .slice(0, -1)
    .map((row) => row + 1)
    .join(", ")} and ${last}`
}
const MOST_NUMBERED = 6 // chosen: a line's worth

function headingOf(document: Document, at: CellAddress, {words, cells}: Input): string {
  const first = cells[0]
  const heading = first && document.sheets[first.sheet]?.columns[first.col]?.heading
  return first && first.sheet === at.sheet && first.row === at.row && cells.length === 1 && heading
    ? heading
    : words
}

const holdsAnything = ({rows}: Sheet, row: number) =>
  rows[row]?.some((content) => content !== null && content !== COLUMN_FORMULA) ?? false

const inOrder = (a: number, b: number) => [Math.min(a, b), Math.max(a, b)] as const

const span = (from: number, to: number) =>
  Array.from({length: Math.max(0, to - from + 1)}, (_, i) => from + i)
