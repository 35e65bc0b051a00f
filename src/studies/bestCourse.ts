import {healthAlong} from "../../functions/fern/healthy"
import type {Crowns} from "../../functions/root/dailyBalance"
import {atLeast} from "../../functions/rounding"
import {stopPrice} from "../../functions/season/stopPrice"
import type {BestWeeksInput} from "./bestWeeksAsked"
import {
  entry,
  marginOf,
  mostWeeks,
  mostWeeksOfLast,
  seasonWorth,
  type Field,
  type Standing,
} from "./plantingSeason"
import {incomes, sugarOf, worthOf} from "./seasonTable"

/** Why a season is as long as it is. */
export type WhyWeeks =
  | "last season" // nothing need be left: cut to the technical limit
  | "last season, price" // nothing need be left, but the next week no longer pays its picking
  | "most weeks" // of the table
  | "reserve" // the next week would take more from later seasons than it brings
  | "price" // the next week would not pay its picking

/** One season of the best course. Money per ha at the end of its year. */
export interface BestYear {
  readonly age: number
  readonly weeks: number
  readonly why: WhyWeeks
  /** Modelled crop times the share of it that the planting brings at that age, kg/ha. */
  readonly crop: number
  readonly margin: number
  /** At the start of its model year, mg/g, and left at the end of it, kg/ha. */
  readonly sugar: number
  readonly reserveLeft: number
  /** Money that a kg of sugar more, left at the end of the year, is worth then. */
  readonly reserveWorth: number
  /** One week more: what it would bring, and take from what follows; null where there is none. */
  readonly nextWeek: NextWeek | null
}

export interface NextWeek {
  readonly kg: number
  readonly cost: number
  /** Lowest price of a packed kg at which it would pay. */
  readonly stopPrice: number
}

/** The best course of a planting until it is cleared. */
export interface BestCourse {
  readonly years: readonly BestYear[]
  /** Age at whose start it is cleared. */
  readonly replaceAge: number
  /** It is cleared because the ages end there, not because that is best: give more ages. */
  readonly isAtEnd: boolean
  /** Worth today, money/ha, with all that follows. */
  readonly worth: number
}

/** Follows the best course from crowns as they are; `worths` begin with the year of `from`. */
export function follow(
  input: BestWeeksInput,
  from: Standing,
  field: Field,
  worths: readonly Float64Array[],
  ground: number,
  age: number,
): BestCourse {
  const years: BestYear[] = []
  const cleared = ground - input.money.clear
  let standing = from
  let total = cleared
  const season = (of: Standing, at: number, isLast: boolean) =>
    seasonWorth(input, of, field, at, worths[at - age + 1]!, ground, isLast)
  const told = (of: Standing, at: number, weeks: number, isLast: boolean) =>
    yearOf(input, of, field, at, weeks, isLast, worths[at - age + 1]!)
  let before = from
  for (let at = age; at < input.oldest; at++) {
    const [going, last] = [season(standing, at, false), season(standing, at, true)]
    // Where clearing follows either way, the two differ by rounding alone.
    const isLast = atLeast(last.worth, going.worth)
    const {weeks, worth} = isLast ? last : going
    if (at === age) total = Math.max(worth, cleared)
    if (worth <= cleared) {
      // Between nodes it had seemed worth going on: as it is cleared, the season before was the last.
      if (years.length > 0)
        years.splice(-1, 1, told(before, at - 1, season(before, at - 1, true).weeks, true).told)
      return {years, replaceAge: at, isAtEnd: false, worth: total}
    }
    const year = told(standing, at, weeks, isLast)
    years.push(year.told)
    if (isLast) return {years, replaceAge: at + 1, isAtEnd: at + 1 === input.oldest, worth: total}
    before = standing
    standing = {crowns: year.after, shares: from.shares, healthy: []}
  }
  return {years, replaceAge: input.oldest, isAtEnd: true, worth: total}
}

function yearOf(
  input: BestWeeksInput,
  {crowns, shares, healthy}: Standing,
  field: Field,
  age: number,
  weeks: number,
  isLast: boolean,
  next: Float64Array,
): {readonly told: BestYear; readonly after: Crowns} {
  const {money} = input
  const most = isLast ? mostWeeksOfLast(input, field) : mostWeeks(input, field, age)
  const longer = Math.min(weeks + 1, field.table.weeks)
  const picked = field.seasons.picked(crowns, 7 * longer)
  const income = incomes(picked, field.perKg)
  const green = healthAlong(healthy, input.site.year)
  const share = entry(shares, age)
  const worth = (left: Crowns) => (isLast ? 0 : worthOf(left, field.table.grid, next))
  const after = field.seasons.after(crowns, 7 * weeks, green)
  const nextWeek = longer > weeks ? weekMore() : null
  return {
    after,
    told: {
      age,
      weeks,
      why: why(),
      crop: share * picked[7 * weeks]!,
      margin: marginOf(input, share, income[7 * weeks]!, weeks),
      sugar: sugarOf(crowns),
      reserveLeft: after.reserve,
      reserveWorth: slope(),
      nextWeek,
    },
  }

  function weekMore(): NextWeek {
    const kg = share * (picked[7 * longer]! - picked[7 * weeks]!)
    const cost = worth(after) - worth(field.seasons.after(crowns, 7 * longer, green))
    const {pick, haul, pack, packout, weekCost} = money
    return {
      kg,
      cost,
      stopPrice: kg > 0 ? stopPrice(pick, haul, pack, packout, weekCost, cost, 1, kg) : Infinity,
    }
  }

  function why(): WhyWeeks {
    const brings = share * (income[7 * longer]! - income[7 * weeks]!) - money.weekCost
    const pays = nextWeek !== null && brings > 0
    if (isLast) return weeks === most ? "last season" : "last season, price"
    if (weeks === most) return "most weeks"
    return pays ? "reserve" : "price"
  }

  /** Over some reserve either way, so that one kink between nodes does not count for the whole. */
  function slope(): number {
    const {structure, reserve} = after
    const step = NEARBY * (reserve + structure)
    const [low, high] = [Math.max(0, reserve - step), reserve + step]
    return (worth({structure, reserve: high}) - worth({structure, reserve: low})) / (high - low)
  }
}

/** Chosen: share of the dry root that the reserve is moved by, up and down, to see what it is worth. */
const NEARBY = 0.03
