import Papa from "papaparse"
import {columnAt} from "../workbook/extras"
import {dayOf, isoOf} from "../../functions/calendar"
import {contentAt, isFormula, type CellAddress, type Content, type Document} from "../workbook/document"
import type {Edit, Entry} from "../workbook/edit"
import {moved} from "../workbook/formula"
import {isFault} from "../workbook/value"
import {formulaIn} from "../workbook/cells"
import {decimalOf, regionOf, type Decimal} from "../workbook/region"
import {onScreen} from "../workbook/screenFormula"
import {
  blockText,
  cellsShown,
  chosenBlock,
  isOneCell,
  rowsFrom,
  shownBlock,
  spanOf,
  type ShownBlock,
} from "./block"
import {cellColumn, measureAt} from "./cellColumn"
import {isGuarded} from "./commands/cells"
import {moveCut} from "./cut"
import {entryColumn, fitting, yearOf} from "./editing"
import {readEntry, type TwoDays} from "./entry"
import {namesMet} from "./namesInUse"
import {doubtsIn, doubtWords} from "./pickingDoubts"
import {askToOwn} from "./reading"
import {dateText, percentText, textOf, textWithUnit, withDecimal} from "./display"
import {shownNumber} from "./measures"
import type {PastePiece, Store, Turn} from "./store"
import {otherDecimal, twoNumbers, whichDecimal, withOwnDecimal} from "./tableDecimals"
import {entering, guardedWords, leftOutWords, ofCells, type LeftOut} from "./words"
import {whichDay} from "./whichDay"

/** What is put on the system's clipboard: the same table as text parted by tabs, and as HTML. */
export interface Copied {
  readonly plain: string
  readonly html: string
  readonly cells: ShownBlock
}

/** What was copied here last, with its formulas: pasting the same text again takes it from here. */
let own: {
  readonly plain: string
  readonly table: Table
} | null = null

/** Copies the chosen cells: numbers in full, in the units and with the decimal sign that are shown, dates as 2026-04-25, errors by their code. */
export function copyChosen(store: Store): Copied {
  const state = store.getState()
  const cells = shownBlock(state)
  const rows = byRow(cells, (at) => valueText(store, at))
  const plain = Papa.unparse(rows, {delimiter: "\t", newline: "\r\n"})
  const html = `<table>${rows.map((row) => `<tr>${row.map((text) => `<td>${htmlText(text)}</td>`).join("")}</tr>`).join("")}</table>`
  const table: Table = {
    from: "here",
    cells,
    rows: byRow(cells, (at) => formulaIn(state.document, at) ?? contentAt(state.document, at)),
    values: byRow(cells, (at) => plainValue(store, at)),
  }
  own = {plain, table}
  return {plain, html, cells}
}

const byRow = <T>({sheet, rows, cols}: ShownBlock, of: (at: CellAddress) => T): T[][] =>
  rows.map((row) => Array.from({length: cols[1] - cols[0] + 1}, (_, c) => of({sheet, row, col: cols[0] + c})))

/** A value in full, in the units and with the decimal sign that are shown; a date as 2026-04-25, an error by its code. */
export function valueText(store: Store, at: CellAddress): string {
  const {document} = store.getState()
  if (at.row >= document.sheets[at.sheet]!.rows.length) return ""
  const value = store.valueAt(at)
  if (value === null) return ""
  if (isFault(value)) return value.code
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE"
  const column = cellColumn(document, at)!
  const {format} = column
  const isDay = format === "date" || format === "day" || store.workbook.isDateAt(at)
  if (typeof value !== "number") return textOf(value, column, false, regionOf(document))
  if (isDay) return isoOf(value)
  return withDecimal(String(shownNumber(value, measureAt(document, at))), decimalOf(document))
}

const htmlText = (text: string) =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll("\n", "<br>")

/** A table that comes from the clipboard: of another program, or copied here with its formulas. */
export type Table =
  | {readonly from: "elsewhere"; readonly rows: readonly (readonly string[])[]}
  | {
      readonly from: "here"
      readonly cells: ShownBlock
      readonly rows: readonly (readonly Content[])[]
      /** What the cells showed when they were copied. */
      readonly values: readonly (readonly Content[])[]
    }

/** What an HTML text holds: a table, and its words. */
interface HtmlParts {
  readonly table: string[][] | null
  readonly words: string
}

/**
 * Reads what is on the clipboard: the table of the HTML where there is one, else text parted by tabs and line ends, or the
 * words of the HTML where it came without. No rows where there is nothing of this.
 */
