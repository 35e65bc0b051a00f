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

/** The years by the balance that fields ask for, each once. */
export interface BalanceRuns {
  /** For each field, the number of its run in each year; null in years whose crop is given. */
  readonly ofFields: readonly (readonly (number | null)[])[]
  /** Saleable crop of each run, kg/ha, in one draw's weather. Filled anew by the next call. */
  crops(driversIn: (year: number) => Drivers): Float64Array
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
  const [crops, structure, reserve] = [0, 1, 2].map(() => new Float64Array(runs.length)) as ThreeArrays
  const course = emptyCourse(days)
  const healthy = new Float64Array(days).fill(1)
  const last = days - 1
  return {
    ofFields,
    crops(driversIn) {
      // A run stands after the one that it begins at.
      for (const [number, {year, before, crowns, open, close}] of runs.entries()) {
        const from = before === null ? crowns : {structure: structure[before]!, reserve: reserve[before]!}
        const cutting = {open, stop: close + 1, fernEnd: values.Fern_end - 1}
        dailyBalance(from, driversIn(year), cutting, healthy, values, course)
        crops[number] = course.picked[last]!
        structure[number] = course.structure[last]!
        reserve[number] = course.reserve[last]!
      }
      return crops
    },
  }
}

type ThreeArrays = [Float64Array, Float64Array, Float64Array]
