import {defineFunction, type Refusal} from "../define"
import {optional, quantity} from "../parameters"
import {dividesByZero} from "../refusal"

/** Cover to reach, shared by what works back from it. */
export const wantedCover = optional(quantity("Cover to reach", "number", {min: 0}), 1)

/**
 * Price of a kg at which the capacity just reaches `wanted` times what is due, all else as planned: price +
 * (wanted·due - capacity)/weight. Below 0 there is no such price in the market: any price will do.
 */
export function breakPrice(
  price: number,
  weight: number,
  capacity: number,
  due: number,
  wanted: number,
): number | Refusal {
  if (weight === 0) return dividesByZero("No weight is sold: no price can pay what is due")
  return price + (wanted * due - capacity) / weight
}

export const DEBT_BREAK_PRICE = defineFunction({
  name: "DEBT.BREAK_PRICE",
  summary: "Price at which repayment capacity just meets what is due",
  about:
    "Moves the planned price until the cover is 1, or the cover you give; taxes and living are kept as they are planned. A general " +
    "guide: ask the lender which cover counts.",
  parameters: {
    price: quantity("Planned price", "money/kg", {min: 0}),
    weight: quantity("Weight sold", "kg", {min: 0}),
    capacity: quantity("Repayment capacity at that price", "money"),
    due: quantity("Principal and interest due", "money", {min: 0}),
    cover: wantedCover,
  },
  returns: {label: "Price that just pays", unit: "money/kg"},
  refuses: ["no weight sold"],
  sources: ["identity"],
  example: {formula: "=DEBT.BREAK_PRICE(2.40,210000,96000,104000)", gives: 2.438},
  calculate: ({price, weight, capacity, due, cover}) => breakPrice(price, weight, capacity, due, cover),
})
