import {
  CellApiModule,
  CellStyleModule,
  ClientSideRowModelModule,
  ColumnApiModule,
  ModuleRegistry,
  PinnedRowModule,
  RenderApiModule,
  RowApiModule,
  RowAutoHeightModule,
  ScrollApiModule,
  ValidationModule,
  createTheme,
  type ColDef,
  type GridApi,
  type ICellRendererComp,
  type ICellRendererParams,
  type SuppressKeyboardEventParams,
} from "ag-grid-community"
import {AgGridReact} from "ag-grid-react"
import {
  useCallback,
  useEffect,
  useImperativeHandle,
  useMemo,
  useRef,
  type FocusEvent,
  type MouseEvent,
  type Ref,
} from "react"
import {chooseKeeping, startEditing} from "../editor/editing"
import {pressKey} from "../editor/keys"
import {isPointing, pointAt, pointAtColumn} from "../editor/pointing"
import {choose} from "../editor/selection"
import type {Store} from "../editor/store"
import {cellName} from "../editor/words"
import {isSameCell, type CellAddress, type Column} from "../workbook/document"
import {columnLetters} from "../workbook/formula"
import {planSheet} from "../workbook/plan"
import {TOTAL_ROW, cellViewAt, isWordColumn, sameView, type CellView} from "./cellView"
import {columnWidth, HEAD_HEIGHT, MOST_ROWS_SHOWN, NUMBERS_WIDTH, ROW_HEIGHT} from "./sheetSize"
import {useEditor, useWide} from "./useEditor"
import "./sheet.css"

ModuleRegistry.registerModules([
  CellApiModule,
  CellStyleModule,
  ClientSideRowModelModule,
  ColumnApiModule,
  PinnedRowModule,
  RenderApiModule,
  RowApiModule,
  RowAutoHeightModule,
  ScrollApiModule,
  ...(import.meta.env.DEV ? [ValidationModule] : []),
])

const theme = createTheme().withParams({
  backgroundColor: "var(--ground)",
  foregroundColor: "var(--text)",
  fontFamily: "var(--serif)",
  fontSize: "0.96875rem",
  headerBackgroundColor: "var(--ground)",
  borderColor: "var(--hair)",
  wrapperBorder: false,
  headerRowBorder: false,
  rowBorder: false,
  columnBorder: false,
  rowHoverColor: "transparent",
  cellHorizontalPadding: "8px",
  autoHeightMinBodyHeight: 0,
})

/** What others may ask of the sheet on screen: to take the keyboard's focus to the chosen cell. */
export interface SheetFocus {
  focus(): void
}

interface SheetRow {
  readonly row: number
}

