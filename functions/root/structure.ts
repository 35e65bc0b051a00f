import {defineFunction} from "../define"
import {dryRoot, plantsOnAHectare, sugarInRoot} from "./quantities"

/** Structural root, kg/ha: the dry root of a hectare less its sugar, from mg/g, g per plant and plants per hectare. */
export const structure = (sugar: number, dryRoot: number, plants: number): number =>
  ((1000 - sugar) * dryRoot * plants) / 1e6 // mg to kg

export const ROOT_STRUCTURE = defineFunction({
  name: "ROOT.STRUCTURE",
  summary: "Structural root of a hectare, from sampled dry root and its sugar",
  about: "The dry root without its sugar. With ROOT.POOL of the same sample it adds up to all the dry root.",
  parameters: {sugar: sugarInRoot, dry_root: dryRoot, plants: plantsOnAHectare},
  returns: {label: "Structural root", unit: "kg/ha"},
  sources: ["identity"],
  example: {formula: "=ROOT.STRUCTURE(500,600,20000)", gives: 6000},
  calculate: ({sugar, dry_root, plants}) => structure(sugar, dry_root, plants),
})
