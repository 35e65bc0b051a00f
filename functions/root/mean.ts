import {defineFunction, type Refusal} from "../define"
import {measured, optional} from "../parameters"
import {dividesByZero} from "../refusal"

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

export const average = (values: readonly number[]): number => sum(values) / values.length

/** Mean of readings, in their unit, each by its weight; `null` weighs all alike. Refuses weights that add up to 0. */
export function mean(readings: readonly number[], weights: readonly number[] | null): number | Refusal {
  if (!weights) return average(readings)
  const total = sum(weights)
  if (total === 0) return dividesByZero("Weights add up to 0")
  return sum(readings.map((reading, row) => reading * weights[row]!)) / total
}

export const rootReadings = measured("Readings", "as given", {min: 0})

export const ROOT_MEAN = defineFunction({
  name: "ROOT.MEAN",
  summary: "Mean of root samples, of readings or of sugar",
  about:
    "A weight says how much a sample stands for: plants in its part of the field, or roots pooled in it. A row with a blank " +
    "in it is left out.",
  parameters: {
    readings: rootReadings,
    weights: optional(measured("Weights", "number", {min: 0}), null, "all alike"),
  },
  together: ["readings", "weights"],
  returns: {label: "Mean", unit: "as given"},
  refuses: ["weights that add up to 0"],
  sources: ["identity"],
  example: {formula: "=ROOT.MEAN({412,388,455,430,367,441,402,398,420,376})", gives: 408.9},
  calculate: ({readings, weights}) => mean(readings, weights),
})
