import {defineFunction} from "../define"
import {placeOfMost} from "./chain"
import {
  EXAMPLE_CROP,
  EXAMPLE_OTHER,
  penaltiesByRest,
  restParameters,
  restTail,
  restWorth,
  sizesDiffer,
  type PenalisedFlows,
} from "./restWorth"

/** Years of rest, of those in the list of penalties, that make cleared ground worth most; the fewest of equals. */
export const bestRest = (
  flows: PenalisedFlows,
  penalties: readonly number[],
  rate: number,
  restIncome: number,
  clear: number,
): number =>
  placeOfMost(penalties.map((_, rest) => restWorth(rest, flows, penalties, rate, restIncome, clear)))

export const STAND_REST_YEARS = defineFunction({
  name: "STAND.REST_YEARS",
  summary: "Years of rest before planting again that make the ground worth most",
  about:
    "Weighs the yield lost by planting too soon against the income lost by waiting. The first number of the list is the loss after " +
    "planting at once; it goes no further than the list does.",
  parameters: {...restParameters, penalties: penaltiesByRest, ...restTail},
  returns: {label: "Best years of rest", unit: "years"},
  refuses: ["lists of different length"],
  sources: ["faustmann1849", "identity"],
  example: {
    formula: `=STAND.REST_YEARS(${EXAMPLE_CROP},${EXAMPLE_OTHER},0.06,{0.15,0.1,0.05,0},300)`,
    gives: 3,
  },
  calculate: ({crop, other, rate, penalties, rest_income, clear}) =>
    sizesDiffer({crop, other}) ?? bestRest({crop, other}, penalties, rate, rest_income, clear),
})
