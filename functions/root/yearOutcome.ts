import {isoOf} from "../calendar"
import type {Outcomes} from "../define"
import {dividesByZero, notYet, type Refusal} from "../refusal"
import type {Course, Crowns} from "./dailyBalance"
import type {YearPlan} from "./modelledYear"

/** What a year by the daily balance can be asked for. */
export const yearOutcomes = {
  picked: {label: "Saleable crop picked", unit: "kg/ha"},
  "sugar at opening": {label: "Sugar as cutting begins", unit: "mg/g"},
  "sugar at close": {label: "Sugar at the end of the last day of cutting", unit: "mg/g"},
  "lowest sugar": {label: "Lowest sugar of the year, at the end of a day", unit: "mg/g"},
  "lowest reserve": {label: "Lowest store of the year, at the end of a day", unit: "kg/ha"},
  "lowest date": {label: "Day of the lowest sugar", unit: "date"},
  "refill date": {
    label: "First day after it whose evening sugar is back at 95 % of that at opening",
    unit: "date",
  },
  "full fern date": {
    label: "First day that begins with less than a tenth of the room for fern",
    unit: "date",
  },
  "sugar at year end": {label: "Sugar at the end of the model year", unit: "mg/g"},
  structure: {label: "Structural root at the end of the model year", unit: "kg/ha"},
  reserve: {label: "Store at the end of the model year", unit: "kg/ha"},
  fern: {label: "Dry fern of the year", unit: "kg/ha"},
  "potential left": {label: "Share of the season's spears still to come at the close", unit: "share"},
} as const satisfies Outcomes

export type YearOutcome = keyof typeof yearOutcomes

/** Chosen: the store counts as filled again at this share of the sugar at opening. */
export const REFILLED = 0.95

/** Sugar at the end of a day, mg/g. */
export const sugarOn = ({reserve, structure}: Course, day: number): number =>
  (1000 * reserve[day]!) / (reserve[day]! + structure[day]!)

/** Sugar at the start of a day, mg/g. */
export const sugarBefore = (course: Course, crowns: Crowns, day: number): number =>
  day === 0 ? (1000 * crowns.reserve) / (crowns.reserve + crowns.structure) : sugarOn(course, day - 1)

/** The day of the year's lowest sugar, counted from 0; the first of them. */
export function lowestDay(course: Course): number {
  let lowest = 0
  for (let day = 1; day < course.reserve.length; day++)
    if (sugarOn(course, day) < sugarOn(course, lowest)) lowest = day
  return lowest
}

/**
 * The day on which the store counts as filled again, counted from 0; -1 when it does not that year. A store that was empty
 * at opening has nothing to come back to.
 */
export function refillDay(course: Course, crowns: Crowns, open: number): number {
  const wanted = REFILLED * sugarBefore(course, crowns, open)
  if (wanted === 0) return -1
  for (let day = lowestDay(course) + 1; day < course.reserve.length; day++)
    if (sugarOn(course, day) >= wanted) return day
  return -1
}

/** One outcome of a year; dates as days of the calendar. */
export function yearOutcome(
  what: YearOutcome,
  course: Course,
  crowns: Crowns,
  {year: {first, days}, cutting: {open, stop}}: YearPlan,
): number | Refusal {
  const last = days - 1
  switch (what) {
    case "picked":
      return course.picked[last]!
    case "sugar at opening":
      return sugarBefore(course, crowns, open)
    case "sugar at close":
      return sugarBefore(course, crowns, stop)
    case "lowest sugar":
      return sugarOn(course, lowestDay(course))
    case "lowest reserve":
      return course.reserve.reduce((least, reserve) => Math.min(least, reserve), Infinity)
    case "lowest date":
      return first + lowestDay(course)
    case "refill date": {
      const day = refillDay(course, crowns, open)
      return day < 0
        ? notYet(`The store does not refill before the model year ends on ${isoOf(first + last)}`)
        : first + day
    }
    case "full fern date":
      return course.fullFern < 0
        ? notYet("The fern does not fill its room that year")
        : first + course.fullFern
    case "sugar at year end":
      return sugarOn(course, last)
    case "structure":
      return course.structure[last]!
    case "reserve":
      return course.reserve[last]!
    case "fern":
      return course.fern[last]!
    case "potential left":
      return course.potential > 0
        ? course.potentialLeft / course.potential
        : dividesByZero(
            `No spears can come at ${sugarBefore(course, crowns, open).toFixed(1)} mg/g: there is no share of them`,
          )
  }
}
