import {defineFunction, type Refusal} from "../define"
import {measured} from "../parameters"
import {notYet} from "../refusal"

/**
 * Mean yield without one highest and one lowest, kg/ha: where several share the highest or the lowest, only one
 * of them is left out. Fewer than three yields give no answer (#N/A).
 */
export function olympic(yields: readonly number[]): number | Refusal {
  if (yields.length < 3) return notYet(`only ${yields.length} of at least 3 yields recorded`)
  const kept = yields.toSorted((a, b) => a - b).slice(1, -1)
  return kept.reduce((total, kg) => total + kg, 0) / kept.length
}

export const CROP_OLYMPIC = defineFunction({
  name: "CROP.OLYMPIC",
  summary: "Mean yield without the highest and the lowest year",
  about:
    "Takes every yield in the range. The federal rule cited takes five crop years, ending the year before last: " +
    "give those five, and check the rule now in force.",
  parameters: {yields: measured("Yields", "kg/ha", {min: 0})},
  returns: {label: "Mean yield without the ends", unit: "kg/ha"},
  refuses: ["fewer than three yields"],
  sources: ["cfr1437"],
  example: {formula: "=CROP.OLYMPIC({3600,4100,2500,4400,3900})", gives: 3866.67},
  calculate: ({yields}) => olympic(yields),
})
