import {dailyBalance, driversOf, emptyCourse, type Crowns} from "../../functions/root/dailyBalance"
import type {BestWeeksInput} from "../../src/studies/bestWeeksAsked"
import {sixPlantings} from "./sixPlantings"

const {money, successor, site} = sixPlantings
const {open} = sixPlantings.plantings[2]!

/** What another use gives, so that no chain of plantings is needed, money/ha. */
export const GROUND = 30_000

/** Four seasons at most, the ground worth what another use gives: nothing is left to a table but the worth between nodes. */
export const smallCase: BestWeeksInput = {
  ...sixPlantings,
  money: {...money, otherUse: GROUND, clear: 400, weekCost: 60},
  successor: {...successor, open, flows: [-1e6, 0]},
  caps: [5],
  technicalWeeks: 7,
  lossChances: [0.04],
  oldest: 12,
  plantings: [],
}

export interface Way {
  worth: number
  weeks: number[]
  /** Reserve at the end of each year. */
  left: number[]
}

/**
 * The best way on of a planting in the small case, found by running every length of every season one after another; with
 * `mustKeep` of those that clear after that many seasons.
 */
export function everyWay(
  crowns: Crowns,
  age: number,
  factor: number,
  healthyFrom: number | null,
  mustKeep: number | null = null,
): Way {
  const cleared: Way = {worth: GROUND - 400, weeks: [], left: []}
  if (age === 12 || mustKeep === 0) return cleared
  let best = mustKeep === null ? cleared : {...cleared, worth: -Infinity}
  for (let weeks = 0; weeks <= 7; weeks++) {
    const {income, after} = season(crowns, weeks, healthyFrom)
    const margin = factor * sixPlantings.ageFactors[age]! * income - 60 * weeks - 900
    const ways = mustKeep === null || mustKeep === 1 ? [cleared] : []
    if (weeks <= 5) ways.push(everyWay(after, age + 1, factor, null, mustKeep && mustKeep - 1))
    for (const then of ways) {
      const total = (0.96 * (margin + then.worth) + 0.04 * (money.lossFlow + GROUND)) / 1.07
      const left = [after.reserve, ...then.left]
      if (total > best.worth) best = {worth: total, weeks: [weeks, ...then.weeks], left}
    }
  }
  return best
}

const drivers = driversOf(site.climate, site.year, site.values)
const course = emptyCourse(365)

/** One season written out: day by day the crop times what a kg leaves, at the end of the year. */
function season(crowns: Crowns, weeks: number, healthyFrom: number | null) {
  const fern = new Float64Array(365).fill(1)
  if (healthyFrom !== null) fern.fill(0.5, healthyFrom)
  const cutting = {open, stop: open + 7 * weeks, fernEnd: site.values.Fern_end - 1}
  const {picked, structure, reserve} = dailyBalance(crowns, drivers, cutting, fern, site.values, course)
  let income = 0
  for (let day = open; day < open + 7 * weeks; day++) {
    const price = money.prices[Math.min(Math.floor((day - open) / 7), 9)]!
    income += (picked[day]! - picked[day - 1]!) * (0.86 * (price - 0.45) - 0.95 - 0.03)
  }
  return {income, after: {structure: structure[364]!, reserve: reserve[364]!}}
}
