import {defineFunction, type Refusal} from "../define"
import {aboutLimits, limitList, refusesLimits, unnamedLimit} from "./close"

/** Name of the limit that ends the cutting: the one with the earliest date, on a tie the one listed first. */
export function limit(names: readonly string[], dates: readonly number[]): string | Refusal {
  return unnamedLimit(names, dates) ?? names[dates.indexOf(Math.min(...dates))]!
}

export const SEASON_LIMIT = defineFunction({
  name: "SEASON.LIMIT",
  summary: "Name of the limit that ends the cutting",
  about: `The limit with the earliest date; on a tie the one listed first. ${aboutLimits}`,
  parameters: limitList,
  together: ["names", "dates"],
  returns: {label: "Limit that ends the cutting", unit: "text"},
  refuses: refusesLimits,
  sources: ["planning"],
  example: {
    formula: '=SEASON.LIMIT({"reserve","spear size","price"},{"2026-06-12","2026-06-09","2026-06-20"})',
    gives: "spear size",
  },
  calculate: ({names, dates}) => limit(names, dates),
})
