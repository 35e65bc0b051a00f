import {defineFunction, type Refusal} from "../define"
import {quantity} from "../parameters"
import {outOfRange} from "../refusal"
import {atLeast} from "../rounding"
import {aboutNeeded, debtToEarn, toEarn} from "./priceNeeded"

/**
 * Harvested kg that just pay costs and `wanted` times what is due: (costs + wanted·due)/(price·packout - perKg). Where a
 * kg brings no more than it costs, no weight will do.
 */
export function weightNeeded(
  costs: number,
  price: number,
  perKg: number,
  due: number,
  wanted: number,
  packout: number,
): number | Refusal {
  const brings = price * packout
  if (atLeast(perKg, brings))
    return outOfRange(
      `A harvested kg brings ${Number(brings.toPrecision(6))} and costs ${perKg}: no weight pays the rest`,
    )
  return (costs + wanted * due) / (brings - perKg)
}

export const DEBT_WEIGHT_NEEDED = defineFunction({
  name: "DEBT.WEIGHT_NEEDED",
  summary: "Weight that pays cash costs, debt service or a wanted cover",
  about: aboutNeeded,
  parameters: {
    costs: toEarn.costs,
    price: quantity("Price of a sold kg", "money/kg", {min: 0}),
    per_kg: toEarn.per_kg,
    ...debtToEarn,
  },
  returns: {label: "Weight needed", unit: "kg"},
  refuses: ["a price that leaves nothing of a kg"],
  sources: ["identity", "planning"],
  example: {formula: "=DEBT.WEIGHT_NEEDED(46000,0.95,0.60,28475.50)", gives: 212787.1},
  calculate: ({costs, price, per_kg, due, cover, packout}) =>
    weightNeeded(costs, price, per_kg, due, cover, packout),
})
