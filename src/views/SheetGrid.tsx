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
  type ColumnResizedEvent,
  type GridOptions,
  type SuppressKeyboardEventParams,
} from "ag-grid-community"
import {
  useCallback,
  useEffect,
  useImperativeHandle,
  useMemo,
  useRef,
  useState,
  type Ref,
  type RefObject,
} from "react"
import {leaveCut} from "../editor/cut"
import {dropEditing, startEditing} from "../editor/editing"
import {choose, onlyRows, rowsShown} from "../editor/selection"
import type {Store} from "../editor/store"
import {keptInView, type CellAddress} from "../workbook/document"
import {regionOf} from "../workbook/region"
import {TOTAL_ROW} from "./cellView"
import {sheetClipboard} from "./sheetClipboard"
import {columnsOf, isProse, type SheetRow} from "./sheetColumns"
import {drawnWidth, HEAD_HEIGHT, REM, MOST_ROWS_SHOWN, ROW_HEIGHT} from "./sheetSize"
import {useEditor, useWide} from "./useEditor"
import {useGrid} from "./useGrid"
import type {SheetFocus, SheetKeys} from "./useSheetFocus"
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

/** One sheet as a grid. Draws the store's state and asks the store for every change. */
export function SheetGrid({
  store,
  keys,
  focusRef,
  onDrawn,
}: {
  store: Store
  keys: SheetKeys
  focusRef: Ref<SheetFocus>
  /** Told when a sheet that was opened stands there. */
  onDrawn: () => void
}) {
  const state = useEditor(store)
  const {document, cell, editing} = state
  const sheet = document.sheets[cell.sheet]!
  const pinsName = useWide(40)
  const leaving = useRef(false) // Esc was pressed: the next Tab leaves the sheet

  const only = onlyRows(state, cell.sheet)
  const count = only?.length ?? rowsShown(document, cell.sheet)
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
  const region = regionOf(state.document)
  const leavesRoom = useWide((2 * drawnWidth(sheet.columns[0]!, 0, region)) / REM)
  const keeps = pinsName ? kept : leavesRoom ? Math.min(1, kept) : 0 // on a narrow page a name of half its width, at most
  const box = useRef<HTMLDivElement>(null)
  const wide = useRoom(box)
  const room = sheet.columns.some(isProse) ? wide : Infinity // other columns have their width, whatever the page has
  const columnDefs = useMemo(
    () => columnsOf(store, cell.sheet, sheet.columns, region, pinsName, keeps, room),
    [store, cell.sheet, sheet.columns, region, pinsName, keeps, room],
  )

  const isLong = count > MOST_ROWS_SHOWN
  const grid = useRef<HTMLDivElement>(null)
  const fixed = useMemo((): GridOptions<SheetRow> => {
    // The mouse took a width to the edge of a heading, where no key reaches the sheet.
    const onColumnResized = ({finished, column, source}: ColumnResizedEvent<SheetRow>) => {
      const col = Number(column?.getColId())
      const byHand = source === "uiColumnResized" || source === "autosizeColumns"
      if (!finished || !byHand || !column || Number.isNaN(col)) return
      const width = Math.round((column.getActualWidth() / REM) * 10) / 10
      store.run(({cell: {sheet}}) => ({type: "changeColumn", sheet, col, change: {width}}))
      keys.focus()
    }
    return {
      theme,
      headerHeight: HEAD_HEIGHT,
      rowHeight: ROW_HEIGHT,
      getRowId: ({data}) => String(data.row),
      ensureDomOrder: true,
      suppressNoRowsOverlay: true,
      animateRows: false,
      rowBuffer: 3, // beyond what is seen, on each side; chosen: each row drawn ahead is one more at every turn of the wheel
      onColumnResized,
      onFirstDataRendered: onDrawn,
      // Tab comes in to the chosen cell, from above and from below.
      focusGridInnerElement: () => (keys.focus(), true),
      onCellDoubleClicked: ({rowPinned}) => {
        if (!rowPinned && !store.getState().editing) store.turn(startEditing)
      },
    }
  }, [store, keys, onDrawn])

  // One object for as long as it can be: for a new one the grid builds all its columns anew.
  const defaultColDef = useMemo((): ColDef<SheetRow> => {
    const onKey = ({event}: SuppressKeyboardEventParams<SheetRow>) => {
      if (event.key === "Shift") return true // it comes before the Tab that goes back
      if (event.key === "Escape" && store.getState().editing) {
        store.turn(dropEditing) // the focus may be here after a refusal
        return true
      }
      const leaves = event.key === "Tab" && leaving.current
      leaving.current = event.key === "Escape"
      if (leaving.current) {
        store.turn(leaveCut)
        store.turn(({said}) => ({awaitsCorner: false, said: `${said} Tab now leaves the sheet.`.trim()}))
        return true
      }
      const isUsed = !leaves && keys.press(event)
      if (event.key === "Tab" && !isUsed && box.current) passOver(box.current)
      return true // the grid's own keys would disagree with ours
    }
    return {
      resizable: true,
      sortable: false,
      suppressMovable: true,
      suppressKeyboardEvent: onKey,
      suppressHeaderKeyboardEvent: () => false,
    }
  }, [store, keys])

  const name = `${cell.sheet}:${sheet.name}`
  const api = useGrid(grid, name, {
    ...fixed,
    domLayout: isLong ? "normal" : "autoHeight",
    suppressColumnVirtualisation: sheet.columns.length <= 40,
    rowData,
    pinnedBottomRowData: totalRow,
    columnDefs,
    defaultColDef,
  })
  // What is moved in a picture answers there first: the cells follow in a step of their own.
  useEffect(() => {
    const refresh = () => api.current?.refreshCells()
    if (!window.document.activeElement?.closest(".pic")) return refresh()
    const later = setTimeout(refresh)
    return () => clearTimeout(later)
  }, [api, document, cell, editing, state.reach, state.cut])

  const rowsSaid = only ? `${only.length} of ${sheet.rows.length} rows` : `${sheet.rows.length} rows`
  const label = `${sheet.name}, ${rowsSaid}, ${sheet.columns.length} columns`
  const nameGrid = () => box.current?.querySelector("[role=grid]")?.setAttribute("aria-label", label)
  useEffect(nameGrid, [label, name])

  const drawn = cell.sheet
  const place = useCallback((row: number) => only?.indexOf(row) ?? row, [only])
  const scrollTo = useCallback(
    ({row, col}: Pick<CellAddress, "row" | "col">, where?: "middle") => {
      if (isLong) api.current?.ensureIndexVisible(place(row), where)
      api.current?.ensureColumnVisible(String(col))
    },
    [api, isLong, place],
  )
  const isDrawn = useCallback((row: number) => place(row) >= 0 && place(row) < count, [place, count])
  const show = useCallback(() => {
    const {cell} = store.getState()
    if (cell.sheet === drawn && isDrawn(cell.row)) scrollTo(cell, "middle")
  }, [store, drawn, isDrawn, scrollTo])
  const focus = useCallback(() => {
    const {cell: chosen, document} = store.getState()
    const last = rowsShown(document, chosen.sheet) - 1
    if (last < 0) return true // a plan without plantings has no cell
    if (chosen.row > last) store.turn(choose({...chosen, row: last}))
    const {cell, reach} = store.getState()
    if (cell.sheet !== drawn || !api.current) return false
    if (isDrawn(cell.row)) scrollTo(cell)
    // The grid draws its rows after it has heard of them, and those scrolled to later still.
    const there = box.current?.querySelector(`[row-id="${cell.row}"] [col-id="${cell.col}"]`)
    if (!there) return false
    api.current.setFocusedCell(place(cell.row), String(cell.col))
    // Last, since the browser scrolls to what takes the focus, which the grid does not hear of in time to draw its rows.
    if (reach) scrollTo(reach)
    return there.contains(window.document.activeElement)
  }, [api, store, drawn, isDrawn, place, scrollTo])
  useImperativeHandle(focusRef, () => ({focus, show}), [focus, show])

  // What keys point at comes into view; what the mouse points at is in view.
  const pointed = editing?.pointed?.to
  useEffect(() => {
    if (!api.current || pointed?.sheet !== cell.sheet) return
    if (isLong && isDrawn(pointed.row)) api.current.ensureIndexVisible(place(pointed.row))
    api.current.ensureColumnVisible(String(pointed.col))
  }, [api, pointed, cell.sheet, isDrawn, place, isLong])

  const pointer = useSheetPointer(store, cell.sheet, keys.focus, box, scrollTo)
  useSheetTouch(store, cell.sheet, box, keys.focus)
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
      <div className="grid" ref={grid} />
    </div>
  )
}

/** The width that the page leaves to what stands in a box, px; before that is drawn, what the page has. */
function useRoom(box: RefObject<HTMLElement | null>): number {
  const [room, setRoom] = useState(() => window.document.getElementById("main")?.clientWidth ?? innerWidth)
  useEffect(() => {
    const watcher = new ResizeObserver(() => {
      if (box.current?.clientWidth) setRoom(box.current.clientWidth) // on paper it has none
    })
    watcher.observe(box.current!)
    return () => watcher.disconnect()
  }, [box])
  return room
}

/**
 * The grid makes a stop of every row, the browser one of what scrolls: for the Tab that is on its way, none is one. A key that
 * comes before the page has time for more finds the sheet as it was.
 */
function passOver(box: HTMLElement) {
  const back = () => void (box.inert = false)
  box.inert = true
  addEventListener("keydown", back, {capture: true, once: true})
  setTimeout(back)
}
