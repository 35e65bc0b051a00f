import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"
import {roundUp} from "../rounding"
import {normalQuantile} from "./normalQuantile"
import {confidenceShare} from "./quantities"

/**
 * Plants to sample so that the mean lies within `margin` of the field's, rounded up: (z·spread/margin)², with z of the
 * two-sided normal confidence and spread and margin in one unit. At least 1.
 */
export const samples = (spread: number, margin: number, confidence: number): number =>
  Math.max(1, roundUp(((normalQuantile(confidence) * spread) / margin) ** 2))

export const ROOT_SAMPLES = defineFunction({
  name: "ROOT.SAMPLES",
  summary: "Plants to sample so that the mean is as sure as you want it",
  about:
    "Takes the spread (standard deviation) as known, and counts all plants to sample, not those still to come. It is one or " +
    "two plants short at a confidence of 0.9 to 0.95, since the spread is itself only estimated: look at ROOT.EDGE of what " +
    "you have.",
  parameters: {
    spread: quantity("Standard deviation among plants", "mg/g", {min: 0}),
    margin: quantity("Margin wanted on either side of the mean", "mg/g", {above: 0}),
    confidence: optional(confidenceShare, 0.9),
  },
  returns: {label: "Plants to sample", unit: "plants"},
  sources: ["nistHandbook"],
  example: {formula: "=ROOT.SAMPLES(30,15,0.9)", gives: 11},
  calculate: ({spread, margin, confidence}) => samples(spread, margin, confidence),
})
