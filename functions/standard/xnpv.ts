import {isoOf} from "../calendar"
import {CellFault} from "../parameters"
import {outOfRange, wrongKind, type Refusal} from "../refusal"
import {defineStandard} from "./define"
import {cells, number, type Cells} from "./parameters"

/**
 * What amounts on dates are worth on the first date, at a yearly rate: each is discounted by (1 + rate) to the power of
 * its days over 365, in leap years too. A row that is blank throughout is passed over; one that is not whole is refused.
 */
export function xnpv(rate: number, amounts: Cells, dates: Cells): number | Refusal | CellFault {
  const [values, days] = [amounts.flat(), dates.flat()]
  const fault = [...values, ...days].find((held) => held instanceof CellFault)
  if (fault) return fault
  if (values.length !== days.length)
    return wrongKind(`There are ${values.length} amounts and ${days.length} dates: sizes differ`)
  let first: number | null = null
  let worth = 0
  for (const [i, value] of values.entries()) {
    const day = days[i]!
    if (value === null && day === null) continue
    if (typeof value !== "number" || typeof day !== "number")
      return wrongKind(`Amount ${i + 1} must be a number with a date`)
    first ??= Math.floor(day)
    if (day < first) return outOfRange(`No date may come before the first (${isoOf(first)})`)
    worth += value / (1 + rate) ** ((Math.floor(day) - first) / 365)
  }
  return worth
}

export const XNPV = defineStandard({
  name: "XNPV",
  section: "6.12.52",
  summary: "What amounts on dates are worth on the first of them",
  about: "A year is 365 days, in leap years too. What is paid is below 0, what comes in above.",
  parameters: {
    rate: number("Rate for a year", {above: -1}),
    amounts: cells("Amounts"),
    dates: cells("Dates of the amounts"),
  },
  returns: {label: "Worth on the first date", unit: "number"},
  refuses: ["a date before the first", "an amount without a date"],
  example: {formula: "=XNPV(10%,{-100,110},{46137,46502})", gives: 0},
  calculate: ({rate, amounts, dates}) => xnpv(rate, amounts, dates),
})
