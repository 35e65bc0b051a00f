import {defineFunction} from "../define"
import {dryRoot, plantsOnAHectare, sugarInRoot} from "./quantities"

/** Sugar in the store, kg/ha, from mg per g dry root, g dry root (with its sugar) per plant and plants per hectare. */
export const pool = (sugar: number, dryRoot: number, plants: number): number =>
  (sugar * dryRoot * plants) / 1e6 // mg to kg

export const ROOT_POOL = defineFunction({
  name: "ROOT.POOL",
  summary: "Sugar in the store of a hectare, from sampled dry root",
  about:
    "Dry root is the whole of it, sugar included, as it comes from the oven. Count the plants that live: the store carries " +
    "the crop, and a high concentration in little root is a small store.",
  parameters: {sugar: sugarInRoot, dry_root: dryRoot, plants: plantsOnAHectare},
  returns: {label: "Sugar in the store", unit: "kg/ha"},
  sources: ["identity"],
  example: {formula: "=ROOT.POOL(400,250,20000)", gives: 2000},
  calculate: ({sugar, dry_root, plants}) => pool(sugar, dry_root, plants),
})
