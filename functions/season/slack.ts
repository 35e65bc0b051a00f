import {defineFunction, type Refusal} from "../define"
import {notYet} from "../refusal"
import {aboutLimits, limitList, refusesLimits, unnamedLimit} from "./close"

/**
 * Days from the earliest limit date to the next one, 0 on a tie. It is how far the close would move if its
 * limit were lifted. With one limit there is no next one: #N/A.
 */
export function slack(names: readonly string[], dates: readonly number[]): number | Refusal {
  const unnamed = unnamedLimit(names, dates)
  if (unnamed) return unnamed
  const [earliest, next] = dates.toSorted((a, b) => a - b)
  if (next === undefined) return notYet(`Only one limit date (${names[0]}): there is no next one`)
  return next - earliest!
}

export const SEASON_SLACK = defineFunction({
  name: "SEASON.SLACK",
  summary: "Days from the limit that ends the cutting to the next limit",
  about: `How far the close would move if its limit were lifted; 0 when two limits share the earliest date. ${aboutLimits}`,
  parameters: limitList,
  together: ["names", "dates"],
  returns: {label: "Days to the next limit", unit: "days"},
  refuses: ["fewer than two limit dates", ...refusesLimits],
  sources: ["planning"],
  example: {
    formula: '=SEASON.SLACK({"reserve","spear size","price"},{"2026-06-12","2026-06-09","2026-06-20"})',
    gives: 3,
  },
  calculate: ({names, dates}) => slack(names, dates),
})
