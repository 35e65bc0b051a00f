import {defineFunction} from "../define"
import {quantity, optional} from "../parameters"
import {roundUp} from "../rounding"

/**
 * Days from the close until the room in the store, kg/ha, is filled at `rate`, kg/ha/day, after a lag in which the
 * fern comes up: room/rate + lag, the whole of it rounded up. 0 when there is no room, whatever the lag.
 */
export const daysNeeded = (room: number, rate: number, lag: number): number =>
  room <= 0 ? 0 : roundUp(room / rate + lag)

export const FERN_DAYS_NEEDED = defineFunction({
  name: "FERN.DAYS_NEEDED",
  summary: "Days of fern that fill the room in the store, rounded up",
  about:
    "A hand check at a steady rate, beside the daily balance of FERN.SAFE_CLOSE. The lag is the time the fern takes to come " +
    "up and green; growers reckon 6 to 8 weeks to a full canopy. A store without room needs no days.",
  parameters: {
    room: quantity("Room left in the store", "kg/ha"),
    rate: quantity("Sugar put back a day", "kg/ha/day", {above: 0}),
    lag: optional(quantity("Days until the fern puts sugar back", "days", {min: 0}), 0),
  },
  returns: {label: "Days of fern needed", unit: "days"},
  sources: ["identity", "planning", "practice"],
  example: {formula: "=FERN.DAYS_NEEDED(1100,14,28)", gives: 107},
  calculate: ({room, rate, lag}) => daysNeeded(room, rate, lag),
})
