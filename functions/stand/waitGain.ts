import {defineFunction} from "../define"
import {quantity} from "../parameters"
import {standingParameters} from "./keepWorth"
import {growthOfReturns} from "./quantities"

/**
 * What waiting one year before clearing gains, money/ha today; below 0 it loses. The ground is worth by `growth` more when it
 * is cleared a year later: (next + (1+growth)·ground - clear)/(1+rate) - (ground - clear).
 */
export const waitGain = (next: number, ground: number, rate: number, clear: number, growth: number): number =>
  (next + (1 + growth) * ground - clear) / (1 + rate) - (ground - clear)

export const STAND_WAIT_GAIN = defineFunction({
  name: "STAND.WAIT_GAIN",
  summary: "What waiting one year before clearing gains, in today's money",
  about:
    "Weighs one year only: right while the crop's net cash falls from year to year. After a setback ask STAND.KEEP_YEARS. Against " +
    "growing returns the ground gains by waiting, so that the field need bring less: the rate less the growth, times the ground.",
  parameters: {
    next: quantity("Net cash of the coming season", "money/ha"),
    ...standingParameters,
    growth: growthOfReturns,
  },
  returns: {label: "Gain from one more year", unit: "money/ha"},
  sources: ["perrin1972", "identity"],
  example: {formula: "=STAND.WAIT_GAIN(700,9565.9072,0.06)", gives: 118.9109},
  calculate: ({next, ground, rate, clear, growth}) => waitGain(next, ground, rate, clear, growth),
})
