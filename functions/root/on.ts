import {isoOf} from "../calendar"
import {EXAMPLE_CLIMATE} from "../climate/climate"
import {defineFunction, outcomeOf, type Outcomes} from "../define"
import {date} from "../parameters"
import {isRefusal, outOfRange} from "../refusal"
import {modelledYear, planYear} from "./modelledYear"
import {sugarOn} from "./yearOutcome"
import {yearParameters} from "./yearParameters"

/** The state at the end of a day. */
const states = {
  sugar: {label: "Sugar in the root", unit: "mg/g"},
  reserve: {label: "Sugar in the store", unit: "kg/ha"},
  structure: {label: "Structural root", unit: "kg/ha"},
  fern: {label: "Dry fern", unit: "kg/ha"},
  picked: {label: "Saleable crop picked so far", unit: "kg/ha"},
} as const satisfies Outcomes

export const ROOT_ON = defineFunction({
  name: "ROOT.ON",
  summary: "The crown at the end of a day by the daily reserve balance",
  about:
    "The same run as ROOT.SEASON, read on one day. The start is that of the model year in which the opening lies. Between " +
    "samples it is a calculation, not a measurement: a new sample leads.",
  parameters: {
    what: outcomeOf(states),
    date: date("Day"),
    ...yearParameters,
  },
  returns: {label: "The state named", unit: "as named", named: states},
  refuses: ["a day outside the model year of the opening", "a close more than a day before the opening"],
  sources: ["balance"],
  example: {
    formula: `=ROOT.ON("sugar","2026-07-19",6000,6400,${EXAMPLE_CLIMATE},"2026-04-25","2026-06-19")`,
    gives: 313.6,
  },
  calculate({what, date, structure, reserve, climate, open, close, healthy, values}) {
    const plan = planYear(open, close, values)
    if (isRefusal(plan)) return plan
    const {first, days} = plan.year
    const day = date - first
    if (day < 0 || day >= days)
      return outOfRange(
        `Day ${isoOf(date)} must be in the model year of the opening, ${isoOf(first)} to ${isoOf(first + days - 1)}`,
      )
    const course = modelledYear({structure, reserve}, climate, plan, healthy, values)
    return what === "sugar" ? sugarOn(course, day) : course[what][day]!
  },
})
