import {defineFunction, type Refusal} from "../define"
import {outOfRange} from "../refusal"
import {chainWorths, placeOfMost, yearlyWorths, type Between} from "./chain"
import {chainParameters, growthOfReturns} from "./quantities"

/** An example that more than one help page uses: an invented planting over 18 years. */
export const EXAMPLE_FLOWS =
  "{-3000,-600,-250,425,1100,1550,1775,1775,1775,1640,1460,1280,1100,920,740,560,380,200}"

/** The sum of an endless chain is finite only while the rate lies above the growth. */
export const growsTooFast = (rate: number, growth: number): Refusal | null =>
  growth < rate
    ? null
    : outOfRange(
        `Rate a year (${rate}) must lie above the growth of net cash (${growth}), or the worth is endless`,
      )

/**
 * Life, years, that makes an endless chain of like plantings worth most a year; the shortest of equals. With `growth`, that
 * which makes the ground worth most, for which the rate must lie above it.
 */
export function life(
  flows: readonly number[],
  rate: number,
  between: Between,
  growth: number,
): number | Refusal {
  if (growth === 0) return placeOfMost(yearlyWorths(flows, rate, between)) + 1
  return growsTooFast(rate, growth) ?? placeOfMost(chainWorths(flows, rate, between, growth)) + 1
}

export const STAND_LIFE = defineFunction({
  name: "STAND.LIFE",
  summary: "Years of life with the highest yearly worth, planting after planting",
  about:
    "Every planting is followed by another one like it, so a year of an old field is weighed against a year of its successor's whole " +
    "life; of equal lives the shortest is given. The planting year is year 1: the age at the end is one less. Answers are flat near the best: see STAND.LIFE_SPAN and " +
    "STAND.LIFE_COST. When it gives the last year you typed, longer may be better still: add years.",
  parameters: {...chainParameters, growth: growthOfReturns},
  returns: {label: "Best life (planting year = 1)", unit: "years"},
  refuses: ["a growth that is not below the rate"],
  sources: ["faustmann1849", "perrin1972"],
  example: {formula: `=STAND.LIFE(${EXAMPLE_FLOWS},0.06)`, gives: 15},
  calculate: ({flows, rate, clear, rest, rest_income, growth}) =>
    life(flows, rate, {clear, rest, restIncome: rest_income}, growth),
})
