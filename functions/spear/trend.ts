import {FIRST_DAY, LAST_DAY} from "../calendar"
import {defineFunction, type Refusal} from "../define"
import {dates, measured} from "../parameters"
import {notYet} from "../refusal"
import {roundDown} from "../rounding"

export const average = (values: readonly number[]) =>
  values.reduce((total, value) => total + value, 0) / values.length

/**
 * Change of diameter, mm a day, by the straight line of least squares: Σ(x - x̄)(y - y0) / Σ(x - x̄)². Below 0
 * the spears are thinning. The rows may stand in any order; several on one day are fine, but fewer than two
 * different days give no line (#N/A).
 */
export function trend(days: readonly number[], diameters: readonly number[]): number | Refusal {
  if (new Set(days).size < 2) return notYet("Diameters of one day only: a trend needs two different days")
  // Counted from the first row, the numbers stay small, and diameters that are all the same give exactly 0.
  const later = days.map((day) => day - days[0]!)
  const middle = average(later)
  const x = later.map((day) => day - middle)
  const xy = x.reduce((total, dx, row) => total + dx * (diameters[row]! - diameters[0]!), 0)
  return xy / x.reduce((total, dx) => total + dx * dx, 0)
}

/**
 * Last day on which the straight line through measurements of several days has not passed `limit`; null where it meets it on
 * no day of the calendar. `slope` is the line's change a day, as `trend` gives it, and not 0.
 */
export function lastDayOnLine(
  days: readonly number[],
  values: readonly number[],
  slope: number,
  limit: number,
): number | null {
  // The line passes through the two means. Days are counted from the first row, to keep the numbers small.
  const first = days[0]!
  const meets = average(days.map((day) => day - first)) + (limit - average(values)) / slope
  const day = first + roundDown(meets)
  return day < FIRST_DAY || day > LAST_DAY ? null : day
}

export const SPEAR_TREND = defineFunction({
  name: "SPEAR.TREND",
  summary: "Change of spear diameter a day, by the straight line through your means",
  about:
    "The line of least squares; below 0 the spears are thinning. Every row weighs the same, so give means of about as " +
    "many spears. A row with a blank in it is left out.",
  parameters: {
    dates: dates("Days of the measurements"),
    diameters: measured("Mean spear diameters", "mm", {above: 0, max: 60}),
  },
  together: ["dates", "diameters"],
  returns: {label: "Change of diameter", unit: "mm/day"},
  refuses: ["fewer than two different days"],
  sources: ["identity", "planning"],
  example: {
    formula: '=SPEAR.TREND({"2026-05-04","2026-05-11","2026-05-18","2026-05-25"},{13.1,12.4,11.6,10.9})',
    gives: -0.106,
  },
  calculate: ({dates, diameters}) => trend(dates, diameters),
})
