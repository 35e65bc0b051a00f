import {
  CellApiModule,
  CellStyleModule,
  ClientSideRowModelModule,
  ColumnApiModule,
  ColumnAutoSizeModule,
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
  type SuppressKeyboardEventParams,
} from "ag-grid-community"
import {AgGridReact} from "ag-grid-react"
import {useCallback, useEffect, useImperativeHandle, useMemo, useRef, type Ref} from "react"
import {startEditing} from "../editor/editing"
import {onlyRows} from "../editor/selection"
import {pressKey} from "../editor/sheetKeys"
import type {Store} from "../editor/store"
import {keptInView, type CellAddress} from "../workbook/document"
import {planSheet} from "../workbook/plan"
import {regionOf} from "../workbook/region"
import {TOTAL_ROW} from "./cellView"
import {onceDrawn} from "./onceDrawn"
import {sheetClipboard} from "./sheetClipboard"
import {columnsOf, type SheetRow} from "./sheetColumns"
import {HEAD_HEIGHT, REM, MOST_ROWS_SHOWN, ROW_HEIGHT} from "./sheetSize"
import {useEditor, useWide} from "./useEditor"
import {useSheetPointer} from "./useSheetPointer"
import {useSheetTouch} from "./useSheetTouch"
import "./sheet.css"

ModuleRegistry.registerModules([
  CellApiModule,
  CellStyleModule,
  ClientSideRowModelModule,
  ColumnApiModule,
  ColumnAutoSizeModule,
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

/** One sheet as a grid. Draws the store's state and asks the store for every change. */
export function SheetGrid({
  store,
  keepFileCopy,
  focusRef,
  onDrawn,
}: {
  store: Store
  keepFileCopy: () => void
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

  const kept = keptInView(sheet)
  const keeps = pinsName ? kept : Math.min(1, kept) // on a narrow page more than the name would leave no room
  const region = regionOf(state.document)
  const columnDefs = useMemo(
    () => columnsOf(store, cell.sheet, sheet.columns, region, pinsName, keeps),
    [store, cell.sheet, sheet.columns, region, pinsName, keeps],
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
    const holder = window.document.activeElement
    const take = () => api.current?.setFocusedCell(place(cell.row), String(cell.col))
    take()
    // Rows scrolled to are drawn a moment later: until then the focus is where it was, unless it went elsewhere.
    const waits = () => window.document.activeElement === holder && !box.current?.contains(holder)
    if (waits()) onceDrawn(() => waits() && take())
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
      if (event.key === "Shift") return true // it comes before the Tab that goes back
      const leaves = event.key === "Tab" && leaving.current
      leaving.current = event.key === "Escape"
      if (leaving.current) store.turn(() => ({awaitsCorner: false, said: "Tab now leaves the sheet."}))
      if (leaves && box.current) passOver(box.current)
      if (leaves || leaving.current) return true
      const {asksToFind} = store.getState()
      const used = pressKey(store, event, {page: MOST_ROWS_SHOWN - 1, keepFileCopy})
      if (!used) return true // the grid's own keys would disagree with ours
      event.preventDefault()
      const {editing, asksToFind: asked} = store.getState()
      if (!editing && asked === asksToFind) focus()
      return true
    }
    return {
      resizable: true,
      sortable: false,
      suppressMovable: true,
      suppressKeyboardEvent: onKey,
      suppressHeaderKeyboardEvent: () => false,
    }
  }, [store, focus, keepFileCopy])

  const pointer = useSheetPointer(store, cell.sheet, focus)
  useSheetTouch(store, cell.sheet, box, focus)
  const clipboard = useMemo(() => sheetClipboard(store), [store])

  return (
    <div
      className="sheet"
      role="presentation"
      style={
        isLong ? {height: HEAD_HEIGHT + (MOST_ROWS_SHOWN + (hasTotal ? 1 : 0)) * ROW_HEIGHT + 16} : undefined
      }
      ref={box}
      {...pointer}
      {...clipboard}
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
        suppressNoRowsOverlay
        animateRows={false}
        onGridReady={(ready) => {
          api.current = ready.api
          nameGrid()
        }}
        onColumnResized={({finished, column, source}) => {
          const col = Number(column?.getColId())
          const byHand = source === "uiColumnResized" || source === "autosizeColumns"
          if (!finished || !byHand || !column || Number.isNaN(col)) return
          const width = Math.round((column.getActualWidth() / REM) * 10) / 10
          store.run(({cell: {sheet}}) => ({type: "changeColumn", sheet, col, change: {width}}))
          focus() // the mouse took it to the edge of the heading, where no key reaches the sheet
        }}
        onFirstDataRendered={onDrawn}
        onGridPreDestroyed={() => (api.current = null)}
        focusGridInnerElement={focus} // Tab comes in to the chosen cell, from above and from below
        onCellDoubleClicked={({rowPinned}) =>
          !rowPinned && !store.getState().editing && store.turn(startEditing)
        }
      />
    </div>
  )
}

/** The grid makes a stop of every row, the browser one of what scrolls: for the Tab that is on its way, none is one. */
function passOver(box: HTMLElement) {
  box.inert = true
  setTimeout(() => (box.inert = false))
}
