import {isoOf, modelYearOf, type ModelYear} from "../calendar"
import type {Climate} from "../climate/climate"
import {healthAlong, type HealthStep} from "../fern/healthy"
import {remembering} from "../memo"
import {outOfRange, type Refusal} from "../refusal"
import {balanceNames, type BalanceValues} from "./balanceValues"
import {
  dailyBalance,
  driversOf,
  emptyCourse,
  type Course,
  type Crowns,
  type Cutting,
  type Drivers,
} from "./dailyBalance"

/** A model year and its season of cutting. */
export interface YearPlan {
  readonly year: ModelYear
  readonly cutting: Cutting
}

/** The model year of an opening, and the season in it. A close on the day before the opening means not cut. */
export function planYear(open: number, close: number, values: BalanceValues): YearPlan | Refusal {
  const year = modelYearOf(open, values.Year_start)
  if (close < open - 1)
    return outOfRange(
      `Close ${isoOf(close)} must not be before the opening ${isoOf(open)}; the day before it means not cut`,
    )
  const stop = close + 1 - year.first
  if (stop > year.days)
    return outOfRange(
      `Close ${isoOf(close)} must be in the model year of the opening, which ends on ${isoOf(year.first + year.days - 1)}`,
    )
  return {year, cutting: {open: open - year.first, stop, fernEnd: values.Fern_end - 1}}
}

/** The course of a year by the daily balance. The same numbers share one run. Not to be changed by the caller. */
export function modelledYear(
  crowns: Crowns,
  climate: Climate,
  {year, cutting}: YearPlan,
  healthy: readonly HealthStep[],
  values: BalanceValues,
): Course {
  const key = [
    climateNumber(climate),
    ...balanceNames.map((name) => values[name]),
    crowns.structure,
    crowns.reserve,
    year.first,
    cutting.open,
    cutting.stop,
    ...healthy.flatMap(({from, share}) => [from, share]),
  ]
  return rememberedCourse(key, () =>
    dailyBalance(
      crowns,
      driversFor(climate, year, values),
      cutting,
      healthAlong(healthy, year),
      values,
      emptyCourse(year.days),
    ),
  )
}

/** The drivers of a year: the same climate, year and crop values share them. */
export function driversFor(climate: Climate, year: ModelYear, values: BalanceValues): Drivers {
  const key = [climateNumber(climate), year.first, ...balanceNames.map((name) => values[name])]
  return rememberedDrivers(key, () => driversOf(climate, year, values))
}

// A course is 12 kB. As many as there are plantings and lengths on one sheet are asked for again and again.
const rememberedCourse = remembering<Course>(400)
const rememberedDrivers = remembering<Drivers>(20)

const numbers = new WeakMap<Climate, number>()
let lastNumber = 0

/** A number that stands for a climate: while it is remembered, equal climates are one object. */
function climateNumber(climate: Climate): number {
  const number = numbers.get(climate) ?? ++lastNumber
  numbers.set(climate, number)
  return number
}
