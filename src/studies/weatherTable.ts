import type {BalanceValues} from "../../functions/root/balanceValues"
import {dailyBalance, emptyCourse, type Crowns, type Drivers} from "../../functions/root/dailyBalance"
import {driversBetween, fromStop} from "./fromStop"
import type {Axis} from "./seasonTable"

/** The weather of one year, as normal scores. */
export interface YearScores {
  readonly warmth: number
  readonly sun: number
}

/** What a year of the balance brings and leaves, kg/ha. */
export interface YearEnd {
  crop: number
  structure: number
  reserve: number
}

/** The years of one season of cutting, run once for crowns and weathers on a grid and read between its nodes. */
export interface WeatherTable {
  /** Fills `end` and says true; false where crowns or weather lie beyond the grid. */
  read(crowns: Crowns, scores: YearScores, isHurt: boolean, end: YearEnd): boolean
}

export interface TableAsked {
  /** First and last day of cutting, counted from the start of the model year. */
  readonly open: number
  readonly close: number
  /** Structural roots at the start, kg/ha: the grid reaches from half of the least up to where roots stop growing. */
  readonly structures: readonly number[]
  readonly values: BalanceValues
  driversAt(scores: YearScores): Drivers
  /** The green share of the fern day by day in a year of loss; null where there are none. */
  readonly hurt: Float64Array | null
}

// Chosen so that a crop read ten years on is within three hundredths of the one run day by day, and the mean of many within a
// thousandth: see the test.
const SUGAR: Axis = {low: 80, high: 680, nodes: 21}
const WARMTH: Axis = {low: -3, high: 3, nodes: 7}
const SUN: Axis = {low: -3, high: 3, nodes: 3}
/** Structural roots stand at equal distances of their logarithms, no further apart than this. */
const ROOT_STEP = 0.16
const CROP_SUGAR: Axis = {...SUGAR, nodes: 61}
const CROP_WARMTH: Axis = {...WARMTH, nodes: 13}

/**
 * Tabulates a season. The crop of a year depends on its sugar and its warmth alone and grows with the structural root, so it
 * has a fine table of its own, a kg of structure; what is left at the end depends on sun and structure too.
 */
export function weatherTable({open, close, structures, values, driversAt, hurt}: TableAsked): WeatherTable {
  const roots = rootsAmong(
    Math.log(0.5 * Math.min(...structures)),
    Math.log(1.1 * Math.max(...structures, values.Root_most)),
  )
  const stop = close + 1
  const cutting = {open, stop, fernEnd: values.Fern_end - 1}
  const course = emptyCourse(stop)
  const noFern = new Float64Array(stop)
  /** Up to the stop, for a kg of structure: nothing in it depends on the sun, and all of it grows with the structure. */
  const cut = (sugar: number, drivers: Drivers) =>
    dailyBalance(crownsOf(1, sugar), driversBetween(0, stop, drivers), cutting, noFern, values, course)
  const crops = table([CROP_WARMTH, CROP_SUGAR], 1, (fill) => {
    for (const warmth of nodesOf(CROP_WARMTH)) {
      const drivers = driversAt({warmth, sun: 0})
      for (const sugar of nodesOf(CROP_SUGAR)) fill(cut(sugar, drivers).picked[close]!)
    }
  })
  const endsWith = (healthy: (days: number) => Float64Array) =>
    table([WARMTH, SUN, roots, SUGAR], 2, (fill) => {
      for (const warmth of nodesOf(WARMTH)) {
        const usual = driversAt({warmth, sun: 0})
        const stops = nodesOf(SUGAR).map((sugar): Crowns => {
          const {structure, reserve} = cut(sugar, usual)
          return {structure: structure[close]!, reserve: reserve[close]!}
        })
        for (const sun of nodesOf(SUN)) {
          const drivers = driversAt({warmth, sun})
          const toSpring = fromStop(drivers, stop, healthy(drivers.breath.length), values)
          for (const kg of nodesOf(roots).map(Math.exp))
            for (const {structure, reserve} of stops) {
              const end = toSpring({structure: kg * structure, reserve: kg * reserve})
              fill(end.structure, end.reserve)
            }
        }
      }
    })
  const whole = endsWith((days) => new Float64Array(days).fill(1))
  const lost = hurt ? endsWith(() => hurt) : whole
  const found = new Float64Array(2)
  const [short, long] = [new Float64Array(2), new Float64Array(4)]
  return {
    read({structure, reserve}, {warmth, sun}, isHurt, end) {
      const sugar = (1000 * reserve) / (reserve + structure)
      short[0] = long[0] = warmth
      short[1] = long[3] = sugar
      long[1] = sun
      long[2] = Math.log(structure)
      if (!crops(short, found)) return false
      end.crop = found[0]! * structure
      if (!(isHurt ? lost : whole)(long, found)) return false
      end.structure = found[0]!
      end.reserve = found[1]!
      return true
    },
  }
}

