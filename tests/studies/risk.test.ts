import {describe, expect, it} from "vitest"
import {drawRisk, type RiskInput, type RiskPlan, type RiskYear} from "../../src/studies/drawRisk"
import {risk} from "../../src/studies/risk"
import {certain} from "./certain"

// An invented farm: 60 acres of 4 500 lb at 0.95, harvest 0.60 a lb, other cash 700 an acre, taxes 4 000, and a level loan
// of 200 000 at 7 % over 10 years: 28 475.50 due. The rules do not mind which units, as long as all agree.
const base = {area: 60, kg: 4500, price: 0.95, other: 700}
function farm(change: Partial<typeof base> = {}, name = "as planned", years = 1): RiskPlan {
  const {area, kg, price, other} = {...base, ...change}
  const year: RiskYear = {
    price: {shape: "lognormal", mean: price, variation: 0},
    perKg: 0.6,
    costs: other * 60 + 4000,
    due: 28475.5,
  }
  return {
    name,
    cash: 0,
    fields: [
      {
        name: "Field 1",
        area,
        crowns: {structure: 6000, reserve: 6400},
        doubt: 0,
        years: Array.from({length: years}, () => ({kg})),
      },
    ],
    years: Array.from({length: years}, () => year),
  }
}
const study = (input: RiskInput, draws: number) => risk(input, [drawRisk(input, 0, draws)])

describe("a farm without doubt", () => {
  it.each([
    // Capacity = 60·yield·(price - 0.60) - 46 000, harvest cost following the yield; over 28 475.50.
    ["as planned", {}, 1.7032],
    ["price 10 % lower", {price: 0.855}, 0.8024],
    ["yield 10 % lower", {kg: 4050}, 1.3714],
    ["both", {price: 0.855, kg: 4050}, 0.5607],
    ["price 20 % lower", {price: 0.76}, -0.0983],
  ])("%s covers its debt %o times", (_, change, cover) => {
    const [plan] = study({...certain, plans: [farm(change)]}, 20).plans
    for (const times of plan!.years[0]!.cover!.at) expect(times).toBeCloseTo(cover, 4)
    expect(plan!.anyBelow1!.share).toBe(cover < 1 ? 1 : 0)
  })
  it("is hit by cash costs 10 % higher", () => {
    // Of harvest and other cash alike: 0.66 a lb and 770 an acre: 270 000·0.29 - 50 200 = 28 100
    const dearer = farm({other: 770})
    const years = dearer.years.map((year) => ({...year, perKg: 0.66}))
    const [plan] = study({...certain, plans: [{...dearer, years}]}, 20).plans
    expect(plan!.years[0]!.cover!.at[2]).toBeCloseTo(28100 / 28475.5, 9)
    expect(plan!.years[0]!.cover!.at[2]).toBeCloseTo(0.9868, 4)
  })
})

describe("a farm in doubt", () => {
  const doubtful: RiskInput = {
    ...certain,
    yearSpread: 0.15,
    fieldSpread: 0.2,
    plans: [farm({}, "as planned", 3), farm({price: 1.05}, "better price", 3), farm({}, "the same", 3)],
  }
  const DRAWS = 4000
  const found = study(doubtful, DRAWS)
  const [first, better, same] = found.plans

  it("puts parts together in any order", () => {
    const parts = [drawRisk(doubtful, 0, 150), drawRisk(doubtful, 150, 400)]
    expect(risk(doubtful, parts.toReversed())).toEqual(risk(doubtful, [drawRisk(doubtful, 0, 400)]))
  })
  it("says how many draws and which seed", () => expect(found).toMatchObject({draws: DRAWS, seed: 7}))
  it("has the chance of the closed form to fall short", () => {
    // Cover is 1 at a yield of 74 475.5/(60·0.35) = 3546.45, by exp(0.25z - 0.03125) of 4500: z = -0.8273, share 0.2040.
    for (const {below1} of first!.years)
      expect(Math.abs(below1!.share - 0.204)).toBeLessThan(4 * below1!.error)
  })
  it("falls short in some of three independent years as often as three chances say", () => {
    // 1 - 0.796³ = 0.4956
    expect(Math.abs(first!.anyBelow1!.share - 0.4956)).toBeLessThan(4 * first!.anyBelow1!.error)
    for (const {cover} of first!.years) expect(first!.lowestCover!.mean).toBeLessThan(cover!.mean)
  })
  it("has a worst tenth below the tenth, and percentiles in order", () => {
    for (const {kg, capacity, margin, cover} of first!.years)
      for (const spread of [kg, capacity, margin, cover!]) {
        expect([...spread.at]).toEqual(spread.at.toSorted((a, b) => a - b))
        expect(spread.worstTenth).toBeLessThan(spread.at[0])
        expect(spread.lowError).toBeGreaterThan(0)
      }
  })
  it("keeps cover, capacity and margin together", () => {
    const {cover, capacity, margin} = first!.years[0]!
    expect(cover!.mean).toBeCloseTo(capacity.mean / 28475.5, 9)
    expect(margin.at[0]).toBeCloseTo(capacity.at[0] - 28475.5, 6)
  })
  it("compares plans on the same draws", () => {
    expect(first!.against).toBeNull()
    expect(same!.against!.margin).toMatchObject({at: [0, 0, 0, 0, 0], mean: 0, meanError: 0})
    expect(same!.years).toEqual(first!.years)
    // A price 0.10 higher brings 0.10 a kg in each draw.
    expect(better!.against!.better.share).toBe(1)
    const kg = first!.years.reduce((sum, {kg}) => sum + kg.mean, 0)
    expect(better!.against!.margin.mean).toBeCloseTo(0.1 * kg, 5)
  })
  it("has no cover in years in which nothing is due", () => {
    const free = farm({}, "no debt", 2)
    const years = free.years.map((year) => ({...year, due: 0}))
    const [plan] = study({...doubtful, plans: [{...free, years}]}, 20).plans
    expect(plan).toMatchObject({lowestCover: null, anyBelow1: null})
    expect(plan!.years[1]).toMatchObject({cover: null, below1: null, year: 2027})
  })
})

describe("cash", () => {
  // 2 000 a year are left where nothing is in doubt: 60·4500·0.35 - 46 000 - 46 500.
  const thin = (cash: number, margins: number[]) => {
    const plan = farm({}, "thin", margins.length)
    const years = plan.years.map((year, i) => ({...year, due: 48500 - margins[i]!}))
    return study({...certain, plans: [{...plan, years, cash}]}, 10).plans[0]!.cashShort.share
  }
  it("is short when it runs below 0 in between, whatever comes after", () => {
    expect(thin(0, [2000, 2000, 2000])).toBe(0)
    expect(thin(0, [2000, -3000, 9000])).toBe(1)
    expect(thin(1500, [2000, -3000, 9000])).toBe(0)
  })
  it("is looked at for three years", () => {
    expect(thin(0, [2000, 2000, -5000])).toBe(1)
    expect(thin(0, [2000, 2000, 2000, -9000])).toBe(0)
  })
})
