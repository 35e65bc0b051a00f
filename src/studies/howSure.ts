import type {ModelYear} from "../../functions/calendar"
import type {Climate} from "../../functions/climate/climate"
import type {CropValue} from "../../functions/cropValue"
import {cropValues} from "../../functions/cropValues"
import {healthAlong, type HealthStep} from "../../functions/fern/healthy"
import {balanceNames, type BalanceValues} from "../../functions/root/balanceValues"
import {dailyBalance, driversOf, emptyCourse, type Crowns} from "../../functions/root/dailyBalance"
import {refillDay} from "../../functions/root/yearOutcome"
import {normal, randomOf, triangular, type Random} from "./random"

/** What a study of one planting's year runs on. Errors are relative standard errors; mass in kg/ha. */
export interface HowSureInput {
  readonly crowns: Crowns
  readonly climate: Climate
  readonly year: ModelYear
  /** First and last day of cutting, counted from the start of the year; last = first - 1 when not cut. */
  readonly open: number
  readonly close: number
  readonly healthy: readonly HealthStep[]
  readonly values: BalanceValues
  /** The ranges that crop values are likely to lie in; the others are drawn within `valueSpread`. */
  readonly likely: Readonly<Record<string, readonly [number, number]>>
  readonly factor: number
  /** The planner's own line for the lowest store, kg/ha; null where none is set. */
  readonly floor: number | null
  readonly sugarError: number
  readonly massError: number
  readonly factorError: number
  /** Year-to-year deviation of the season's air, °C (soil takes 0.75 of it), and of the sun as a share. */
  readonly airSpread: number
  readonly sunSpread: number
  /** Share by which a crop value without a likely range may be off either way. */
  readonly valueSpread: number
  readonly seed: number
}

/** Assumed widths, chosen for want of better: the sheet and the panel say so. */
export const ASSUMED = {massError: 0.1, airSpread: 1, sunSpread: 0.05, valueSpread: 0.2} as const

/** Days off either way that the fern may end. */
const FERN_END_DAYS = 7

/** Values that are site or switch, not biology: not drawn (Fern_end is, by days). */
const FIXED = new Set(["Year_start", "Ridge_gain", "Fern_end"])

const drawnValues = balanceNames.filter((name) => !FIXED.has(name))

/** The inputs that are drawn, by name; the order is that of the columns of `DrawnPart.inputs`. */
export const inputNames = [
  "sugar of the root sample",
  "root mass",
  "warmth of the year",
  "sun of the year",
  "own record",
  "end of the fern",
  ...drawnValues,
] as const

/** Weeks of a model year, the last one short. */
export const WEEKS = 53

/** The draws from `from` up to `to`: what went in and what came out, one row a draw. */
export interface DrawnPart {
  readonly from: number
  readonly inputs: Float64Array
  readonly picked: Float64Array
  readonly nextSugar: Float64Array
  /** Lowest store of the year at the end of a day. */
  readonly lowest: Float64Array
  /** Day of the refill, counted from 0; -1 when there is none. */
  readonly refill: Float64Array
  /** Store at the end of each week. */
  readonly store: Float32Array
}

/** Runs some of the draws. Draw i depends on the seed and i alone, so any way of sharing them gives the same. */
export function drawPart(
  input: HowSureInput,
  from: number,
  to: number,
  done: (share: number) => void = () => {},
): DrawnPart {
  const count = to - from
  const part: DrawnPart = {
    from,
    inputs: new Float64Array(count * inputNames.length),
    picked: new Float64Array(count),
    nextSugar: new Float64Array(count),
    lowest: new Float64Array(count),
    refill: new Float64Array(count),
    store: new Float32Array(count * WEEKS),
  }
  const course = emptyCourse(input.year.days)
  const healthy = healthAlong(input.healthy, input.year)
  const last = input.year.days - 1
  for (let row = 0; row < count; row++) {
    const {crowns, climate, values, factor, drawn} = drawOne(input, randomOf(input.seed, from + row))
    part.inputs.set(drawn, row * inputNames.length)
    const cutting = {open: input.open, stop: input.close + 1, fernEnd: values.Fern_end - 1}
    dailyBalance(crowns, driversOf(climate, input.year, values), cutting, healthy, values, course)
    part.picked[row] = course.picked[last]! * factor
    part.nextSugar[row] = (1000 * course.reserve[last]!) / (course.reserve[last]! + course.structure[last]!)
    part.lowest[row] = Math.min(...course.reserve)
    part.refill[row] = refillDay(course, crowns, input.open)
    for (let week = 0; week < WEEKS; week++)
      part.store[row * WEEKS + week] = course.reserve[Math.min(last, 7 * week + 6)]!
    if (row % 100 === 99) done((row + 1) / count)
  }
  return part
}

function drawOne(input: HowSureInput, random: Random) {
  const {climate, values, crowns} = input
  const sugar = normal(random)
  const mass = normal(random)
  const warmth = normal(random)
  const sun = normal(random)
  const record = normal(random)
  const fernEnd = Math.round((2 * random() - 1) * FERN_END_DAYS * (input.valueSpread > 0 ? 1 : 0))
  const changed: Record<string, number> = {...values, Fern_end: values.Fern_end + fernEnd}
  for (const name of drawnValues) changed[name] = drawValue(name, input, random)
  const structure = crowns.structure * Math.max(0.3, 1 + input.massError * mass)
  const c = (1000 * crowns.reserve) / (crowns.reserve + crowns.structure)
  const drawnSugar = Math.min(850, Math.max(10, c * (1 + input.sugarError * sugar)))
  const degrees = input.airSpread * warmth
  const light = Math.max(0, 1 + input.sunSpread * sun)
  return {
    crowns: {structure, reserve: (structure * drawnSugar) / (1000 - drawnSugar)},
    climate: {
      air: climate.air.map((air) => air + degrees),
      soil: climate.soil.map((soil) => soil + 0.75 * degrees),
      sun: climate.sun.map((one) => one * light),
    },
    values: changed as unknown as BalanceValues,
    factor: input.factor * Math.max(0, 1 + input.factorError * record),
    drawn: [sugar, mass, warmth, sun, record, fernEnd, ...drawnValues.map((name) => changed[name]!)],
  }
}

