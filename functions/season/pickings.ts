import {isoOf} from "../calendar"
import {defineFunction, type Refusal} from "../define"
import {date, quantity} from "../parameters"
import {outOfRange} from "../refusal"

/** Chosen: far above the rounding of a division, far below any gap a grower would tell apart. */
const ROUNDING = 1e-9

/**
 * Pickings that fit from the opening to the close, the first on the opening day and both ends counted, when
 * `gap` days lie between two. Refuses a close before the opening.
 */
export function pickings(open: number, close: number, gap: number): number | Refusal {
  if (close < open) return outOfRange(`Close (${isoOf(close)}) is before the opening (${isoOf(open)})`)
  const gaps = (close - open) / gap
  return Math.floor(gaps * (1 + ROUNDING)) + 1
}

export const SEASON_PICKINGS = defineFunction({
  name: "SEASON.PICKINGS",
  summary: "Pickings that fit between opening and close",
  about:
    "The first picking falls on the opening day; one that falls on the last day of cutting still counts.",
  parameters: {
    open: date("First day of cutting"),
    close: date("Last day of cutting"),
    gap: quantity("Days between pickings", "days", {above: 0}),
  },
  returns: {label: "Pickings", unit: "count"},
  refuses: ["a close before the opening"],
  sources: ["identity"],
  example: {formula: '=SEASON.PICKINGS("2026-04-20","2026-06-09",2.4)', gives: 21},
  calculate: ({open, close, gap}) => pickings(open, close, gap),
})
