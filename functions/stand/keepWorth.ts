import {defineFunction, type Refusal} from "../define"
import {outOfRange} from "../refusal"
import {discount, worthsOfFirst} from "./chain"
import {clearing, flowsOfTheStand, groundWorth, rateFromNought, wholeYears} from "./quantities"

/** Worth today, money/ha, of keeping the crop for 0, 1, 2, ... years and clearing then: Keep(k). */
export const keepWorths = (flows: readonly number[], ground: number, rate: number, clear: number): number[] =>
  worthsOfFirst(flows, rate).map((worth, years) => worth + discount(rate, years) * (ground - clear))

/** Keep(k) of that number of years, money/ha. Refuses more years than there is net cash for. */
export const keepWorth = (
  flows: readonly number[],
  years: number,
  ground: number,
  rate: number,
  clear: number,
): number | Refusal =>
  years > flows.length
    ? outOfRange(`Years kept (${years}) are more than the ${flows.length} years of net cash`)
    : keepWorths(flows, ground, rate, clear)[years]!

/** The arguments of every question about the field that stands. */
export const standingParameters = {ground: groundWorth, rate: rateFromNought, clear: clearing}

export const STAND_KEEP_WORTH = defineFunction({
  name: "STAND.KEEP_WORTH",
  summary: "Worth today of keeping the standing crop for some years and clearing it then",
  about:
    "With 0 years it is the worth of clearing now. Count only cash that keeping it changes: what the planting once cost is spent " +
    "either way. Cash comes at each year's end and is valued on 1 January of the coming season.",
  parameters: {
    flows: flowsOfTheStand,
    years: wholeYears("Years kept", 0),
    ...standingParameters,
  },
  returns: {label: "Worth of keeping it", unit: "money/ha"},
  refuses: ["more years than there is net cash for"],
  sources: ["perrin1972", "identity"],
  example: {formula: "=STAND.KEEP_WORTH({700,520,340,160},1,9565.9072,0.06)", gives: 9684.8181},
  calculate: ({flows, years, ground, rate, clear}) => keepWorth(flows, years, ground, rate, clear),
})
