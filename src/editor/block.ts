import {cellText, referenceOf, tokens} from "../workbook/formula"
import type {CellAddress, Document} from "../workbook/document"
import {blockEdge, onlyRows, rowAfter, rowsShown, shownRow} from "./selection"
import type {EditorState, Turn} from "./store"

/** A rectangle of cells on one sheet; first and last row and column, all of them in it. */
export interface Block {
  readonly sheet: number
  readonly rows: readonly [number, number]
  readonly cols: readonly [number, number]
}

type Chosen = Pick<EditorState, "cell" | "reach">

/** The cells that are chosen: from the chosen cell to the corner that was reached. */
export function chosenBlock({cell, reach}: Chosen): Block {
  const to = reach ?? cell
  return {
    sheet: cell.sheet,
    rows: [Math.min(cell.row, to.row), Math.max(cell.row, to.row)],
    cols: [Math.min(cell.col, to.col), Math.max(cell.col, to.col)],
  }
}

export const isIn = ({rows, cols}: Block, {row, col}: Pick<CellAddress, "row" | "col">) =>
  row >= rows[0] && row <= rows[1] && col >= cols[0] && col <= cols[1]

export const isOneCell = ({rows, cols}: Block) => rows[0] === rows[1] && cols[0] === cols[1]

/** The cells of a block, row by row. */
export function* cellsOf({sheet, rows, cols}: Block): Generator<CellAddress> {
  for (let row = rows[0]; row <= rows[1]; row++)
    for (let col = cols[0]; col <= cols[1]; col++) yield {sheet, row, col}
}

/** The chosen cells that are shown, row by row: an act on a block leaves rows alone that nobody sees. */
export function* chosenCells(state: Pick<EditorState, "cell" | "reach" | "only">): Generator<CellAddress> {
  for (const [at] of cellsShown(shownBlock(state))) yield at
}

/** The cells of a block that stand in these rows: where not all rows are shown, those that are. */
export interface ShownBlock {
  readonly sheet: number
  readonly rows: readonly number[]
  readonly cols: readonly [number, number]
}

/** The chosen cells that are shown. */
export function shownBlock(state: Pick<EditorState, "cell" | "reach" | "only">): ShownBlock {
  const {sheet, rows, cols} = chosenBlock(state)
  const count = rows[1] - rows[0] + 1
  const shown = onlyRows(state, sheet)?.filter((row) => row >= rows[0] && row <= rows[1])
  return {sheet, rows: shown ?? Array.from({length: count}, (_, i) => rows[0] + i), cols}
}

/** The block from the first to the last of them. */
export const spanOf = ({sheet, rows, cols}: ShownBlock): Block => ({
  sheet,
  rows: [rows[0]!, rows.at(-1)!],
  cols,
})

/** Its cells, row by row, each with its place in the block: the how-manieth of its rows and columns, from 0. */
export function* cellsShown({sheet, rows, cols}: ShownBlock): Generator<[CellAddress, number, number]> {
  for (const [down, row] of rows.entries())
    for (let col = cols[0]; col <= cols[1]; col++) yield [{sheet, row, col}, down, col - cols[0]]
}

/** So many rows from a cell on, of those that are shown; fewer where there are no more. */
export function rowsFrom(
  state: Pick<EditorState, "only">,
  {sheet, row}: CellAddress,
  count: number,
): number[] {
  const shown = onlyRows(state, sheet)
  return shown
    ? shown.filter((one) => one >= row).slice(0, count)
    : Array.from({length: count}, (_, i) => row + i)
}

/** "B2", or "B2:D9" for more than one cell. */
export const blockText = ({rows, cols}: Block) =>
  cellText(rows[0], cols[0]) +
  (rows[0] === rows[1] && cols[0] === cols[1] ? "" : `:${cellText(rows[1], cols[1])}`)

/** Reaches to a cell of the open sheet, or to the nearest one inside it. */
export const reachTo =
  (row: number, col: number): Turn =>
  (state) => {
    const {cell, document} = state
    const rows = rowsShown(document, cell.sheet)
    const cols = document.sheets[cell.sheet]!.columns.length
    const reach = {
      row: shownRow(state, cell.sheet, Math.max(0, Math.min(row, rows - 1))),
      col: Math.max(0, Math.min(col, cols - 1)),
    }
    const isCell = reach.row === cell.row && reach.col === cell.col
    const block = chosenBlock({cell, reach})
    const [first, last] = block.rows
    const shown = onlyRows(state, cell.sheet)?.filter((row) => first <= row && row <= last)
    const count = (shown?.length ?? last - first + 1) * (block.cols[1] - block.cols[0] + 1)
    const said = `${blockText(block)} chosen, ${count} ${count === 1 ? "cell" : "cells"}.`
    return {reach: isCell ? null : reach, awaitsCorner: false, editing: null, question: null, said}
  }

/** Lets the next cell that is tapped or clicked be the one to choose up to: no key need be held, nothing dragged. */
export const awaitCorner: Turn = ({cell}) => ({
  awaitsCorner: true,
  said: `Tap or click the cell to choose up to, from ${cellText(cell.row, cell.col)}. Esc leaves it.`,
})