export function readTable(
  plain: string,
  html = "",
  parseHtml: (html: string) => HtmlParts = partsOfHtml,
): Table {
  if (own && plain === own.plain) return own.table
  const parts = html ? parseHtml(html) : null
  return {from: "elsewhere", rows: parts?.table ?? rowsIn(plain || (parts?.words ?? ""))}
}

/** Tabs part columns, quotes hold tabs and line ends, one empty last line is dropped. */
function rowsIn(plain: string): string[][] {
  if (plain === "") return []
  const text = plain.replace(/\r\n?/g, "\n").replace(/\n$/, "")
  const {data} = Papa.parse<string[]>(text, {delimiter: "\t", newline: "\n"})
  return data
}

function partsOfHtml(html: string): HtmlParts {
  const {body} = new DOMParser().parseFromString(html, "text/html")
  return {table: tableIn(body), words: textWithin(body)}
}

/**
 * The table of an HTML text, row by row; null when there is none with a cell. Of several it is the largest that holds no
 * other, since letters lay themselves out in tables. A cell that covers several stands in the first; what is hidden is left out.
 */
function tableIn(body: HTMLElement): string[][] | null {
  const tables = [...body.querySelectorAll("table")]
  const inner = tables.filter((table) => !table.querySelector("table") && cellsWithin(table) > 0)
  const [first] = inner.toSorted((a, b) => cellsWithin(b) - cellsWithin(a))
  if (!first) return null
  const rows: string[][] = []
  /** How many rows below a column is covered still. */
  const covered: number[] = []
  for (const row of first.rows) {
    if (isHidden(row)) continue
    const line: string[] = []
    const skip = () => {
      while ((covered[line.length] ?? 0) > 0) {
        covered[line.length]!--
        line.push("")
      }
    }
    for (const cell of row.cells) {
      if (isHidden(cell)) continue
      skip()
      const text = textWithin(cell)
      for (let i = 0; i < Math.min(cell.colSpan, MOST_SPANNED); i++) {
        covered[line.length] = cell.rowSpan - 1
        line.push(i === 0 ? text : "")
      }
    }
    skip()
    rows.push(line)
  }
  return rows
}

const cellsWithin = ({rows}: HTMLTableElement) => [...rows].reduce((sum, {cells}) => sum + cells.length, 0)
const isHidden = ({style, hidden}: HTMLElement) => hidden || style.display === "none"
const MOST_SPANNED = 500 // chosen: as many as a sheet may have

/** Words as a page would show them: white space as one space, a line for each break or block. */
function textWithin(cell: HTMLElement): string {
  for (const end of cell.querySelectorAll("br")) end.replaceWith(LINE)
  for (const block of cell.querySelectorAll("p, div, li, h1, h2, h3, h4, h5, h6")) block.prepend(LINE)
  return (cell.textContent ?? "")
    .split(LINE)
    .map((line) => line.replaceAll(/\s+/g, " ").trim())
    .join("\n")
    .trim()
}

const LINE = "\u2028"

export interface PasteOptions {
  readonly valuesOnly?: boolean
  /** The sign before decimals of the table, where the person said it. */
  readonly decimal?: Decimal
}

/** What pasting would do: the edit, the cells that cannot take their piece and why, and the worked-out cells left alone. */
export interface Pasting {
  readonly edit: Edit | null
  readonly lands: ShownBlock
  readonly failed: readonly LeftOut[]
  readonly pieces: readonly PastePiece[]
  readonly guarded: number
  /** The first date that could be two, where the workbook does not say which. */
  readonly twoDays: TwoDays | null
  /** The sign before decimals of the table, where it was taken though it is not that of the workbook. */
  readonly taken: Decimal | null
}

