import {defineFunction, type Refusal} from "../define"
import {optional, side} from "../parameters"
import {notYet} from "../refusal"
import {average, rootReadings} from "./mean"
import {confidenceShare} from "./quantities"
import {tQuantile} from "./tQuantile"

/**
 * Lower (-1) or upper (1) end of the t interval of a mean, in the unit of the readings: mean ± t·s/√n with n - 1
 * degrees of freedom, s their standard deviation, t by the two-sided confidence. Refuses fewer than two readings.
 */
export function edge(readings: readonly number[], side: -1 | 1, confidence: number): number | Refusal {
  const n = readings.length
  if (n < 2) return notYet(`Only ${n} of 2 readings: an interval needs two`)
  const mean = average(readings)
  const s = Math.sqrt(readings.reduce((sum, reading) => sum + (reading - mean) ** 2, 0) / (n - 1))
  return mean + (side * tQuantile(confidence, n - 1) * s) / Math.sqrt(n)
}

export const ROOT_EDGE = defineFunction({
  name: "ROOT.EDGE",
  summary: "Lower or upper end of the interval in which the mean of the field lies",
  about:
    "The t interval of a mean, for roots drawn at random across the field: out of 10 such samples, 8 have the field's mean " +
    "between their ends at the confidence of 0.8. It knows nothing of an error that all readings share, such as that of " +
    "the calibration. Blanks are left out.",
  parameters: {
    readings: rootReadings,
    side: side("Which end"),
    confidence: optional(confidenceShare, 0.8),
  },
  returns: {label: "End of the interval", unit: "as given"},
  refuses: ["fewer than two readings"],
  sources: ["nistHandbook"],
  example: {formula: "=ROOT.EDGE({412,388,455,430,367,441,402,398,420,376},-1)", gives: 396.6},
  calculate: ({readings, side, confidence}) => edge(readings, side, confidence),
})
