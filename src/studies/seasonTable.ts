import type {ModelYear} from "../../functions/calendar"
import type {Climate} from "../../functions/climate/climate"
import type {BalanceValues} from "../../functions/root/balanceValues"
import {
  dailyBalance,
  driversOf,
  emptyCourse,
  type Crowns,
  type Drivers,
} from "../../functions/root/dailyBalance"
import {placeAmong, type Acts} from "../../functions/stand/dynamicProgram"
import {fromStop} from "./fromStop"

/** A site on which seasons of any length are run by the daily balance, all with the same climate. */
export interface Site {
  readonly climate: Climate
  readonly year: ModelYear
  readonly values: BalanceValues
}

/** Runs seasons of one opening. Days are counted from the opening; `most` is how many days there are before the fern's end. */
export interface Seasons {
  readonly most: number
  /** Crop picked by the end of 0, 1, 2, ... days of cutting, kg/ha. */
  picked(crowns: Crowns, days: number): Float64Array
  /** Crowns at the start of the next model year after so many days of cutting. */
  after(crowns: Crowns, days: number, healthy?: Float64Array): Crowns
  /** The same for 0, 1, 2, ... whole weeks, which have their days of cutting in common. */
  byWeek(crowns: Crowns, weeks: number): {readonly picked: Float64Array; readonly after: readonly Crowns[]}
}

/** Seasons that open on that day of the model year, counted from 0. */
export function seasonsFrom({climate, year, values}: Site, open: number): Seasons {
  const drivers: Drivers = driversOf(climate, year, values)
  const course = emptyCourse(year.days)
  const fernEnd = Math.min(values.Fern_end - 1, year.days)
  const whole = new Float64Array(year.days).fill(1)
  const last = year.days - 1
  const springs: ((crowns: Crowns) => Crowns)[] = []
  const springFrom = (stop: number) => (springs[stop] ??= fromStop(drivers, stop, whole, values))
  const run = (crowns: Crowns, days: number, healthy: Float64Array) =>
    dailyBalance(crowns, drivers, {open, stop: open + days, fernEnd}, healthy, values, course)
  const pickedBy = (days: number) =>
    Float64Array.from({length: days + 1}, (_, day) => (day === 0 ? 0 : course.picked[open + day - 1]!))
  return {
    most: Math.max(0, fernEnd - open),
    picked(crowns, days) {
      run(crowns, days, whole)
      return pickedBy(days)
    },
    after(crowns, days, healthy = whole) {
      const {structure, reserve} = run(crowns, days, healthy)
      return {structure: structure[last]!, reserve: reserve[last]!}
    },
    byWeek(crowns, weeks) {
      const {structure, reserve} = run(crowns, 7 * weeks, whole)
      const after = Array.from({length: weeks + 1}, (_, week) => {
        const stop = open + 7 * week
        const then = stop === 0 ? crowns : {structure: structure[stop - 1]!, reserve: reserve[stop - 1]!}
        return springFrom(stop)(then)
      })
      return {picked: pickedBy(7 * weeks), after}
    },
  }
}

/**
 * Sugar at the start of the model year, mg/g, from which on more brings no more spears that spring. The worth of crowns has a
 * kink there; the winter's upkeep lies between it and the sugar at the opening.
 */
export function fullSugar({climate, year, values}: Site, open: number): number {
  const {Potential_zero, Potential_full, Potential_cap, Root_turnover} = values
  const atOpening = Potential_zero + Potential_cap * (Potential_full - Potential_zero)
  if (atOpening >= 1000) return Infinity
  const {breath} = driversOf(climate, year, values)
  let [structure, reserve] = [1, atOpening / (1000 - atOpening)]
  for (let day = open - 1; day >= 0; day--) {
    structure /= 1 - Root_turnover
    reserve += breath[day]! * structure
  }
  return sugarOf({structure, reserve})
}

/** The end of an axis from 0 to at least `most` that has a node on `kink`; `most` where there is no room for that. */
export function endWithNodeOn(kink: number, most: number, nodes: number): number {
  const below = Math.floor((kink / most) * (nodes - 1))
  const end = (kink / below) * (nodes - 1)
  return kink < most && below > 0 && end < 1000 ? end : most
}

