import {defineFunction} from "../define"
import {quantity, side} from "../parameters"
import {edgeWithin, yearlyWorths, type Between} from "./chain"
import {EXAMPLE_FLOWS} from "./life"
import {chainParameters} from "./quantities"

/** The shortest (-1) or longest (1) life, years, whose yearly worth is within that sum of the best. */
export const lifeSpan = (
  within: number,
  which: -1 | 1,
  flows: readonly number[],
  rate: number,
  between: Between,
): number => edgeWithin(yearlyWorths(flows, rate, between), within, which) + 1

export const STAND_LIFE_SPAN = defineFunction({
  name: "STAND.LIFE_SPAN",
  summary: "Shortest or longest life that comes within a sum of the best",
  about:
    "A span says more than one best year: all its ends differ by no more than the sum you name, which is small beside what prices and " +
    "weather do. The planting year is year 1.",
  parameters: {
    within: quantity("Sum a year that does not matter to you", "money/ha/year", {min: 0}),
    side: side("Which end of the span"),
    ...chainParameters,
  },
  returns: {label: "End of the span (planting year = 1)", unit: "years"},
  sources: ["faustmann1849", "perrin1972"],
  example: {formula: `=STAND.LIFE_SPAN(10,-1,${EXAMPLE_FLOWS},0.06)`, gives: 14},
  calculate: ({within, side, flows, rate, clear, rest, rest_income}) =>
    lifeSpan(within, side, flows, rate, {clear, rest, restIncome: rest_income}),
})
