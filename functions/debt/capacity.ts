import {defineFunction} from "../define"
import {quantity} from "../parameters"

/** What is there in a year to pay principal and interest of loans of more than a year, money. */
export const capacity = (
  farmIncome: number,
  offFarm: number,
  taxes: number,
  termInterest: number,
  depreciation: number,
  living: number,
): number => farmIncome + offFarm + depreciation + termInterest - taxes - living

export const DEBT_CAPACITY = defineFunction({
  name: "DEBT.CAPACITY",
  summary: "Capital debt repayment capacity of a year",
  about:
    "Net farm income has depreciation and interest taken off already; both are put back, since the one is no payment and the " +
    "other is what the capacity has to pay. A general guide: lenders differ in what they count. Ask yours.",
  parameters: {
    farm_income: quantity("Net farm income, on accrual", "money"),
    off_farm: quantity("Income from off the farm", "money"),
    taxes: quantity("Income and self-employment taxes", "money"),
    term_interest: quantity("Interest on loans of more than a year", "money", {min: 0}),
    depreciation: quantity("Depreciation", "money", {min: 0}),
    living: quantity("Family living", "money", {min: 0}),
  },
  returns: {label: "Repayment capacity", unit: "money"},
  sources: ["langemeier2025"],
  example: {formula: "=DEBT.CAPACITY(78853,0,49769,72218,263567,105863)", gives: 259006},
  calculate: ({farm_income, off_farm, taxes, term_interest, depreciation, living}) =>
    capacity(farm_income, off_farm, taxes, term_interest, depreciation, living),
})
