import type {
  ColDef,
  ICellRendererComp,
  ICellRendererParams,
  IHeaderComp,
  IHeaderParams,
} from "ag-grid-community"
import {measureOf} from "../editor/measures"
import type {Store} from "../editor/store"
import type {Column, Document, Region} from "../workbook/document"
import {columnLetters} from "../workbook/formula"
import {regionOf} from "../workbook/region"
import type {SortKey} from "../workbook/sorting"
import {TOTAL_ROW, cellViewAt, isWordColumn, sameView, type CellView} from "./cellView"
import {NUMBERS_WIDTH, widthOnSheet} from "./sheetSize"

/** A row as the grid holds it: what its cells show is read from the store when they are drawn. */
export interface SheetRow {
  readonly row: number
}

/**
 * The columns of a sheet as the grid takes them, with the numbers of the rows where there is room. `room` is what the page has,
 * px: a column of sentences is never wider than that, so that each of them can be read without turning back and forth.
 */
export function columnsOf(
  store: Store,
  sheet: number,
  columns: readonly Column[],
  region: Region,
  pinsName: boolean,
  keeps: number,
  room: number,
): ColDef<SheetRow>[] {
  const numbers: ColDef<SheetRow> = {
    colId: "row",
    width: NUMBERS_WIDTH,
    pinned: "left",
    headerComponent: NumbersHead,
    cellRenderer: RowNumber,
    valueGetter: ({data}) => data!.row,
    cellClass: "no",
  }
  const widths = widthsIn(room, columns, {
    widths: columns.map((_, col) => widthOnSheet(store, sheet, col)),
    keeps,
    numbers: pinsName ? NUMBERS_WIDTH : 0,
  })
  const own = columns.map((column, col): ColDef<SheetRow> => ({
    colId: String(col),
    width: widths[col]!,
    ...(col < keeps ? {pinned: "left" as const} : {}),
    ...(col === 0 ? {cellAriaRole: "rowheader"} : {}),
    headerName: column.heading,
    headerComponent: ColumnHead,
    headerComponentParams: {heads: {store, sheet, column, col}},
    headerClass: column.starts ? "starts" : "",
    cellClass: `${column.starts ? "starts" : ""} ${isProse(column) ? "prose" : ""}`,
    ...(isProse(column) ? {wrapText: true, autoHeight: true} : {}),
    cellRenderer: CellText,
    cellRendererParams: {col},
    equals: sameView,
    // The state is read when a cell is drawn, so that columns need not be made anew for each key.
    valueGetter: ({data}) => cellViewAt(store, {sheet, row: data!.row, col}),
  }))
  return pinsName ? [numbers, ...own] : own
}

/** px: sentences in less room than this cannot be read; chosen. */
const LEAST_PROSE = 192
/** Of the page, for the first column of sentences beside others; chosen. */
const FIRST_SHARE = 0.36
/** px: a first column is no narrower, with room for a word; chosen. */
const LEAST_FIRST = 112
/** px: what the bar beside the rows takes, about. */
const SCROLL_BAR = 16

/** Widths of columns, px: those of sentences leave each other, and what stays in view beside them, their part of the room. */
export function widthsIn(
  room: number,
  columns: readonly Column[],
  {
    widths,
    keeps,
    numbers,
  }: {readonly widths: readonly number[]; readonly keeps: number; readonly numbers: number},
): readonly number[] {
  const first = columns[0] && isProse(columns[0]) ? Math.max(LEAST_FIRST, FIRST_SHARE * room) : Infinity
  const fitting = widths.map((width, col) => (col === 0 ? Math.min(width, first) : width))
  const beside = fitting.slice(0, Math.max(keeps, first < Infinity ? 1 : 0))
  const most = room - SCROLL_BAR - beside.reduce((sum, width) => sum + width, numbers)
  return fitting.map((width, col) =>
    col >= beside.length && isProse(columns[col]!) ? Math.min(width, Math.max(LEAST_PROSE, most)) : width,
  )
}

/** A wide column of words holds sentences: they wrap, so that all of them can be read. */
export const isProse = (column: Column) => isWordColumn(column) && (column.width ?? 0) >= 16

/** The head of the numbers of the rows: a word for those who hear it. */
class NumbersHead implements IHeaderComp {
  #gui = span("hide", "Row")
  refresh = () => true
  getGui = () => this.#gui
}

type HeadParams = IHeaderParams<SheetRow> & {
  readonly heads: {
    readonly store: Store
    readonly sheet: number
    /** As it was when the head was drawn. */
    readonly column: Column
    readonly col: number
  }
}

