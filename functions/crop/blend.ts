import {defineFunction} from "../define"
import {quantity} from "../parameters"

/**
 * Yield between a short own record and that of a group, kg/ha: Z·own + (1 - Z)·group with Z = n/(n + k), n years
 * of own record. With no year it is the group's, with many it comes to the own (Bühlmann's credibility).
 */
export function blend(own: number, group: number, years: number, k: number): number {
  const Z = years / (years + k)
  return Z * own + (1 - Z) * group
}

export const CROP_BLEND = defineFunction({
  name: "CROP.BLEND",
  summary: "Blend of a short own record with the yield of a group",
  about:
    "The own record weighs n/(n + k): at k years it weighs one half. In theory k is the variance from year to year " +
    "within a farm over the variance between farms; without those figures it is a judgement.",
  parameters: {
    own: quantity("Mean of the own record", "kg/ha", {min: 0}),
    group: quantity("Mean of the group", "kg/ha", {min: 0}),
    years: quantity("Years in the own record", "years", {min: 0, whole: true}),
    k: quantity("Years at which both weigh the same", "years", {above: 0}),
  },
  returns: {label: "Blended yield", unit: "kg/ha"},
  sources: ["buhlmann1967"],
  example: {formula: "=CROP.BLEND(4350,4000,4,3)", gives: 4200},
  calculate: ({own, group, years, k}) => blend(own, group, years, k),
})
