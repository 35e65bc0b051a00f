import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"
import {confidenceShare} from "./quantities"
import {samples} from "./samples"

/**
 * Plants to sample so that the mean lies within a share of the field's, rounded up: (z·CV/margin)², where the CV of a
 * plant's reading is √(between² + within²/roots) with `roots` roots read of each. At least 1.
 */
export const samplesShare = (
  margin: number,
  between: number,
  within: number,
  roots: number,
  confidence: number,
): number => samples(Math.hypot(between, within / Math.sqrt(roots)), margin, confidence)

export const ROOT_SAMPLES_SHARE = defineFunction({
  name: "ROOT.SAMPLES_SHARE",
  summary: "Plants to sample for a margin that is a share of the mean",
  about:
    "The defaults are the variation of sap readings that Feller & Fink found in German fields: 20 % among plants, 6 % among " +
    "roots of one plant. More roots of a plant hardly help, more plants do.",
  parameters: {
    margin: quantity("Margin wanted on either side, as a share of the mean", "share", {above: 0}),
    between: optional(
      quantity("Variation among plants (standard deviation as a share of the mean)", "share", {min: 0}),
      0.2,
    ),
    within: optional(quantity("Variation among roots of one plant, likewise", "share", {min: 0}), 0.06),
    roots: optional(quantity("Roots read of each plant", "count", {min: 1, whole: true}), 1),
    confidence: optional(confidenceShare, 0.95),
  },
  returns: {label: "Plants to sample", unit: "plants"},
  sources: ["feller2007", "nistHandbook"],
  example: {formula: "=ROOT.SAMPLES_SHARE(0.1)", gives: 17},
  calculate: ({margin, between, within, roots, confidence}) =>
    samplesShare(margin, between, within, roots, confidence),
})
