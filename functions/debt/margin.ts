import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"

/** The arguments of what falls due against a capacity, shared by the measures of repayment. */
export const dueArguments = {
  capacity: quantity("Repayment capacity", "money"),
  interest: quantity("Interest due on loans of more than a year", "money", {min: 0}),
  principal: quantity("Principal due on them, below 0 where interest is added to the debt", "money"),
}

export const unpaid = optional(quantity("Operating loans left unpaid from before", "money", {min: 0}), 0)

export const aboutMeasures =
  "A general guide by published definitions; it says nothing about whether a loan is given. Lenders set their own points: ask yours."

/** What is left of a year's repayment capacity after what falls due, money. */
export const margin = (capacity: number, interest: number, principal: number, unpaid: number): number =>
  capacity - interest - principal - unpaid

export const DEBT_MARGIN = defineFunction({
  name: "DEBT.MARGIN",
  summary: "Capital debt repayment margin: what is left after what falls due",
  about: aboutMeasures,
  parameters: {...dueArguments, unpaid},
  returns: {label: "Repayment margin", unit: "money"},
  sources: ["langemeier2025"],
  example: {formula: "=DEBT.MARGIN(259006,72218,59534)", gives: 127254},
  calculate: ({capacity, interest, principal, unpaid}) => margin(capacity, interest, principal, unpaid),
})
