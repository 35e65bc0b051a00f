import {useMemo} from "react"

/**
 * Acts a moment later, in a step of its own: of acts that come before it, the last alone. A pointer's move is told while the
 * page draws, and keys that are held down come faster than they are answered; what answers would hold up both.
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
