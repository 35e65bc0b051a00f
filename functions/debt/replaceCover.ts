import {defineFunction, type Refusal} from "../define"
import {notYet} from "../refusal"
import {aboutMeasures, dueArguments, unpaid} from "./margin"
import {replacement} from "./replaceMargin"

/** How many times the capacity covers debt, unpaid operating loans and replacement. Nothing to cover gives #N/A. */
export function replaceCover(
  capacity: number,
  interest: number,
  principal: number,
  replacement: number,
  unpaid: number,
): number | Refusal {
  const needed = interest + principal + replacement + unpaid
  return needed > 0
    ? capacity / needed
    : notYet("Nothing is due or to be replaced: there is no cover to work out")
}

export const DEBT_REPLACE_COVER = defineFunction({
  name: "DEBT.REPLACE_COVER",
  summary: "Replacement margin coverage: capacity over debt and replacement",
  about: aboutMeasures,
  parameters: {...dueArguments, replacement, unpaid},
  returns: {label: "Replacement cover", unit: "number"},
  refuses: ["nothing due and nothing to replace"],
  sources: ["langemeier2025"],
  example: {formula: "=DEBT.REPLACE_COVER(259006,72218,59534,303102.05)", gives: 0.5956},
  calculate: ({capacity, interest, principal, replacement, unpaid}) =>
    replaceCover(capacity, interest, principal, replacement, unpaid),
})
