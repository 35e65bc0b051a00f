import {defineFunction, outcomeOf, type Outcomes, type Refusal} from "../define"
import {remembering} from "../memo"
import {measured, quantity} from "../parameters"
import {notYet, wrongKind} from "../refusal"
import {jointPlan, type JointPlan, type JointYear, type JointYears} from "./jointPlan"
import {jointValues, jointValuesGiven, type JointValueName, type JointValues} from "./jointValues"

/** What the joint choice can be asked for; the last two of the whole chain, the others of a year. */
export const jointOutcomes = {
  weeks: {label: "Weeks to cut at that age", unit: "weeks"},
  yield: {label: "Yield at that age", unit: "kg/ha"},
  margin: {label: "Margin at that age", unit: "money/ha"},
  reserve: {label: "Reserve at the start of that season", unit: "share"},
  "worth of reserve": {label: "Worth of one unit of reserve left after that season", unit: "money/unit"},
  "cost of a week": {label: "What one week more would take from the seasons after", unit: "money/ha"},
  "replace age": {label: "Age at whose start the field is cleared (planting year = 1)", unit: "years"},
  "ground worth": {label: "Worth of the old field's ground, clearing off", unit: "money/ha"},
} as const satisfies Outcomes

export type JointOutcome = keyof typeof jointOutcomes

const OF_A_YEAR = {
  weeks: "weeks",
  yield: "yield",
  margin: "margin",
  reserve: "reserve",
  "worth of reserve": "reserveWorth",
  "cost of a week": "weekCost",
} as const satisfies Partial<Record<JointOutcome, keyof JointYear>>

/** One outcome of the joint plan; those of a year are refused at ages outside the rows or after the clearing. */
export function best(
  what: JointOutcome,
  age: number,
  years: JointYears,
  values: JointValues,
): number | Refusal {
  const skips = years.ages.findIndex((one, row) => row > 0 && one !== years.ages[row - 1]! + 1)
  if (skips > 0)
    return wrongKind(`Ages must rise by 1: ${years.ages[skips]} comes after ${years.ages[skips - 1]}`)
  const {ground, replaceAge, years: found} = remembered(years, values)
  if (what === "ground worth") return ground
  if (what === "replace age") return replaceAge
  const year = found.find((one) => one.age === age)
  if (year) return year[OF_A_YEAR[what]]
  return age >= replaceAge
    ? notYet(`The field is cleared at the start of age ${replaceAge}, before age ${age}`)
    : notYet(`Age ${age} is before the first row, age ${years.ages[0]}`)
}

const plans = remembering<JointPlan>(50)
const names = Object.keys(jointValues) as JointValueName[]

const remembered = (years: JointYears, values: JointValues) =>
  plans(
    [years.ages.length, ...years.ages, ...years.caps, ...years.factors, ...names.map((name) => values[name])],
    () => jointPlan(years, values),
  )

export const SEASON_BEST = defineFunction({
  name: "SEASON.BEST",
  summary: "How long to cut at each age and when to replace, chosen together on a simple reserve",
  about:
    "The reserve runs from 0 to 1: a week of cutting draws a share of it, the fern refills a share of the room, less after a long season. " +
    "A teaching model for feeling out what matters, with every number yours; the plan on the crown's daily balance is the better guide. The " +
    "planting year is age 1, the rows begin with the first age that may be cut and rise by 1; the field is cleared after the last at the " +
    "latest, and of equal courses the sooner, though not before its first season. Sums are those of the start of their year. A worth of ground below 0 says: do not replant; with Other_use the ground then " +
    "has that. Units are yours where they agree.",
  parameters: {
    what: outcomeOf(jointOutcomes),
    age: quantity("Age asked for (planting year = 1)", "years", {min: 1, max: 100, whole: true}),
    ages: measured("Ages of the rows (planting year = 1)", "years", {min: 1, max: 100, whole: true}),
    caps: measured("Most weeks at those ages", "weeks", {min: 0, max: 52, whole: true}),
    factors: measured("Share of a full crop at those ages", "share", {min: 0, max: 2}),
    values: jointValuesGiven,
  },
  together: ["ages", "caps", "factors"],
  returns: {label: "The outcome named", unit: "as named", named: jointOutcomes},
  refuses: [
    "ages that do not rise by 1",
    "an age before the first row or after the clearing",
    "a value that is not given",
  ],
  sources: ["perrin1972", "mirandaFackler2002", "planning"],
  example: {
    formula:
      '=SEASON.BEST("replace age",2,{2,3,4,5,6},{1,3,6,10,10},{0.2,0.5,0.8,1,0.6},{"Yield_full",12000;"Cut_saturation",0.12;' +
      '"Draw_per_week",0.06;"Refill_share",0.75;"Refill_weeks",16;"Price",1;"Cost_per_unit",0.62;"Cost_per_week",20;"Fixed_cost",650;' +
      '"Establish_cost",500;"Rate",0.06;"Start_reserve",0.6})',
    gives: 7,
  },
  calculate: ({what, age, ages, caps, factors, values}) => best(what, age, {ages, caps, factors}, values),
})
