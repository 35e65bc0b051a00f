import {improve, type Acts} from "./dynamicProgram"

/** One year of a planting's life. All sums are money/ha brought to 1 January of that year. */
export interface LifeYear {
  /** What each act pays at once, -Infinity where it is not allowed. */
  readonly pays: Float64Array
  /** What a sum of next 1 January counts: the discount, times the chance of coming through the year. */
  readonly carry: number
  /** What the worth of cleared ground counts through the chance of a loss: the discount times that chance. */
  readonly lost: number
  /** What a last season, after which the field is cleared, pays at most in each state; null where acts tell it all. */
  readonly last: Float64Array | null
}

/** Plantings that follow one another for ever; each is cut by its state, year by year, and cleared when that is worth most. */
export interface Renewal {
  readonly acts: Acts
  /** From the first year on in which there is a choice; after the last one the field has to be cleared. */
  readonly years: readonly LifeYear[]
  readonly clear: number
  /** Worth of cleared ground when the states of the first year are worth so much and the ground has so far been `ground`. */
  groundOf(worth: Float64Array, ground: number): number
}

/** What each state of each year is worth, and the ground. */
export interface Renewed {
  /** Worth of cleared ground. */
  readonly ground: number
  /** One array a year, and one more for the year after the last, in which the field is cleared. */
  readonly worths: readonly Float64Array[]
  readonly rounds: number
}

/** Chosen: share of the ground's worth, far below anything that counts. */
const SETTLED = 1e-11
/** Chosen: a slope that only rounding keeps below 1. */
const WHOLE = 1 - 1e-9
/** A few rounds are enough; this many only ever stand for a mistake of ours. */
const MOST_ROUNDS = 200

/**
 * Solves the chain: from the oldest year to the youngest with the worth of ground as it is known, then again with a better one,
 * until it stands. The worth that comes out is a convex line of straight pieces over the one put in, rising by what a whole life
 * is discounted: each round follows the piece through the last two to where both are the same. Where a planting would be cleared
 * as soon as it may be cut and that is at once, the piece rises by the whole and meets nothing: then it looks twice as far.
 */
export function renew(renewal: Renewal): Renewed {
  const {acts, years} = renewal
  const states = acts.first.length - 1
  const worths = Array.from({length: years.length + 1}, () => new Float64Array(states))
  let before: {readonly ground: number; readonly comes: number} | null = null
  let [ground, step] = [0, 0]
  for (let rounds = 1; rounds <= MOST_ROUNDS; rounds++) {
    worthsBefore(renewal, years.length, ground, worths)
    const comes = renewal.groundOf(worths[0]!, ground)
    const slope: number =
      before && before.ground !== ground ? (comes - before.comes) / (ground - before.ground) : 0
    step = slope < WHOLE ? (comes - ground) / (1 - slope) : 2 * step
    if (Math.abs(step) <= SETTLED * Math.max(1, Math.abs(comes))) return {ground, worths, rounds}
    before = {ground, comes}
    ground += step
  }
  throw new Error(`The worth of the ground did not settle in ${MOST_ROUNDS} rounds`)
}

/**
 * Fills `worths` for the years before `end`, at whose start the field is cleared at the latest; when `isFixed` then and not
 * before.
 */
export function worthsBefore(
  {acts, years, clear}: Renewal,
  end: number,
  ground: number,
  worths: readonly Float64Array[],
  isFixed = false,
): void {
  const cleared = ground - clear
  worths[end]!.fill(cleared)
  for (let year = end - 1; year >= 0; year--) {
    const {pays, carry, lost, last} = years[year]!
    const worth = worths[year]!
    improve(acts, pays, carry, worths[year + 1]!, worth)
    const mayLeave = last && (!isFixed || year === end - 1)
    for (let state = 0; state < worth.length; state++) {
      const leaving = mayLeave ? last[state]! + carry * cleared : -Infinity
      const kept = Math.max(worth[state]!, leaving) + lost * ground
      worth[state] = isFixed ? kept : Math.max(kept, cleared)
    }
  }
}
