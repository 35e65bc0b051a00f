import type {Effects} from "../../studies/effects"
import type {Difference} from "../../workbook/compare"

/** What moved one result between two states of a workbook. */
export interface MovedBy {
  /** The changes that move it most, each as far as it does alone, the largest first. */
  readonly changes: readonly {readonly difference: Difference; readonly by: number}[]
  /** What is left of the whole way: by smaller changes, by those not tried alone, and by what changes do together. */
  readonly others: number
}

/** A result, or a change, in words. */
export interface ToldMove {
  readonly name: string
  /** Before, and now. */
  readonly was: string
  readonly is: string
}

/** A change, or all others, as a bar: how far it moves the result, and that as a text. */
export interface MovingBar {
  readonly by: number
  readonly text: string
}

const MOST = 7 // bars that are named, so that all are seen at once; chosen

/**
 * The bars of one of the results that moved: those that `isSeen`, since the decimals shown tell them from nothing. Null where
 * the result is no number, or no day, in both states.
 */
export function movedBy(
  {moved, effects}: Effects,
  result: number,
  isSeen: (by: number) => boolean,
): MovedBy | null {
  const {before, after} = moved[result]!
  if (typeof before !== "number" || typeof after !== "number") return null
  const changes = effects
    .flatMap(({difference, by}) => {
      const one = by[result] ?? null
      return one === null || !isSeen(one) ? [] : [{difference, by: one}]
    })
    .toSorted((a, b) => Math.abs(b.by) - Math.abs(a.by))
    .slice(0, MOST)
  const others = after - before - changes.reduce((sum, {by}) => sum + by, 0)
  return {changes, others: isSeen(others) ? others : 0}
}

/**
 * "Close of Long Acre: 10 Jun 2026 to 5 Jun 2026, most by mean diameter of Long Acre". No change is named where none
 * leads the way that the result went.
 */
export function movedTitle(
  {name, was, is}: ToldMove,
  changes: readonly (ToldMove & MovingBar)[],
  others: MovingBar | null,
): string {
  const bars = [...changes, ...(others ? [others] : [])]
  const way = Math.sign(bars.reduce((sum, {by}) => sum + by, 0))
  const along = bars.filter(({by}) => Math.sign(by) === way)
  const leading = changes.find(
    ({by}) => along.every((one) => Math.abs(one.by) <= Math.abs(by)) && by * way > 0,
  )
  const by = bars.length === 1 ? "by" : "most by"
  const why = leading ? `, ${by} ${leading.name.replace(/^./, (letter) => letter.toLowerCase())}` : ""
  return `${name}: ${was} to ${is}${why}`
}

/** "Mean diameter of Long Acre −6 d, price of 1 +1 d." */
export function movedSentence(changes: readonly (ToldMove & MovingBar)[], others: MovingBar | null): string {
  const told = [
    ...changes.map(({name, text}) => `${name} ${text}`),
    ...(others ? [`others ${others.text}`] : []),
  ]
  return told.length ? `${told.join("; ")}.` : "No change alone moves it, nor do they together."
}
