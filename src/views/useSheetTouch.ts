import {useEffect, type RefObject} from "react"
import {chosenBlock, isIn, reachTo} from "../editor/block"
import {chooseKeeping} from "../editor/editing"
import {isPointing} from "../editor/pointing"
import type {Store} from "../editor/store"
import {cellOf} from "./useSheetPointer"

/** How long a finger rests on a cell before it is more than a tap, in ms; chosen, near what systems take for it. */
const LONG = 500
/** How far it may stray meanwhile, in px; chosen. */
const STRAY = 10

/**
 * What a finger does that rests on a cell: moved on, it chooses the block up to where it goes; lifted, it opens the list of
 * acts. A finger that moves at once scrolls. Both have another way without resting: a button, and "Choose up to another cell".
 */
export function useSheetTouch(
  store: Store,
  sheet: number,
  box: RefObject<HTMLElement | null>,
  focus: () => void,
) {
  useEffect(() => {
    const area = box.current
    if (!area) return
    let waiting: ReturnType<typeof setTimeout> | undefined
    let from = {x: 0, y: 0}
    let rests: "no" | "on its cell" | "moved on" = "no"
    const stop = () => {
      clearTimeout(waiting)
      rests = "no"
    }
    const onStart = ({touches, target}: TouchEvent) => {
      stop()
      const at = cellOf(target as Element, sheet)
      if (!at || touches.length !== 1 || isPointing(store.getState())) return
      from = {x: touches[0]!.clientX, y: touches[0]!.clientY}
      waiting = setTimeout(() => {
        if (!isIn(chosenBlock(store.getState()), at) && !chooseKeeping(store, at)) return
        rests = "on its cell"
      }, LONG)
    }
    const onMove = (event: TouchEvent) => {
      const {clientX: x, clientY: y} = event.touches[0]!
      const strays = Math.hypot(x - from.x, y - from.y) > STRAY
      if (rests === "no") {
        if (strays) stop()
        return
      }
      event.preventDefault() // else the page would scroll
      if (!strays && rests === "on its cell") return
      const under = document.elementFromPoint(x, y)
      const to = under && area.contains(under) ? cellOf(under, sheet) : null
      if (rests === "on its cell") {
        const start = cellOf(document.elementFromPoint(from.x, from.y)!, sheet)
        if (start) chooseKeeping(store, start)
      }
      rests = "moved on"
      const {cell, reach} = store.getState()
      const far = reach ?? cell
      if (to && (to.row !== far.row || to.col !== far.col)) store.turn(reachTo(to.row, to.col))
    }
    const onEnd = (event: TouchEvent) => {
      const was = rests
      stop()
      if (was === "no") return
      event.preventDefault() // else a tap on the cell would follow
      if (was === "moved on") focus()
      else store.turn(() => ({actsAt: from}))
    }
    // The system's own menu for a finger that rests would cover ours.
    const onMenu = (event: Event) => {
      if ((event as PointerEvent).pointerType === "touch") event.preventDefault()
    }
    area.addEventListener("touchstart", onStart, {passive: true})
    area.addEventListener("touchmove", onMove, {passive: false})
    area.addEventListener("touchend", onEnd, {passive: false})
    area.addEventListener("touchcancel", stop)
    area.addEventListener("contextmenu", onMenu)
    return () => {
      stop()
      area.removeEventListener("touchstart", onStart)
      area.removeEventListener("touchmove", onMove)
      area.removeEventListener("touchend", onEnd)
      area.removeEventListener("touchcancel", stop)
      area.removeEventListener("contextmenu", onMenu)
    }
  }, [store, sheet, box, focus])
}
