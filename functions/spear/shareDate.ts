import {defineFunction, type Refusal} from "../define"
import {dates, measured, quantity} from "../parameters"
import {isRefusal, notYet} from "../refusal"
import {average, lastDayOnLine, trend} from "./trend"

/**
 * Last day on which the line of least squares through the shares of thin spears is at or under `share`, 0 to 1. It may lie
 * before the first count, when the line was above already. Without two different days, with a line that does not rise, and
 * where it meets the share on no day of the calendar, there is no such day (#N/A).
 */
export function shareDate(
  days: readonly number[],
  shares: readonly number[],
  share: number,
): number | Refusal {
  if (new Set(days).size < 2)
    return notYet("Thin spears counted on one day only: a line needs two different days")
  const slope = trend(days, shares)
  if (isRefusal(slope)) return slope
  const mean = average(shares)
  if (slope <= 0) {
    const over = mean > share ? ", and their mean is above the limit already" : ""
    return notYet(`The share of thin spears does not rise${over}`)
  }
  return (
    lastDayOnLine(days, shares, slope, share) ??
    notYet("The share of thin spears rises too slowly to meet the limit on a day of the calendar")
  )
}

export const SPEAR_SHARE_DATE = defineFunction({
  name: "SPEAR.SHARE_DATE",
  summary: "Last day on which the line through your shares of thin spears is at or under a share",
  about:
    "The straight line of least squares through the shares counted, drawn on. Stop when 25 to 75 % of the spears are under " +
    "9.5 mm, one page for growers says, and calls it a better guide than a number of weeks; which share is yours to choose. " +
    "A share of 40 spears has a standard error of 7 to 8 points, so count each week. A row with a blank in it is left out.",
  parameters: {
    dates: dates("Days of the counts"),
    shares: measured("Shares of thin spears", "share", {min: 0, max: 1}),
    share: quantity("Share at which cutting ends", "share", {above: 0, max: 1}),
  },
  together: ["dates", "shares"],
  returns: {label: "Last day at or under the share", unit: "date"},
  refuses: ["fewer than two different days", "shares that do not rise"],
  sources: ["identity", "stopSign"],
  example: {
    formula:
      '=SPEAR.SHARE_DATE({"2026-05-04","2026-05-11","2026-05-18","2026-05-25"},{0.1,0.15,0.2,0.25},0.5)',
    gives: "2026-06-29",
  },
  calculate: ({dates, shares, share}) => shareDate(dates, shares, share),
})
