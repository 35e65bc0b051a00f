import {defineFunction, type Refusal} from "../define"
import {optional, quantity} from "../parameters"
import {outOfRange} from "../refusal"

/** Asparagus freezes at or below this, °C (Suslow, UC Davis). */
const FREEZES = -0.6

/** Days that spears keep at a steady temperature: daysAt1·per10^(-(T - 1)/10). Refuses what freezes them. */
export function keepDays(temperature: number, daysAt1: number, per10: number): number | Refusal {
  if (temperature <= FREEZES)
    return outOfRange(`Asparagus freezes at ${FREEZES} °C, and ${temperature} °C is given`)
  return daysAt1 * per10 ** (-(temperature - 1) / 10)
}

export const COOLER_KEEP_DAYS = defineFunction({
  name: "COOLER.KEEP_DAYS",
  summary: "Days that spears keep in store at a steady temperature",
  about:
    "An assumption: 18 days at 1 °C, 3 at 20 °C, a straight line in the logarithms between. Published: 14 to 21 days at 2 °C. " +
    "About 10 to 12 days at 0 °C may injure the tips, so 2 °C is the rule for longer storage. Every hour warm between cutting " +
    "and cooling takes more than it takes here: log it.",
  parameters: {
    temperature: quantity("Temperature of the store", "°C", {min: -20, max: 40}),
    days_at_1: optional(quantity("Days it keeps at 1 °C", "days", {above: 0}), 18),
    per_10: optional(quantity("Times shorter for 10 °C more", "number", {min: 1, max: 10}), 2.57),
  },
  returns: {label: "Days it keeps", unit: "days"},
  refuses: ["a temperature at which it freezes"],
  sources: ["planning", "ucPostharvest"],
  example: {formula: "=COOLER.KEEP_DAYS(5)", gives: 12.3},
  calculate: ({temperature, days_at_1, per_10}) => keepDays(temperature, days_at_1, per_10),
})
