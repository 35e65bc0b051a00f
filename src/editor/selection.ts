import {columnWith, type CellAddress, type Content, type Document, type Part} from "../workbook/document"
import {planSheet} from "../workbook/plan"
import type {EditorState, Panel, Turn} from "./store"

/** How many rows a sheet has on screen: those that hold something and the next one to fill; a plan grows by plantings alone. */
export const rowsShown = (document: Document, sheet: number) =>
  document.sheets[sheet]!.rows.length + (planSheet(document) === sheet ? 0 : 1)

/** How many rows can be chosen: those that hold something and the next one, which a plan does not show. */
export const rowsToChoose = ({document, cell}: Pick<EditorState, "document" | "cell">) =>
  document.sheets[cell.sheet]!.rows.length + 1

/** The rows that are shown on a sheet where not all are, or null. */
export const onlyRows = ({only}: Pick<EditorState, "only">, sheet: number) =>
  only?.sheet === sheet ? only.rows : null

/** The row itself, or the shown one that is nearest to it. */
export function shownRow(state: Pick<EditorState, "only">, sheet: number, row: number): number {
  const shown = onlyRows(state, sheet)
  if (!shown?.length || shown.includes(row)) return row
  return shown.reduce((best, one) => (Math.abs(one - row) < Math.abs(best - row) ? one : best))
}

/** Chooses a cell, opening its sheet; outside the sheet the nearest cell inside. */
export const choose =
  (to: CellAddress): Turn =>
  (state) => {
    const sheet = clamp(to.sheet, state.document.sheets.length)
    const at = {...to, sheet}
    const rows = rowsToChoose({...state, cell: at})
    const cell = {
      sheet,
      row: shownRow(state, sheet, clamp(at.row, rows)),
      col: clamp(at.col, state.document.sheets[sheet]!.columns.length),
    }
    const said = TOLD_OF_BLOCK.test(state.said) ? "" : state.said
    return {cell, reach: null, awaitsCorner: false, editing: null, question: null, said}
  }

/** What was said of a block that was chosen: it holds no longer than the block is. */
const TOLD_OF_BLOCK = / chosen, \d+ cells?\.$/

/** Opens a sheet on its first cell. */
export const openSheet = (sheet: number): Turn => choose({sheet, row: 0, col: 0})

/** Puts a panel beside the content line. */
export const showPanel =
  (panel: Panel): Turn =>
  ({asksToFind}) => ({panel, asksToFind: panel === "find" ? asksToFind + 1 : asksToFind})

/** Chooses the cell some rows down and columns right; it stops at the edges. */
export const chosenStep =
  (down: number, right: number): Turn =>
  (state) => {
    const {row, col, sheet} = state.cell
    return choose({sheet, row: rowAfter(state, row, down), col: col + right})(state)
  }

/** The row some rows down, of those that are shown. */
export function rowAfter(state: EditorState, row: number, down: number): number {
  const shown = onlyRows(state, state.cell.sheet)
  return shown?.length ? shown[clamp(shown.indexOf(row) + down, shown.length)]! : row + down
}

/** The next cell that Tab goes to: along the row, then on to the next row; null at the end of the sheet. */
export function tabTarget(state: EditorState, forward: boolean): CellAddress | null {
  const {sheet, row, col} = state.cell
  const width = state.document.sheets[sheet]!.columns.length
  const shown = onlyRows(state, sheet)
  const index = (shown?.indexOf(row) ?? row) * width + col + (forward ? 1 : -1)
  if (index < 0 || index >= (shown?.length ?? rowsShown(state.document, sheet)) * width) return null
  const at = Math.floor(index / width)
  return {sheet, row: shown?.[at] ?? at, col: index % width}
}

/** The next edge of a filled block from the chosen cell, or the edge of the sheet; of rows that are not all shown, among those. */
export function blockEdge(state: EditorState, down: number, right: number): CellAddress {
  const {sheet, row, col} = state.cell
  const {rows, columns} = state.document.sheets[sheet]!
  const shown = onlyRows(state, sheet)
  const rowAt = (r: number) => shown?.[r] ?? r
  const holds = (r: number, c: number) => (rows[rowAt(r)]?.[c] ?? null) !== null
  const height = shown?.length ?? Math.max(rows.length, row + 1) // the next row to fill has edges too
  const inside = (r: number, c: number) => r >= 0 && c >= 0 && r < height && c < columns.length
  let [r, c] = [shown?.indexOf(row) ?? row, col]
  const alone = !holds(r, c) || !holds(r + down, c + right)
  while (inside(r + down, c + right)) {
    r += down
    c += right
    if (alone ? holds(r, c) : !holds(r + down, c + right)) break
  }
  return {sheet, row: rowAt(r), col: c}
}

/** The last row and column of the sheet that hold anything. */
export function lastFilled({document, cell}: EditorState): CellAddress {
  const {rows} = document.sheets[cell.sheet]!
  const holds = (content: Content) => content !== null
  const row = Math.max(
    0,
    rows.findLastIndex((contents) => contents.some(holds)),
  )
  const col = Math.max(0, ...rows.map((contents) => contents.findLastIndex(holds)))
  return {sheet: cell.sheet, row, col}
}

const clamp = (index: number, count: number) => Math.max(0, Math.min(index, count - 1))

/** The word that the chosen row has in the column of a part, or null where it has none. */
export function chosenWord(
  {document, cell}: Pick<EditorState, "document" | "cell">,
  part: Part,
): string | null {
  const col = columnWith(document, cell.sheet, part)
  const word = col < 0 ? null : document.sheets[cell.sheet]!.rows[cell.row]?.[col]
  return typeof word === "string" ? word : null
}
