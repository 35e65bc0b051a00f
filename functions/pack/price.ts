import {defineFunction, type Refusal} from "../define"
import {measured} from "../parameters"
import {dividesByZero} from "../refusal"

/** Mean price of a kg over sizes or buyers, each weighed by its weight. Weights that add up to 0 are refused. */
export function price(weights: readonly number[], prices: readonly number[]): number | Refusal {
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  if (total === 0) return dividesByZero("Weights add up to 0: there is no mean price")
  return weights.reduce((sum, weight, row) => sum + weight * prices[row]!, 0) / total
}

export const PACK_PRICE = defineFunction({
  name: "PACK.PRICE",
  summary: "Mean price of a kg over sizes or buyers, by their weights",
  about:
    "Weights may be kg or shares of the crop. Give prices net of commission, for the days on which you expect to deliver. " +
    "A row with a blank in it is left out.",
  parameters: {
    weights: measured("Weights", "as given", {min: 0}),
    prices: measured("Prices", "money/kg", {min: 0}),
  },
  together: ["weights", "prices"],
  returns: {label: "Mean price", unit: "money/kg"},
  refuses: ["weights that add up to 0"],
  sources: ["identity"],
  example: {formula: "=PACK.PRICE({300,500,200},{3.1,2.6,1.4})", gives: 2.51},
  calculate: ({weights, prices}) => price(weights, prices),
})
