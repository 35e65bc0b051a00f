import {useMemo, useSyncExternalStore} from "react"
import type {EditorState, Store} from "../editor/store"

/** The editor's state; the view is drawn again when it changes. */
export const useEditor = (store: Store): EditorState => useSyncExternalStore(store.subscribe, store.getState)

/** Whether the window is at least this wide, in rem. */
export function useWide(rem: number): boolean {
  const [subscribe, isWide] = useMemo(() => {
    const query = window.matchMedia(`(min-width: ${rem}rem)`)
    const subscribe = (changed: () => void) => {
      query.addEventListener("change", changed)
      return () => query.removeEventListener("change", changed)
    }
    return [subscribe, () => query.matches] as const
  }, [rem])
  return useSyncExternalStore(subscribe, isWide)
}
