import {useMemo} from "react"

/**
 * Acts a moment later, in a step of its own: of acts that come before it, the last alone. A pointer's move is told while the
 * page draws; what answers it would hold up that drawing.
 */
export const useSoon = () => useMemo(() => soonest(), [])

/** Without a view: what `useSoon` keeps from one drawing to the next. */
export function soonest() {
  let waiting: (() => void) | null = null
  /** Does at once what waits. */
  const now = () => {
    const act = waiting
    waiting = null
    act?.()
  }
  const soon = (act: () => void) => {
    if (!waiting) setTimeout(now)
    waiting = act
  }
  return {soon, now}
}
