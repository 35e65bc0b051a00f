import {defineFunction, type Refusal} from "../define"
import {measured, optional, quantity} from "../parameters"
import {dividesByZero} from "../refusal"

const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0)

/**
 * Factor by which a planting bears what the model gives for it: the recorded crop over the modelled one, drawn toward 1 by
 * the number of years, 1 + n/(n + k)·(ratio - 1). Refuses a modelled crop of 0 in all years.
 */
export function fit(records: readonly number[], modelled: readonly number[], k: number): number | Refusal {
  const model = total(modelled)
  if (model === 0) return dividesByZero("The modelled crop is 0 in all years: there is no ratio to it")
  const years = records.length
  return 1 + (years / (years + k)) * (total(records) / model - 1)
}

export const CROP_FIT = defineFunction({
  name: "CROP.FIT",
  summary: "Factor that fits the modelled crop to the planting's own record",
  about:
    "All recorded years together over all modelled ones, drawn toward 1 while the years are few: two years count half, three years " +
    "three fifths. The weight n/(n + 2) is chosen. Years without a record are left out.",
  parameters: {
    records: measured("Recorded crop", "kg/ha", {min: 0}),
    modelled: measured("Modelled crop of the same years", "kg/ha", {min: 0}),
    k: optional(quantity("Years at which the record counts half", "years", {above: 0}), 2),
  },
  together: ["records", "modelled"],
  returns: {label: "Factor", unit: "number"},
  refuses: ["a modelled crop of 0 in all years"],
  sources: ["buhlmann1967", "planning"],
  example: {formula: "=CROP.FIT({4000;5000},{5000;5000})", gives: 0.95},
  calculate: ({records, modelled, k}) => fit(records, modelled, k),
})
