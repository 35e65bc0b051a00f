import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"
import {sapReading} from "./sugar"

/**
 * Sugar in the root, mg per g dry root, from the reading of its sap in °Brix. A gram of fresh root is u (`insoluble`)
 * dry matter that does not dissolve and 1 - u sap; s0 (`other`) °Brix of the sap are no sugar, and k (`share`) of the
 * rest is. At s0 and below there is none.
 */
export function sugarFromSap(reading: number, insoluble: number, other: number, share: number): number {
  if (reading <= other) return 0
  const [B, u, s0, k] = [reading, insoluble, other, share]
  return (1000 * k * (1 - u) * (B - s0)) / 100 / (u + ((1 - u) * B) / 100)
}

/** What a root is made of: the assumed defaults, each to be replaced by what you know of yours. */
export const rootMakeUp = {
  insoluble: optional(
    quantity("Share of the fresh root that does not dissolve (0.06 to 0.12 is likely)", "share", {
      min: 0,
      max: 1,
    }),
    0.08,
  ),
  other: optional(quantity("Part of the reading that is no sugar at all", "°Brix", {min: 0, max: 50}), 4),
  share: optional(quantity("Share of sugar in the rest of the reading", "share", {min: 0, max: 1}), 0.9),
} as const

export const ROOT_SUGAR_FROM_SAP = defineFunction({
  name: "ROOT.SUGAR_FROM_SAP",
  summary: "Sugar in the root from a refractometer reading, when there is no calibration",
  about:
    "A mass balance of fibre and sap. The three defaults are assumptions: take the result as within 60 to 80 mg/g, until " +
    "laboratory pairs of your own roots say better (then use ROOT.SUGAR). The curve flattens: it cannot reach the highest " +
    "values published for young fields. In the one study of the method sap and laboratory agreed with r = 0.89 over 51 roots.",
  parameters: {reading: sapReading, ...rootMakeUp},
  returns: {label: "Sugar in the root", unit: "mg/g"},
  sources: ["balance", "feller2007"],
  example: {formula: "=ROOT.SUGAR_FROM_SAP(15)", gives: 417.8},
  calculate: ({reading, insoluble, other, share}) => sugarFromSap(reading, insoluble, other, share),
})
