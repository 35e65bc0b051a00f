import {atLeast} from "../rounding"
import {discount, worthOfYears} from "../stand/chain"
import {actsOf, placeAmong} from "../stand/dynamicProgram"
import {renew, type LifeYear} from "../stand/renewal"
import type {JointValues} from "./jointValues"

/** The years of a planting in which there is a choice, one row each: its age, the most weeks, the share of a full crop. */
export interface JointYears {
  /** Rising by 1; the planting year counts as 1. */
  readonly ages: readonly number[]
  readonly caps: readonly number[]
  readonly factors: readonly number[]
}

/** What is best in one year of the planting. */
export interface JointYear {
  readonly age: number
  /** Reserve at the start of the season, 0 to 1. */
  readonly reserve: number
  readonly weeks: number
  readonly yield: number
  readonly margin: number
  /** What one unit of reserve more at the end of the season would be worth at its start. */
  readonly reserveWorth: number
  /** What one week more would take from the worth of the seasons after it, money/ha. */
  readonly weekCost: number
}

export interface JointPlan {
  /** Worth of the old field's ground as it stands: clearing is off already. */
  readonly ground: number
  /** Age at whose start the field is cleared. */
  readonly replaceAge: number
  /** Worth of the planting at the start of its first row. */
  readonly worth: number
  /** From the first row to the last season before clearing. */
  readonly years: readonly JointYear[]
}

/**
 * Weeks of cutting at every age and the age of replacement, chosen together, for a reserve that runs from 0 to 1. Everything is
 * paid at the start of its year. Cutting w weeks gives Yield_full·factor·r·(1-exp(-κ·w)) and leaves rc = r·exp(-λ·w), which the
 * fern brings back to rc + (1-rc)·ρ·max(0, 1-w/w_f). What is lost at the end of a year is cleared then. Worths are found for
 * `Nodes` levels of reserve, with straight lines between.
 */
export function jointPlan(years: JointYears, values: JointValues): JointPlan {
  const {Nodes, Rate, Rest_years, Rest_income, Establish_cost, Clear_cost, Other_use, Start_reserve} = values
  const {carry, lost} = nextYear(values)
  const most = Math.max(...years.caps)
  const weeks = Array.from({length: most + 1}, (_, w) => w)
  const nodes = Array.from({length: Nodes}, (_, node) => node / (Nodes - 1))
  const acts = actsOf(
    nodes.map((reserve) =>
      weeks.map((w) => {
        const {node, share} = placeAmong(reserveAfter(reserve, w, values), 0, 1, Nodes)
        return [
          [node, 1 - share],
          [node + 1, share],
        ] as const
      }),
    ),
  )
  const lifeYears = years.ages.map((_, row): LifeYear => {
    const pays = nodes.flatMap((reserve) =>
      weeks.map((w) => (w <= years.caps[row]! ? margin(years.factors[row]!, reserve, w, values) : -Infinity)),
    )
    return {pays: Float64Array.from(pays, (sum) => sum - lost * Clear_cost), carry, lost, last: null}
  })
  const {ground, worths} = renew({
    acts,
    years: lifeYears,
    clear: Clear_cost,
    groundOf(first) {
      const planted = discount(Rate, years.ages[0]! - 1) * between(first, Start_reserve) - Establish_cost
      // A year of rest pays at its start, as every year does here.
      const rested = (1 + Rate) * worthOfYears(Rest_income, Rest_years, Rate)
      return Math.max(rested + discount(Rate, Rest_years) * planted, Other_use)
    },
  })
  return {
    ...follow(years, values, worths, ground - Clear_cost),
    ground: ground - Clear_cost,
    worth: between(worths[0]!, Start_reserve),
  }
}

/** What sums of the next year count in this one: those of the planting, and through the chance of a loss those of the ground. */
function nextYear({Rate, Loss_chance}: JointValues) {
  const year = discount(Rate, 1)
  return {carry: year * (1 - Loss_chance), lost: year * Loss_chance}
}

/**
 * Follows the best course from the first row on, from the reserve as it is and not from a node. Of equal courses it takes the one
 * that clears the sooner, but not before the first season, and of equal seasons the shorter.
 */
function follow(
  {ages, caps, factors}: JointYears,
  values: JointValues,
  worths: readonly Float64Array[],
  cleared: number,
): Pick<JointPlan, "replaceAge" | "years"> {
  const {carry, lost} = nextYear(values)
  const followed: JointYear[] = []
  let reserve = values.Start_reserve
  for (const [row, age] of ages.entries()) {
    const next = worths[row + 1]!
    let best = {weeks: -1, worth: -Infinity}
    for (let weeks = 0; weeks <= caps[row]!; weeks++) {
      const then = between(next, reserveAfter(reserve, weeks, values))
      const worth = margin(factors[row]!, reserve, weeks, values) + carry * then + lost * cleared
      if (worth > best.worth) best = {weeks, worth}
    }
    // A planting for nothing is worth its ground from the first day: cleared then, it would be planted again for ever, uncut.
    const isCleared = row > 0 ? atLeast(cleared, best.worth) : !atLeast(best.worth, cleared)
    if (isCleared) return {replaceAge: age, years: followed}
    const {weeks} = best
    const after = reserveAfter(reserve, weeks, values)
    followed.push({
      age,
      reserve,
      weeks,
      yield: yieldOf(factors[row]!, reserve, weeks, values),
      margin: margin(factors[row]!, reserve, weeks, values),
      reserveWorth: carry * slopeAt(next, after),
      weekCost: carry * (between(next, after) - between(next, reserveAfter(reserve, weeks + 1, values))),
    })
    reserve = after
  }
  return {replaceAge: ages.at(-1)! + 1, years: followed}
}

export const yieldOf = (factor: number, reserve: number, weeks: number, values: JointValues): number =>
  values.Yield_full * factor * reserve * -Math.expm1(-values.Cut_saturation * weeks)

export function reserveAfter(reserve: number, weeks: number, values: JointValues): number {
  const cut = reserve * Math.exp(-values.Draw_per_week * weeks)
  return cut + (1 - cut) * values.Refill_share * Math.max(0, 1 - weeks / values.Refill_weeks)
}

export const margin = (factor: number, reserve: number, weeks: number, values: JointValues): number =>
  (values.Price - values.Cost_per_unit) * yieldOf(factor, reserve, weeks, values) -
  values.Cost_per_week * weeks -
  values.Fixed_cost

function between(worth: Float64Array, reserve: number): number {
  const {node, share} = placeAmong(reserve, 0, 1, worth.length)
  return (1 - share) * worth[node]! + share * worth[node + 1]!
}

function slopeAt(worth: Float64Array, reserve: number): number {
  const {node} = placeAmong(reserve, 0, 1, worth.length)
  return (worth[node + 1]! - worth[node]!) * (worth.length - 1)
}
