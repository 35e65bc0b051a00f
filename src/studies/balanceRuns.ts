import {LEAST_AFTER_LOSS} from "../../functions/crop/inYear"
import type {BalanceValues} from "../../functions/root/balanceValues"
import {dailyBalance, emptyCourse, type Crowns, type Drivers} from "../../functions/root/dailyBalance"
import type {RiskField} from "./drawRisk"

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
}

/** The years by the balance that fields ask for, each once. */
export interface BalanceRuns {
  /** For each field, the number of its run in each year; null in years whose crop is given. */
  readonly ofFields: readonly (readonly (number | null)[])[]
  /**
   * Saleable crop of each run, kg/ha, in one draw's years. After a loss of fern it is at least 0.40 of what it would be
   * without, as in CROP.IN_YEAR. Filled anew by the next call.
   */
  crops(years: DrawnYears): Float64Array
}

/** Fields with the same crowns and the same cutting so far share their runs, in one plan and across plans. */
export function balanceRuns(fields: readonly RiskField[], days: number, values: BalanceValues): BalanceRuns {
  const runs: Run[] = []
  const numbers = new Map<string, number>()
  const ofFields = fields.map(({crowns, years}) => {
    let before: number | null = null
    return years.map((planned, year) => {
      if ("kg" in planned) return null
      const run: Run = {year, before, crowns, open: planned.open, close: planned.close}
      const key = [year, before, crowns.structure, crowns.reserve, run.open, run.close].join()
      before = numbers.get(key) ?? runs.push(run) - 1
      numbers.set(key, before)
      return before
    })
  })
  const crops = new Float64Array(runs.length)
  const starts: Crowns[] = []
  const ends: Crowns[] = []
  const course = emptyCourse(days)
  const whole = new Float64Array(days).fill(1)
  const last = days - 1
  const cropOf = ({open, close}: Run, from: Crowns, drivers: Drivers, fern: Float64Array) => {
    dailyBalance(from, drivers, {open, stop: close + 1, fernEnd: values.Fern_end - 1}, fern, values, course)
    return course.picked[last]!
  }
  const end = () => ({structure: course.structure[last]!, reserve: course.reserve[last]!})
  return {
    ofFields,
    crops({driversIn, fernIn}) {
      // A run stands after the one that it begins at.
      for (const [number, run] of runs.entries()) {
        const from = run.before === null ? run.crowns : ends[run.before]!
        const drivers = driversIn(run.year)
        starts[number] = from
        crops[number] = cropOf(run, from, drivers, fernIn(run.year) ?? whole)
        ends[number] = end()
        const before = run.before === null ? null : runs[run.before]!
        if (!before || before.year !== run.year - 1 || !fernIn(before.year)) continue
        cropOf(before, starts[run.before!]!, driversIn(before.year), whole)
        crops[number] = Math.max(crops[number]!, LEAST_AFTER_LOSS * cropOf(run, end(), drivers, whole))
      }
      return crops
    },
  }
}
