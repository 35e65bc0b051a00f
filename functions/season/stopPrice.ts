import {defineFunction} from "../define"
import {quantity} from "../parameters"

/**
 * Lowest price of packed spears, money/kg, at which one more picking pays.
 *
 * It is the price p at which kg·[packout·(p - pack) - pick - haul] - passCost - reserveWorth·reserveLost is 0.
 * `pick` and `haul` are per harvested kg, `pack` per packed kg, `kg` is harvested. Only costs that stopping
 * saves belong in it.
 */
export function stopPrice(
  pick: number,
  haul: number,
  pack: number,
  packout: number,
  passCost: number,
  reserveWorth: number,
  reserveLost: number,
  kg: number,
): number {
  return (pick + haul + packout * pack + (passCost + reserveWorth * reserveLost) / kg) / packout
}

export const SEASON_STOP_PRICE = defineFunction({
  name: "SEASON.STOP_PRICE",
  summary: "Lowest price at which one more picking pays",
  about:
    "Count only costs that stopping would save: not rent, interest or crew already paid for. The reserve lost is what " +
    "this picking takes from next spring, in any unit as long as its worth is per the same unit; a field that is to " +
    "be cleared has a reserve worth of 0. Compare the expected price net of commission on the day of delivery.",
  parameters: {
    pick: quantity("Picking per harvested kg", "money/kg", {min: 0}),
    haul: quantity("Hauling per harvested kg", "money/kg", {min: 0}),
    pack: quantity("Packing, cooling and selling per packed kg", "money/kg", {min: 0}),
    packout: quantity("Packed share of the harvested weight", "share", {above: 0, max: 1}),
    pass_cost: quantity("Cost of going through the field once", "money/ha", {min: 0}),
    reserve_worth: quantity("Worth of one unit of reserve on a hectare", "money/unit", {min: 0}),
    reserve_lost: quantity("Reserve that this picking takes from next spring", "units", {min: 0}),
    kg: quantity("Weight of the next picking, harvested", "kg/ha", {above: 0}),
  },
  returns: {label: "Lowest price that pays", unit: "money/kg"},
  sources: ["identity", "planning"],
  example: {formula: "=SEASON.STOP_PRICE(0.38,0.03,0.22,0.92,18,3500,0.012,85)", gives: 1.4329156},
  calculate: ({pick, haul, pack, packout, pass_cost, reserve_worth, reserve_lost, kg}) =>
    stopPrice(pick, haul, pack, packout, pass_cost, reserve_worth, reserve_lost, kg),
})
