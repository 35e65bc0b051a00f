import {LAST_DAY, isoOf} from "../calendar"
import {defineFunction, type Refusal} from "../define"
import {date, quantity} from "../parameters"
import {notYet, outOfRange} from "../refusal"
import {atLeast, roundDown} from "../rounding"

/**
 * Last day on which the store, kg/ha on the day `from`, is still at or above your floor, at a steady draw in kg/ha/day:
 * (start - floor)/draw days later, rounded down. Refuses a start below the floor; without a draw there is no such day.
 */
export function dateAt(from: number, start: number, draw: number, floor: number): number | Refusal {
  if (!atLeast(start, floor))
    return outOfRange(`Store at the start (${start} kg/ha) is below your floor (${floor} kg/ha) already`)
  if (draw <= 0) return notYet(`Never: a draw of ${draw} kg/ha/day does not bring the store down`)
  const day = from + roundDown(Math.max(0, start - floor) / draw)
  return day <= LAST_DAY ? day : notYet(`Never: not before ${isoOf(LAST_DAY)}, the last day of the calendar`)
}

export const ROOT_DATE_AT = defineFunction({
  name: "ROOT.DATE_AT",
  summary: "Last day on which the store is still at or above your floor",
  about:
    "A hand check at a steady draw. The floor is your own number. The store falls on after the close, while it builds the " +
    "fern, so a floor for the lowest of the year needs the daily balance.",
  parameters: {
    from: date("Day of the start"),
    start: quantity("Store at the start", "kg/ha", {min: 0}),
    draw: quantity("Draw a day", "kg/ha/day"),
    floor: quantity("Your floor", "kg/ha", {min: 0}),
  },
  returns: {label: "Last day at or above the floor", unit: "date"},
  refuses: ["a start below the floor", "a store that does not fall"],
  sources: ["identity", "planning"],
  example: {formula: '=ROOT.DATE_AT("2026-04-20",2000,18,1200)', gives: "2026-06-03"},
  calculate: ({from, start, draw, floor}) => dateAt(from, start, draw, floor),
})
