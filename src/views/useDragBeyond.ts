import {useEffect, type RefObject} from "react"
import {reachStep} from "../editor/block"
import type {Store} from "../editor/store"

/** What is chosen while the mouse is dragged: by where it began. */
export type Drag = "cells" | "rows" | "columns"

/** How often a row or column more is chosen while the mouse is held beyond the sheet, ms; chosen. */
const EVERY = 60

/** Goes on choosing while the mouse is held beyond an edge of the sheet, a row or a column at a time, and shows how far. */
export function useDragBeyond(
  store: Store,
  box: RefObject<HTMLElement | null>,
  dragged: () => Drag | null,
  show: (to: {readonly row: number; readonly col: number}) => void,
) {
  useEffect(() => {
    let [down, right, timer] = [0, 0, 0]
    const goOn = () => {
      if (dragged() === null) return stop()
      store.turn(reachStep(down, right))
      const {cell, reach} = store.getState()
      show(reach ?? cell)
    }
    const stop = () => {
      window.clearInterval(timer)
      timer = 0
    }
    const onMove = ({clientX, clientY, buttons}: MouseEvent) => {
      const cells = box.current?.querySelector(".ag-grid-viewport")?.getBoundingClientRect()
      const drag = dragged()
      if (!cells || drag === null || !(buttons & 1)) return stop()
      const [bottom, end] = [
        Math.min(cells.bottom, window.innerHeight - 1),
        Math.min(cells.right, window.innerWidth - 1),
      ]
      down = drag === "columns" ? 0 : beyond(clientY, cells.top, bottom)
      right = drag === "rows" ? 0 : beyond(clientX, cells.left, end)
      if (down === 0 && right === 0) return stop()
      if (timer === 0) timer = window.setInterval(goOn, EVERY)
    }
    window.addEventListener("mousemove", onMove)
    window.addEventListener("mouseup", stop)
    return () => {
      stop()
      window.removeEventListener("mousemove", onMove)
      window.removeEventListener("mouseup", stop)
    }
  }, [store, box, dragged, show])
}

const beyond = (at: number, from: number, to: number) => (at < from ? -1 : at > to ? 1 : 0)
