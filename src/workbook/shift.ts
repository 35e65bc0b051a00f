import type {Reference} from "./formula"
import type {Rewrite} from "./references"

/** Where the rows, or the columns, of a sheet stand afterwards. */
export interface Shift {
  /** Null for one that is gone. */
  readonly of: (was: number) => number | null
  /** The first and last of a range afterwards, or null when nothing of it is left. */
  readonly range: (from: number, to: number) => readonly [number, number] | null
}

/** After `count` were put in before the one at `before`. */
export function putIn(before: number, count: number): Shift {
  const of = (was: number) => (was < before ? was : was + count)
  return {of, range: (from, to) => [of(from), of(to)]}
}

/** After `count` were taken out from `first` on: ranges shrink. */
export function takenOut(first: number, count: number): Shift {
  const of = (was: number) => (was < first ? was : was < first + count ? null : was - count)
  const range = (from: number, to: number): readonly [number, number] | null => {
    const a = of(from) ?? first
    const b = of(to) ?? first - 1
    return a <= b ? [a, b] : null
  }
  return {of, range}
}

/** Where references to the sheet point afterwards, when its rows ("row") or columns ("col") shift. */
export const shifted =
  (along: "row" | "col", shift: Shift): Rewrite =>
  (reference): Reference | "#REF!" => {
    const {from, to} = reference
    const [first, last] = [from[along], to[along]]
    if (first === null || last === null) return reference
    // A column formula such as "=SUM(B1:B$5)" is written upside down from its sixth row on.
    const next = first <= last ? shift.range(first, last) : shift.range(last, first)?.toReversed()
    if (!next) return "#REF!"
    if (next[0] === first && next[1] === last) return reference
    return {...reference, from: {...from, [along]: next[0]}, to: {...to, [along]: next[1]}}
  }
