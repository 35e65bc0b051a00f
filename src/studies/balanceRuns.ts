import {LEAST_AFTER_LOSS} from "../../functions/crop/inYear"
import type {BalanceValues} from "../../functions/root/balanceValues"
import {dailyBalance, emptyCourse, type Crowns, type Drivers} from "../../functions/root/dailyBalance"
import type {RiskField} from "./drawRisk"
import type {WeatherTable, YearEnd, YearScores} from "./weatherTable"

/** One year of the daily balance that some fields of some plans have in common. */
interface Run {
  readonly year: number
  /** The run whose end it begins at; null where it begins with the crowns. */
  readonly before: number | null
  readonly crowns: Crowns
  readonly open: number
  readonly close: number
}

/** What a draw's years are like to the balance. */
export interface DrawnYears {
  driversIn(year: number): Drivers
  /** The green share of the fern day by day; null in a year that keeps it whole. */
  fernIn(year: number): Float64Array | null
  /** How warm and how sunny it is. */
  scoresIn(year: number): YearScores
}

/** The years by the balance that fields ask for, each once. */
export interface BalanceRuns {
  /** For each field, the number of its run in each year; null in years that its crowns have no part in. */
  readonly ofFields: readonly (readonly (number | null)[])[]
  /**
   * Saleable crop of each run, kg/ha, in one draw's years. After a loss of fern it is at least 0.40 of what it would be
   * without, as in CROP.IN_YEAR. Filled anew by the next call.
   */
  crops(years: DrawnYears): Float64Array
}

/** A season of cutting that fields have, and the structural roots they begin with. */
export interface RunSeason {
  readonly open: number
  readonly close: number
  readonly structures: readonly number[]
}

/**
 * Fields with the same crowns and the same cutting so far share their runs, in one plan and across plans. Where a season has a
 * table of its years they are read from it, and run day by day only beyond its grid.
 */
export function balanceRuns(
  fields: readonly RiskField[],
  days: number,
  values: BalanceValues,
  tableOf: (season: RunSeason) => WeatherTable | null = () => null,
): BalanceRuns {
  const runs: Run[] = []
  const numbers = new Map<string, number>()
  const ofFields = fields.map(({crowns, years}) => {
    let before: number | null = null
    return years.map((planned, year) => {
      if (!("open" in planned)) return null
      const run: Run = {year, before, crowns, open: planned.open, close: planned.close}
      const key = [year, before, crowns.structure, crowns.reserve, run.open, run.close].join()
      before = numbers.get(key) ?? runs.push(run) - 1
      numbers.set(key, before)
      return before
    })
  })
  const tables = tabulated(runs, tableOf)
  const crops = new Float64Array(runs.length)
  const starts: Crowns[] = []
  const ends: YearEnd[] = runs.map(() => ({crop: 0, structure: 0, reserve: 0}))
  const other: YearEnd = {crop: 0, structure: 0, reserve: 0}
  const course = emptyCourse(days)
  const whole = new Float64Array(days).fill(1)
  const last = days - 1
  const runYear = (
    number: number,
    from: Crowns,
    years: DrawnYears,
    fern: Float64Array | null,
    end: YearEnd,
  ) => {
    const {year, open, close} = runs[number]!
    if (tables[number]?.read(from, years.scoresIn(year), fern !== null, end)) return
    const cutting = {open, stop: close + 1, fernEnd: values.Fern_end - 1}
    dailyBalance(from, years.driversIn(year), cutting, fern ?? whole, values, course)
    end.crop = course.picked[last]!
    end.structure = course.structure[last]!
    end.reserve = course.reserve[last]!
  }
  return {
    ofFields,
    crops(years) {
      // A run stands after the one that it begins at.
      for (const [number, {year, crowns, before}] of runs.entries()) {
        const from = before === null ? crowns : ends[before]!
        starts[number] = from
        runYear(number, from, years, years.fernIn(year), ends[number]!)
        crops[number] = ends[number]!.crop
        if (before === null || runs[before]!.year !== year - 1 || !years.fernIn(runs[before]!.year)) continue
        runYear(before, starts[before]!, years, null, other)
        runYear(number, {structure: other.structure, reserve: other.reserve}, years, null, other)
        crops[number] = Math.max(crops[number]!, LEAST_AFTER_LOSS * other.crop)
      }
      return crops
    },
  }
}

/** The table of each run: one for all runs of the same season. */
function tabulated(runs: readonly Run[], tableOf: (season: RunSeason) => WeatherTable | null) {
  const roots = new Map<string, number[]>()
  const keyOf = ({open, close}: Run) => `${open} ${close}`
  for (const run of runs) {
    const key = keyOf(run)
    roots.set(key, [...(roots.get(key) ?? []), run.crowns.structure])
  }
  const made = new Map<string, WeatherTable | null>()
  return runs.map((run) => {
    const key = keyOf(run)
    if (!made.has(key))
      made.set(key, tableOf({open: run.open, close: run.close, structures: roots.get(key)!}))
    return made.get(key)!
  })
}