/** Puts a table in from the upper left of what is chosen; a single piece fills all that is chosen. */
export function pastingOf(
  store: Store,
  table: Table,
  {valuesOnly = false, decimal}: PasteOptions = {},
): Pasting {
  const state = store.getState()
  const chosen = chosenBlock(state)
  const {document} = state
  const height = table.rows.length
  const width = Math.max(0, ...table.rows.map((row) => row.length))
  const fills = height === 1 && width === 1 && !isOneCell(chosen)
  const {sheet, rows, cols} = chosen
  const lands: ShownBlock = fills
    ? shownBlock(state)
    : {
        sheet,
        rows: rowsFrom(state, {sheet, row: rows[0], col: cols[0]}, height),
        cols: [cols[0], cols[0] + width - 1],
      }
  const own = decimalOf(document)
  const said = decimal === own ? null : decimal
  const taken = table.from === "elsewhere" ? (said ?? (decimal ? null : otherDecimal(table.rows, own))) : null
  const cells: Entry[] = []
  const pieces: PastePiece[] = []
  let guarded = 0
  let twoDays: TwoDays | null = null
  for (const [at, down, right] of cellsShown(lands)) {
    const [r, c] = fills ? [0, 0] : [down, right]
    const piece = table.rows[r]![c]
    if (piece === undefined) continue
    const fails = (why: string) => pieces.push({at, copied: String(piece ?? ""), reads: null, why})
    if (!columnAt(document, at)) {
      if (piece !== null && piece !== "") fails("there is no column there")
      continue
    }
    if (isGuarded(at)(state)) {
      guarded++
      continue
    }
    const entry =
      table.from === "here"
        ? ownEntry(store, table, r, c, at, valuesOnly)
        : read(store, at, piece as string, taken)
    if ("refused" in entry) {
      twoDays ??= entry.twoDays ?? null
      fails(entry.refused)
      continue
    }
    const {content} = entry
    pieces.push({at, copied: String(piece ?? ""), reads: readText(document, at, content), why: null})
    if (content !== contentAt(document, at)) cells.push({at, content})
  }
  if (!fills) pieces.push(...withoutRow(table, lands))
  const failed = pieces.flatMap(({at, why}) => (why === null ? [] : [{at, why}]))
  return {edit: entering(document, "paste", cells), lands, failed, pieces, guarded, twoDays, taken}
}

/** The pieces for which no more rows are shown. */
const withoutRow = ({rows}: Table, lands: ShownBlock): PastePiece[] =>
  rows.slice(lands.rows.length).flatMap((pieces, below) =>
    pieces.map((piece, right) => ({
      at: {sheet: lands.sheet, row: lands.rows.at(-1)! + 1 + below, col: lands.cols[0] + right},
      copied: String(piece ?? ""),
      reads: null,
      why: "no further row is shown",
    })),
  )

/** What a cell would hold of a content, with its unit: a number in full, though the column shows fewer decimals. */
export function readText(document: Document, at: CellAddress, content: Content): string {
  if (content === null) return "blank"
  const region = regionOf(document)
  if (isFormula(content)) return onScreen(content, decimalOf(document))
  const day = typeof content === "string" ? dayOf(content) : null
  if (day !== null) return dateText(day)
  const column = cellColumn(document, at)
  if (typeof content !== "number" || !column) return textWithUnit(content, column, false, region)
  const {format, ...bare} = column
  if (format === "share") return percentText(content, "needed", region.decimal)
  return textWithUnit(content, typeof format === "number" ? bare : column, false, region)
}

/** A piece that was copied here: its formula moved along, or its value, which has to be fit for the column as any other. */
function ownEntry(
  store: Store,
  {rows, values, cells}: Table & {from: "here"},
  r: number,
  c: number,
  at: CellAddress,
  valuesOnly: boolean,
): ReturnType<typeof readEntry> {
  const content = rows[r]![c]!
  if (isFormula(content) && !valuesOnly)
    return {content: moved(content, at.row - cells.rows[r]!, at.col - cells.cols[0] - c)}
  return fitting(store.getState().document, at, isFormula(content) ? values[r]![c]! : content)
}

/** The value of a cell as it can be typed: a date as a date, an error as nothing. */
export function plainValue(store: Store, at: CellAddress): Content {
  const value = store.valueAt(at)
  if (isFault(value)) return null
  return typeof value === "number" && store.workbook.isDateAt(at) ? isoOf(value) : value
}

function read(store: Store, at: CellAddress, text: string, taken: Decimal | null) {
  const {document} = store.getState()
  const column = entryColumn(document, at, contentAt(document, at))
  const written = text.trim()
  if (written.startsWith("="))
    return {refused: `“${written}” is a formula of elsewhere; type it to take it in`}
  const own = withOwnDecimal(written, taken) ?? text
  return readEntry(own, column, yearOf(document), () => null, {region: regionOf(document)})
}

