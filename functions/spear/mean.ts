import {defineFunction, type Refusal} from "../define"
import {measured, optional} from "../parameters"
import {dividesByZero} from "../refusal"

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

/**
 * Mean of sizes, each taken as often as it was counted; `null` counts each once. In the unit of the sizes.
 * Refuses counts that add up to 0. `sizes` and `counts` go together row by row.
 */
export function mean(sizes: readonly number[], counts: readonly number[] | null): number | Refusal {
  const times = counts ?? sizes.map(() => 1)
  const total = sum(times)
  if (total === 0) return dividesByZero("Spears counted add up to 0")
  return sum(sizes.map((size, row) => size * times[row]!)) / total
}

export const SPEAR_MEAN = defineFunction({
  name: "SPEAR.MEAN",
  summary: "Mean diameter of the spears measured",
  about:
    "With counts, each diameter counts as often as it was found; without, once. A row with a blank in it is left out.",
  parameters: {
    diameters: measured("Spear diameters", "mm", {above: 0, max: 60}),
    counts: optional(measured("Spears counted", "count", {min: 0}), null, "each diameter once"),
  },
  together: ["diameters", "counts"],
  returns: {label: "Mean diameter", unit: "mm"},
  refuses: ["counts that add up to 0"],
  sources: ["identity"],
  example: {formula: "=SPEAR.MEAN({8,10,12,14},{3,9,6,2})", gives: 10.7},
  calculate: ({diameters, counts}) => mean(diameters, counts),
})
