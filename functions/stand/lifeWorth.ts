import {defineFunction, type Refusal} from "../define"
import {outOfRange} from "../refusal"
import {yearlyWorths, type Between} from "./chain"
import {EXAMPLE_FLOWS} from "./life"
import {chainParameters, wholeYears} from "./quantities"

export const lifeTooLong = (life: number, flows: readonly number[]): Refusal | null =>
  life <= flows.length
    ? null
    : outOfRange(`Life (${life} years) is longer than the ${flows.length} years of net cash`)

/** Level yearly worth, money/ha/year, of an endless chain of like plantings that are renewed at that life. */
export const lifeWorth = (
  life: number,
  flows: readonly number[],
  rate: number,
  between: Between,
): number | Refusal => lifeTooLong(life, flows) ?? yearlyWorths(flows, rate, between)[life - 1]!

export const STAND_LIFE_WORTH = defineFunction({
  name: "STAND.LIFE_WORTH",
  summary: "Yearly worth of plantings that are renewed at a life of your choice",
  about:
    "For a table or a curve of yearly worth by life. The planting year is year 1. Its largest is what a field has to bring in its " +
    "next season to be worth keeping, while clearing and rest cost nothing.",
  parameters: {life: wholeYears("Life (planting year = 1)", 1), ...chainParameters},
  returns: {label: "Yearly worth", unit: "money/ha/year"},
  refuses: ["a life longer than the years of net cash"],
  sources: ["faustmann1849", "perrin1972"],
  example: {formula: `=STAND.LIFE_WORTH(15,${EXAMPLE_FLOWS},0.06)`, gives: 573.9544},
  calculate: ({life, flows, rate, clear, rest, rest_income}) =>
    lifeWorth(life, flows, rate, {clear, rest, restIncome: rest_income}),
})
