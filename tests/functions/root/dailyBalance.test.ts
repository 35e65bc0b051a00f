import * as fc from "fast-check"
import {describe, expect, it} from "vitest"
import {dayOf, modelYearOf, type ModelYear} from "../../../functions/calendar"
import {alongYear, type Climate} from "../../../functions/climate/climate"
import {cropValues} from "../../../functions/cropValues"
import {balanceDefaults, balanceNames, type BalanceValues} from "../../../functions/root/balanceValues"
import {dailyBalance, driversOf, emptyCourse, emptyLedger} from "../../../functions/root/dailyBalance"
import {sites} from "./sites"

const YEAR: ModelYear = {first: dayOf("2026-01-01")!, days: 365}
const whole = (days: number) => new Float64Array(days).fill(1)

/** A year that begins with the day of a unit vector: what stands there at its end. */
function oneDay(
  crowns: {structure: number; reserve: number},
  weather: {air: number; soil: number; sun: number},
  season: {open: number; stop: number},
  values: BalanceValues,
  health = 1,
) {
  const year = {first: YEAR.first, days: 1}
  const climate = {
    air: Float64Array.of(weather.air),
    soil: Float64Array.of(weather.soil),
    sun: Float64Array.of(weather.sun),
  }
  const course = dailyBalance(
    crowns,
    driversOf(climate, year, values),
    {...season, fernEnd: 9},
    Float64Array.of(health),
    values,
    emptyCourse(1),
  )
  return {
    reserve: course.reserve[0]!,
    structure: course.structure[0]!,
    fern: course.fern[0]!,
    picked: course.picked[0]!,
  }
}

// Unit vectors of the balance as published with its equations: one day each.
describe("one day of the balance", () => {
  it("cuts, at 15 °C from a full store", () => {
    // S 6000, C 6000: c 500, so the potential is 2.2·6000 = 13 200; rT 1, fC 1.
    const day = oneDay(
      {structure: 6000, reserve: 6000},
      {air: 15, soil: 12, sun: 0},
      {open: 0, stop: 1},
      balanceDefaults,
    )
    expect(day.picked).toBeCloseTo(165.0, 3)
    expect(day.reserve).toBeCloseTo(5958.046, 3)
    expect(day.structure).toBeCloseTo(5998.32, 3)
  })

  it("cuts, starved", () => {
    // The vector starts with B 5 000 at c 166.667: here the potential that gives it, 5000/(6000·86.667/420).
    const values = {...balanceDefaults, Spear_potential: (5000 / (6000 * ((1000 * 1200) / 7200 - 80))) * 420}
    const day = oneDay(
      {structure: 6000, reserve: 1200},
      {air: 20, soil: 15, sun: 0},
      {open: 0, stop: 1},
      values,
    )
    expect(day.picked).toBeCloseTo(45.37, 3)
    expect(day.reserve).toBeCloseTo(1181.215, 3)
  })

  it("builds fern on its first day", () => {
    const day = oneDay(
      {structure: 6000, reserve: 4000},
      {air: 19, soil: 17, sun: 19},
      {open: 0, stop: 0},
      balanceDefaults,
    )
    expect(day.fern).toBeCloseTo(180.177, 3)
    expect(day.structure).toBeCloseTo(5998.981, 3)
    expect(day.reserve).toBeCloseTo(3734.116, 3)
  })
})

