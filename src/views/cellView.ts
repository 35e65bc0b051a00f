import {chosenBlock, isIn, type Block} from "../editor/block"
import {isCut} from "../editor/cut"
import {cellColumn} from "../editor/cellColumn"
import {isUnknownLimit, textOf, withoutDay} from "../editor/display"
import {measureOf} from "../editor/measures"
import type {EditorState, Store} from "../editor/store"
import {cellName, toldApart} from "../editor/words"
import type {CellAddress, Column, Document} from "../workbook/document"
import {columnAt, extraAt} from "../workbook/extras"
import {referenceOf, tokens} from "../workbook/formula"
import {decimalOf, regionOf, type Decimal} from "../workbook/region"
import {sentenceOf} from "../workbook/faults"
import {MOST} from "../workbook/size"
import {kindAt, type CellKind} from "../workbook/trace"
import {isFault, type Value} from "../workbook/value"

/** Everything that is drawn in one cell. Two that are alike need not be drawn again. */
export interface CellView {
  readonly text: string
  /** The whole text for those who cannot see it cut off, and the sentence of an error. */
  readonly full: string
  /** What the cell is called: "Sugar of North Bench, plant 2". */
  readonly name: string
  /** The unit that goes with the text. */
  readonly unit: string
  readonly kind: CellKind | "total" | "next"
  readonly align: "left" | "right"
  readonly isFault: boolean
  /** What the note on it says; null where there is none. */
  readonly note: string | null
  readonly chosen: "cell" | "block" | "row" | null
  /** The sides on which the chosen block ends here, each by its first letter: "t l". */
  readonly edges: string
  /** The next paste moves it. */
  readonly isCut: boolean
  /** Being typed in; the text is what is being typed. */
  readonly typing: boolean
  /** Number of the reference in the formula being typed that covers this cell. */
  readonly reference: number | null
}

export const sameView = (a: CellView, b: CellView) =>
  a === b || (Object.keys(a) as (keyof CellView)[]).every((key) => a[key] === b[key])

/** What a cell of the open sheet shows now. `row` -1 is the line of totals. */
export function cellViewAt(store: Store, at: CellAddress): CellView {
  const state = store.getState()
  const {cell, editing} = state
  const held = heldAt(store, at)
  const typedAt = editing?.at ?? cell // while another sheet is open to point at, no cell of that is chosen
  const isChosenRow = at.sheet === typedAt.sheet && at.row === typedAt.row && at.row !== TOTAL_ROW
  const isChosen = isChosenRow && at.col === typedAt.col
  const marks = {
    chosen: isChosen ? "cell" : isInBlock(state, at) ? "block" : isChosenRow ? "row" : null,
    edges: isInBlock(state, at) ? edgesOf(chosenBlock(state), at) : "",
    isCut: isCut(state, at),
    reference: markedRanges(state).find((range) => covers(range, at))?.number ?? null,
  } as const
  if (!isChosen || !editing) return {...held, ...marks, typing: false}
  const {text} = editing
  return {...held, ...marks, typing: true, text, full: held.isFault ? held.full : text, align: "left"}
}

/** What a cell shows in a document, whatever is chosen or typed; worked out once for the document that is open. */
type Held = Omit<CellView, "chosen" | "edges" | "isCut" | "typing" | "reference">

function heldAt(store: Store, at: CellAddress): Held {
  const {document} = store.getState()
  let open = shown.get(store)
  if (open?.document !== document || open.sheet !== at.sheet)
    shown.set(store, (open = {document, sheet: at.sheet, cells: new Map()}))
  const place = (at.row + 1) * MOST.columns + at.col
  const held = open.cells.get(place) ?? heldNow(store, at)
  open.cells.set(place, held)
  return held
}

const shown = new WeakMap<
  Store,
  {readonly document: Document; readonly sheet: number; readonly cells: Map<number, Held>}
>()

