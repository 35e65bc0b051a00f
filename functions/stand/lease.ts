import {defineFunction, outcomeOf, type Outcomes} from "../define"
import {optional, quantity, yearly} from "../parameters"
import {atLeast} from "../rounding"
import {discount, worthOfYears, type Between} from "./chain"
import {betweenPlantings, flowsOfAPlanting, rateFromNought, wholeYears} from "./quantities"

/** What ground that is given up after some years can be asked for. */
export const leaseOutcomes = {
  worth: {label: "Worth today of the years that are left", unit: "money/ha"},
  act: {
    label: "What to do now: keep, replant, stop, or wait bare to plant later; on bare ground plant",
    unit: "text",
  },
  "years to keep": {label: "Years before the standing crop is cleared", unit: "years"},
  plantings: {label: "Plantings still to come", unit: "number"},
} as const satisfies Outcomes

export type LeaseOutcome = keyof typeof leaseOutcomes

interface Lease {
  readonly worth: number
  readonly act: "keep" | "replant" | "stop" | "wait" | "plant"
  readonly "years to keep": number
  readonly plantings: number
}

/**
 * The best course over the years that are left, when the ground is given up after them: keep, replant or stop, year by year.
 * `keep` is the net cash of the crop that stands, from the coming season on, and is empty on bare ground; a crop is cleared
 * after the last year for which cash is given. Cleared ground rests so many years at least before it is planted; bare ground
 * earns the rest's income, the ground that is bare today too. `endWorth` is what a standing crop is worth on the last day,
 * below 0 where it has to be cleared then. Of equal courses the crop is cleared the sooner. Money/ha, valued today.
 */
export function lease(
  years: number,
  flows: readonly number[],
  rate: number,
  keep: readonly number[],
  {clear, rest, restIncome}: Between,
  endWorth: number,
): Lease {
  const bare: Lease[] = []
  bare[years] = {worth: 0, act: "stop", "years to keep": 0, plantings: 0}
  for (let at = years - 1; at >= 0; at--) {
    const idle = resting(at, 1)
    const crop = standing(flows, at)
    const planted = {...crop, act: "plant" as const, "years to keep": 0, plantings: crop.plantings + 1}
    bare[at] = atLeast(idle.worth, planted.worth) ? idle : planted
  }
  return keep.length > 0 ? standing(keep, 0) : bare[0]!

  /** Ground that lies bare for some years, or to the end. */
  function resting(at: number, wait: number): Lease {
    const most = Math.min(wait, years - at)
    const {worth, plantings} = bare[at + most]!
    if (most === 0) return bare[at]!
    return {
      worth: worthOfYears(restIncome, most, rate) + discount(rate, most) * worth,
      act: plantings > 0 ? "wait" : "stop",
      "years to keep": 0,
      plantings,
    }
  }

  /** The best of clearing a crop of that coming cash after 0, 1, 2, ... years, when `at` years have gone. */
  function standing(cash: readonly number[], at: number): Lease {
    let best: Lease | null = null
    let kept = 0
    for (let k = 0; k <= Math.min(cash.length, years - at); k++) {
      if (k > 0) kept += cash[k - 1]! * (1 + rate) ** -k
      if (k === 0 && cash === flows) continue // a planting is not cleared on the day it is made
      const then = resting(at + k, rest)
      const isEnd = at + k === years
      const worth = kept + (isEnd ? endWorth : then.worth - clear) * (1 + rate) ** -k
      if (best && atLeast(best.worth, worth)) continue
      const act = k > 0 ? "keep" : then.act === "plant" ? "replant" : then.act
      best = {worth, act, "years to keep": k, plantings: then.plantings}
    }
    return best!
  }
}

export const STAND_LEASE = defineFunction({
  name: "STAND.LEASE",
  summary: "Keep, replant or stop when the ground is given up after some years",
  about:
    "Near the end of a lease, or before retiring, a new planting may no longer earn back what it costs. Every way of keeping, replanting " +
    "and stopping is weighed. A crop is cleared after the last year you give cash for. Ground that lies bare, in rest or waiting, earns rest_income; of " +
    "equal courses a crop is cleared the sooner. " +
    "Where asparagus follows asparagus, give the flows of a planting that loses what old ground takes.",
  parameters: {
    what: outcomeOf(leaseOutcomes),
    years: wholeYears("Seasons left", 1),
    flows: flowsOfAPlanting,
    rate: rateFromNought,
    keep: optional(
      yearly("Net cash of the standing crop, from the coming season on", "money/ha"),
      [] as readonly number[],
      "bare ground",
    ),
    clear: betweenPlantings.clear,
    end_worth: optional(quantity("Worth of a standing crop on the last day", "money/ha"), 0),
    rest: betweenPlantings.rest,
    rest_income: betweenPlantings.rest_income,
  },
  returns: {label: "The outcome named", unit: "as named", named: leaseOutcomes},
  sources: ["perrin1972", "mirandaFackler2002"],
  example: {
    formula:
      '=STAND.LEASE("act",20,{-3000,-600,-250,425,1100,1550,1775,1775,1775,1640},0.06,{920,740,560,380,200})',
    gives: "keep",
  },
  calculate: ({what, years, flows, rate, keep, clear, end_worth, rest, rest_income}) =>
    lease(years, flows, rate, keep, {clear, rest, restIncome: rest_income}, end_worth)[what],
})
