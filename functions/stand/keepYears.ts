import {defineFunction} from "../define"
import {placeOfMost} from "./chain"
import {keepWorths, standingParameters} from "./keepWorth"
import {flowsOfTheStand} from "./quantities"

/** Number of years to keep the standing crop that is worth most; 0 is to clear now. The fewest of equals. */
export const keepYears = (flows: readonly number[], ground: number, rate: number, clear: number): number =>
  placeOfMost(keepWorths(flows, ground, rate, clear))

export const STAND_KEEP_YEARS = defineFunction({
  name: "STAND.KEEP_YEARS",
  summary: "Number of years that the standing crop is best kept",
  about:
    "Weighs every number of years, so that a field after a setback is not cleared for one poor season; of equals the fewest. When it gives as many years " +
    "as you typed, longer may be better still: add years. Give cash year by year without a gap.",
  parameters: {flows: flowsOfTheStand, ...standingParameters},
  returns: {label: "Years to keep", unit: "years"},
  sources: ["perrin1972", "identity"],
  example: {formula: "=STAND.KEEP_YEARS({-200,900,1300,1300,1100,900,700,500},9565.9072,0.06)", gives: 7},
  calculate: ({flows, ground, rate, clear}) => keepYears(flows, ground, rate, clear),
})
