import {describe, expect, it} from "vitest"
import {AT_ONCE} from "../../../functions/stand/chain"
import {lease} from "../../../functions/stand/lease"
import {cell} from "../cell"
import {flows, inBraces} from "./testStand"

/** The crop of the same planting that has completed so many years. */
const done = (years: number) => flows.slice(years)

describe("lease", () => {
  // Invented planting (testStand.ts) at 6 %, checked in two languages.
  it.each<[number, string, number]>([
    [7, "stop", 0],
    [10, "plant", 2937.74],
    [15, "plant", 5574.39],
    [20, "plant", 6006.02],
    [40, "plant", 8455.67],
  ])("of bare ground for %i years", (years, act, worth) => {
    const found = lease(years, flows, 0.06, [], AT_ONCE, 0)
    expect(found.act).toBe(act)
    expect(Math.abs(found.worth - worth)).toBeLessThan(0.0051)
  })
  it.each<[number, number, string, number]>([
    [13, 7, "keep", 2447.16],
    [13, 10, "replant", 2937.74],
    [13, 20, "keep", 6980.65],
    [15, 5, "keep", 1034.42],
  ])("of a crop %i years old for %i years", (age, years, act, worth) => {
    const found = lease(years, flows, 0.06, done(age), AT_ONCE, 0)
    expect(found.act).toBe(act)
    expect(Math.abs(found.worth - worth)).toBeLessThan(0.0051)
  })
  it.each([
    [0, 0],
    [1, 30],
    [2, -10],
    [3, 60],
  ])("agrees with every way of going on, tried one by one: rest of %i years at %i", (rest, restIncome) => {
    const [cash, rate, clear, end] = [[-300, 100, 260, 240, 90], 0.08, 40, -25]
    /** The best of ground with a crop of that age, or bare at age 0 and not to be planted for so many years. */
    const tried = (age: number, left: number, mustRest: number): number => {
      if (left === 0) return age > 0 ? end : 0
      const next = (flow: number, then: number, rests = 0) =>
        (flow + tried(then, left - 1, rests)) / (1 + rate)
      const wait = (rests: number) => next(restIncome, 0, Math.max(0, rests - 1))
      const off = (rests: number) => (rests > 0 ? wait(rests) : Math.max(wait(0), next(cash[0]!, 1)))
      if (age === 0) return off(mustRest)
      const cleared = off(rest) - clear
      return age < cash.length ? Math.max(cleared, next(cash[age]!, age + 1)) : cleared
    }
    const between = {clear, rest, restIncome}
    for (let left = 1; left <= 11; left++) {
      expect(lease(left, cash, rate, [], between, end).worth).toBeCloseTo(tried(0, left, 0), 9)
      for (let age = 1; age < cash.length; age++)
        expect(lease(left, cash, rate, cash.slice(age), between, end).worth).toBeCloseTo(
          tried(age, left, 0),
          9,
        )
    }
  })
  it("rests cleared ground before it is planted, or stops where the years are too few for that", () => {
    // Rest of 1 year at 20: 20/1.1 + (-100)/1.1² + 300/1.1³ = 160.93; planted at once it would be 157.02.
    const after = (left: number, rest: number) =>
      lease(left, [-100, 300], 0.1, [0], {clear: 0, rest, restIncome: 20}, 0)
    expect(after(2, 0)).toMatchObject({act: "replant", plantings: 1})
    expect(after(2, 0).worth).toBeCloseTo(-100 / 1.1 + 300 / 1.21, 9)
    expect(after(3, 1)).toMatchObject({act: "wait", plantings: 1})
    expect(after(3, 1).worth).toBeCloseTo(20 / 1.1 - 100 / 1.21 + 300 / 1.331, 9)
    expect(after(2, 1)).toMatchObject({act: "stop", plantings: 0})
    expect(after(2, 1).worth).toBeCloseTo(20 / 1.1 + 20 / 1.21, 9)
  })
  it("comes to the worth of the endless chain as the years grow", () => {
    expect(lease(400, flows, 0.06, [], AT_ONCE, 0).worth).toBeCloseTo(9565.9072, 3)
  })
  it("counts the years to keep and the plantings to come", () => {
    // 920/1.06 + 740/1.06² + 560/1.06³ + 5 935.95/1.06³ (17 years of a new one) = 6 980.65; after 2 years 6 871.8.
    expect(lease(20, flows, 0.06, done(13), AT_ONCE, 0)).toMatchObject({"years to keep": 3, plantings: 1})
    expect(lease(7, flows, 0.06, done(13), AT_ONCE, 0)).toMatchObject({"years to keep": 5, plantings: 0})
  })
  it("clears the sooner of equal courses, whatever the rounding", () => {
    // A crop that brings what bare ground earns: kept for 0 to 6 years it is worth the same.
    for (const rate of [0.03, 0.07, 0.11])
      for (const income of [30, 33.3, 77.7])
        expect(
          lease(
            7,
            [-9000, 1],
            rate,
            Array<number>(6).fill(income),
            {clear: 0, rest: 0, restIncome: income},
            0,
          ),
        ).toMatchObject({act: "stop", "years to keep": 0, plantings: 0})
  })
  it("waits bare where only the last day pays for a crop", () => {
    // Planted in the last year: (-100 + 500)/1.1; two years off, 400/1.1² = 330.58; in the first of two, (-100 + 0)/1.1 + 500/1.1².
    const found = lease(2, [-100, -90], 0.1, [], AT_ONCE, 500)
    expect(found).toMatchObject({act: "wait", plantings: 1})
    expect(found.worth).toBeCloseTo(400 / 1.21, 9)
  })
})

describe("STAND.LEASE in a cell", () => {
  const call = (what: string, tail: string) =>
    cell(`=STAND.LEASE("${what}",10,${inBraces(flows)},0.06${tail})`)
  it("is of bare ground when no crop is given", () => {
    expect(call("act", "")).toBe("plant")
    expect(call("worth", "")).toBeCloseTo(2937.74, 2)
    expect(call("act", `,${inBraces(done(13))}`)).toBe("replant")
    expect(call("years to keep", `,${inBraces(done(13))}`)).toBe(0)
  })
  it("refuses an unknown name with the list of names", () => {
    expect(call("gain", "")).toMatchObject({
      code: "#VALUE!",
      reason: expect.stringContaining('"years to keep"'),
    })
  })
})
