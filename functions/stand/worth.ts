import {defineFunction, type Refusal} from "../define"
import {chainWorths, type Between} from "./chain"
import {EXAMPLE_FLOWS, growsTooFast} from "./life"
import {betweenPlantings, flowsOfAPlanting, growthOfReturns, rateAboveNought} from "./quantities"

/** Worth of ground planted today, money/ha, with an endless chain of like plantings, each kept for its best life. */
export const worth = (
  flows: readonly number[],
  rate: number,
  between: Between,
  growth: number,
): number | Refusal => growsTooFast(rate, growth) ?? Math.max(...chainWorths(flows, rate, between, growth))

export const STAND_WORTH = defineFunction({
  name: "STAND.WORTH",
  summary: "Worth of ground planted today and planted again for ever",
  about:
    "Money on 1 January of the planting year, each year's cash coming at its end. Below 0 such a planting does not pay: STAND.GROUND " +
    "then takes the other use. With growth, every net sum is by that share larger for each year that its planting begins later.",
  parameters: {
    flows: flowsOfAPlanting,
    rate: rateAboveNought,
    ...betweenPlantings,
    growth: growthOfReturns,
  },
  returns: {label: "Worth of planted ground", unit: "money/ha"},
  refuses: ["a growth that is not below the rate"],
  sources: ["faustmann1849", "perrin1972"],
  example: {formula: `=STAND.WORTH(${EXAMPLE_FLOWS},0.06)`, gives: 9565.9072},
  calculate: ({flows, rate, clear, rest, rest_income, growth}) =>
    worth(flows, rate, {clear, rest, restIncome: rest_income}, growth),
})
