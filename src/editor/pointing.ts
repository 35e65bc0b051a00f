import type {CellAddress, Document} from "../workbook/document"
import {referenceOf, referenceText, tokens, type Corner, type Token} from "../workbook/formula"
import {decimalOf, type Decimal} from "../workbook/region"
import {argumentSign} from "../workbook/screenFormula"
import type {Place} from "./brackets"
import {rowAfter, rowsToChoose} from "./selection"
import type {Editing, EditorState, Turn} from "./store"
import {cellName} from "./words"

/** Whether a reference may be put in at the caret: behind "=", "(", the sign between arguments, an operator or the colon of a range. */
export function canPoint(text: string, caret: number, decimal: Decimal = "."): boolean {
  if (!text.startsWith("=") || caret < 1) return false
  const before = piecesIn(text.slice(0, caret), decimal)
  const after = piecesIn(text.slice(caret), decimal)[0]
  const last = before.at(-1)
  const parts = (text: string) => text === argumentSign(decimal)
  if (last?.kind !== "sign" || depthOfBraces(before) > 0) return false
  if (!GOES_BEFORE.has(last.text) && !parts(last.text)) return false
  if (last.text === ":" && !isCell(before.at(-2))) return false
  return after === undefined || (after.kind === "sign" && (GOES_BEHIND.has(after.text) || parts(after.text)))
}

const OPERATORS = ["+", "-", "*", "/", "^", "&", "=", "<", ">", "<=", ">=", "<>"]
const GOES_BEFORE = new Set([...OPERATORS, "(", ":"])
const GOES_BEHIND = new Set([...OPERATORS, ")", "%"])

/** Whether a click on a cell now puts its reference into the formula. */
export const isPointing = ({editing, document}: Pick<EditorState, "editing" | "document">) =>
  editing !== null && placeIn(editing, decimalOf(document)) !== null

/** Points at a cell. `widens` makes a range of it, from the cell where pointing began. */
export const pointAt =
  (to: CellAddress, widens = false): Turn =>
  (state) => {
    const {pointed} = state.editing ?? {}
    const from = widens && pointed?.to.sheet === to.sheet ? pointed.from : to
    return put(state, from, to, widens && (pointed?.isColumns ?? false))
  }

/** Points at a whole column. `widens` takes all columns from the one where pointing began. */
export const pointAtColumn =
  (to: Pick<CellAddress, "sheet" | "col">, widens = false): Turn =>
  (state) => {
    const {pointed} = state.editing ?? {}
    const cell = {...to, row: 0}
    return put(state, widens && pointed?.to.sheet === to.sheet ? pointed.from : cell, cell, true)
  }

/** Points at the cell so many rows down and columns right of the one pointed at last, or of the cell being edited. */
export const pointStep =
  (down: number, right: number, widens = false): Turn =>
  (state) => {
    const {sheet, row, col} = lastPointed(state)
    const {document} = state
    const clamp = (index: number, count: number) => Math.max(0, Math.min(index, count - 1))
    const to = {
      sheet,
      row: clamp(rowAfter(state, row, down), rowsToChoose(state)),
      col: clamp(col + right, document.sheets[sheet]!.columns.length),
    }
    return pointAt(to, widens)(state)
  }

/** Points at the whole column of the cell pointed at last, or of the cell being edited. */
export const pointWholeColumn: Turn = (state) => pointAtColumn(lastPointed(state))(state)

/** Opens another sheet and points at its first cell. Back on the sheet of the formula, nothing is put in. */
export const pointAtSheet =
  (sheet: number): Turn =>
  (state) => {
    const {editing, document} = state
    if (!editing) return {}
    const said = `${document.sheets[sheet]!.name} is open; the formula waits for a cell.`
    if (sheet === editing.at.sheet) return {cell: editing.at, editing: {...editing}, said}
    const cell = {sheet, row: 0, col: 0}
    const change = put(state, cell, cell, false)
    return change.editing
      ? {...change, cell, said: `${document.sheets[sheet]!.name}: ${change.said}`}
      : change
  }

/** The cell that pointing goes on from on the open sheet. */
const lastPointed = ({editing, cell}: EditorState) =>
  editing?.pointed?.to.sheet === cell.sheet ? editing.pointed.to : cell

/** Where the reference goes: in place of the one that was pointed at last, or at the caret. */
function placeIn({text, caret, pointed}: Editing, decimal: Decimal): Place | null {
  if (pointed) return pointed
  return canPoint(text, caret, decimal) ? {start: caret, end: caret} : null
}

function put(state: EditorState, from: CellAddress, to: CellAddress, isColumns: boolean): ReturnType<Turn> {
  const {editing, document} = state
  const decimal = decimalOf(document)
  const place = editing && placeIn(editing, decimal)
  if (!place) return {}
  const {text, at} = editing
  const before = piecesIn(text.slice(0, place.start), decimal)
  const isCorner = before.at(-1)?.text === ":"
  if (isCorner && (isColumns || sheetOfReference(document, at, before.at(-2)!.text) !== to.sheet))
    return {said: "A range goes from cell to cell of one sheet."}
  const began = isCorner ? to : from
  const written = pointedText(document, at, text.slice(place.start, place.end), began, to, isColumns)
  const end = place.start + written.length
  return {
    editing: {
      ...editing,
      text: text.slice(0, place.start) + written + text.slice(place.end),
      caret: end,
      refused: null,
      pointed: {start: place.start, end, from: began, to, isColumns},
    },
    said: `${written}, ${isColumns ? `the whole column ${headingOf(document, to)}` : cellName(document, to)}.`,
  }
}

/** The reference as text, fixed by "$" as the one was whose place it takes. */
function pointedText(
  document: Document,
  at: CellAddress,
  instead: string,
  a: CellAddress,
  b: CellAddress,
  isColumns: boolean,
): string {
  const {colFixed, rowFixed} = instead === "" ? NOT_FIXED : referenceOf(instead).from
  const corner = (row: number, col: number): Corner => ({
    row: isColumns ? null : row,
    col,
    rowFixed: !isColumns && rowFixed,
    colFixed,
  })
  return referenceText({
    sheet: b.sheet === at.sheet ? null : document.sheets[b.sheet]!.name,
    from: corner(Math.min(a.row, b.row), Math.min(a.col, b.col)),
    to: corner(Math.max(a.row, b.row), Math.max(a.col, b.col)),
    isRange: isColumns || a.row !== b.row || a.col !== b.col,
  })
}

const NOT_FIXED = {colFixed: false, rowFixed: false}

const headingOf = ({sheets}: Document, {sheet, col}: CellAddress) => sheets[sheet]!.columns[col]!.heading

/** The sheet that a reference of the formula in cell `at` points at. */
function sheetOfReference({sheets}: Document, at: CellAddress, reference: string): number {
  const {sheet} = referenceOf(reference)
  return sheet === null ? at.sheet : sheets.findIndex(({name}) => name.toLowerCase() === sheet.toLowerCase())
}

const isCell = (token: Token | undefined) => token?.kind === "reference" && !referenceOf(token.text).isRange

/** The pieces of a part of the formula, without spaces. */
const piecesIn = (text: string, decimal: Decimal) =>
  tokens(text, decimal).filter(({kind}) => kind !== "space")

const depthOfBraces = (before: readonly Token[]) =>
  before.reduce((depth, {text}) => depth + (text === "{" ? 1 : text === "}" ? -1 : 0), 0)
