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
    valuesNumber(values),
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
  const key = [climateNumber(climate), year.first, valuesNumber(values)]
  return rememberedDrivers(key, () => driversOf(climate, year, values))
}

// A course is 12 kB. As many as there are plantings and lengths on one sheet are asked for again and again.
const rememberedCourse = remembering<Course>(400)
const rememberedDrivers = remembering<Drivers>(20)

const climates = new WeakMap<Climate, number>()
const valueSets = new WeakMap<BalanceValues, number>()
const rememberedSets = remembering<number>(50)
let lastNumber = 0

/** A number that stands for a climate: while it is remembered, equal climates are one object. */
const climateNumber = (climate: Climate) => numbered(climates, climate, () => ++lastNumber)

/** A number that stands for a set of values: the same for every object that holds the same. */
const valuesNumber = (values: BalanceValues) =>
  numbered(valueSets, values, () =>
    rememberedSets(
      balanceNames.map((name) => values[name]),
      () => ++lastNumber,
    ),
  )

function numbered<T extends object>(held: WeakMap<T, number>, one: T, make: () => number): number {
  const number = held.get(one) ?? make()
  held.set(one, number)
  return number
}
