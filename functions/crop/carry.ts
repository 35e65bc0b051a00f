import {defineFunction, type Refusal} from "../define"
import {quantity} from "../parameters"
import {outOfRange} from "../refusal"

/**
 * Next year's yield after cutting past the plan, kg/ha: every day over takes the same share of the planned yield.
 * A straight line, meant for a few days. Refuses days that would take more than the whole crop: a 0 there
 * would read as a forecast, where the line has only left the days it was drawn for.
 */
export function carry(kg: number, daysOver: number, loss: number): number | Refusal {
  const lost = loss * daysOver
  if (lost > 1)
    return outOfRange(
      `${daysOver} days at ${loss} a day take more than the whole crop: too far for this rule`,
    )
  return kg * (1 - lost)
}

export const CROP_CARRY = defineFunction({
  name: "CROP.CARRY",
  summary: "Next year's yield after cutting some days past the plan",
  about:
    "Every day over takes the same share of next year's yield. The share is an assumption of yours: calibrate it on your " +
    "own fields. Made for a few days; for more, run the reserve balance of both seasons and compare.",
  parameters: {
    yield: quantity("Next year's yield as planned", "kg/ha", {min: 0}),
    days_over: quantity("Days of cutting past the plan", "days", {min: 0}),
    loss: quantity("Share of next year's yield that a day over takes", "share/day", {min: 0, max: 1}),
  },
  returns: {label: "Next year's yield", unit: "kg/ha"},
  refuses: ["days that would take more than the whole crop"],
  sources: ["planning"],
  example: {formula: "=CROP.CARRY(4500,6,0.006)", gives: 4338},
  calculate: ({yield: kg, days_over, loss}) => carry(kg, days_over, loss),
})
