import {defineFunction, type Refusal} from "../define"
import {notYet} from "../refusal"
import {aboutMeasures, dueArguments} from "./margin"

/** How many times the repayment capacity covers principal and interest. With nothing due there is no ratio (#N/A). */
export function cover(capacity: number, interest: number, principal: number): number | Refusal {
  const due = interest + principal
  return due > 0 ? capacity / due : notYet("Nothing is due: there is no cover to work out")
}

export const DEBT_COVER = defineFunction({
  name: "DEBT.COVER",
  summary: "Term debt coverage: repayment capacity over what falls due",
  about: `Below 1 the year does not pay its debt. ${aboutMeasures}`,
  parameters: dueArguments,
  returns: {label: "Cover", unit: "number"},
  refuses: ["nothing due"],
  sources: ["langemeier2025"],
  example: {formula: "=DEBT.COVER(259006,72218,59534)", gives: 1.97},
  calculate: ({capacity, interest, principal}) => cover(capacity, interest, principal),
})
