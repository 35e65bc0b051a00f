import {defineFunction, type Refusal} from "../define"
import {dates, measured, quantity} from "../parameters"
import {isRefusal, notYet} from "../refusal"
import {average, lastDayOnLine, trend} from "./trend"

/**
 * Last day on which the line of least squares through the diameters is still at or above `limit`, mm. It may lie
 * before the first measurement, when the line was under the limit already. Without two different days, with a
 * line that does not fall, and where it meets the limit on no day of the calendar, there is no such day (#N/A).
 */
export function dateAt(
  days: readonly number[],
  diameters: readonly number[],
  limit: number,
): number | Refusal {
  const slope = trend(days, diameters)
  if (isRefusal(slope)) return slope
  const mean = average(diameters)
  if (slope >= 0) {
    const under = mean < limit ? `, and its mean of ${mean.toFixed(1)} mm is under ${limit} mm already` : ""
    return notYet(`Not thinning: the line through the diameters does not fall${under}`)
  }
  return (
    lastDayOnLine(days, diameters, slope, limit) ??
    notYet(`Not thinning fast enough: the line meets ${limit} mm on no day of the calendar`)
  )
}

export const SPEAR_DATE_AT = defineFunction({
  name: "SPEAR.DATE_AT",
  summary: "Last day on which the line through your diameters is at or above a limit",
  about:
    "The straight line of least squares, drawn on: weather, water and a change of hands can bend it, so measure each week " +
    "and look again. If the line was under the limit before you first measured, the day is in the past: the limit is " +
    "behind you. A row with a blank in it is left out.",
  parameters: {
    dates: dates("Days of the measurements"),
    diameters: measured("Mean spear diameters", "mm", {above: 0, max: 60}),
    limit: quantity("Diameter limit", "mm", {above: 0, max: 60}),
  },
  together: ["dates", "diameters"],
  returns: {label: "Last day at or above the limit", unit: "date"},
  refuses: ["fewer than two different days", "spears that are not thinning"],
  sources: ["identity", "planning"],
  example: {
    formula:
      '=SPEAR.DATE_AT({"2026-05-04","2026-05-11","2026-05-18","2026-05-25"},{13.1,12.4,11.6,10.9},9.5)',
    gives: "2026-06-07",
  },
  calculate: ({dates, diameters, limit}) => dateAt(dates, diameters, limit),
})
