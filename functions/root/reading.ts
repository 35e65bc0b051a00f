import {defineFunction, type Refusal} from "../define"
import {outOfRange} from "../refusal"
import {sugarInRoot} from "./quantities"
import {rootMakeUp} from "./sugarFromSap"

/**
 * Reading of the sap, °Brix, that goes with so much sugar in the root, mg per g dry root: the inverse of
 * `sugarFromSap`. Without sugar it is `other`, the highest reading that shows none. Refuses sugar that no sap up to
 * 100 °Brix (no water left) gives.
 */
export function reading(sugar: number, insoluble: number, other: number, share: number): number | Refusal {
  const [c, u, s0, k] = [sugar, insoluble, other, share]
  const B = (c * u + 10 * k * (1 - u) * s0) / ((1 - u) * (10 * k - c / 100))
  return B >= 0 && B <= 100 ? B : outOfRange(`No sap gives ${sugar} mg/g with such a root`)
}

export const ROOT_READING = defineFunction({
  name: "ROOT.READING",
  summary: "Refractometer reading that goes with so much sugar in the root",
  about:
    "The other way round from ROOT.SUGAR_FROM_SAP, with the same assumptions: it tells what to expect on the refractometer, " +
    "and how far a reading is from your floor.",
  parameters: {sugar: sugarInRoot, ...rootMakeUp},
  returns: {label: "Refractometer reading of the sap", unit: "°Brix"},
  refuses: ["more sugar than any sap gives with such a root"],
  sources: ["balance", "feller2007"],
  example: {formula: "=ROOT.READING(400)", gives: 14.16},
  calculate: ({sugar, insoluble, other, share}) => reading(sugar, insoluble, other, share),
})
