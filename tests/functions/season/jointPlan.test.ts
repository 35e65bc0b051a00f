import {describe, expect, it} from "vitest"
import {jointPlan, margin, reserveAfter, yieldOf, type JointPlan} from "../../../functions/season/jointPlan"
import type {JointValues} from "../../../functions/season/jointValues"
import {stopPrice} from "../../../functions/season/stopPrice"
import {values, years} from "./testJ"

const plan = (changed: Partial<JointValues> = {}) => jointPlan(years, {...values, ...changed})
const weeks = (found: JointPlan) => found.years.map((year) => year.weeks)

describe("jointPlan", () => {
  // The invented problem of testJ.ts, solved in two languages.
  it.each([
    [51, 1611.418, 7273.1031],
    [101, 1610.5943, 7272.2299],
    [201, 1610.0793, 7271.684],
    [401, 1610.0445, 7271.6472],
  ])("with %i nodes agrees with the shared solution", (Nodes, ground, worth) => {
    const found = plan({Nodes})
    expect(found.ground).toBeCloseTo(ground, 3)
    expect(found.worth).toBeCloseTo(worth, 3)
    expect(weeks(found)).toEqual([0, 3, 6, 8, 7, 6, 7, 7, 7, 7, 7, 7, 7, 7, 8, 10])
    expect(found.replaceAge).toBe(18)
  })
  // With planting for nothing, and rows from age 1 on, clearing on the first day is worth as much as keeping. By a solver of its
  // own in another language, on 1 601 nodes: cleared at the start of age 5, not 1; the second field falls and the third does not.
  it.each([
    [[1, 2, 3, 4, 5, 6], [3, 6, 10, 10, 10, 10], [0.3, 0.6, 1, 1, 0.8, 0.5], 10_784.0377, 5, [0, 5, 9, 10]],
    [[1, 2, 3, 4], [10, 10, 10, 10], [1, 0.8, 0.6, 0.4], 18_760.8096, 2, [10]],
    [[1, 2, 3, 4], [10, 10, 10, 10], [1, 1, 1, 1], 18_760.8096, 2, [10]],
  ])(
    "never clears a planting that cost nothing before its first season",
    (ages, caps, factors, ground, at, found) => {
      const free = jointPlan({ages, caps, factors}, {...values, Establish_cost: 0, Clear_cost: 0})
      expect(free.ground).toBeCloseTo(ground, 2)
      expect(free.replaceAge).toBe(at)
      expect(weeks(free)).toEqual(found)
    },
  )
  it.each([11, 21])("with %i nodes already replaces at the same age", (Nodes) => {
    const found = plan({Nodes})
    expect(found.replaceAge).toBe(18)
    for (const [i, week] of weeks(plan()).entries())
      expect(Math.abs(week - weeks(found)[i]!)).toBeLessThanOrEqual(1)
  })
  it.each<[string, Partial<JointValues>, number, number]>([
    ["a price of 0.90", {Price: 0.9}, 20, -4187.48],
    ["a price of 1.10", {Price: 1.1}, 17, 7507.64],
    ["a rate of 3 %", {Rate: 0.03}, 17, 6784.16],
    ["a rate of 10 %", {Rate: 0.1}, 21, -655.79],
    ["planting at 8 000", {Establish_cost: 8000}, 23, -2831.16],
    ["two years of rest at 300", {Rest_years: 2, Rest_income: 300}, 18, 2175.29],
    ["harvest at 0.70", {Cost_per_unit: 0.7}, 20, -3037.51],
  ])("with %s agrees with the shared sensitivity", (_, changed, replaceAge, ground) => {
    const found = plan(changed)
    expect(found.replaceAge).toBe(replaceAge)
    expect(Math.abs(found.ground - ground)).toBeLessThan(0.0051)
  })
  it("finds a ground below 0 where planting may be cut and cleared in the year that it is planted", () => {
    // One row, age 1: a week leaves 0.38 x 12 000 x 0.216 x 0.6 x (1-exp(-0.05)) - 20 - 300 = -291.1780, no week -300. Every year
    // it is planted and cleared: W = (-291.1780 - 2 000 - 250)/(1 - 1/1.005) = -510 776.78.
    const changed = {Cut_saturation: 0.05, Fixed_cost: 300, Establish_cost: 2000, Rate: 0.005}
    const found = jointPlan({ages: [1], caps: [1], factors: [0.216]}, {...values, ...changed})
    const margin = 0.38 * 12000 * 0.216 * 0.6 * -Math.expm1(-0.05) - 20 - 300
    expect(found.ground).toBeCloseTo((margin - 2250) / (1 - 1 / 1.005), 4)
    expect(weeks(found)).toEqual([1])
  })
  // The same problem with a chance of loss or another use, solved in a second language by bisection on W.
  it.each<[string, Partial<JointValues>, number, number]>([
    ["a chance of loss of 1 %", {Loss_chance: 0.01}, 19, 1005.2429],
    ["a chance of loss of 5 %", {Loss_chance: 0.05}, 21, -1624.9907],
    ["another use that leaves 0, at a price of 0.90", {Price: 0.9, Other_use: 0}, 16, -250],
    ["another use, a loss and a price of 0.90", {Price: 0.9, Other_use: 2500, Loss_chance: 0.03}, 14, 2250],
    ["another use worth less than planting again", {Other_use: 1000}, 18, 1610.0793],
  ])("with %s agrees with another solver", (_, changed, replaceAge, ground) => {
    const found = plan(changed)
    expect(found.replaceAge).toBe(replaceAge)
    expect(found.ground).toBeCloseTo(ground, 3)
    expect(found.years.at(-1)!.weeks).toBe(10)
  })
  it("at a certain loss plants for one season only", () => {
    // From a full crop at age 2 a last season of 10 weeks leaves m = 0.38 x 12 000 x 0.6 x (1-exp(-1.2)) - 200 - 650 = 1 061.93, and
    // W = -5 000 - 250 + (m + W/1.06)/1.06.
    const m = 0.38 * 12000 * 0.6 * -Math.expm1(-1.2) - 850
    const found = jointPlan({ages: [2, 3], caps: [10, 10], factors: [1, 1]}, {...values, Loss_chance: 1})
    expect(found.ground).toBeCloseTo((m / 1.06 - 5250) / (1 - 1.06 ** -2), 6)
    expect(found.years[0]).toMatchObject({weeks: 10, reserveWorth: 0, weekCost: 0})
  })
  it("errs upward by straight lines between nodes, less with every finer grid that holds the coarser", () => {
    // Yield is linear in the reserve and the refill a straight line of it, so the worth is convex.
    const grounds = [51, 101, 201, 401].map((Nodes) => plan({Nodes}).ground)
    for (let i = 1; i < grounds.length; i++) expect(grounds[i]).toBeLessThanOrEqual(grounds[i - 1]! + 1e-9)
  })
  it("makes the ground worth less by dearer planting and clearing, more by a better price", () => {
    const {ground} = plan()
    expect(plan({Establish_cost: 6000}).ground).toBeLessThan(ground)
    expect(plan({Clear_cost: 600}).ground).toBeLessThan(ground)
    expect(plan({Price: 1.02}).ground).toBeGreaterThan(ground)
  })
  it("cuts the last season before clearing to its most weeks, and gives its reserve no worth", () => {
    for (const changed of [{}, {Price: 1.1}, {Rate: 0.1}, {Establish_cost: 8000}]) {
      const last = plan(changed).years.at(-1)!
      expect(last.weeks).toBe(10)
      expect(last.reserveWorth).toBe(0)
    }
  })
  it.each([
    [6, 7, 3532.9, 1.0405, 0.6698],
    [10, 7, 3355.4, 1.0216, 0.6697],
    [14, 7, 2407.4, 1.0275, 0.69],
    [17, 10, 0, 0.7575, 0.7575],
  ])(
    "at age %i gives the worth of the reserve and the price that stops the next week",
    (age, ...expected) => {
      const [week, worth, price, shortSighted] = expected
      const row = years.ages.indexOf(age)
      const year = plan().years[row]!
      expect(year.weeks).toBe(week)
      expect(Math.abs(year.reserveWorth - worth)).toBeLessThan(0.051)
      const {reserve} = year
      const more = yieldOf(years.factors[row]!, reserve, week + 1, values) - year.yield
      const at = (cost: number) => stopPrice(0.62, 0, 0, 1, 20, cost, 1, more)
      expect(Math.abs(at(year.weekCost) - price)).toBeLessThan(0.000051)
      expect(Math.abs(at(0) - shortSighted)).toBeLessThan(0.000051)
    },
  )
  it("costs a week no more than the reserve it takes is worth, and as much on a straight piece", () => {
    // The worth is convex in the reserve: its slope above is at least that on the way down.
    for (const year of plan().years) {
      const lost =
        reserveAfter(year.reserve, year.weeks, values) - reserveAfter(year.reserve, year.weeks + 1, values)
      expect(year.weekCost).toBeLessThanOrEqual(year.reserveWorth * lost + 1e-6)
      if (year.age === 6 || year.age === 10) expect(year.weekCost).toBeCloseTo(year.reserveWorth * lost, 6)
    }
  })
  it("has the margin of a year as price less cost", () => {
    // r 0.5, no weeks: nothing cut, the yearly cost stays.
    expect(margin(1, 0.5, 0, values)).toBe(-650)
    // 12 000 x 0.5 x (1 - e^-0.12) = 678.48; x 0.38 = 257.82; - 20 - 650.
    expect(margin(1, 0.5, 1, values)).toBeCloseTo(678.4773 * 0.38 - 670, 3)
  })
})

describe("the reserve under one length of season", () => {
  // r* = q/(1 - e^(-λw)·(1 - q)) with q = ρ(1 - w/w_f); the yields by hand from it.
  it.each([
    [4, 0.85766522, 3923.5],
    [6, 0.74480489, 4587.2],
    [7, 0.68028466, 4639.2],
    [8, 0.61148578, 4528.2],
    [10, 0.46446022, 3894.8],
  ])("of %i weeks stands at its steady level", (week, steady, crop) => {
    expect(Math.abs(reserveAfter(steady, week, values) - steady)).toBeLessThan(1e-8)
    let reserve = 1
    for (let year = 0; year < 200; year++) reserve = reserveAfter(reserve, week, values)
    expect(Math.abs(reserve - steady)).toBeLessThan(1e-8)
    expect(Math.abs(yieldOf(1, steady, week, values) - crop)).toBeLessThan(0.051)
  })
  it("does not refill when cutting leaves no time", () => {
    expect(reserveAfter(0.8, 16, values)).toBeCloseTo(0.8 * Math.exp(-0.96), 12)
    expect(reserveAfter(0.8, 20, values)).toBeCloseTo(0.8 * Math.exp(-1.2), 12)
  })
})