function heldNow(store: Store, at: CellAddress): Held {
  const {document} = store.getState()
  const sheet = document.sheets[at.sheet]!
  const column = columnAt(document, at)!
  const isTotal = at.row === TOTAL_ROW
  const isNext = at.row >= sheet.rows.length
  const value = isTotal ? totalOf(store, at, column.total) : isNext ? null : store.valueAt(at)
  const kind = isTotal ? "total" : isNext ? "next" : kindAt(document, at)
  const region = regionOf(document)
  const own = isTotal ? column : cellColumn(document, at)!
  const text =
    kind === "missing"
      ? "none"
      : isTotal && at.col === 0 && !column.total
        ? totalName(sheet.columns)
        : textOf(value, own, !isTotal && store.workbook.isDateAt(at), region)
  return {
    text,
    unit: measureOf(own.unit, region).unit,
    full: isFault(value)
      ? `${isUnknownLimit(value, own) ? `${withoutDay(value)}:` : value.code} ${sentenceOf(value)}.`
      : text,
    name: isTotal ? `${column.heading}, all rows` : cellName(document, at) + toldApart(store.workbook, at),
    kind,
    align:
      (typeof value === "string" && column.kind !== "measured") || isWordColumn(column) ? "left" : "right",
    isFault: isFault(value),
    note: extraAt(document, at)?.note?.text ?? null,
  }
}

const isInBlock = (state: EditorState, at: CellAddress) =>
  state.reach !== null && at.row !== TOTAL_ROW && isIn(chosenBlock(state), at)

const edgesOf = ({rows, cols}: Block, {row, col}: CellAddress) =>
  [row === rows[0] && "t", row === rows[1] && "b", col === cols[0] && "l", col === cols[1] && "r"]
    .filter(Boolean)
    .join(" ")

/** What the line under a sheet is called: "Mean" where it holds means, else "All". */
const totalName = (columns: readonly Column[]) =>
  columns.some(({total}) => total?.includes("AVERAGE(")) ? "Mean" : "All"

/** Stands for the line of totals under a sheet. */
export const TOTAL_ROW = -1

export const isWordColumn = ({
  format,
  unit,
  kind,
  part,
}: {
  format?: unknown
  unit?: unknown
  kind: string
  part?: unknown
}) =>
  format === "text" ||
  part === "planting" ||
  part === "held by" ||
  (format === undefined && unit === undefined && kind !== "worked out")

/** The total of a column; worked out once for each document, since it is not kept in a cell. */
function totalOf(store: Store, {sheet, col}: CellAddress, total: string | undefined): Value {
  if (!total) return null
  const {document} = store.getState()
  const held = totals.get(document) ?? new Map<string, Value>()
  totals.set(document, held)
  const key = `${sheet}:${col}`
  if (!held.has(key)) {
    const value = store.workbook.evaluate(total, sheet)
    held.set(key, Array.isArray(value) ? null : (value as Value))
  }
  return held.get(key)!
}
const totals = new WeakMap<Document, Map<string, Value>>()

/** A range of the open sheet that the formula being typed refers to. */
interface MarkedRange {
  readonly number: number
  readonly rows: readonly [number, number]
  readonly cols: readonly [number, number]
}

/** The references of a formula in the order they are first written, numbered 1, 2, 3, 1, ... for their line kinds. */
export function numberedReferences(formula: string, decimal: Decimal = "."): ReadonlyMap<string, number> {
  const found = new Map<string, number>()
  for (const {kind, text} of formula.startsWith("=") ? tokens(formula, decimal) : [])
    if (kind === "reference" && !found.has(text)) found.set(text, (found.size % 3) + 1)
  return found
}

/** The cells of the open sheet that the formula being typed refers to; worked out once for each state. */
function markedRanges(state: EditorState): readonly MarkedRange[] {
  const held = ranges.get(state)
  if (held) return held
  const found = rangesIn(state)
  ranges.set(state, found)
  return found
}
const ranges = new WeakMap<EditorState, readonly MarkedRange[]>()

function rangesIn({document, cell, editing}: EditorState): readonly MarkedRange[] {
  if (!editing) return []
  return [...numberedReferences(editing.text, decimalOf(document))].flatMap(([text, number]) => {
    const {sheet, from, to} = referenceOf(text)
    const isHere =
      sheet === null
        ? editing.at.sheet === cell.sheet
        : sheet.toLowerCase() === document.sheets[cell.sheet]!.name.toLowerCase()
    const rows = [from.row ?? 0, to.row ?? Infinity] as const
    return isHere ? [{number, rows, cols: [from.col ?? 0, to.col ?? Infinity] as const}] : []
  })
}

const covers = ({rows, cols}: MarkedRange, {row, col}: CellAddress) =>
  row >= rows[0] && row <= rows[1] && col >= cols[0] && col <= cols[1]
