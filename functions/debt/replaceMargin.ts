import {defineFunction} from "../define"
import {quantity} from "../parameters"
import {aboutMeasures, dueArguments, margin, unpaid} from "./margin"

export const replacement = quantity("Replacement of machines, buildings and fields", "money", {min: 0})

export const DEBT_REPLACE_MARGIN = defineFunction({
  name: "DEBT.REPLACE_MARGIN",
  summary: "Replacement margin: what is left after debt and replacement",
  about:
    "The repayment margin less what has to be replaced that year. For an asparagus farm the planting of fields that follow old " +
    `ones belongs in it. The case cited takes 1.15 times depreciation. ${aboutMeasures}`,
  parameters: {...dueArguments, replacement, unpaid},
  returns: {label: "Replacement margin", unit: "money"},
  sources: ["langemeier2025"],
  example: {formula: "=DEBT.REPLACE_MARGIN(259006,72218,59534,303102.05)", gives: -175848.05},
  calculate: ({capacity, interest, principal, replacement, unpaid}) =>
    margin(capacity, interest, principal, unpaid) - replacement,
})
