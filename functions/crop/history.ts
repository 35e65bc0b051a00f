import {defineFunction, type Refusal} from "../define"
import {measured, optional, quantity} from "../parameters"
import {notYet, wrongKind} from "../refusal"

const calendarYear = {min: 1900, max: 2200, whole: true}

/**
 * Mean yield of the last years on record, kg/ha: the `last` latest years, whatever the order of the rows,
 * without those in `skip`. Fewer years than asked for give no mean (#N/A); a year given twice is refused.
 */
export function history(
  years: readonly number[],
  yields: readonly number[],
  last: number,
  skip: readonly number[],
): number | Refusal {
  const twice = years.find((year, row) => years.indexOf(year) !== row)
  if (twice !== undefined) return wrongKind(`Year ${twice} is given twice`)
  const record = years.map((year, row) => ({year, kg: yields[row]!})).filter(({year}) => !skip.includes(year))
  if (record.length < last) {
    const skipped = years.length - record.length
    return notYet(
      `only ${record.length} of ${last} years recorded${skipped ? `, with ${skipped} skipped` : ""}`,
    )
  }
  const latest = record.toSorted((a, b) => b.year - a.year).slice(0, last)
  return latest.reduce((total, {kg}) => total + kg, 0) / last
}

export const CROP_HISTORY = defineFunction({
  name: "CROP.HISTORY",
  summary: "Mean yield of the last years on record",
  about:
    "Takes the latest years that have a yield; a year without one is passed over and an older one counts instead. " +
    "The federal rule cited begins a loan plan with a farm's own last three years; ask the lender which may be skipped.",
  parameters: {
    years: measured("Years on record", "year", calendarYear),
    yields: measured("Yields of those years", "kg/ha", {min: 0}),
    last: quantity("Number of years to take", "count", {min: 1, whole: true}),
    skip: optional(measured("Years to skip", "year", calendarYear), [] as readonly number[], "none"),
  },
  together: ["years", "yields"],
  returns: {label: "Mean yield on record", unit: "kg/ha"},
  refuses: ["fewer years on record than asked for", "a year given twice"],
  sources: ["identity", "cfr761"],
  example: {formula: "=CROP.HISTORY({2023,2024,2025},{4150,3820,4460},3)", gives: 4143},
  calculate: ({years, yields, last, skip}) => history(years, yields, last, skip),
})