const rootsAmong = (low: number, high: number): Axis => ({
  low,
  high,
  nodes: 1 + Math.max(2, Math.ceil((high - low) / ROOT_STEP)),
})

const crownsOf = (structure: number, sugar: number): Crowns => ({
  structure,
  reserve: (structure * sugar) / (1000 - sugar),
})

const nodesOf = ({low, high, nodes}: Axis): number[] =>
  Array.from({length: nodes}, (_, i) => low + ((high - low) * i) / (nodes - 1))

type Read = (at: Float64Array, found: Float64Array) => boolean

/**
 * A table of `outs` numbers over axes; the last axis runs through first. Between nodes a number is that of the lines between
 * the corners around it, and along each axis what the curve through three nodes adds: an error of the third order.
 */
function table(
  axes: readonly Axis[],
  outs: number,
  make: (fill: (...values: number[]) => void) => void,
): Read {
  const dimensions = axes.length
  const steps = new Int32Array(dimensions)
  let size = outs
  for (let d = dimensions - 1; d >= 0; d--) {
    steps[d] = size
    size *= axes[d]!.nodes
  }
  const held = new Float64Array(size)
  let next = 0
  make((...values) => {
    for (const value of values) held[next++] = value
  })
  const lows = Float64Array.from(axes, ({low}) => low)
  const perUnit = Float64Array.from(axes, ({low, high, nodes}) => (nodes - 1) / (high - low))
  const last = Int32Array.from(axes, ({nodes}) => nodes - 1)
  const corners = 1 << dimensions
  const offsets = Int32Array.from({length: corners}, (_, corner) =>
    steps.reduce((sum, step, d) => sum + (corner & (1 << d) ? step : 0), 0),
  )
  const weights = new Float64Array(corners)
  const share = new Float64Array(dimensions)
  const nodes = new Int32Array(dimensions)
  return (at, found) => {
    let base = 0
    for (let d = 0; d < dimensions; d++) {
      const place = (at[d]! - lows[d]!) * perUnit[d]!
      if (!(place >= 0 && place <= last[d]!)) return false
      const node = Math.min(place | 0, last[d]! - 1)
      nodes[d] = node
      share[d] = place - node
      base += node * steps[d]!
    }
    weights[0] = 1
    for (let d = 0, count = 1; d < dimensions; d++, count *= 2)
      for (let corner = 0; corner < count; corner++) {
        const weight = weights[corner]!
        weights[corner + count] = weight * share[d]!
        weights[corner] = weight * (1 - share[d]!)
      }
    for (let out = 0; out < outs; out++) {
      const from = base + out
      let sum = 0
      for (let corner = 0; corner < corners; corner++)
        sum += weights[corner]! * held[from + offsets[corner]!]!
      for (let d = 0; d < dimensions; d++) {
        // The curve through the nearest three nodes: at the left end the one after, else the one before.
        const t = share[d]!
        const nearest = t > 0.5 ? 1 : 0
        const middle = Math.min(Math.max(nodes[d]! + nearest, 1), last[d]! - 1)
        const centre = from + (middle - nodes[d]!) * steps[d]!
        const bend = held[centre - steps[d]!]! - 2 * held[centre]! + held[centre + steps[d]!]!
        sum -= 0.5 * t * (1 - t) * bend
      }
      found[out] = sum
    }
    return true
  }
}
