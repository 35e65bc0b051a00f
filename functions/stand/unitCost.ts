import {defineFunction, type Refusal} from "../define"
import {optional, yearly} from "../parameters"
import {dividesByZero, isRefusal, outOfRange, wrongKind} from "../refusal"
import {worthsOfFirst} from "./chain"
import {rateFromNought, wholeYears} from "./quantities"

/**
 * Cost of a kg over the life, money/kg, for each life 1, 2, ...: discounted cost over discounted crop. Infinite before the
 * first crop.
 */
export function unitCosts(
  costs: readonly number[],
  yields: readonly number[],
  rate: number,
): number[] | Refusal {
  if (costs.length !== yields.length)
    return wrongKind(
      `Costs are given for ${costs.length} years and yields for ${yields.length}: sizes differ`,
    )
  const crop = worthsOfFirst(yields, rate)
  if (crop.at(-1) === 0) return dividesByZero("The yields are 0 in every year: there is no cost of a kg")
  return worthsOfFirst(costs, rate)
    .map((cost, life) => (crop[life]! > 0 ? cost / crop[life]! : Infinity))
    .slice(1)
}

/** Cost of a kg, money/kg, over that life, or over the life that makes it least when `life` is null. */
export function unitCost(
  costs: readonly number[],
  yields: readonly number[],
  rate: number,
  life: number | null,
): number | Refusal {
  const each = unitCosts(costs, yields, rate)
  if (isRefusal(each)) return each
  if (life === null) return Math.min(...each)
  if (life > each.length)
    return outOfRange(`Life (${life} years) is longer than the ${each.length} years of costs and yields`)
  return Number.isFinite(each[life - 1])
    ? each[life - 1]!
    : dividesByZero(`There is no crop in the first ${life} years: there is no cost of a kg`)
}

/** Years of cost and crop, shared with STAND.CHEAPEST_LIFE. */
export const costsAndYields = {
  costs: yearly("All cost of a planting, year by year from the planting year", "money/ha"),
  yields: yearly("Its yields in those years", "kg/ha", {min: 0}),
  rate: rateFromNought,
}

export const STAND_UNIT_COST = defineFunction({
  name: "STAND.UNIT_COST",
  summary: "Cost of a kg over a planting's life, or the least over all lives",
  about:
    "Needs no price: cost and crop are both discounted, so it is the price at which that life just pays its interest. Harvest cost " +
    "belongs in. Without a life it gives that of the cheapest, for which see STAND.CHEAPEST_LIFE.",
  parameters: {
    ...costsAndYields,
    life: optional(wholeYears("Life (planting year = 1)", 1), null, "the cheapest life"),
  },
  returns: {label: "Cost of a kg", unit: "money/kg"},
  refuses: ["lists of different length", "a life without a crop", "a life longer than the lists"],
  sources: ["burt1999", "identity"],
  example: {formula: "=STAND.UNIT_COST({1000,200,300,500},{0,0,400,1000},0.05)", gives: 1.544},
  calculate: ({costs, yields, rate, life}) => unitCost(costs, yields, rate, life),
})