/** Nodes at equal distances, both ends among them. */
export interface Axis {
  readonly low: number
  readonly high: number
  readonly nodes: number
}

/** The crowns that worths are found for: every sugar, mg/g, with every structural root, kg/ha. */
export interface Grid {
  readonly sugar: Axis
  readonly structure: Axis
}

export const sugarOf = ({structure, reserve}: Crowns) => (1000 * reserve) / (reserve + structure)

const nodesOf = ({low, high, nodes}: Axis) =>
  Array.from({length: nodes}, (_, i) => low + ((high - low) * i) / (nodes - 1))

/** The crowns of all nodes; the sugar of a structure runs through first. */
export const crownsOn = ({sugar, structure}: Grid): Crowns[] =>
  nodesOf(structure).flatMap((root) =>
    nodesOf(sugar).map((content) => ({structure: root, reserve: (root * content) / (1000 - content)})),
  )

const placed = {to: new Int32Array(4), weight: new Float64Array(4)}

/** The four nodes around crowns and their weights; crowns beyond the grid count as at its edge. The same arrays every time. */
export function around(crowns: Crowns, {sugar, structure}: Grid): typeof placed {
  const along = placeAmong(sugarOf(crowns), sugar.low, sugar.high, sugar.nodes)
  const up = placeAmong(crowns.structure, structure.low, structure.high, structure.nodes)
  const corner = up.node * sugar.nodes + along.node
  const {to, weight} = placed
  to[0] = corner
  to[1] = corner + 1
  to[2] = corner + sugar.nodes
  to[3] = corner + sugar.nodes + 1
  weight[0] = (1 - along.share) * (1 - up.share)
  weight[1] = along.share * (1 - up.share)
  weight[2] = (1 - along.share) * up.share
  weight[3] = along.share * up.share
  return placed
}

/** The worth of crowns from the worths of the nodes around them. */
export function worthOf(crowns: Crowns, grid: Grid, worth: Float64Array): number {
  const {to, weight} = around(crowns, grid)
  let sum = 0
  for (let i = 0; i < 4; i++) sum += weight[i]! * worth[to[i]!]!
  return sum
}

/** What every length of season, in whole weeks, brings and leaves from every node. */
export interface SeasonTable {
  readonly grid: Grid
  /** Acts of a node are 0, 1, 2, ... up to that many weeks. */
  readonly weeks: number
  readonly acts: Acts
  /** Sum over the days of the crop times what a kg leaves that week, for each act. */
  readonly income: Float64Array
}

/** Runs all seasons of a grid. `perKg` is what a kg of crop leaves on a day of cutting, counted from 0, after its own cost. */
export function tabulate(
  seasons: Seasons,
  grid: Grid,
  weeks: number,
  perKg: (day: number) => number,
  done: (share: number) => void = () => {},
): SeasonTable {
  const nodes = crownsOn(grid)
  const count = nodes.length * (weeks + 1)
  const acts: Acts = {
    first: Int32Array.from({length: nodes.length + 1}, (_, node) => node * (weeks + 1)),
    leads: Int32Array.from({length: count + 1}, (_, act) => act * 4),
    to: new Int32Array(count * 4),
    weight: new Float64Array(count * 4),
  }
  const income = new Float64Array(count)
  for (const [node, crowns] of nodes.entries()) {
    const {picked, after} = seasons.byWeek(crowns, weeks)
    const sums = incomes(picked, perKg)
    for (let week = 0; week <= weeks; week++) {
      const act = node * (weeks + 1) + week
      income[act] = sums[7 * week]!
      const {to, weight} = around(after[week]!, grid)
      acts.to.set(to, act * 4)
      acts.weight.set(weight, act * 4)
    }
    if (node % grid.sugar.nodes === grid.sugar.nodes - 1) done((node + 1) / nodes.length)
  }
  return {grid, weeks, acts, income}
}

/** What the crop picked by each day leaves, from what a kg leaves on each day. */
export function incomes(picked: Float64Array, perKg: (day: number) => number): Float64Array {
  const sums = new Float64Array(picked.length)
  for (let day = 1; day < picked.length; day++)
    sums[day] = sums[day - 1]! + (picked[day]! - picked[day - 1]!) * perKg(day - 1)
  return sums
}
