import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"
import {discount, worthOfYears} from "./chain"
import {betweenPlantings, rateFromNought} from "./quantities"

/**
 * Worth, money/ha, of ground at the moment it is cleared: the rest, then the worth of ground planted after it. Never below
 * what its other use is worth, nor below 0: nobody has to plant.
 */
export const ground = (
  worth: number,
  rate: number,
  rest: number,
  restIncome: number,
  otherUse: number,
): number => Math.max(worthOfYears(restIncome, rest, rate) + discount(rate, rest) * worth, otherUse, 0)

export const STAND_GROUND = defineFunction({
  name: "STAND.GROUND",
  summary: "Worth of ground at the moment it is cleared",
  about:
    "After clearing is paid. A rent for ever is worth the rent divided by the rate. When the other use, or 0, is what comes out, do " +
    "not plant again.",
  parameters: {
    worth: quantity("Worth of planted ground", "money/ha"),
    rate: rateFromNought,
    rest: betweenPlantings.rest,
    rest_income: betweenPlantings.rest_income,
    other_use: optional(quantity("Worth of the other use", "money/ha"), 0),
  },
  returns: {label: "Worth of cleared ground", unit: "money/ha"},
  sources: ["faustmann1849", "identity"],
  example: {formula: "=STAND.GROUND(9101.6311,0.06,2,300)", gives: 8650.44},
  calculate: ({worth, rate, rest, rest_income, other_use}) =>
    ground(worth, rate, rest, rest_income, other_use),
})