/** The year by the equations of the balance in their own symbols, written apart from the code that is tested. */
function plain(
  S: number,
  C: number,
  climate: Climate,
  year: ModelYear,
  start: number,
  stop: number,
  H: Float64Array,
  v: BalanceValues,
) {
  const T = alongYear(climate.air, year)
  const Ts = alongYear(climate.soil, year)
  const I = alongYear(climate.sun, year)
  const within = (x: number, a: number, b: number) => Math.max(a, Math.min(b, x))
  const g = (t: number) =>
    Math.max(
      0,
      Math.min(
        1,
        (t - v.Leaf_cold) / (v.Leaf_warm - v.Leaf_cold),
        (v.Leaf_stop - t) / (v.Leaf_stop - v.Leaf_hot),
      ),
    )
  let F = 0
  let B = 0
  let Y = 0
  const days: {S: number; C: number; F: number; Y: number}[] = []
  for (let d = 0; d < year.days; d++) {
    const c = (1000 * C) / (C + S)
    const warm = T[d]! + (d >= start && d < stop ? v.Ridge_gain : 0)
    const rT = within((warm - v.Growth_base) / (v.Growth_reference - v.Growth_base), 0, v.Growth_cap)
    let use = v.Upkeep_rate * v.Upkeep_q10 ** ((Ts[d]! - 20) / 10) * S
    let gain = 0
    if (d === start)
      B =
        v.Spear_potential *
        S *
        within((c - v.Potential_zero) / (v.Potential_full - v.Potential_zero), 0, v.Potential_cap)
    if (d >= start && d < stop) {
      const y = v.Cut_rate * rT * within((c - v.Scarce_low) / (v.Scarce_high - v.Scarce_low), 0, 1) * B
      B -= y
      Y += y
      use += y * v.Spear_dry * (1 + v.Stub_share) * (1 + v.Unsold_share) * v.Spear_cost
    } else if (d >= stop && d < v.Fern_end - 1) {
      const cap = Math.min(v.Fern_most, v.Fern_per_root * S)
      const room = Math.max(0, 1 - F / cap)
      const mob = v.Fern_build * rT * C * room * within((c - v.Fern_low) / (v.Fern_high - v.Fern_low), 0, 1)
      F += mob / v.Fern_cost
      use += mob
      const A =
        10 *
        v.Light_gain *
        Math.max(0, I[d]!) *
        (1 - Math.exp(-v.Light_spread * v.Leaf_area * F * H[d]!)) *
        g(T[d]!)
      const toF = v.To_fern * A * room
      const toS = v.To_root * A * Math.max(0, 1 - S / v.Root_most)
      F += toF / v.Fern_cost
      S += toS / v.Root_cost
      gain = (A - toF - toS) * Math.max(0, 1 - (c / v.Sugar_most) ** 4)
    }
    C = Math.max(0, C - use + gain)
    S *= 1 - v.Root_turnover
    days.push({S, C, F, Y})
  }
  return days
}

/** Any number of a stretch, each as likely: doubles of the library's own kind crowd at the ends and near 0. */
const between = (low: number, high: number) =>
  fc.noBias(fc.integer({min: 0, max: 1_000_000})).map((step) => low + ((high - low) * step) / 1_000_000)

/** Any crop values within their limits that do not contradict each other. */
const anyValues = fc
  .record(
    Object.fromEntries(
      balanceNames.map((name) => {
        const {value, limits} = cropValues[name] as {
          value: number
          limits: {min?: number; max?: number; above?: number; below?: number}
        }
        if (name === "Year_start") return [name, fc.constantFrom(1, 7)]
        if (name === "Fern_end") return [name, fc.integer({min: 200, max: 366})]
        const low = Math.max(limits.min ?? limits.above ?? -Infinity, value - Math.abs(value) * 0.5)
        const high = Math.min(
          limits.max ?? limits.below ?? Infinity,
          value + Math.max(Math.abs(value) * 0.5, 0.5),
        )
        return [name, between(low + 1e-9, high - 1e-9)]
      }),
    ) as Record<string, fc.Arbitrary<number>>,
  )
  .map((values) => values as unknown as BalanceValues)
  .filter(
    (v) =>
      v.Potential_zero < v.Potential_full - 1 &&
      v.Growth_base < v.Growth_reference - 1 &&
      v.Scarce_low < v.Scarce_high - 1 &&
      v.Fern_low < v.Fern_high - 1 &&
      v.Leaf_cold < v.Leaf_warm - 1 &&
      v.Leaf_warm < v.Leaf_hot - 1 &&
      v.Leaf_hot < v.Leaf_stop - 1 &&
      v.To_fern + v.To_root <= 1,
  )

const anyClimate = fc
  .record({
    days: fc.constantFrom(365, 366),
    air: between(-10, 30),
    swing: between(0, 20),
    sun: between(2, 25),
    jump: between(0, 8),
  })
  .map(({days, air, swing, sun, jump}): Climate => {
    const along = (f: (turn: number, day: number) => number) =>
      Float64Array.from({length: days}, (_, i) => f(Math.cos((2 * Math.PI * (i - 20)) / days), i))
    // A sawtooth stands for the weather from day to day.
    return {
      air: along((turn, i) => air - swing * turn + jump * (((i * 7) % 11) / 11 - 0.5)),
      soil: along((turn) => air - 0.7 * swing * turn),
      sun: along((turn, i) => Math.max(0, sun * (1 - 0.6 * turn) * (0.6 + ((i * 5) % 7) / 9))),
    }
  })

