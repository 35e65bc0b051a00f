import {defineFunction, type Refusal} from "../define"
import {measured, quantity} from "../parameters"
import {dividesByZero} from "../refusal"

/**
 * Share of a season's crop that comes in one of its weeks, counted from 1, by a table of shares for a season of another
 * length: the table is stretched or shrunk to `weeks`, its shares brought to a sum of 1. A week after the last, and one
 * before the first, has 0; the part of a week at the end has its part.
 */
export function weekShare(week: number, weeks: number, shares: readonly number[]): number | Refusal {
  const total = shares.reduce((sum, share) => sum + share, 0)
  if (total === 0) return dividesByZero("Shares of the table add up to 0")
  const upTo = (place: number) =>
    shares.reduce((sum, share, row) => sum + share * Math.min(1, Math.max(0, place - row)), 0) / total
  const rows = shares.length / weeks
  return upTo(week * rows) - upTo((week - 1) * rows)
}

export const SEASON_WEEK_SHARE = defineFunction({
  name: "SEASON.WEEK_SHARE",
  summary: "Share of the season's crop that comes in a week, by your own table",
  about:
    "For a season without a climate; with one, the daily balance follows the warmth. The table is that of a season of as many " +
    "weeks as it has rows. For 8 weeks 6, 11, 15, 17, 16, 14, 12 and 9 % is an assumption: take your own records of two years.",
  parameters: {
    week: quantity("Week of the season, counted from 1", "number", {whole: true}),
    weeks: quantity("Weeks of the season", "weeks", {above: 0, max: 53}),
    shares: measured("Shares of the weeks of the table", "share", {min: 0}),
  },
  returns: {label: "Share of the crop", unit: "share"},
  refuses: ["shares that add up to 0"],
  sources: ["planning"],
  example: {
    formula: "=SEASON.WEEK_SHARE(1,4,{0.06,0.11,0.15,0.17,0.16,0.14,0.12,0.09})",
    gives: 0.17,
  },
  calculate: ({week, weeks, shares}) => weekShare(week, weeks, shares),
})
