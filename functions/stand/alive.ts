import {defineFunction, type Refusal} from "../define"
import {quantity} from "../parameters"
import {outOfRange} from "../refusal"
import {atLeast} from "../rounding"

/** Chosen: uneven setting can crowd a counted stretch by some plants; above this the count or the gap is a slip. */
const MOST = 1.2

/**
 * Crowns found over crowns set on a counted length of row: found/(length/gap), both m. Above 1 is given as counted,
 * since plants are not set to the millimetre; above 1.2 is refused.
 */
export function alive(found: number, length: number, plantGap: number): number | Refusal {
  const set = length / plantGap
  if (!atLeast(MOST, found / set))
    return outOfRange(`More than planted: ${found} crowns found where ${set.toFixed(1)} were set`)
  return found / set
}

export const STAND_ALIVE = defineFunction({
  name: "STAND.ALIVE",
  summary: "Share of the crowns set that are still alive, from a count",
  about:
    "Count crowns with living spears or fern along a measured length of row, best in several places. Up to 1.2 is given as " +
    "counted, since plants are not set evenly.",
  parameters: {
    found: quantity("Crowns found alive", "count", {min: 0}),
    length: quantity("Length of row counted", "m", {above: 0}),
    plant_gap: quantity("Gap between plants in the row", "m", {above: 0, max: 10}),
  },
  returns: {label: "Share of plants alive", unit: "share"},
  refuses: ["more than 1.2 times the crowns set"],
  sources: ["identity", "planning"],
  example: {formula: "=STAND.ALIVE(128,50,0.33)", gives: 0.845},
  calculate: ({found, length, plant_gap}) => alive(found, length, plant_gap),
})
