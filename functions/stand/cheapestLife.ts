import {defineFunction, type Refusal} from "../define"
import {isRefusal} from "../refusal"
import {costsAndYields, unitCosts} from "./unitCost"

/** Life, years, with the least cost of a kg; the shortest of equals. */
export function cheapestLife(
  costs: readonly number[],
  yields: readonly number[],
  rate: number,
): number | Refusal {
  const each = unitCosts(costs, yields, rate)
  return isRefusal(each) ? each : each.indexOf(Math.min(...each)) + 1
}

export const STAND_CHEAPEST_LIFE = defineFunction({
  name: "STAND.CHEAPEST_LIFE",
  summary: "Years of life with the least cost of a kg",
  about:
    "Needs no price. It agrees with STAND.LIFE only when the price is that least cost; at a better price an earlier renewal pays. The " +
    "planting year is year 1.",
  parameters: costsAndYields,
  returns: {label: "Cheapest life (planting year = 1)", unit: "years"},
  refuses: ["lists of different length", "no crop in any year"],
  sources: ["burt1999", "identity"],
  example: {formula: "=STAND.CHEAPEST_LIFE({1000,200,300,500,900},{0,0,400,1000,300},0.05)", gives: 4},
  calculate: ({costs, yields, rate}) => cheapestLife(costs, yields, rate),
})
