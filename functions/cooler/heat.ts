import {defineFunction, type Refusal} from "../define"
import {optional, quantity} from "../parameters"
import {outOfRange} from "../refusal"

const KJ_KWH = 3600

/** Temperature of spears; they freeze at -0.6 °C. */
export const spearTemperature = (label: string) => quantity(label, "°C", {min: -0.6, max: 60})

export const nothingToCool = (from: number, to: number): Refusal | null =>
  from > to ? null : outOfRange(`There is nothing to cool from ${from} °C to ${to} °C`)

/** Heat to take out of a weight, kg, between two temperatures, kWh: kg·specificHeat·(from - to)/3600. */
export function heat(weight: number, from: number, to: number, specificHeat: number): number | Refusal {
  return nothingToCool(from, to) ?? (weight * specificHeat * (from - to)) / KJ_KWH
}

export const COOLER_HEAT = defineFunction({
  name: "COOLER.HEAT",
  summary: "Heat to take out of spears to cool them",
  about:
    "Heat of the spears alone. Crates, water, pumps, people and walls add to it: 1.2 to 1.5 times is an assumption in use. " +
    "Ask the maker of the cooler or a refrigeration engineer before you buy or load one to its limit.",
  parameters: {
    weight: quantity("Weight to cool", "kg", {min: 0}),
    from: spearTemperature("Temperature as it comes in"),
    to: spearTemperature("Temperature to reach"),
    specific_heat: optional(quantity("Specific heat of the spears", "kJ/kg·K", {above: 0, max: 5}), 3.94),
  },
  returns: {label: "Heat to take out", unit: "kWh"},
  refuses: ["a temperature to reach that is not below the one it comes in with"],
  sources: ["identity", "ncState"],
  example: {formula: "=COOLER.HEAT(14200,24,2)", gives: 341.9},
  calculate: ({weight, from, to, specific_heat}) => heat(weight, from, to, specific_heat),
})
