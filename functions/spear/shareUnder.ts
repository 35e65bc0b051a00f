import {defineFunction, type Refusal} from "../define"
import {measured, optional, quantity} from "../parameters"
import {mean} from "./mean"

/**
 * Share of the spears that are thinner than `limit`, 0 to 1. A spear of just that diameter, mm, is not thinner.
 * Each diameter is taken as often as it was counted; `null` counts each once. Refuses counts that add up to 0.
 */
export function shareUnder(
  diameters: readonly number[],
  limit: number,
  counts: readonly number[] | null,
): number | Refusal {
  return mean(
    diameters.map((diameter) => (diameter < limit ? 1 : 0)),
    counts,
  )
}

export const SPEAR_SHARE_UNDER = defineFunction({
  name: "SPEAR.SHARE_UNDER",
  summary: "Share of the spears that are thinner than a limit",
  about:
    "A spear of just the limit is not thinner. Some growers stop cutting when 25 to 75 % of the spears are under 9.5 mm " +
    "(3/8 inch): a sign read off the field, without a measurement of reserves behind it. A row with a blank in it is left out.",
  parameters: {
    diameters: measured("Spear diameters", "mm", {above: 0, max: 60}),
    limit: quantity("Diameter limit", "mm", {above: 0, max: 60}),
    counts: optional(measured("Spears counted", "count", {min: 0}), null, "each diameter once"),
  },
  together: ["diameters", "counts"],
  returns: {label: "Share of thinner spears", unit: "share"},
  refuses: ["counts that add up to 0"],
  sources: ["identity", "stopSign"],
  example: {formula: "=SPEAR.SHARE_UNDER({8,10,12,14},9.5,{3,9,6,2})", gives: 0.15},
  calculate: ({diameters, limit, counts}) => shareUnder(diameters, limit, counts),
})
