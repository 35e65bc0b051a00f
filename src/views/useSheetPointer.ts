import {
  useCallback,
  useEffect,
  useRef,
  type FocusEvent,
  type MouseEvent,
  type PointerEvent,
  type RefObject,
} from "react"
import {chooseColumns, chooseRows, chosenBlock, isIn, reachTo} from "../editor/block"
import {chooseKeeping, keepEditing, startEditing} from "../editor/editing"
import {isPointing, pointAt, pointAtColumn} from "../editor/pointing"
import {choose} from "../editor/selection"
import type {Store} from "../editor/store"
import {isSameCell, type CellAddress} from "../workbook/document"
import {useDragBeyond, type Drag} from "./useDragBeyond"

/**
 * What the mouse or a finger does on a sheet: chooses cells, rows and columns, and points while a formula waits for a reference.
 *
 * By the page's own events, since the grid tells of clicks and focus late: the person may be typing by then, and what is
 * typed would land in another cell.
 */
export function useSheetPointer(
  store: Store,
  sheet: number,
  focus: () => void,
  box: RefObject<HTMLElement | null>,
  show: (to: {readonly row: number; readonly col: number}) => void,
) {
  const dragging = useRef<Drag | null>(null)
  const dragged = useCallback(() => (store.getState().editing ? null : dragging.current), [store])
  useDragBeyond(store, box, dragged, show)
  const onFocus = ({target}: FocusEvent) => {
    const at = cellOf(target, sheet)
    if (!at || dragging.current || store.getState().editing) return
    if (!isIn(chosenBlock(store.getState()), at)) store.turn(choose(at))
  }
  // A tap on the chosen cell opens the line, and with it a keyboard on screen: such a one comes in the act of the finger alone.
  const tapped = useRef<CellAddress | null>(null)
  const onClick = ({target}: MouseEvent) => {
    const at = cellOf(target, sheet)
    if (at && tapped.current && isSameCell(at, tapped.current) && !store.getState().editing)
      store.turn(startEditing)
    tapped.current = null
  }
  // The grid moves the focus as soon as the pointer is down: with Shift that is no choice of another cell.
  // A finger that moves on scrolls: it chooses when it is lifted, by the mouse events that follow.
  const onPointerDown = (event: PointerEvent) => {
    const {target, pointerType, button} = event
    if (pointerType !== "mouse") event.stopPropagation()
    const at = pointerType === "mouse" ? null : cellOf(target, sheet)
    const {cell, reach, editing, awaitsCorner} = store.getState()
    tapped.current = at && isSameCell(at, cell) && !reach && !editing && !awaitsCorner ? at : null
    const drags = pointerType === "mouse" && button === 0 && !isPointing(store.getState())
    dragging.current = drags ? dragFrom(target, sheet) : null
  }
  // While a formula waits for a reference the mouse points: the line keeps the keyboard's focus, the grid hears nothing.
  const widens = useRef(false)
  const onPoint = (event: MouseEvent) => {
    widens.current = false
    const at = cellOf(event.target, sheet)
    const col = columnOf(event.target)
    if (!at && col === null && rowOf(event.target) === null) return
    event.preventDefault()
    event.stopPropagation()
    if (!at && col === null) return // a row's number points at nothing
    if (at && isSameCell(at, store.getState().editing!.at)) return
    store.turn(at ? pointAt(at, event.shiftKey) : pointAtColumn({sheet: sheet, col: col!}, event.shiftKey))
    widens.current = true
  }
  const onMouseDown = (event: MouseEvent) => {
    const {target, button} = event
    const shiftKey = event.shiftKey || store.getState().awaitsCorner
    if (button !== 0) return
    if (isPointing(store.getState())) return onPoint(event)
    const at = cellOf(target, sheet)
    const row = rowOf(target)
    const col = columnOf(target)
    if (!at && row === null && col === null) return
    if (at && shiftKey) {
      event.preventDefault()
      if (keepEditing(store, 0, 0)) store.turn(reachTo(at.row, at.col))
    } else if (at) {
      const {cell: now, reach, editing} = store.getState()
      const isOther = reach || !isSameCell(at, now)
      // What is being typed there, or was refused, is gone on with: the line keeps the keyboard's focus.
      if (isOther ? !chooseKeeping(store, at) : editing) leaveFocus(event)
    } else if (!keepEditing(store, 0, 0)) leaveFocus(event)
    else {
      const {cell: now} = store.getState()
      if (!shiftKey) store.turn(choose({sheet: sheet, row: row ?? 0, col: col ?? 0}))
      else store.turn(reachTo(row ?? now.row, col ?? now.col))
      store.turn(row === null ? chooseColumns : chooseRows)
      focus()
    }
  }
  const onMouseMove = ({target, buttons}: MouseEvent) => {
    if (widens.current && buttons & 1 && isPointing(store.getState())) {
      const to = cellOf(target, sheet)
      const far = store.getState().editing?.pointed?.to
      if (to && !(far && isSameCell(to, far))) store.turn(pointAt(to, true))
      return
    }
    if (!dragging.current || !(buttons & 1)) return
    const {cell: now, reach, editing} = store.getState()
    const far = reach ?? now
    const at = draggedTo(dragging.current, target, sheet)
    const [row, col] = [at.row ?? far.row, at.col ?? far.col]
    if (!editing && (row !== far.row || col !== far.col)) store.turn(reachTo(row, col))
  }
  // As the menu key does, and a finger that rests, which hears of itself elsewhere.
  const onContextMenu = (event: MouseEvent) => {
    const at = cellOf(event.target, sheet)
    if (
      !at ||
      store.getState().editing ||
      (event.nativeEvent as globalThis.PointerEvent).pointerType === "touch"
    )
      return
    event.preventDefault()
    if (!isIn(chosenBlock(store.getState()), at)) store.turn(choose(at))
    store.turn(() => ({actsAt: {x: event.clientX, y: event.clientY}}))
  }
  useEffect(() => {
    const end = () => (dragging.current = null)
    window.addEventListener("mouseup", end)
    return () => window.removeEventListener("mouseup", end)
  }, [])

  return {
    onFocus,
    onPointerDownCapture: onPointerDown,
    onMouseDownCapture: onMouseDown,
    onMouseMove,
    onClick,
    onContextMenu,
  }
}

function dragFrom(target: EventTarget, sheet: number): Drag | null {
  if (cellOf(target, sheet)) return "cells"
  if (rowOf(target) !== null) return "rows"
  const isEdge = (target as Element).closest(".ag-header-cell-resize") !== null
  return columnOf(target) !== null && !isEdge ? "columns" : null
}

/** The row and column that a drag has come to; null where it tells of none. */
function draggedTo(drag: Drag, target: EventTarget, sheet: number) {
  const at = cellOf(target, sheet)
  const row = drag === "columns" ? null : (at?.row ?? (drag === "rows" ? rowOf(target) : null))
  const col = drag === "rows" ? null : (at?.col ?? (drag === "columns" ? columnOf(target) : null))
  return {row, col}
}

function leaveFocus(event: MouseEvent) {
  event.preventDefault()
  event.stopPropagation()
}

/** The cell that a part of the page belongs to: none for row numbers, headings and the row of totals. */
export function cellOf(target: EventTarget, sheet: number): CellAddress | null {
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
