import {isoOf} from "../calendar"
import {defineFunction, type Refusal} from "../define"
import {limitDates, words} from "../parameters"
import {wrongKind} from "../refusal"

/** The two lists that SEASON.CLOSE, LIMIT and SLACK share: what may end the cutting, and when. */
export const limitList = {names: words("Names of the limits"), dates: limitDates("Limit dates")}

/** What the three functions say of their lists, for the help. */
export const aboutLimits =
  "A limit whose date is blank or #N/A takes no part; any other error passes through."
export const refusesLimits = ["a date without a name", "names and dates of different number"] as const

/** Refuses a date without a name: left out, it would be a limit that nobody sees. */
export function unnamedLimit(names: readonly string[], dates: readonly number[]): Refusal | null {
  const row = names.findIndex((name) => name.trim() === "")
  return row < 0 ? null : wrongKind(`Limit date ${isoOf(dates[row]!)} has no name`)
}

/** Last day of cutting: the earliest of the limit dates, of which there is at least one. */
export function close(names: readonly string[], dates: readonly number[]): number | Refusal {
  return unnamedLimit(names, dates) ?? Math.min(...dates)
}

export const SEASON_CLOSE = defineFunction({
  name: "SEASON.CLOSE",
  summary: "Last day of cutting: the earliest of the limit dates",
  about: aboutLimits,
  parameters: limitList,
  together: ["names", "dates"],
  returns: {label: "Last day of cutting", unit: "date"},
  refuses: refusesLimits,
  sources: ["planning"],
  example: {
    formula: '=SEASON.CLOSE({"reserve","spear size","price"},{"2026-06-12","2026-06-09","2026-06-20"})',
    gives: "2026-06-09",
  },
  calculate: ({names, dates}) => close(names, dates),
})
