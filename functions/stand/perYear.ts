import {defineFunction} from "../define"
import {perYearOfOne, worthsOfFirst} from "./chain"
import {flowsOfAPlanting, rateOfAnySign} from "./quantities"

/** Level yearly sum, money/ha/year, that is worth as much as the flows, of which the first comes at the end of year 1. */
export const perYear = (flows: readonly number[], rate: number): number =>
  worthsOfFirst(flows, rate).at(-1)! * perYearOfOne(rate, flows.length)

export const STAND_PER_YEAR = defineFunction({
  name: "STAND.PER_YEAR",
  summary: "The level yearly sum that is worth as much as a planting's net cash over its life",
  about:
    "Each year's cash comes at its end and is valued on 1 January of the first. At a rate of 0 it is the plain mean. Give nominal " +
    "cash with a nominal rate, or cash at today's prices with a real rate: mixed they mislead.",
  parameters: {flows: flowsOfAPlanting, rate: rateOfAnySign},
  returns: {label: "Yearly worth", unit: "money/ha/year"},
  sources: ["identity", "newnan"],
  example: {
    formula: "=STAND.PER_YEAR({-9800,-1500,900,3600,5200,5600,5600,5500,5300,5000,4600,4200},0.07)",
    gives: 2092,
  },
  calculate: ({flows, rate}) => perYear(flows, rate),
})
