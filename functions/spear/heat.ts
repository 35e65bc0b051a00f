import {defineFunction, type Refusal} from "../define"
import {optional, quantity} from "../parameters"
import {outOfRange} from "../refusal"

const airTemperature = (label: string) => quantity(label, "°C", {min: -60, max: 60})

/**
 * Heat of one day, °C·day: the mean of its highest and lowest air temperature, less the base, and never
 * below zero. What the mean has above `cap` is not counted; `null` is no cap.
 *
 * This is Method 1 of McMaster & Wilhelm (1997). Their Method 2 lifts each temperature to the base before
 * averaging and gives more on days that straddle it, so a base fitted with one method is not valid with
 * the other.
 */
export function heat(high: number, low: number, base: number, cap: number | null): number | Refusal {
  if (high < low) return outOfRange(`Highest temperature (${high} °C) is below the lowest (${low} °C)`)
  const mean = (high + low) / 2
  return Math.max(0, Math.min(mean, cap ?? mean) - base)
}

export const SPEAR_HEAT = defineFunction({
  name: "SPEAR.HEAT",
  summary: "Heat of one day above a base temperature",
  about:
    "Takes the mean of the highest and lowest temperature, less the base (Method 1 of McMaster & Wilhelm); " +
    "what the mean has above the cap is not counted.",
  parameters: {
    high: airTemperature("Highest air temperature of the day"),
    low: airTemperature("Lowest air temperature of the day"),
    base: quantity("Temperature below which nothing grows", "°C", {min: -5, max: 20}),
    cap: optional(
      quantity("Temperature above which growth gains no more", "°C", {min: 0, max: 60}),
      null,
      "no cap",
    ),
  },
  returns: {label: "Heat of the day", unit: "°C·day"},
  refuses: ["a highest temperature below the lowest"],
  sources: ["mcmaster1997"],
  example: {formula: "=SPEAR.HEAT(19,7,5)", gives: 8},
  calculate: ({high, low, base, cap}) => heat(high, low, base, cap),
})
