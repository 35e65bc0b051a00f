import type {RiskInput, RiskPart} from "./drawRisk"
import {chanceOf, spreadOf, type Chance, type Spread} from "./spreadOf"

export interface YearRisk {
  readonly year: number
  /** Saleable crop of the farm, kg. */
  readonly kg: Spread
  /** Capacity to pay what is due, money. */
  readonly capacity: Spread
  /** Capacity less what is due. */
  readonly margin: Spread
  /** Capacity over what is due, and the chance that it is below 1; null where nothing is due. */
  readonly cover: Spread | null
  readonly below1: Chance | null
}

export interface PlanRisk {
  readonly name: string
  readonly years: readonly YearRisk[]
  /** The lowest cover of all years that have something due; null where none has. */
  readonly lowestCover: Spread | null
  /** That the cover is below 1 in any year. */
  readonly anyBelow1: Chance | null
  /** That cash is below 0 at the end of any of the first three years, when no other money comes or goes. */
  readonly cashShort: Chance
  /** The sum of all margins less that of the first plan, draw by draw, and the chance that it is above 0; null in the first. */
  readonly against: {readonly margin: Spread; readonly better: Chance} | null
}

export interface Risk {
  readonly draws: number
  readonly seed: number
  readonly plans: readonly PlanRisk[]
}

/** Years over which a shortage of cash is looked for. */
const CASH_YEARS = 3

/** Puts the parts of a study together. */
export function risk(input: RiskInput, parts: readonly RiskPart[]): Risk {
  const ordered = [...parts].sort((a, b) => a.from - b.from)
  const draws = ordered.reduce((sum, {count}) => sum + count, 0)
  const years = input.plans[0]!.years.length
  const column = (of: "kg" | "sales", plan: number, year: number) => {
    const all = new Float64Array(draws)
    for (const part of ordered) {
      const start = (plan * years + year) * part.count
      all.set(part[of].subarray(start, start + part.count), part.from - ordered[0]!.from)
    }
    return all
  }
  const money = input.plans.map((plan, number) =>
    plan.years.map(({perKg, costs, due}, year) => {
      const kg = column("kg", number, year)
      const capacity = column("sales", number, year).map((sales, row) => sales - perKg * kg[row]! - costs)
      return {kg, capacity, margin: capacity.map((able) => able - due), due}
    }),
  )
  const sums = money.map((years) => sumOf(years.map(({margin}) => margin)))
  return {
    draws,
    seed: input.seed,
    plans: input.plans.map(({name, cash}, number) => {
      const of = money[number]!
      const covers = of.flatMap(({capacity, due}) => (due > 0 ? [capacity.map((able) => able / due)] : []))
      const lowest = covers.length ? lowestOf(covers) : null
      const difference = sums[number]!.map((sum, row) => sum - sums[0]![row]!)
      return {
        name,
        years: of.map((one, year) => yearRisk(input.firstYear + year, one)),
        lowestCover: lowest && spreadOf(lowest),
        anyBelow1: lowest && chanceOf(lowest, (cover) => cover < 1),
        cashShort: chanceOf(
          lowestCash(
            of.map(({margin}) => margin),
            cash,
          ),
          (least) => least < 0,
        ),
        against: number
          ? {margin: spreadOf(difference), better: chanceOf(difference, (more) => more > 0)}
          : null,
      }
    }),
  }
}

interface YearMoney {
  readonly kg: Float64Array
  readonly capacity: Float64Array
  readonly margin: Float64Array
  readonly due: number
}

function yearRisk(year: number, {kg, capacity, margin, due}: YearMoney): YearRisk {
  const cover = due > 0 ? capacity.map((able) => able / due) : null
  return {
    year,
    kg: spreadOf(kg),
    capacity: spreadOf(capacity),
    margin: spreadOf(margin),
    cover: cover && spreadOf(cover),
    below1: cover && chanceOf(cover, (times) => times < 1),
  }
}

const sumOf = (columns: readonly Float64Array[]) =>
  columns[0]!.map((_, row) => columns.reduce((sum, column) => sum + column[row]!, 0))

const lowestOf = (columns: readonly Float64Array[]) =>
  columns[0]!.map((_, row) => columns.reduce((least, column) => Math.min(least, column[row]!), Infinity))

function lowestCash(margins: readonly Float64Array[], cash: number): Float64Array {
  const first = margins.slice(0, CASH_YEARS)
  return lowestOf(first.map((_, year) => sumOf(first.slice(0, year + 1)).map((sum) => cash + sum)))
}