const anyYear = fc.record({
  values: anyValues,
  climate: anyClimate,
  structure: between(50, 20000),
  sugar: between(0, 750),
  at: fc.integer({min: dayOf("2020-01-01")!, max: dayOf("2032-12-31")!}),
  open: fc.integer({min: 0, max: 200}),
  weeks: fc.integer({min: 0, max: 16}),
  health: between(0, 1),
  lossFrom: fc.integer({min: 100, max: 330}),
})

describe("a year of the balance", () => {
  it("is what its equations say, written a second time, for any site, season and crop values", () => {
    let lively = 0
    fc.assert(
      fc.property(anyYear, ({values, climate, structure, sugar, at, open, weeks, health, lossFrom}) => {
        const year = modelYearOf(at, values.Year_start)
        const reserve = (structure * sugar) / (1000 - sugar)
        const healthy = whole(year.days).fill(health, lossFrom)
        const stop = open + 7 * weeks
        const course = dailyBalance(
          {structure, reserve},
          driversOf(climate, year, values),
          {open, stop, fernEnd: values.Fern_end - 1},
          healthy,
          values,
          emptyCourse(year.days),
        )
        const days = plain(structure, reserve, climate, year, open, stop, healthy, values)
        let worst = 0
        let least = Infinity
        for (const [d, {S, C, F, Y}] of days.entries()) {
          const ours = [course.structure[d]!, course.reserve[d]!, course.fern[d]!, course.picked[d]!]
          for (const [i, theirs] of [S, C, F, Y].entries())
            worst = Math.max(worst, Math.abs(ours[i]! - theirs) / Math.max(1, Math.abs(theirs)))
          least = Math.min(least, ...ours)
        }
        const {F, Y} = days.at(-1)!
        if (F > 10 && Y > 10) lively++
        expect(worst).toBeLessThanOrEqual(1e-9) // NaN is not
        expect(least).toBeGreaterThanOrEqual(0)
      }),
      {seed: 20261125, numRuns: 300},
    )
    expect(lively).toBeGreaterThan(30) // years with a crop and fern, not empty ones
  })

  it("loses and makes no sugar: each day's ledger closes to 1e-9 of the pool", () => {
    fc.assert(
      fc.property(anyYear, ({values, climate, structure, sugar, at, open, weeks}) => {
        const year = modelYearOf(at, values.Year_start)
        const reserve = (structure * sugar) / (1000 - sugar)
        const ledger = emptyLedger(year.days)
        const {reserve: store} = dailyBalance(
          {structure, reserve},
          driversOf(climate, year, values),
          {open, stop: open + 7 * weeks, fernEnd: values.Fern_end - 1},
          whole(year.days),
          values,
          emptyCourse(year.days),
          ledger,
        )
        for (let d = 0; d < year.days; d++) {
          const before = d ? store[d - 1]! : reserve
          const flows =
            ledger.gained[d]! + ledger.short[d]! - ledger.breathed[d]! - ledger.drawn[d]! - ledger.built[d]!
          expect(Math.abs(before + flows - store[d]!)).toBeLessThanOrEqual(1e-9 * Math.max(1, before))
        }
      }),
      {seed: 20261126, numRuns: 60},
    )
  })

  it("gives more this year and less the next for each week more, by the defaults", () => {
    const drivers = driversOf(sites.generic, YEAR, balanceDefaults)
    const run = (structure: number, reserve: number, weeks: number) => {
      const season = {open: 114, stop: 114 + 7 * weeks, fernEnd: 287}
      const course = dailyBalance(
        {structure, reserve},
        drivers,
        season,
        whole(365),
        balanceDefaults,
        emptyCourse(365),
      )
      const sugarAtClose = course.reserve[season.stop - 1]! / course.structure[season.stop - 1]!
      return {
        picked: course.picked[364]!,
        sugarAtClose,
        next: [course.structure[364]!, course.reserve[364]!] as const,
      }
    }
    const years = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((weeks) => {
      const first = run(6117, 7195, weeks)
      return {...first, after: run(...first.next, 8).picked}
    })
    for (const [i, year] of years.slice(1).entries()) {
      expect(year.picked).toBeGreaterThan(years[i]!.picked)
      expect(year.sugarAtClose).toBeLessThan(years[i]!.sugarAtClose)
      expect(year.after).toBeLessThan(years[i]!.after)
    }
  })
})
