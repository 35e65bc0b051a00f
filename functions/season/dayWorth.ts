import {defineFunction} from "../define"
import {quantity} from "../parameters"

/**
 * Worth of one more day of cutting, money/ha/day: what the packed weight of the day leaves after picking and
 * packing, less what the day costs next year. Below 0 the day costs more than it brings. `pickCost` is per
 * packed kg: picking and hauling per harvested kg, divided by the packout.
 */
export function dayWorth(
  kgDay: number,
  price: number,
  pickCost: number,
  packCost: number,
  nextYearCost: number,
): number {
  return kgDay * (price - pickCost - packCost) - nextYearCost
}

export const SEASON_DAY_WORTH = defineFunction({
  name: "SEASON.DAY_WORTH",
  summary: "What one more day of cutting brings after its cost next year",
  about:
    "Count only costs that stopping would save. All weights are packed: turn a cost per harvested kg into one per " +
    "packed kg by dividing it by the packout. Next year's cost is yours to judge; set it to 0 for a field in its last season.",
  parameters: {
    kg_day: quantity("Packed weight of the day", "kg/ha/day", {min: 0}),
    price: quantity("Price of packed spears", "money/kg", {min: 0}),
    pick_cost: quantity("Picking and hauling per packed kg", "money/kg", {min: 0}),
    pack_cost: quantity("Packing and selling per packed kg", "money/kg", {min: 0}),
    next_year_cost: quantity("What the day costs next year", "money/ha/day", {min: 0}),
  },
  returns: {label: "Worth of one more day", unit: "money/ha/day"},
  sources: ["identity", "planning"],
  example: {formula: "=SEASON.DAY_WORTH(85,1.9,0.95,0.45,60)", gives: -17.5},
  calculate: ({kg_day, price, pick_cost, pack_cost, next_year_cost}) =>
    dayWorth(kg_day, price, pick_cost, pack_cost, next_year_cost),
})
