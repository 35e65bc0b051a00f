import {defineFunction, type Refusal} from "../define"
import {notYet} from "../refusal"
import {flowsOfAPlanting} from "./quantities"

/** The first year, counted from 1, at whose end all cash so far adds up to 0 or more. Without interest. */
export function payback(flows: readonly number[]): number | Refusal {
  let total = 0
  for (const [i, flow] of flows.entries()) if ((total += flow) >= 0) return i + 1
  return notYet(`Never in ${flows.length} years: ${-total} money/ha are still to be earned back`)
}

export const STAND_PAYBACK = defineFunction({
  name: "STAND.PAYBACK",
  summary: "First year at whose end a planting has earned back what it cost",
  about: "The planting year is year 1. Without interest, so it is a measure of cash, not of profit.",
  parameters: {flows: flowsOfAPlanting},
  returns: {label: "Year of being in the black (planting year = 1)", unit: "years"},
  refuses: ["a planting that does not earn it back"],
  sources: ["identity"],
  example: {
    formula: "=STAND.PAYBACK({-9800,-1500,900,3600,5200,5600,5600,5500,5300,5000,4600,4200})",
    gives: 6,
  },
  calculate: ({flows}) => payback(flows),
})
