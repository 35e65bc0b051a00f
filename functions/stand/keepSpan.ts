import {defineFunction} from "../define"
import {quantity, side} from "../parameters"
import {edgeWithin} from "./chain"
import {keepWorths, standingParameters} from "./keepWorth"
import {flowsOfTheStand} from "./quantities"

/** The fewest (-1) or most (1) years of keeping the standing crop that come within that sum of the best. */
export const keepSpan = (
  within: number,
  which: -1 | 1,
  flows: readonly number[],
  ground: number,
  rate: number,
  clear: number,
): number => edgeWithin(keepWorths(flows, ground, rate, clear), within, which)

export const STAND_KEEP_SPAN = defineFunction({
  name: "STAND.KEEP_SPAN",
  summary: "Fewest or most years of keeping the crop that come within a sum of the best",
  about: "The years in which either can be right. The sum is money today, not a year.",
  parameters: {
    within: quantity("Sum that does not matter to you", "money/ha", {min: 0}),
    side: side("Which end of the span"),
    flows: flowsOfTheStand,
    ...standingParameters,
  },
  returns: {label: "End of the span", unit: "years"},
  sources: ["perrin1972", "identity"],
  example: {formula: "=STAND.KEEP_SPAN(100,1,{700,520,340,160},9565.9072,0.06)", gives: 2},
  calculate: ({within, side, flows, ground, rate, clear}) =>
    keepSpan(within, side, flows, ground, rate, clear),
})