/** Pastes a table; where some of it reads two ways, or cannot be taken, tells which and asks first. */
export function pasteTable(store: Store, table: Table, options: PasteOptions = {}) {
  const {document, cut} = store.getState()
  if (document.reading) return store.turn(() => askToOwn) // before any question of the table, which it could not answer
  if (!table.rows.length)
    return store.turn(() => ({said: "There is nothing to paste that has words or numbers."}))
  if (table.from === "here" && table.cells === cut && !options.valuesOnly) return moveCut(store, cut)
  const doubt = table.from === "elsewhere" && !options.decimal && twoNumbers(table.rows, decimalOf(document))
  if (doubt && readsTwoWays(store, table, options)) {
    const question = whichDecimal(
      doubt,
      decimalOf(document),
      (decimal) => (store) => pasteTable(store, table, {...options, decimal}),
    )
    store.turn(() => ({question, said: question.asks}))
    return
  }
  const pasting = pastingOf(store, table, options)
  const {edit, failed, guarded, twoDays} = pasting
  if (twoDays) {
    const question = whichDay(document, twoDays, (store) => pasteTable(store, table, options))
    store.turn(() => ({question, said: question.asks}))
    return
  }
  const told = toldOf(document, pasting)
  const met = edit && namesMet(document, edit)
  const doubts = edit ? doubtsIn(store.workbook, edit) : []
  if (failed.length || met || doubts.length) {
    const count = edit?.type === "enter" ? edit.cells.length : 0
    const why = failed.length ? leftOutWords(failed, failed.length + count, "pasted") : ""
    const whether = failed.length ? "Bring in the others?" : "Paste all the same?"
    const asks = [why, met?.asks, doubtWords(doubts), whether].filter(Boolean).join(" ")
    const yes = failed.length ? `Bring in ${count === 1 ? "1 cell" : `${count} cells`}` : "Paste"
    const links = [...(met?.links ?? []), ...doubts.slice(0, 1).map(({link}) => link)]
    const question = edit && {asks, yes, edit, told, preview: pasting.pieces, links}
    store.turn(() => ({question, said: edit ? asks : `Nothing was pasted. ${why}`}))
  } else if (!edit) {
    const why = guarded
      ? `Nothing was pasted: ${guardedWords(guarded)}`
      : "What was pasted stands there already."
    store.turn(() => ({said: why}))
  } else {
    store.run(() => edit, told)
    store.turn(chooseInside(document, pasting.lands))
    const brought = edit.type === "enter" && edit.cells.some(({content}) => isFormula(content))
    if (brought && !options.valuesOnly)
      store.turn(() => ({offer: {words: "Values only", act: valuesInstead(table)}}))
  }
}

/** Whether it makes a difference which sign stands before decimals: words hold any. */
function readsTwoWays(store: Store, table: Table, options: PasteOptions): boolean {
  const [point, comma] = ([".", ","] as const).map(
    (decimal) => pastingOf(store, table, {...options, decimal}).edit,
  )
  return JSON.stringify(point) !== JSON.stringify(comma)
}

/** Pastes the values of a table in the place of the formulas that were pasted last. */
const valuesInstead = (table: Table) => (store: Store) => {
  if (store.undo()) pasteTable(store, table, {valuesOnly: true})
}

function toldOf(document: Document, {edit, lands, guarded, taken}: Pasting): string {
  const count = edit?.type === "enter" ? edit.cells.length : 0
  const told = [
    `${ofCells(count)} pasted in ${blockText(spanOf(insideOf(document, lands)))}${hiddenWords(lands)}.`,
    guarded ? guardedWords(guarded) : "",
    taken === "," ? "Commas were taken as decimal points." : "",
    taken === "." ? "Points were taken as decimal commas." : "",
  ]
  return told.filter(Boolean).join(" ")
}

/** ": into 3 shown rows, 2 hidden rows between left as they were", or nothing where none is hidden. */
function hiddenWords({rows}: ShownBlock): string {
  const hidden = rows.at(-1)! - rows[0]! + 1 - rows.length
  if (!hidden) return ""
  return `: into ${rows.length} shown rows, ${hidden} hidden ${hidden === 1 ? "row" : "rows"} between left as ${hidden === 1 ? "it was" : "they were"}`
}

/** The part of a block that lies in the columns of its sheet. */
const insideOf = ({sheets}: Document, block: ShownBlock): ShownBlock => ({
  ...block,
  cols: [block.cols[0], Math.min(block.cols[1], sheets[block.sheet]!.columns.length - 1)],
})

function chooseInside(document: Document, block: ShownBlock): Turn {
  const {sheet, rows, cols} = spanOf(insideOf(document, block))
  const isOne = rows[0] === rows[1] && cols[0] === cols[1]
  return () => ({
    cell: {sheet, row: rows[0], col: cols[0]},
    reach: isOne ? null : {row: rows[1], col: cols[1]},
  })
}