/** The head of a column in three lines: its letter, its heading, its unit. */
class ColumnHead implements IHeaderComp {
  #gui = span("col-head")
  #leave = () => {}
  init({eGridHeader, heads: {store, sheet, column: drawn, col}}: HeadParams) {
    const [letters, heading, unit] = [span("let", columnLetters(col)), span("heading"), span("unit")]
    this.#gui.append(letters, heading, unit)
    let shown: Document | null = null
    const show = () => {
      const {cell, document} = store.getState()
      this.#gui.classList.toggle("at", cell.col === col)
      showSorted(eGridHeader, store.sortedBy(sheet), col)
      if (document === shown) return
      shown = document
      // The grid keeps its heads when another workbook with a sheet of this name is opened.
      const column = document.sheets[sheet]?.columns[col] ?? drawn
      this.#gui.classList.toggle("txt", isWordColumn(column))
      this.#gui.title = column.about ?? ""
      write(heading, column.heading)
      write(unit, measureOf(column.unit, regionOf(document)).unit || "\u00a0")
    }
    show()
    queueMicrotask(() => showSorted(eGridHeader, store.sortedBy(sheet), col)) // once the grid has put its own away
    this.#leave = store.subscribe(show)
  }
  refresh = () => false // another column is another head
  destroy() {
    this.#leave()
  }
  getGui = () => this.#gui
}

function showSorted(head: HTMLElement, by: SortKey | null, col: number) {
  if (by?.col === col) head.setAttribute("aria-sort", by.descending ? "descending" : "ascending")
  else head.removeAttribute("aria-sort")
}

function span(name: string, text = "") {
  const made = window.document.createElement("span")
  made.className = name
  made.textContent = text
  return made
}

/** Words that stand already are not written again: the browser would lay them out anew. */
function write(into: HTMLElement, words: string) {
  if (into.textContent !== words) into.textContent = words
}

/** A row's number, counted from 1 as in references. */
class RowNumber implements ICellRendererComp {
  #gui = span("")
  init({value}: ICellRendererParams) {
    this.refresh({value} as ICellRendererParams)
  }
  refresh({value}: ICellRendererParams) {
    this.#gui.textContent = value === TOTAL_ROW ? "" : String(value + 1)
    return true
  }
  getGui() {
    return this.#gui
  }
}

type CellParams = ICellRendererParams<SheetRow, CellView> & {
  readonly col: number
}

/** The text of a cell. Its marks are drawn by style from the attributes that are set here on the cell. */
class CellText implements ICellRendererComp<SheetRow> {
  #gui = span("text")
  init(params: CellParams) {
    this.refresh(params)
  }
  refresh({value, eGridCell, col}: CellParams) {
    if (!value) return true
    const note = value.note === null ? "" : `. Note: ${value.note}`
    const cut = value.isCut ? ". To be moved by the next paste" : ""
    write(this.#gui, value.text)
    eGridCell.title = value.full === value.text ? "" : value.full
    const marks = {
      kind: value.kind,
      align: value.align,
      chosen: value.chosen,
      edges: value.edges || null,
      cut: value.isCut ? "" : null,
      typing: value.typing ? "" : null,
      fault: value.isFault ? "" : null,
      note: value.note === null ? null : "",
      ref: value.reference === null ? null : String(value.reference),
    }
    for (const [name, mark] of Object.entries(marks))
      if (mark === null) delete eGridCell.dataset[name]
      else eGridCell.dataset[name] = mark
    // A row without a name has no header: a blank one would name nothing.
    if (col === 0) eGridCell.setAttribute("role", value.text ? "rowheader" : "gridcell")
    const readOnly = value.kind === "worked out" || value.kind === "total"
    eGridCell.setAttribute("aria-readonly", String(readOnly))
    eGridCell.setAttribute("aria-selected", String(value.chosen === "cell" || value.chosen === "block"))
    if (value.isFault) eGridCell.setAttribute("aria-invalid", "true")
    else eGridCell.removeAttribute("aria-invalid")
    const said = value.full.replace(/\.$/, "") || "blank"
    const unit = value.unit && value.text && !value.isFault ? ` ${value.unit}` : ""
    eGridCell.setAttribute(
      "aria-label",
      `${said}${unit}. ${value.name}. ${kindWords[value.kind] ?? value.kind}${cut}${note}`,
    )
    return true
  }
  getGui() {
    return this.#gui
  }
}

const kindWords: Record<string, string> = {next: "next row to fill", total: "total of the column"}
