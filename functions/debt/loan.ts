import {defineFunction, outcomeOf, type Outcomes, type Refusal} from "../define"
import {choice, optional, quantity} from "../parameters"
import {isRefusal} from "../refusal"
import {LOAN_KINDS, schedule, type Loan} from "./schedule"

/** The arguments that every loan has, shared with DEBT.DUE. */
export const loanArguments = {
  loan: quantity("Money lent", "money", {min: 0}),
  rate: quantity("Interest a year", "share/year", {min: 0, max: 1}),
  years: quantity("Years of the loan", "years", {min: 1, max: 60, whole: true}),
  year: quantity("Year of the loan, counted from 1", "number", {whole: true}),
}

export const perYear = quantity("Payments a year", "count", {min: 1, max: 366, whole: true})

export const aboutLoans =
  "The rate is a share a year, parted evenly over the payments, each at the end of its part of the year; nothing is rounded, so " +
  "the lender's own schedule may differ by cents. A general guide: fees, early payment and rates that move are not in it. The " +
  "lender's papers decide."

const outcomes = {
  due: {label: "Principal and interest due in that year", unit: "money"},
  interest: {label: "Interest of that year", unit: "money"},
  principal: {label: "Principal paid in that year; below 0 where interest is added", unit: "money"},
  balance: {label: "Owed at the end of that year", unit: "money"},
} as const satisfies Outcomes

/**
 * One number of one year of a loan, money. Outside years 1 to the last nothing is due or owed: 0. Interest that is added to
 * the balance is that year's interest but not due: due = interest + principal.
 */
export function loanYear(what: keyof typeof outcomes, loan: Loan, year: number): number | Refusal {
  const years = schedule(loan)
  if (isRefusal(years)) return years
  const found = years[year - 1]
  if (!found) return 0
  return what === "due" ? found.interest + found.principal : found[what]
}

export const DEBT_LOAN = defineFunction({
  name: "DEBT.LOAN",
  summary: "Interest, principal, sum due or balance of one year of a loan",
  about:
    "Level: the same sum each payment. Equal principal: the same principal each payment, interest on what is left. Interest " +
    "only, then level: no principal in the first years. Interest added, then level: nothing is paid in the first years, their " +
    `interest joins the debt. For a planting, the first principal comes best after the first full crop (common practice). ${aboutLoans}`,
  parameters: {
    what: outcomeOf(outcomes),
    ...loanArguments,
    kind: optional(choice("Kind of loan", LOAN_KINDS), "level" as const),
    without: optional(quantity("Years without principal", "years", {min: 0, max: 60, whole: true}), 0),
    per_year: optional(perYear, 1),
  },
  returns: {label: "The number named", unit: "as named", named: outcomes},
  refuses: ["years without principal for a kind that has none", "as many of them as the loan has years"],
  sources: ["identity", "practice"],
  example: {formula: '=DEBT.LOAN("due",200000,0.07,10,4,"interest only, then level",3)', gives: 37110.64},
  calculate: ({what, loan, rate, years, year, kind, without, per_year}) =>
    loanYear(what, {amount: loan, rate, years, kind, without, perYear: per_year}, year),
})
