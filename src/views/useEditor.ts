import {useSyncExternalStore} from "react"
import type {EditorState, Store} from "../editor/store"

/** The editor's state; the view is drawn again when it changes. */
export const useEditor = (store: Store): EditorState => useSyncExternalStore(store.subscribe, store.getState)

/** Whether the window is at least this wide, in rem. */
export function useWide(rem: number): boolean {
  const query = window.matchMedia(`(min-width: ${rem}rem)`)
  return useSyncExternalStore(
    (changed) => {
      query.addEventListener("change", changed)
      return () => query.removeEventListener("change", changed)
    },
    () => query.matches,
  )
}
