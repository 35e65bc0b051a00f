import {defineFunction} from "../define"
import {measured, quantity} from "../parameters"

/**
 * Median diameter at the middle of a week of the season, mm, by a table with a row for each week of a season of another
 * length: the table is stretched or shrunk to `weeks`. Straight lines between the middles of the rows, level before the
 * first and after the last.
 */
export function median(week: number, weeks: number, medians: readonly number[]): number {
  const last = medians.length - 1
  const place = Math.min(last, Math.max(0, ((week - 0.5) / weeks) * medians.length - 0.5))
  const row = Math.min(Math.max(0, last - 1), Math.floor(place))
  const next = medians[Math.min(last, row + 1)]!
  return medians[row]! + (place - row) * (next - medians[row]!)
}

export const SPEAR_MEDIAN = defineFunction({
  name: "SPEAR.MEDIAN",
  summary: "Median diameter in a week of the season, by your own table",
  about:
    "Largest in weeks 2 to 5, then falling (published in words). For 8 weeks 11.5, 13, 13.5, 13, 12.5, 11.5, 10.5 and 9.5 mm is " +
    "an assumption, three quarters of it in a first season: measure your own. With PACK.SIZE_SHARE it gives the sizes of the week.",
  parameters: {
    week: quantity("Week of the season, counted from 1", "number", {min: 1, max: 53}),
    weeks: quantity("Weeks of the season", "weeks", {above: 0, max: 53}),
    medians: measured("Medians of the weeks of the table", "mm", {above: 0, max: 60}),
  },
  returns: {label: "Median diameter", unit: "mm"},
  sources: ["stopSign", "planning"],
  example: {formula: "=SPEAR.MEDIAN(3,8,{11.5,13,13.5,13,12.5,11.5,10.5,9.5})", gives: 13.5},
  calculate: ({week, weeks, medians}) => median(week, weeks, medians),
})
