import {defineFunction} from "../define"
import {structuralRoot, sugarInRoot} from "./quantities"

/** Sugar in the store, kg/ha: C = S·c/(1000 - c), c in mg per g dry root, S the structural root, kg/ha. */
export const reserve = (sugar: number, structure: number): number => (structure * sugar) / (1000 - sugar)

export const ROOT_RESERVE = defineFunction({
  name: "ROOT.RESERVE",
  summary: "Sugar in the store that goes with a concentration and so much structural root",
  about:
    "Sugar is itself part of the dry root, so the concentration falls more slowly than the store: half the store of 500 mg/g " +
    "is 333 mg/g, not 250.",
  parameters: {sugar: sugarInRoot, structure: structuralRoot},
  returns: {label: "Sugar in the store", unit: "kg/ha"},
  sources: ["identity"],
  example: {formula: "=ROOT.RESERVE(500,6000)", gives: 6000},
  calculate: ({sugar, structure}) => reserve(sugar, structure),
})