/** One sheet as a grid. Draws the store's state and asks the store for every change. */
export function SheetGrid({store, focusRef}: {store: Store; focusRef: Ref<SheetFocus>}) {
  const state = useEditor(store)
  const {document, cell, editing} = state
  const sheet = document.sheets[cell.sheet]!
  const isPlan = planSheet(document) === cell.sheet
  const pinsName = useWide(40)
  const api = useRef<GridApi<SheetRow> | null>(null)
  const leaving = useRef(false) // Esc was pressed: the next Tab leaves the sheet

  const count = sheet.rows.length + (isPlan ? 0 : 1)
  const rowData = useMemo(() => Array.from({length: count}, (_, row): SheetRow => ({row})), [count])
  const hasTotal = sheet.columns.some(({total}) => total !== undefined)
  const totalRow = useMemo(() => (hasTotal ? [{row: TOTAL_ROW}] : []), [hasTotal])

  const columnDefs = useMemo(
    () => columnsOf(store, cell.sheet, sheet.columns, pinsName),
    [store, cell.sheet, sheet.columns, pinsName],
  )

  useEffect(() => api.current?.refreshCells(), [state])

  const box = useRef<HTMLDivElement>(null)
  const label = `${sheet.name}, ${sheet.rows.length} rows, ${sheet.columns.length} columns`
  const nameGrid = () => box.current?.querySelector("[role=grid]")?.setAttribute("aria-label", label)
  useEffect(nameGrid, [label])

  const isLong = count > MOST_ROWS_SHOWN
  const waits = useRef(false) // the sheet to take the focus is still being built
  const focus = useCallback(() => {
    const {sheet: open, row, col} = store.getState().cell
    waits.current = !api.current || open !== cell.sheet
    if (!api.current || waits.current || row >= count) return
    if (isLong) api.current.ensureIndexVisible(row)
    api.current.ensureColumnVisible(String(col))
    api.current.setFocusedCell(row, String(col))
  }, [store, cell.sheet, count, isLong])
  useImperativeHandle(focusRef, () => ({focus}), [focus])

  // What keys point at comes into view; what the mouse points at is in view.
  const pointed = editing?.pointed?.to
  useEffect(() => {
    if (!api.current || pointed?.sheet !== cell.sheet) return
    if (isLong && pointed.row < count) api.current.ensureIndexVisible(pointed.row)
    api.current.ensureColumnVisible(String(pointed.col))
  }, [pointed, cell.sheet, count, isLong])

  // One object for as long as it can be: for a new one the grid builds all its columns anew.
  const defaultColDef = useMemo((): ColDef<SheetRow> => {
    const onKey = ({event}: SuppressKeyboardEventParams<SheetRow>) => {
      const leaves = event.key === "Tab" && leaving.current
      leaving.current = event.key === "Escape"
      if (leaving.current) store.turn(() => ({said: "Tab now leaves the sheet."}))
      if (leaves || leaving.current) return true
      const used = pressKey(store, event, MOST_ROWS_SHOWN - 1)
      if (!used) return true // the grid's own keys would disagree with ours
      event.preventDefault()
      if (!store.getState().editing) focus()
      return true
    }
    return {
      sortable: false,
      suppressMovable: true,
      suppressKeyboardEvent: onKey,
      suppressHeaderKeyboardEvent: () => false,
    }
  }, [store, focus])

  // The page's own events, since the grid tells of clicks and focus late: the person may be typing by then,
  // and what is typed would land in another cell.
  const onFocus = ({target}: FocusEvent) => {
    const at = cellOf(target, cell.sheet)
    if (at && !store.getState().editing && !isSameCell(at, store.getState().cell)) store.turn(choose(at))
  }
  const onMouseDown = ({target, button}: MouseEvent) => {
    const at = cellOf(target, cell.sheet)
    if (at && button === 0 && !isSameCell(at, store.getState().cell)) chooseKeeping(store, at)
  }

  // While a formula waits for a reference the mouse points: the line keeps the keyboard's focus, the grid hears nothing.
  const widens = useRef(false)
  const onMouseDownFirst = (event: MouseEvent) => {
    widens.current = false
    if (event.button !== 0 || !isPointing(store.getState())) return
    const at = cellOf(event.target, cell.sheet)
    const col = headOf(event.target)
    if (!at && col === null) return
    event.preventDefault()
    event.stopPropagation()
    if (at && isSameCell(at, store.getState().editing!.at)) return
    store.turn(
      at ? pointAt(at, event.shiftKey) : pointAtColumn({sheet: cell.sheet, col: col!}, event.shiftKey),
    )
    widens.current = true
  }
  const onMouseOver = ({target, buttons}: MouseEvent) => {
    if (!widens.current || buttons !== 1 || !isPointing(store.getState())) return
    const at = cellOf(target, cell.sheet)
    if (at) store.turn(pointAt(at, true))
  }

  return (
    <div
      className="sheet"
      role="presentation"
      style={
        isLong ? {height: HEAD_HEIGHT + (MOST_ROWS_SHOWN + (hasTotal ? 1 : 0)) * ROW_HEIGHT + 16} : undefined
      }
      ref={box}
      onFocus={onFocus}
      onMouseDownCapture={onMouseDownFirst}
      onMouseDown={onMouseDown}
      onMouseOver={onMouseOver}
    >
      <AgGridReact<SheetRow>
        key={`${cell.sheet}:${sheet.name}`}
        theme={theme}
        domLayout={isLong ? "normal" : "autoHeight"}
        headerHeight={HEAD_HEIGHT}
        rowHeight={ROW_HEIGHT}
        rowData={rowData}
        pinnedBottomRowData={totalRow}
        columnDefs={columnDefs}
        defaultColDef={defaultColDef}
        getRowId={({data}) => String(data.row)}
        ensureDomOrder
        suppressColumnVirtualisation={sheet.columns.length <= 40}
        suppressCellFocus={false}
        animateRows={false}
        onGridReady={(ready) => {
          api.current = ready.api
          nameGrid()
        }}
        onFirstDataRendered={() => waits.current && focus()}
        onGridPreDestroyed={() => (api.current = null)}
        onCellDoubleClicked={({rowPinned}) =>
          !rowPinned && !store.getState().editing && store.turn(startEditing)
        }
      />
    </div>
  )
}

/** The cell that a part of the page belongs to: none for row numbers, headings and the row of totals. */
function cellOf(target: EventTarget, sheet: number): CellAddress | null {
  const cell = (target as Element).closest(".ag-cell")
  const row = Number(cell?.closest("[row-index]")?.getAttribute("row-index") ?? NaN)
  const col = Number(cell?.getAttribute("col-id") ?? NaN)
  return Number.isNaN(row) || Number.isNaN(col) ? null : {sheet, row, col}
}

