import {useEffect, useRef, useState} from "react"
import type {Store} from "../editor/store"
import type {Document} from "../workbook/document"
import type {Workbook} from "../workbook/workbook"
import {useEditor} from "./useEditor"

/** What was last seen in the workbook, and whether it has changed since. */
export interface Looked<T> {
  readonly seen: T | null
  /** The document it was seen in. */
  readonly of: Document | null
  readonly isOld: boolean
}

/** Chosen: acts follow each other faster than this; nothing is looked for in between. */
const PAUSE = 600
/** Chosen: on a page that is never idle it is looked for all the same after this long. */
const LONGEST = 5000

/** Chosen: a drawing is due every 16 ms, and some of it is for others. */
const AT_ONCE = 8

/**
 * Looks through the workbook, step by step, once it has stayed the same for a while and the page is idle; for the first time `soon`,
 * where somebody waits for it.
 */
export function useLooked<T>(
  store: Store,
  look: (workbook: Workbook) => Generator<void, T>,
  soon = false,
): Looked<T> {
  const {document} = useEditor(store)
  const [seen, setSeen] = useState<{readonly what: T; readonly of: Document} | null>(null)
  const pause = useRef(soon ? 0 : PAUSE)
  useEffect(() => {
    const steps = look(store.workbook)
    const goOn = () => {
      const began = performance.now()
      while (performance.now() - began < AT_ONCE) {
        const {done, value} = steps.next()
        if (done) return setSeen({what: value, of: document})
      }
      const next = setTimeout(goOn) // what is pressed or drawn meanwhile comes first
      stop = () => clearTimeout(next)
    }
    let stop = whenIdle(pause.current, () => {
      pause.current = PAUSE
      goOn()
    })
    return () => stop()
  }, [store, document, look])
  return {seen: seen && seen.what, of: seen && seen.of, isOld: seen?.of !== document}
}

/** Gives the way to call it off. */
function whenIdle(after: number, act: () => void): () => void {
  let idle: number | undefined
  const waiting = setTimeout(() => {
    if (!("requestIdleCallback" in window)) return act()
    idle = window.requestIdleCallback(act, {timeout: LONGEST})
  }, after)
  return () => {
    clearTimeout(waiting)
    if (idle !== undefined) window.cancelIdleCallback(idle)
  }
}
