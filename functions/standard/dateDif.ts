import {dateOf, isoOf, monthsLater} from "../calendar"
import {outOfRange, wrongKind, type Refusal} from "../refusal"
import {defineStandard} from "./define"
import {day, text} from "./parameters"

/**
 * Whole days, months or years from one day to a later one, in the units of OpenFormula table 5, in either case of letters.
 * A month or year is full when the day of the month comes round, or the month ends before it does. Never below 0.
 */
export function dateDif(start: number, end: number, unit: string): number | Refusal {
  if (start > end) return outOfRange(`The first date (${isoOf(start)}) is after the last (${isoOf(end)})`)
  const months = fullMonths(start, end)
  switch (unit.toLowerCase()) {
    case "d":
      return end - start
    case "m":
      return months
    case "y":
      return Math.floor(months / 12)
    case "ym":
      return months % 12
    case "md":
      return end - monthsLater(start, months)
    case "yd":
      return end - monthsLater(start, months - (months % 12))
    default:
      return wrongKind(`The unit must be "y", "m", "d", "md", "ym" or "yd", not "${unit}"`)
  }
}

function fullMonths(start: number, end: number): number {
  const [from, to] = [dateOf(start), dateOf(end)]
  const months = (to.year - from.year) * 12 + to.month - from.month
  return monthsLater(start, months) > end ? months - 1 : months
}

export const DATEDIF = defineStandard({
  name: "DATEDIF",
  section: "6.10.3",
  summary: "Whole years, months or days between two dates",
  about:
    '"y" years, "m" months, "d" days, "md" days beyond full months, "ym" months beyond full years, "yd" days beyond full ' +
    "years. After the 31st a month is full on the last day of a shorter one: the standard leaves this open; chosen.",
  parameters: {
    start: day("First date"),
    end: day("Last date"),
    unit: text("Unit", '"y", "m", "d", "md", "ym" or "yd"'),
  },
  returns: {label: "Years, months or days", unit: "count"},
  refuses: ["a first date after the last"],
  example: {formula: '=DATEDIF("2020-01-01","2026-07-01","y")', gives: 6},
  calculate: ({start, end, unit}) => dateDif(start, end, unit),
})
