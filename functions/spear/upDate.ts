import {isoOf} from "../calendar"
import {defineFunction, type Refusal} from "../define"
import {dates, measured, quantity} from "../parameters"
import {notYet, wrongKind} from "../refusal"
import {atLeast} from "../rounding"

/**
 * First day on which the running sum of max(0, soil - base) is at least `sum`, °C·day. One row is one day. Refuses
 * days that do not rise from row to row; a sum that is not reached has no day yet (#N/A).
 */
export function upDate(
  days: readonly number[],
  soil: readonly number[],
  base: number,
  sum: number,
): number | Refusal {
  for (const [row, day] of days.entries()) {
    const before = days[row - 1]
    if (before !== undefined && day <= before)
      return wrongKind(`Days must rise from row to row: ${isoOf(day)} comes after ${isoOf(before)}`)
  }
  let reached = 0
  for (const [row, day] of days.entries()) {
    reached += Math.max(0, soil[row]! - base)
    if (atLeast(reached, sum)) return day
  }
  const short = Number((sum - reached).toPrecision(3))
  return notYet(`Not reached by ${isoOf(days.at(-1)!)}: ${short} °C·day short`)
}

export const SPEAR_UP_DATE = defineFunction({
  name: "SPEAR.UP_DATE",
  summary: "Day on which the soil's heat sum brings the spears up",
  about:
    "One row a day, from the day the crown starts or the ridge is warmed. A day that is missing or blank adds nothing, so " +
    "the date comes out late. For white asparagus Heißner and others found 255 °C·day above 4.4 °C in the ridge, from " +
    "warming to the first harvest; for green on flat ground find your own sum from past springs.",
  parameters: {
    dates: dates("Days of the soil temperatures"),
    soil: measured("Mean soil temperatures of the day", "°C", {min: -40, max: 60}),
    base: quantity("Temperature below which nothing grows", "°C", {min: -5, max: 20}),
    sum: quantity("Heat sum to reach", "°C·day", {above: 0}),
  },
  together: ["dates", "soil"],
  returns: {label: "Day the heat sum is reached", unit: "date"},
  refuses: ["days that do not rise from row to row", "a heat sum that is not reached"],
  sources: ["heissner2006", "planning"],
  example: {
    formula: '=SPEAR.UP_DATE({"2026-04-01","2026-04-02","2026-04-03","2026-04-04"},{12,3,14,15},4.4,20)',
    gives: "2026-04-04",
  },
  calculate: ({dates, soil, base, sum}) => upDate(dates, soil, base, sum),
})
