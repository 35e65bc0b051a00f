import {dayOf, isoOf, yearOf} from "../calendar"
import {EXAMPLE_CLIMATE, climateRange, type Climate} from "../climate/climate"
import {defineFunction, outcomeOf, type Refusal} from "../define"
import {healthyFern, type HealthStep} from "../fern/healthy"
import {isRange, optional, quantity, yearly, type Given, type Parameter} from "../parameters"
import {isRefusal} from "../refusal"
import {balanceValues, type BalanceValues} from "../root/balanceValues"
import type {Crowns} from "../root/dailyBalance"
import {modelledYear, planYear, type YearPlan} from "../root/modelledYear"
import {openingOfCutting, rootsOfAField, storedSugar} from "../root/quantities"
import {yearOutcome, yearOutcomes, type YearOutcome} from "../root/yearOutcome"

/** Chosen: an early loss of fern leaves at least this share of the next crop; the balance is too harsh there. */
export const LEAST_AFTER_LOSS = 0.4

/** The green share of the fern: one number a year, or steps of the first year, after which the fern is whole. */
export type FernOfYears = readonly number[] | readonly HealthStep[]

/**
 * An outcome of the year number `year`, counted from 1, when the balance runs on year after year with the same climate
 * and opening. One number of weeks and one healthy share a year; the last of each goes on. Weeks are rounded to whole
 * days. Steps of the fern's health are of the first year alone. The crop of a year after a loss of fern is at least 0.40
 * of what it would be without that loss.
 */
export function inYear(
  what: YearOutcome,
  year: number,
  crowns: Crowns,
  climate: Climate,
  open: number,
  weeks: readonly number[],
  healthy: FernOfYears,
  values: BalanceValues,
): number | Refusal {
  const run = (from: Crowns, number: number, fern = fernOf(healthy, number)) => {
    const plan = planYear(open, open - 1 + Math.round(7 * entry(weeks, number)), values)
    if (isRefusal(plan)) return plan
    return {plan, course: modelledYear(from, climate, plan, fern, values)}
  }
  let before = crowns
  let at = crowns
  for (let number = 1; ; number++) {
    const ran = run(at, number)
    if (isRefusal(ran)) return ran
    const {plan, course} = ran
    if (number < year) {
      before = at
      at = atEnd(course, plan)
      continue
    }
    const outcome = yearOutcome(what, course, at, plan)
    if (isRefusal(outcome)) return outcome
    if (isDate(what)) return sameDayIn(outcome, year - 1)
    if (what !== "picked" || number === 1 || fernOf(healthy, number - 1).every(({share}) => share === 1))
      return outcome
    const whole = run(before, number - 1, [])
    if (isRefusal(whole)) return whole
    const without = run(atEnd(whole.course, whole.plan), number)
    return isRefusal(without)
      ? without
      : Math.max(outcome, LEAST_AFTER_LOSS * without.course.picked[without.plan.year.days - 1]!)
  }
}

function fernOf(healthy: FernOfYears, number: number): readonly HealthStep[] {
  if (!isSteps(healthy)) return [{from: -Infinity, share: entry(healthy, number)}]
  return number === 1 ? healthy : []
}

const isSteps = (healthy: FernOfYears): healthy is readonly HealthStep[] => typeof healthy[0] === "object"

const entry = (list: readonly number[], number: number) => list[Math.min(number, list.length) - 1]!

const atEnd = (
  course: {readonly structure: Float64Array; readonly reserve: Float64Array},
  {year}: YearPlan,
) => ({
  structure: course.structure[year.days - 1]!,
  reserve: course.reserve[year.days - 1]!,
})

const isDate = (what: YearOutcome) => yearOutcomes[what].unit === "date"

/** The same day and month some years later; 29 February becomes 28 February where there is none. */
function sameDayIn(day: number, years: number): number {
  const monthAndDay = isoOf(day).slice(4)
  const year = String(yearOf(day) + years).padStart(4, "0")
  return dayOf(year + monthAndDay) ?? dayOf(`${year}-02-28`)!
}

const sharesOfYears = yearly("Healthy share of the fern, one a year", "share", {min: 0, max: 1})

/** Two columns that begin with a date are steps of the first year; a number of at most 1 is a share, even in a row of two. */
const fernOfYears: Parameter<FernOfYears> = {
  ...sharesOfYears,
  takes: "a share from 0 to 1 for each year, or for the first year a range of two columns, date and share",
  read: (given) => (isDated(given) ? healthyFern.read(given) : sharesOfYears.read(given)),
}

function isDated(given: Given): boolean {
  if (!isRange(given) || given.some((row) => row.length !== 2)) return false
  const first = given.flat().find((held) => held !== null)
  return typeof first === "string" || (typeof first === "number" && first > 1)
}

export const CROP_IN_YEAR = defineFunction({
  name: "CROP.IN_YEAR",
  summary: "The outcome of a later year, when the daily balance runs on year after year",
  about:
    "The same climate and opening every year; the weeks and the healthy share of the fern may differ, the last of each goes on. " +
    "A loss of fern with its date, in two columns, is one of the first year. " +
    "For comparing lengths of season over many years. The balance knows no ageing and no loss of plants: multiply by the age factor. " +
    "Fields cut too long fall faster than it says (the fifth harvest year of the Iowa trial). After a loss of fern the next crop is " +
    "never taken below 0.40 of what it would be without (chosen: the balance is too harsh there).",
  parameters: {
    what: outcomeOf(yearOutcomes),
    year: quantity("Year, counted from 1", "number", {min: 1, max: 60, whole: true}),
    structure: rootsOfAField,
    reserve: storedSugar,
    climate: climateRange,
    open: openingOfCutting,
    weeks: yearly("Weeks of cutting, one a year", "weeks", {min: 0, max: 52}),
    healthy: optional(fernOfYears, [1], "1"),
    values: balanceValues,
  },
  returns: {label: "The outcome named", unit: "as named", named: yearOutcomes},
  refuses: ["more than 60 years", "weeks that end outside the model year"],
  sources: ["balance", "planning"],
  example: {
    formula: `=CROP.IN_YEAR("picked",15,6000,6400,${EXAMPLE_CLIMATE},"2026-04-25",8)`,
    gives: 6897.1,
  },
  calculate: ({what, year, structure, reserve, climate, open, weeks, healthy, values}) =>
    inYear(what, year, {structure, reserve}, climate, open, weeks, healthy, values),
})
