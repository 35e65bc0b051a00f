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
  type ClipboardEvent,
  useCallback,
  useEffect,
  useImperativeHandle,
  useMemo,
  useRef,
  type FocusEvent,
  type MouseEvent,
  type PointerEvent,
  type Ref,
} from "react"
import {copyChosen, pasteTable, readTable} from "../editor/clipboard"
import {blockText, chooseColumns, chooseRows, chosenBlock, isIn, reachTo} from "../editor/block"
import {chooseKeeping, keepEditing, startEditing} from "../editor/editing"
import {emptied} from "../editor/blockActs"
import {pressKey} from "../editor/sheetKeys"
import {isPointing, pointAt, pointAtColumn} from "../editor/pointing"
import {choose, onlyRows} from "../editor/selection"
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

/** What others may ask of the sheet on screen. */
export interface SheetFocus {
  /** Takes the keyboard's focus to the chosen cell; false while the sheet of that cell is not drawn yet. */
  focus(): boolean
  /** Scrolls the chosen cell into view; the focus stays where it is. */
  show(): void
}

interface SheetRow {
  readonly row: number
}

/** One sheet as a grid. Draws the store's state and asks the store for every change. */
export function SheetGrid({
  store,
  focusRef,
  onDrawn,
}: {
  store: Store
  focusRef: Ref<SheetFocus>
  /** Told when a sheet that was opened stands there. */
  onDrawn: () => void
}) {
  const state = useEditor(store)
  const {document, cell, editing} = state
  const sheet = document.sheets[cell.sheet]!
  const isPlan = planSheet(document) === cell.sheet
  const pinsName = useWide(40)
  const api = useRef<GridApi<SheetRow> | null>(null)
  const leaving = useRef(false) // Esc was pressed: the next Tab leaves the sheet

  const only = onlyRows(state, cell.sheet)
  const count = only?.length ?? sheet.rows.length + (isPlan ? 0 : 1)
  const rowData = useMemo(
    () =>
      only
        ? only.map((row): SheetRow => ({row}))
        : Array.from({length: count}, (_, row): SheetRow => ({row})),
    [count, only],
  )
  const hasTotal = sheet.columns.some(({total}) => total !== undefined)
  const totalRow = useMemo(() => (hasTotal ? [{row: TOTAL_ROW}] : []), [hasTotal])

  const columnDefs = useMemo(
    () => columnsOf(store, cell.sheet, sheet.columns, pinsName),
    [store, cell.sheet, sheet.columns, pinsName],
  )

  useEffect(() => api.current?.refreshCells(), [state])

  const box = useRef<HTMLDivElement>(null)
  const rowsSaid = only ? `${only.length} of ${sheet.rows.length} rows` : `${sheet.rows.length} rows`
  const label = `${sheet.name}, ${rowsSaid}, ${sheet.columns.length} columns`
  const nameGrid = () => box.current?.querySelector("[role=grid]")?.setAttribute("aria-label", label)
  useEffect(nameGrid, [label])

  const isLong = count > MOST_ROWS_SHOWN
  const drawn = cell.sheet
  const place = useCallback((row: number) => only?.indexOf(row) ?? row, [only])
  const scrollTo = useCallback(
    ({row, col}: Pick<CellAddress, "row" | "col">, where?: "middle") => {
      if (isLong) api.current?.ensureIndexVisible(place(row), where)
      api.current?.ensureColumnVisible(String(col))
    },
    [isLong, place],
  )
  const isDrawn = useCallback((row: number) => place(row) >= 0 && place(row) < count, [place, count])
  const show = useCallback(() => {
    const {cell} = store.getState()
    if (cell.sheet === drawn && isDrawn(cell.row)) scrollTo(cell, "middle")
  }, [store, drawn, isDrawn, scrollTo])
  const focus = useCallback(() => {
    const {cell, reach} = store.getState()
    if (!api.current || cell.sheet !== drawn) return false
    if (!isDrawn(cell.row)) return true
    scrollTo(cell) // a row that is not drawn cannot take the focus
    api.current.setFocusedCell(place(cell.row), String(cell.col))
    if (reach) scrollTo(reach)
    return true
  }, [store, drawn, isDrawn, place, scrollTo])
  useImperativeHandle(focusRef, () => ({focus, show}), [focus, show])

  // What keys point at comes into view; what the mouse points at is in view.
  const pointed = editing?.pointed?.to
  useEffect(() => {
    if (!api.current || pointed?.sheet !== cell.sheet) return
    if (isLong && isDrawn(pointed.row)) api.current.ensureIndexVisible(place(pointed.row))
    api.current.ensureColumnVisible(String(pointed.col))
  }, [pointed, cell.sheet, isDrawn, place, isLong])

  // One object for as long as it can be: for a new one the grid builds all its columns anew.
  const defaultColDef = useMemo((): ColDef<SheetRow> => {
    const onKey = ({event}: SuppressKeyboardEventParams<SheetRow>) => {
      const leaves = event.key === "Tab" && leaving.current
      leaving.current = event.key === "Escape"
      if (leaving.current) store.turn(() => ({said: "Tab now leaves the sheet."}))
      if (leaves || leaving.current) return true
      const {asksToFind} = store.getState()
      const used = pressKey(store, event, MOST_ROWS_SHOWN - 1)
      if (!used) return true // the grid's own keys would disagree with ours
      event.preventDefault()
      const {editing, asksToFind: asked} = store.getState()
      if (!editing && asked === asksToFind) focus()
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
  const dragging = useRef(false)
  const onFocus = ({target}: FocusEvent) => {
    const at = cellOf(target, cell.sheet)
    if (!at || dragging.current || store.getState().editing) return
    if (!isIn(chosenBlock(store.getState()), at)) store.turn(choose(at))
  }
  // The grid moves the focus as soon as the pointer is down: with Shift that is no choice of another cell.
  const onPointerDown = ({target, pointerType, button}: PointerEvent) => {
    const isCell = pointerType === "mouse" && button === 0 && cellOf(target, cell.sheet) !== null
    dragging.current = isCell && !isPointing(store.getState())
  }
  // While a formula waits for a reference the mouse points: the line keeps the keyboard's focus, the grid hears nothing.
  const widens = useRef(false)
  const onPoint = (event: MouseEvent) => {
    widens.current = false
    const at = cellOf(event.target, cell.sheet)
    const col = columnOf(event.target)
    if (!at && col === null) return
    event.preventDefault()
    event.stopPropagation()
    if (at && isSameCell(at, store.getState().editing!.at)) return
    store.turn(
      at ? pointAt(at, event.shiftKey) : pointAtColumn({sheet: cell.sheet, col: col!}, event.shiftKey),
    )
    widens.current = true
  }
  const onMouseDown = (event: MouseEvent) => {
    const {target, button, shiftKey} = event
    if (button !== 0) return
    if (isPointing(store.getState())) return onPoint(event)
    const at = cellOf(target, cell.sheet)
    const row = rowOf(target)
    const col = columnOf(target)
    if (!at && row === null && col === null) return
    if (at && shiftKey) {
      event.preventDefault()
      if (keepEditing(store, 0, 0)) store.turn(reachTo(at.row, at.col))
    } else if (at) {
      const {cell: now, reach} = store.getState()
      if (reach || !isSameCell(at, now)) chooseKeeping(store, at)
    } else if (keepEditing(store, 0, 0)) {
      const {cell: now} = store.getState()
      if (!shiftKey) store.turn(choose({sheet: cell.sheet, row: row ?? 0, col: col ?? 0}))
      else store.turn(reachTo(row ?? now.row, col ?? now.col))
      store.turn(row === null ? chooseColumns : chooseRows)
      focus()
    }
  }
  const onMouseMove = ({target, buttons}: MouseEvent) => {
    if (widens.current && buttons & 1 && isPointing(store.getState())) {
      const to = cellOf(target, cell.sheet)
      const far = store.getState().editing?.pointed?.to
      if (to && !(far && isSameCell(to, far))) store.turn(pointAt(to, true))
      return
    }
    if (!dragging.current || !(buttons & 1)) return
    const at = cellOf(target, cell.sheet)
    const {cell: now, reach, editing} = store.getState()
    const far = reach ?? now
    if (at && !editing && (at.row !== far.row || at.col !== far.col)) store.turn(reachTo(at.row, at.col))
  }
  useEffect(() => {
    const end = () => (dragging.current = false)
    window.addEventListener("mouseup", end)
    return () => window.removeEventListener("mouseup", end)
  }, [])

  const onCopy = (event: ClipboardEvent) => {
    if (store.getState().editing) return
    event.preventDefault()
    const {plain, html} = copyChosen(store)
    event.clipboardData.setData("text/plain", plain)
    event.clipboardData.setData("text/html", html)
    const said = `${blockText(chosenBlock(store.getState()))} copied.`
    store.turn(() => ({said}))
    if (event.type === "cut") emptied(store)
  }
  const onPaste = (event: ClipboardEvent) => {
    if (store.getState().editing) return
    event.preventDefault()
    const {clipboardData} = event
    const [plain, html] = [clipboardData.getData("text/plain"), clipboardData.getData("text/html")]
    if (plain || html) pasteTable(store, readTable(plain, html))
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
      onPointerDownCapture={onPointerDown}
      onMouseDownCapture={onMouseDown}
      onMouseMove={onMouseMove}
      onCopy={onCopy}
      onCut={onCopy}
      onPaste={onPaste}
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
        onFirstDataRendered={onDrawn}
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
  const row = rowIdOf(cell)
  const col = Number(cell?.getAttribute("col-id") ?? NaN)
  return row === null || Number.isNaN(col) ? null : {sheet, row, col}
}

/** The row that a row's number stands for, or null. */
function rowOf(target: EventTarget): number | null {
  const number = (target as Element).closest('.ag-cell[col-id="row"]')
  return rowIdOf(number)
}

/** The row of the sheet that a cell on screen stands in; null in the line of totals. Where few rows are shown it is not their place. */
function rowIdOf(cell: Element | null): number | null {
  const id = cell?.closest("[row-id]")?.getAttribute("row-id") ?? ""
  return /^\d+$/.test(id) ? Number(id) : null
}

/** The column that a heading stands for, or null. */
function columnOf(target: EventTarget): number | null {
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
      edges: value.edges || null,
      typing: value.typing ? "" : null,
      fault: value.isFault ? "" : null,
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
