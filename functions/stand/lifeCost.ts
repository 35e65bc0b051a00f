import {defineFunction, type Refusal} from "../define"
import {yearlyWorths, type Between} from "./chain"
import {EXAMPLE_FLOWS} from "./life"
import {lifeTooLong} from "./lifeWorth"
import {chainParameters, wholeYears} from "./quantities"

/** What it costs, money/ha/year, to renew at that life in place of the best: 0 at the best. */
export function lifeCost(
  life: number,
  flows: readonly number[],
  rate: number,
  between: Between,
): number | Refusal {
  const worths = yearlyWorths(flows, rate, between)
  return lifeTooLong(life, flows) ?? Math.max(...worths) - worths[life - 1]!
}

export const STAND_LIFE_COST = defineFunction({
  name: "STAND.LIFE_COST",
  summary: "What renewing at a life of your choice costs a year against the best life",
  about: "How much is at stake in going early or late. The planting year is year 1.",
  parameters: {life: wholeYears("Life (planting year = 1)", 1), ...chainParameters},
  returns: {label: "Cost against the best life", unit: "money/ha/year"},
  refuses: ["a life longer than the years of net cash"],
  sources: ["faustmann1849", "perrin1972"],
  example: {formula: `=STAND.LIFE_COST(12,${EXAMPLE_FLOWS},0.06)`, gives: 55.94},
  calculate: ({life, flows, rate, clear, rest, rest_income}) =>
    lifeCost(life, flows, rate, {clear, rest, restIncome: rest_income}),
})