/** The column whose heading a part of the page belongs to. */
function headOf(target: EventTarget): number | null {
  const col = Number((target as Element).closest(".ag-header-cell")?.getAttribute("col-id") ?? NaN)
  return Number.isNaN(col) ? null : col
}

function columnsOf(
  store: Store,
  sheet: number,
  columns: readonly Column[],
  pinsName: boolean,
): ColDef<SheetRow>[] {
  const numbers: ColDef<SheetRow> = {
    colId: "row",
    width: NUMBERS_WIDTH,
    pinned: "left",
    headerComponent: () => <span className="hide">Row</span>,
    cellRenderer: RowNumber,
    valueGetter: ({data}) => data!.row,
    cellClass: "no",
  }
  const own = columns.map((column, col): ColDef<SheetRow> => ({
    colId: String(col),
    width: columnWidth(column, col),
    ...(col === 0 ? {pinned: "left" as const, cellAriaRole: "rowheader"} : {}),
    headerName: column.heading,
    headerComponent: ColumnHead,
    headerComponentParams: {store, column, col},
    headerClass: column.starts ? "starts" : "",
    cellClass: `${column.starts ? "starts" : ""} ${isProse(column) ? "prose" : ""}`,
    ...(isProse(column) ? {wrapText: true, autoHeight: true} : {}),
    cellRenderer: CellText,
    cellRendererParams: {shows: {store, sheet, col}},
    equals: sameView,
    // The state is read when a cell is drawn, so that columns need not be made anew for each key.
    valueGetter: ({data}) => cellViewAt(store, {sheet, row: data!.row, col}),
  }))
  return pinsName ? [numbers, ...own] : own
}

/** A wide column of words holds sentences: they wrap, so that all of them can be read. */
const isProse = (column: Column) => isWordColumn(column) && (column.width ?? 0) >= 16

/** The head of a column in three lines: its letter, its heading, its unit. */
function ColumnHead({store, column, col}: {store: Store; column: Column; col: number}) {
  const {cell} = useEditor(store)
  return (
    <span
      className={`col-head ${isWordColumn(column) ? "txt" : ""} ${cell.col === col ? "at" : ""}`}
      title={column.about}
    >
      <span className="let">{columnLetters(col)}</span>
      <span className="heading">{column.heading}</span>
      <span className="unit">{column.unit ?? "\u00a0"}</span>
    </span>
  )
}

/** A row's number, counted from 1 as in references. */
class RowNumber implements ICellRendererComp {
  #gui = document.createElement("span")
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
  readonly shows: {readonly store: Store; readonly sheet: number; readonly col: number}
}

/** The text of a cell. Its marks are drawn by style from the attributes that are set here on the cell. */
class CellText implements ICellRendererComp<SheetRow> {
  #gui = window.document.createElement("span")
  init(params: CellParams) {
    this.#gui.className = "text"
    this.refresh(params)
  }
  refresh({value, eGridCell, data, shows: {store, sheet, col}}: CellParams) {
    if (!value) return true
    const {document} = store.getState()
    const column = document.sheets[sheet]!.columns[col]!
    this.#gui.textContent = value.text
    if (col === 0) eGridCell.setAttribute("role", value.text ? "rowheader" : "gridcell") // a blank heads nothing
    eGridCell.title = value.full === value.text ? "" : value.full
    const marks = {
      kind: value.kind,
      align: value.align,
      chosen: value.chosen,
      typing: value.typing ? "" : null,
      fault: value.isFault ? "" : null,
      ref: value.reference === null ? null : String(value.reference),
    }
    for (const [name, mark] of Object.entries(marks))
      if (mark === null) delete eGridCell.dataset[name]
      else eGridCell.dataset[name] = mark
    const readOnly = value.kind === "worked out" || value.kind === "total"
    eGridCell.setAttribute("aria-readonly", String(readOnly))
    eGridCell.setAttribute("aria-selected", String(value.chosen === "cell"))
    if (value.isFault) eGridCell.setAttribute("aria-invalid", "true")
    else eGridCell.removeAttribute("aria-invalid")
    const row = data!.row
    const name = row === TOTAL_ROW ? `${column.heading}, all rows` : cellName(document, {sheet, row, col})
    const said = value.full || "blank"
    const unit = column.unit && value.text && !value.isFault ? ` ${column.unit}` : ""
    eGridCell.setAttribute("aria-label", `${said}${unit}. ${name}. ${kindWords[value.kind] ?? value.kind}`)
    return true
  }
  getGui() {
    return this.#gui
  }
}

const kindWords: Record<string, string> = {next: "next row to fill", total: "total of the column"}
