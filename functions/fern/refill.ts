import {defineFunction} from "../define"
import {quantity} from "../parameters"

/** Sugar the fern puts back, kg/ha: days times the rate, kg/ha/day, and never more than the room left in the root. */
export const refill = (days: number, rate: number, room: number): number => Math.min(days * rate, room)

export const FERN_REFILL = defineFunction({
  name: "FERN.REFILL",
  summary: "Sugar the fern puts back, up to the room that is left",
  about:
    "A hand check at a steady rate; the daily balance of ROOT.SEASON follows light and leaf instead. Take the rate from " +
    "your own samples if you can: weather, disease and weeds change it.",
  parameters: {
    days: quantity("Days of full fern", "days", {min: 0}),
    rate: quantity("Sugar put back a day", "kg/ha/day", {min: 0}),
    room: quantity("Room left in the store", "kg/ha", {min: 0}),
  },
  returns: {label: "Sugar put back", unit: "kg/ha"},
  sources: ["identity", "planning"],
  example: {formula: "=FERN.REFILL(95,14,1100)", gives: 1100},
  calculate: ({days, rate, room}) => refill(days, rate, room),
})
