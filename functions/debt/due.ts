import {defineFunction} from "../define"
import {optional} from "../parameters"
import {aboutLoans, loanArguments, loanYear, perYear} from "./loan"

export const DEBT_DUE = defineFunction({
  name: "DEBT.DUE",
  summary: "Principal and interest due in one year of a level loan",
  about: `The same sum each payment; before the first and after the last year 0. Other kinds: DEBT.LOAN. ${aboutLoans}`,
  parameters: {...loanArguments, per_year: optional(perYear, 1)},
  returns: {label: "Principal and interest due", unit: "money"},
  sources: ["identity"],
  example: {formula: "=DEBT.DUE(250000,0.06,10,1)", gives: 33966.99},
  calculate: ({loan, rate, years, year, per_year}) =>
    loanYear("due", {amount: loan, rate, years, kind: "level", without: 0, perYear: per_year}, year),
})