/** A crop value from its likely range, else from an assumed width either way; never outside what it may be. */
function drawValue(name: (typeof drawnValues)[number], input: HowSureInput, random: Random): number {
  const {limits} = cropValues[name] as CropValue
  const value = input.values[name]
  const half = Math.abs(value) * input.valueSpread
  // A value that was typed outside its likely range is drawn from the range it stretches to.
  const [from, to] = (input.valueSpread > 0 && input.likely[name]) || [value - half, value + half]
  const low = Math.max(Math.min(from, value), limits.min ?? limits.above ?? -Infinity)
  const high = Math.min(Math.max(to, value), limits.max ?? limits.below ?? Infinity)
  return triangular(random, low, Math.min(high, Math.max(low, value)), high)
}

/** The 10, 25, 50, 75 and 90 of a hundred. */
export type Quantiles = readonly [number, number, number, number, number]
const SHARES = [0.1, 0.25, 0.5, 0.75, 0.9] as const

export interface HowSure {
  readonly draws: number
  readonly picked: Quantiles
  readonly nextSugar: Quantiles
  readonly lowest: Quantiles
  /** Share of the draws whose lowest store lies under the floor; null without a floor. */
  readonly underFloor: number | null
  /** Over the draws that refill; null when none does. Days counted from 0. */
  readonly refill: Quantiles | null
  readonly noRefill: number
  /** Store at the end of each week. */
  readonly store: readonly Quantiles[]
  /** The same of the first draws one by one, for those who want to see what a band is made of. */
  readonly singles: readonly (readonly number[])[]
  /** Inputs by the share of the crop's spread that goes with them, most first: squared correlation, brought to a sum of 1. */
  readonly pickedFrom: readonly {readonly name: string; readonly share: number}[]
}

/** Chosen: so many single draws can be told apart in a picture. */
const SINGLES = 12

/** Puts the parts of a study together. */
export function howSure(parts: readonly DrawnPart[], floor: number | null): HowSure {
  const ordered = [...parts].sort((a, b) => a.from - b.from)
  const all = (of: (part: DrawnPart) => Float64Array) =>
    Float64Array.from(ordered.flatMap((part) => [...of(part)]))
  const picked = all((part) => part.picked)
  const refill = all((part) => part.refill)
  const lowest = all((part) => part.lowest)
  const refilled = refill.filter((day) => day >= 0)
  const store = Array.from({length: WEEKS}, (_, week) =>
    quantiles(
      Float64Array.from(
        ordered.flatMap(({store}) =>
          Array.from({length: store.length / WEEKS}, (_, row) => store[row * WEEKS + week]!),
        ),
      ),
    ),
  )
  const singles = ordered.flatMap(({store}) =>
    Array.from({length: Math.min(SINGLES, store.length / WEEKS)}, (_, row) => [
      ...store.subarray(row * WEEKS, (row + 1) * WEEKS),
    ]),
  )
  return {
    draws: picked.length,
    picked: quantiles(picked),
    nextSugar: quantiles(all((part) => part.nextSugar)),
    lowest: quantiles(lowest),
    underFloor: floor === null ? null : lowest.filter((store) => store < floor).length / lowest.length,
    refill: refilled.length ? quantiles(refilled) : null,
    noRefill: 1 - refilled.length / refill.length,
    store,
    singles: singles.slice(0, SINGLES),
    pickedFrom: ranking(ordered, picked),
  }
}

/** Quantiles with a straight line between the sorted values, the ends at 0 and 1 (Hyndman and Fan 1996, type 7). */
export function quantiles(values: Float64Array): Quantiles {
  const sorted = Float64Array.from(values).sort()
  return SHARES.map((share) => {
    const place = share * (sorted.length - 1)
    const below = Math.floor(place)
    const above = Math.min(below + 1, sorted.length - 1)
    return sorted[below]! + (place - below) * (sorted[above]! - sorted[below]!)
  }) as unknown as Quantiles
}

function ranking(parts: readonly DrawnPart[], outcome: Float64Array): HowSure["pickedFrom"] {
  const columns = inputNames.length
  const squares = inputNames.map((name, column) => {
    const values = Float64Array.from(
      parts.flatMap(({inputs}) =>
        Array.from({length: inputs.length / columns}, (_, row) => inputs[row * columns + column]!),
      ),
    )
    return {name, share: correlation(values, outcome) ** 2}
  })
  const total = squares.reduce((sum, {share}) => sum + share, 0)
  if (total === 0) return []
  return squares.map(({name, share}) => ({name, share: share / total})).sort((a, b) => b.share - a.share)
}

function correlation(x: Float64Array, y: Float64Array): number {
  const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length
  const [mx, my] = [mean(x), mean(y)]
  let [xy, xx, yy] = [0, 0, 0]
  for (let i = 0; i < x.length; i++) {
    xy += (x[i]! - mx) * (y[i]! - my)
    xx += (x[i]! - mx) ** 2
    yy += (y[i]! - my) ** 2
  }
  return xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0
}
