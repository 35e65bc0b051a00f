import {defineFunction, type Refusal} from "../define"
import {quantity, side} from "../parameters"
import {isRefusal} from "../refusal"
import {atAge, yieldTable} from "./atAge"

/** Lower (side -1) or upper (side 1) yield at an age, kg/ha: the yield of the table less or plus a share of itself. */
export function band(
  age: number,
  ages: readonly number[],
  yields: readonly number[],
  spread: number,
  side: -1 | 1,
): number | Refusal {
  const middle = atAge(age, ages, yields)
  return isRefusal(middle) ? middle : middle * (1 + side * spread)
}

export const CROP_BAND = defineFunction({
  name: "CROP.BAND",
  summary: "Lower or upper yield at an age, a share below or above your table",
  about:
    "The spread is your own judgement of how far a year can fall from the table; it carries no stated probability.",
  parameters: {
    ...yieldTable,
    spread: quantity("Spread on either side", "share", {min: 0, max: 1}),
    side: side("Side"),
  },
  together: ["ages", "yields"],
  returns: {label: "Yield at that end", unit: "kg/ha"},
  refuses: ["ages that do not rise from row to row", "an age outside the table"],
  sources: ["planning"],
  example: {formula: "=CROP.BAND(5,{3,4,6},{900,2400,4800},0.2,-1)", gives: 2880},
  calculate: ({age, ages, yields, spread, side}) => band(age, ages, yields, spread, side),
})
