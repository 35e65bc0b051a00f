import {defineFunction, type Refusal} from "../define"
import {measured, quantity} from "../parameters"
import {notYet} from "../refusal"
import {notRising} from "../rising"

const YEARS = "Seasons of the standing crop"

/** The first season whose net cash falls below the yearly worth of a new planting. `years` must rise. */
export function replantYear(
  years: readonly number[],
  keep: readonly number[],
  perYear: number,
): number | Refusal {
  const falls = notRising(YEARS, years)
  if (falls) return falls
  const row = keep.findIndex((cash) => cash < perYear)
  return row >= 0
    ? years[row]!
    : notYet(`Never up to ${years.at(-1)}: the standing crop brings ${perYear} or more in every season`)
}

export const STAND_REPLANT_YEAR = defineFunction({
  name: "STAND.REPLANT_YEAR",
  summary: "First season in which the standing crop brings less than a new one's yearly worth",
  about:
    "The season before it is the last one worth cutting, by the test of one year at a time and without clearing cost. After a setback " +
    "ask STAND.KEEP_YEARS. A row with a blank in it is left out.",
  parameters: {
    years: measured(YEARS, "year", {min: 1, max: 9999, whole: true}),
    keep: measured("Net cash of the standing crop", "money/ha"),
    per_year: quantity("Yearly worth of a new planting", "money/ha/year"),
  },
  together: ["years", "keep"],
  returns: {label: "First season that is better replanted", unit: "year"},
  refuses: ["seasons that do not rise from row to row", "a crop that stays better in all of them"],
  sources: ["perrin1972", "newnan"],
  example: {
    formula: "=STAND.REPLANT_YEAR({2026,2027,2028,2029,2030},{3100,2700,2250,1700,1200},2092)",
    gives: 2029,
  },
  calculate: ({years, keep, per_year}) => replantYear(years, keep, per_year),
})
