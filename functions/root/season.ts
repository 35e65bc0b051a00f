import {EXAMPLE_CLIMATE} from "../climate/climate"
import {defineFunction, outcomeOf} from "../define"
import {isRefusal} from "../refusal"
import {modelledYear, planYear} from "./modelledYear"
import {yearOutcome, yearOutcomes} from "./yearOutcome"
import {yearParameters} from "./yearParameters"

export const ROOT_SEASON = defineFunction({
  name: "ROOT.SEASON",
  summary: "The outcome of a year by the daily reserve balance",
  about:
    "Runs one hectare day by day from the start of the model year: cutting, the flush of fern that is built from the store, " +
    "the refill. What it was checked against stands on the sheet Checked against: it follows the order of the trials, falls " +
    "short for the last years of fields cut too long, and makes an early loss of fern too harsh. It knows no ageing, frost, " +
    "drought or disease. Its first use is the difference that a week makes.",
  parameters: {
    what: outcomeOf(yearOutcomes),
    ...yearParameters,
  },
  returns: {label: "The outcome named", unit: "as named", named: yearOutcomes},
  refuses: ["a close more than a day before the opening", "a close outside the model year"],
  sources: ["balance"],
  example: {
    formula: `=ROOT.SEASON("picked",6000,6400,${EXAMPLE_CLIMATE},"2026-04-25","2026-06-19")`,
    gives: 6367.1,
  },
  calculate({what, structure, reserve, climate, open, close, healthy, values}) {
    const plan = planYear(open, close, values)
    if (isRefusal(plan)) return plan
    const crowns = {structure, reserve}
    return yearOutcome(what, modelledYear(crowns, climate, plan, healthy, values), crowns, plan)
  },
})
