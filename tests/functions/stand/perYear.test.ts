import {describe, expect, it} from "vitest"
import {perYear} from "../../../functions/stand/perYear"
import {cell} from "../cell"
import {flows, inBraces, stand, twelveYears} from "./testStand"

/** Level yearly cost for each number of years 1, 2, ... */
const yearlyCosts = (costs: readonly number[], rate: number) =>
  costs.map(
    (_, n) =>
      -perYear(
        costs.slice(0, n + 1).map((cost) => -cost),
        rate,
      ),
  )

/** Cost of a machine's year: the fall of its value, interest on it, and running it. */
const marginal = (values: readonly number[], running: readonly number[], rate: number) =>
  running.map((cost, n) => values[n]! * (1 + rate) - values[n + 1]! + cost)

describe("perYear", () => {
  it("is the capital recovery factor for a sum of 1 today", () => {
    // 1 today is 1 + i at the end of year 1. 573.9544/5 574.39 = 0.102963 at 6 % and 15 years; 0.116829545 at 8 %.
    const factor = (rate: number) => perYear([1 + rate, ...Array<number>(14).fill(0)], rate)
    expect(Math.abs(factor(0.06) - 0.102963)).toBeLessThan(1e-5)
    expect(factor(0.08)).toBeCloseTo(0.116829545, 9)
  })
  it("is the annual equivalent of the marginal costs of a machine", () => {
    // Newnan, Eschenbach and Lavelle, Engineering Economic Analysis, ch. 13, examples 13-2 and 13-4 (Oxford University Press):
    // cost 25 000, 15 %; the marginal costs and the least, 15 430 at year 5, as printed; the other digits by hand.
    const values = [25000, 18000, 13000, 9000, 6000, 4000, 3000, 2500]
    const repairs = [5000, 5000, 5000, 6500, 8000, 9500, 11000]
    const costs = marginal(
      values,
      repairs.map((cost, n) => cost + 2000 + 500 * n),
      0.15,
    )
    for (const [n, printed] of [17750, 15200, 13950, 14350, 14900, 15600, 16950].entries())
      expect(costs[n]).toBeCloseTo(printed, 6)
    const equivalents = yearlyCosts(costs, 0.15)
    for (const [n, cost] of [17750, 16563.95, 15811.2, 15518.57, 15426.83, 15446.61, 15582.46].entries())
      expect(Math.abs(equivalents[n]! - cost)).toBeLessThan(0.0051)
    expect(Math.round(Math.min(...equivalents) / 10) * 10).toBe(15430)
  })
  it("finds the least cost of a second machine at the fourth year", () => {
    // The same book, 13th edition, problem 13-10: 50 000, value falling by 20 % a year, running 3 500 and 2 000 more each year,
    // 9 %; published 17 240 at year 4.
    const values = Array.from({length: 7}, (_, n) => 50000 * 0.8 ** n)
    const running = Array.from({length: 6}, (_, n) => 3500 + 2000 * n)
    const equivalents = yearlyCosts(marginal(values, running, 0.09), 0.09)
    for (const [n, cost] of [18000, 17569.38, 17328.57, 17240.11, 17273.37, 17403.37].entries())
      expect(Math.abs(equivalents[n]! - cost)).toBeLessThan(0.0051)
    expect(equivalents.indexOf(Math.min(...equivalents)) + 1).toBe(4)
  })
  it("recovers the capital in a machine that has a value left", () => {
    // Edwards, Estimating Farm Machinery Costs, Ag Decision Maker A3-29 (Iowa State University): paid 130 000, worth 34 500 after
    // 15 years, 8 %: 95 500 x 0.116829545 + 34 500 x 0.08 = 13 917.22; the printed three-decimal factor 0.117 gives 13 933.50.
    const machine = [-130000 * 1.08, ...Array<number>(13).fill(0), 34500]
    expect(perYear(machine, 0.08)).toBeCloseTo(-13917.22, 2)
    expect(95500 * 0.117 + 34500 * 0.08).toBeCloseTo(13933.5, 9)
  })
  it("is the mean of a published field's years, and less of it with interest", () => {
    // Bayerische Landesanstalt für Landwirtschaft, asparagus over several years (undated), contribution in euro a hectare: ground
    // preparation -614, planting -9 743, growing on 1 159, five crop years of 20 708; printed sum 94 342 and mean 11 793. With
    // interest, each year's sum at its end: -614/1.05 - 9 743/1.05² + ... = 69 026.43, by the factor 0.154722 10 679.89 a year.
    const field = [-614, -9743, 1159, ...Array<number>(5).fill(20708)]
    expect(field.reduce((sum, year) => sum + year)).toBe(94342)
    expect(Math.round(perYear(field, 0))).toBe(11793)
    expect(Math.abs(perYear(field, 0.03) - 11121.53)).toBeLessThan(0.0051)
    expect(Math.abs(perYear(field, 0.05) - 10679.89)).toBeLessThan(0.0051)
  })
  it("spreads a published cost of planting over the years that bear", () => {
    // Michigan State University Extension E-3483 (2023): 5 723 an acre to establish; at 7 % over 12 years 720.54 a year, which is
    // .1310 a lb at its 5 500 lb. E-3315 (Talley and Werling 2016): fumigation of 600 an acre is put at about 68 a year over 12
    // bearing years, the level sum of 5.08 %.
    const spread = (cost: number, rate: number) =>
      perYear([cost * (1 + rate), ...Array<number>(11).fill(0)], rate)
    expect(Math.abs(spread(5723, 0.07) - 720.5371)).toBeLessThan(0.001)
    expect(Math.abs(spread(5723, 0.07) / 5500 - 0.131)).toBeLessThan(0.00005)
    expect(Math.abs(spread(600, 0.0508) - 68)).toBeLessThan(0.05)
  })
  it("agrees with the shared grid of prices and yields, for 15 years at 6 %", () => {
    // Invented planting (testStand.ts). Rows yield x 0.8 0.9 1 1.1, columns price x 0.8 0.9 1 1.1; checked in two languages.
    const grid = [
      [-252.82, 11.75, 276.31, 540.88],
      [-170.15, 127.49, 425.13, 722.77],
      [-87.47, 243.24, 573.95, 904.67],
      [-4.79, 358.99, 722.77, 1086.56],
    ]
    const factors = [0.8, 0.9, 1, 1.1]
    for (const [row, yieldFactor] of factors.entries())
      for (const [col, price] of factors.entries())
        expect(
          Math.abs(perYear(stand(price, yieldFactor).slice(0, 15), 0.06) - grid[row]![col]!),
        ).toBeLessThan(0.0051)
  })
  it("is nought at the price and at the yield that just pay, and at the internal rate", () => {
    const years = (price: number, yieldFactor: number) => stand(price, yieldFactor).slice(0, 15)
    const crosses = (below: number, above: number) => expect([below < 0, above > 0]).toEqual([true, true])
    // Price x 0.8264485, yield x 0.6143299, each to 1e-6; internal rate 21.0635 % to 1e-6.
    crosses(perYear(years(0.8264475, 1), 0.06), perYear(years(0.8264495, 1), 0.06))
    crosses(perYear(years(1, 0.6143289), 0.06), perYear(years(1, 0.6143309), 0.06))
    crosses(perYear(years(1, 1), 0.210636), perYear(years(1, 1), 0.210634))
  })
  it("is the plain mean without interest", () => {
    expect(perYear([-100, 40, 90], 0)).toBeCloseTo(10, 12)
  })
  it("comes near the plain mean as the rate comes near 0", () => {
    expect(perYear(flows, 1e-9)).toBeCloseTo(perYear(flows, 0), 4)
  })
})

describe("STAND.PER_YEAR in a cell", () => {
  const at = (rate: string) => cell(`=STAND.PER_YEAR(${inBraces(twelveYears)},${rate})`)
  it.each([
    ["0.04", 2425],
    ["0.07", 2092],
    ["0.10", 1753],
  ])("gives the yearly worth of an invented planting at %s", (rate, expected) => {
    expect(Math.round(at(rate) as number)).toBe(expected)
  })
  it("refuses a rate of -1, a blank between years, and no year at all", () => {
    expect(at("-1")).toMatchObject({code: "#NUM!"})
    const years = [[-100], [null], [50]]
    expect(cell("=STAND.PER_YEAR(T!A1:A3,0.07)", years)).toMatchObject({
      code: "#VALUE!",
      reason: expect.stringContaining("year 2 is blank"),
    })
    expect(cell("=STAND.PER_YEAR(T!A1:A3,0.07)", [[null]])).toMatchObject({code: "#N/A"})
    // Blanks after the last year are its end: -100 and 50 at 0 %.
    expect(cell("=STAND.PER_YEAR(T!A1:A5,0)", [[-100], [50]])).toBe(-25)
  })
})
