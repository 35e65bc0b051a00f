import {createGrid, type GridApi, type GridOptions} from "ag-grid-community"
import {useEffect, useRef, type RefObject} from "react"
import {letFramesThrough} from "./gridFrames"

/**
 * A grid in a box, in the form the grid draws by itself: drawn by React, each cell took half as long again. Another `name` makes
 * another grid; what changes in `options` is handed on.
 */
export function useGrid<T>(box: RefObject<HTMLElement | null>, name: string, options: GridOptions<T>) {
  const api = useRef<GridApi<T> | null>(null)
  const given = useRef(options)
  useEffect(() => {
    const before = new Map<string, unknown>(Object.entries(given.current))
    const changed = Object.entries(options).filter(([option, value]) => before.get(option) !== value)
    given.current = options
    if (changed.length > 0) api.current?.updateGridOptions(Object.fromEntries(changed))
  })
  useEffect(() => {
    const grid = createGrid(box.current!, given.current)
    letFramesThrough(grid)
    api.current = grid
    return () => {
      api.current = null
      grid.destroy()
    }
  }, [box, name])
  return api
}