/** Reaches some rows and columns further than now. */
export const reachStep =
  (down: number, right: number): Turn =>
  (state) => {
    const {row, col} = state.reach ?? state.cell
    return reachTo(rowAfter(state, row, down), col + right)(state)
  }

/** Reaches to the next edge of filled cells. */
export const reachEdge =
  (down: number, right: number): Turn =>
  (state) => {
    const from = {...state, cell: {...state.cell, ...state.reach}}
    const {row, col} = blockEdge(from, down, right)
    return reachTo(row, col)(state)
  }

/** Chooses a block; the cell at its upper left is the one that is typed in. Of rows that are not all shown, those that are. */
export const chooseBlock =
  ({sheet, rows, cols}: Block): Turn =>
  (state) => {
    const shown = onlyRows(state, sheet)?.filter((row) => rows[0] <= row && row <= rows[1])
    const [first, last] = shown?.length ? [shown[0]!, shown.at(-1)!] : rows
    const cell = {sheet, row: shownRow(state, sheet, first), col: cols[0]}
    return {cell, ...reachTo(last, cols[1])({...state, cell})}
  }

/** Chooses whole rows of the open sheet: those of the block. */
export const chooseRows: Turn = (state) => {
  const {sheet, rows} = chosenBlock(state)
  return chooseBlock({sheet, rows, cols: [0, lastCol(state.document, sheet)]})(state)
}

/** Chooses whole columns of the open sheet: those of the block. */
export const chooseColumns: Turn = (state) => {
  const {sheet, cols} = chosenBlock(state)
  return chooseBlock({sheet, rows: [0, lastRow(state.document, sheet)], cols})(state)
}

/** Chooses the filled cells round the chosen one; where those are chosen already, the whole sheet. */
export const chooseAround: Turn = (state) => {
  const {document, cell} = state
  const filled = filledRound(document, cell)
  const now = chosenBlock(state)
  const same = [0, 1].every((i) => filled.rows[i] === now.rows[i] && filled.cols[i] === now.cols[i])
  const all: Block = {
    sheet: cell.sheet,
    rows: [0, lastRow(document, cell.sheet)],
    cols: [0, lastCol(document, cell.sheet)],
  }
  return chooseBlock(same ? all : filled)(state)
}

const lastRow = ({sheets}: Document, sheet: number) => Math.max(0, sheets[sheet]!.rows.length - 1)
const lastCol = ({sheets}: Document, sheet: number) => sheets[sheet]!.columns.length - 1

/** The smallest block round a cell that has no filled cell at its sides or corners. */
function filledRound({sheets}: Document, {sheet, row, col}: CellAddress): Block {
  const {rows} = sheets[sheet]!
  const holds = (r: number, c: number) => (rows[r]?.[c] ?? null) !== null // nothing beyond the edges
  const span = (from: number, to: number) => Array.from({length: to - from + 1}, (_, i) => from + i)
  let [top, bottom, left, right] = [row, row, col, col]
  for (let grew = true; grew;) {
    const any = (r: number[], c: number[]) => r.some((one) => c.some((other) => holds(one, other)))
    const [wide, high] = [span(left - 1, right + 1), span(top - 1, bottom + 1)]
    grew = false
    if (any([top - 1], wide)) grew = Boolean(top--)
    if (any([bottom + 1], wide)) grew = Boolean(++bottom)
    if (any(high, [left - 1])) grew = Boolean(left--)
    if (any(high, [right + 1])) grew = Boolean(++right)
  }
  return {sheet, rows: [top, bottom], cols: [left, right]}
}

/**
 * The block that a reference means, typed as in a formula: "B7", "B2:D9", "Prices!A1", "Spear size!A1", "C:C", "3:5", or the name of a named
 * value or a sheet. Null when it means none.
 */
export function blockAt(
  document: Document,
  open: number,
  text: string,
  names: ReadonlyMap<string, CellAddress>,
): Block | null {
  const typed = text.trim()
  const named = names.get(typed.toLowerCase())
  if (named) return {sheet: named.sheet, rows: [named.row, named.row], cols: [named.col, named.col]}
  const sheetNamed = document.sheets.findIndex(({name}) => name.toLowerCase() === typed.toLowerCase())
  if (sheetNamed >= 0) return {sheet: sheetNamed, rows: [0, 0], cols: [0, 0]}
  const [token, ...others] = tokens(typed.replace(/^([^'!]+)!/, "'$1'!")) // a formula needs the quotes, a person does not
  if (token?.kind !== "reference" || others.length) return null
  const {sheet: name, from, to} = referenceOf(token.text)
  const sheet =
    name === null ? open : document.sheets.findIndex((one) => one.name.toLowerCase() === name.toLowerCase())
  if (sheet < 0) return null
  const row = (one: number | null, otherwise: number) =>
    Math.min(one ?? otherwise, document.sheets[sheet]!.rows.length)
  const col = (one: number | null, otherwise: number) => Math.min(one ?? otherwise, lastCol(document, sheet))
  const sorted = (a: number, b: number): [number, number] => [Math.min(a, b), Math.max(a, b)]
  return {
    sheet,
    rows: sorted(row(from.row, 0), row(to.row, lastRow(document, sheet))),
    cols: sorted(col(from.col, 0), col(to.col, lastCol(document, sheet))),
  }
}
