import {defineFunction, type Refusal} from "../define"
import {optional, quantity} from "../parameters"
import {dividesByZero} from "../refusal"
import {wantedCover} from "./breakPrice"

/** The arguments of costs and debt to be earned, shared with DEBT.WEIGHT_NEEDED. */
export const toEarn = {
  costs: quantity("Cash costs of the year that do not follow the weight", "money", {min: 0}),
  per_kg: quantity("Picking, hauling and packing per harvested kg", "money/kg", {min: 0}),
}
export const debtToEarn = {
  due: optional(quantity("Principal and interest due", "money", {min: 0}), 0),
  cover: wantedCover,
  packout: optional(quantity("Sold share of the harvested weight", "share", {above: 0, max: 1}), 1),
}

export const aboutNeeded =
  "Without what is due it is the break-even of cash costs; with it, of debt service; with a cover above 1, of that cover. Taxes " +
  "and family living belong to the costs where they have to be earned too. All sums for the same ground: a farm, a field or a " +
  "hectare. A general guide: ask the lender which cover counts."

/**
 * Price of a sold kg that just pays costs, `wanted` times what is due, and the cost of each harvested kg:
 * (costs + wanted·due + weight·perKg)/(weight·packout).
 */
export function priceNeeded(
  costs: number,
  perKg: number,
  weight: number,
  due: number,
  wanted: number,
  packout: number,
): number | Refusal {
  if (weight === 0) return dividesByZero("No weight is harvested: no price can pay the costs")
  return (costs + wanted * due + weight * perKg) / (weight * packout)
}

export const DEBT_PRICE_NEEDED = defineFunction({
  name: "DEBT.PRICE_NEEDED",
  summary: "Price that pays cash costs, debt service or a wanted cover",
  about: aboutNeeded,
  parameters: {...toEarn, weight: quantity("Weight harvested", "kg", {min: 0}), ...debtToEarn},
  returns: {label: "Price needed", unit: "money/kg"},
  refuses: ["no weight harvested"],
  sources: ["identity", "planning"],
  example: {formula: "=DEBT.PRICE_NEEDED(46000,0.60,270000,28475.50,1.25)", gives: 0.9022},
  calculate: ({costs, per_kg, weight, due, cover, packout}) =>
    priceNeeded(costs, per_kg, weight, due, cover, packout),
})
