import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {climateRange, type Climate} from "../../../functions/climate/climate"
import {balanceDefaults} from "../../../functions/root/balanceValues"
import {driversFor, modelledYear, planYear, type YearPlan} from "../../../functions/root/modelledYear"
import {generic} from "./generic"

const plan = (open: string, close: string, values = balanceDefaults) =>
  planYear(dayOf(open)!, dayOf(close)!, values)
const july = {...balanceDefaults, Year_start: 7}

describe("planYear", () => {
  it("counts the days of the model year from 0, the first after cutting as the stop", () => {
    // The worked example: start day 115, stop day 171, fern end 288, counted from 1.
    expect(plan("2026-04-25", "2026-06-19")).toEqual({
      year: {first: dayOf("2026-01-01"), days: 365},
      cutting: {open: 114, stop: 170, fernEnd: 287},
    })
  })
  it("has 366 days where 29 February lies in it", () => {
    expect(plan("2028-04-25", "2028-06-19")).toMatchObject({year: {days: 366}, cutting: {open: 115}})
    expect(plan("2027-10-25", "2027-12-19", july)).toMatchObject({
      year: {first: dayOf("2027-07-01"), days: 366},
    })
    expect(plan("2028-10-25", "2028-12-19", july)).toMatchObject({year: {days: 365}})
  })
  it("from July begins with the 1 July on or before the opening", () => {
    expect(plan("2026-07-01", "2026-07-01", july)).toMatchObject({
      year: {first: dayOf("2026-07-01")},
      cutting: {open: 0, stop: 1},
    })
    expect(plan("2026-06-30", "2026-06-30", july)).toMatchObject({
      year: {first: dayOf("2025-07-01")},
      cutting: {open: 364, stop: 365},
    })
  })
  it("takes a close on the day before the opening as not cut, and none earlier", () => {
    expect(plan("2026-01-01", "2025-12-31")).toMatchObject({cutting: {open: 0, stop: 0}})
    expect(plan("2026-01-01", "2025-12-30")).toEqual({
      refused: "Close 2025-12-30 must not be before the opening 2026-01-01; the day before it means not cut",
      code: "#NUM!",
    })
  })
  it("takes a close on the last day of the year, and none later", () => {
    expect(plan("2026-04-25", "2026-12-31")).toMatchObject({cutting: {stop: 365}})
    expect(plan("2026-04-25", "2027-01-01")).toEqual({
      refused: "Close 2027-01-01 must be in the model year of the opening, which ends on 2026-12-31",
      code: "#NUM!",
    })
    expect(plan("2028-04-25", "2028-12-31")).toMatchObject({cutting: {stop: 366}})
  })
})

describe("modelledYear", () => {
  const climate = (rows: number[][]) => climateRange.read(rows) as Climate
  const season = plan("2026-04-25", "2026-06-19") as YearPlan
  // A climate of this test alone: what others ran in this process may be forgotten at any time.
  const copied = () => generic.map(([air, ...rest], i) => [i === 0 ? air! + 0.001 : air!, ...rest])
  const own = copied()
  const run = (
    rows = own,
    reserve = 6400,
    at = season,
    healthy: {from: number; share: number}[] = [],
    values = balanceDefaults,
  ) => modelledYear({structure: 6000, reserve}, climate(rows), at, healthy, values)

  it("is run once for equal numbers, wherever their ranges stand", () => {
    const elsewhere = copied()
    expect(run(elsewhere)).toBe(run())
    expect(run(own, 6400, {...season}, [], {...balanceDefaults})).toBe(run())
    expect(driversFor(climate(elsewhere), season.year, {...balanceDefaults})).toBe(
      driversFor(climate(own), season.year, balanceDefaults),
    )
  })
  it("is run anew when any of its numbers differs", () => {
    const first = run()
    const warmer = own.map((row, i) => (i === 364 ? [row[0]! + 1, row[1]!, row[2]!] : row))
    const others = [
      run(warmer),
      run(own, 6401),
      run(own, 6400, plan("2026-04-25", "2026-06-20") as YearPlan),
      run(own, 6400, plan("2026-04-24", "2026-06-19") as YearPlan),
      run(own, 6400, plan("2028-04-24", "2028-06-18") as YearPlan),
      run(own, 6400, season, [{from: dayOf("2026-08-01")!, share: 0.5}]),
      run(own, 6400, season, [{from: dayOf("2026-08-02")!, share: 0.5}]),
      run(own, 6400, season, [], {...balanceDefaults, Cut_rate: 0.013}),
      run(own, 6400, season, [], {...balanceDefaults, Fern_end: 289}),
    ]
    expect(new Set([first, ...others]).size).toBe(10)
    expect(run()).toBe(first)
  })
  it("has an entry for each day of the year", () => {
    expect(run().reserve).toHaveLength(365)
    expect(run(generic, 6400, plan("2028-04-25", "2028-06-19") as YearPlan).reserve).toHaveLength(366)
  })
})
