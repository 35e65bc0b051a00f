import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {inYear} from "../../functions/crop/inYear"
import {balanceDefaults} from "../../functions/root/balanceValues"
import {logSpread} from "../../src/studies/distribution"
import {
  drawRisk,
  type FieldYear,
  type RiskField,
  type RiskInput,
  type RiskPlan,
} from "../../src/studies/drawRisk"
import {keyOf, normalOf} from "../../src/studies/streams"
import {correlation, mean, ranks, variation} from "./moments"
import {certain} from "./certain"
import {sites} from "../functions/root/sites"

const OPEN = 114 // 25 April
const crowns = {structure: 6000, reserve: 6400}
const sure = {shape: "lognormal", mean: 1, variation: 0} as const

const given = (name: string, ...kg: number[]): RiskField => ({
  name,
  area: 1,
  crowns,
  doubt: 0,
  years: kg.map((kg) => ({kg})),
})
const balanced = (name: string, ...weeks: number[]): RiskField => ({
  ...given(name),
  years: weeks.map((weeks) => ({open: OPEN, close: OPEN + 7 * weeks - 1, factor: 1})),
})
const plan = (...fields: RiskField[]): RiskPlan => ({
  name: fields.map(({name}) => name).join(", "),
  fields,
  years: fields[0]!.years.map(() => ({price: sure, perKg: 0, costs: 0, due: 1})),
  cash: 0,
})
/** Crop of each plan and year over the draws. */
function crops(input: RiskInput, draws: number) {
  const {kg, sales} = drawRisk(input, 0, draws)
  const years = input.plans[0]!.years.length
  const at = (of: Float64Array, plan: number, year: number) =>
    of.subarray((plan * years + year) * draws, (plan * years + year + 1) * draws)
  return {
    kg: (plan: number, year = 0) => at(kg, plan, year),
    sales: (plan: number, year = 0) => at(sales, plan, year),
  }
}

describe("the draws of a farm's risk", () => {
  const doubtful: RiskInput = {
    ...certain,
    plans: [plan({...balanced("Long Acre", 8, 8), doubt: 0.1}, balanced("Well Field", 6, 8))],
    airSpread: 1,
    sunSpread: 0.05,
    yearSpread: 0.15,
    fieldSpread: 0.2,
    priceLink: -0.3,
    priceMemory: 0.5,
  }
  it("are the same again with the same seed, and others with another", () => {
    expect(drawRisk(doubtful, 0, 50)).toEqual(drawRisk(doubtful, 0, 50))
    expect(drawRisk({...doubtful, seed: 8}, 0, 50)).not.toEqual(drawRisk(doubtful, 0, 50))
  })
  it("have the digits that another program finds for this seed", () => {
    const farm = {...plan({...given("Long Acre", 4000, 4000), area: 5, doubt: 0.1})}
    const price = {shape: "lognormal", mean: 2.4, variation: 0.15} as const
    const years = farm.years.map((year) => ({...year, price}))
    const {kg, sales} = drawRisk({...doubtful, plans: [{...farm, years}]}, 9999, 10_000)
    // Draw 9 999 of seed 7 by a program of our own in Python 3, the normal scores by scipy 1.17 (norm.ppf): 5 ha x 4 000 kg times
    // exp of the three effects, and the price at -0.3 of the year's effect and 0.5 of the price before.
    const expected = [21277.1419962278, 28060.57389393231, 54719.21856935995, 74433.02243440252]
    for (const [i, found] of [...kg, ...sales].entries()) expect(found / expected[i]!).toBeCloseTo(1, 12)
    expect(kg).toHaveLength(2)
  })
  it("have what is sold already in every draw, and no more chance for it", () => {
    const one = plan(given("Long Acre", 4000, 4000))
    const sold = {...one, years: [{...one.years[0]!, sold: {kg: 900, sales: 2500}}, one.years[1]!]}
    const [plain, known] = [one, sold].map((plan) => crops({...doubtful, plans: [plan]}, 40))
    for (let draw = 0; draw < 40; draw++) {
      expect(known!.kg(0)[draw]! - plain!.kg(0)[draw]!).toBeCloseTo(900, 8)
      expect(known!.sales(0)[draw]! - plain!.sales(0)[draw]!).toBeCloseTo(2500, 8)
    }
    expect([...known!.kg(0, 1)]).toEqual([...plain!.kg(0, 1)])
  })
  it("let the crowns live through a year whose crop is given", () => {
    const cut = balanced("Long Acre", 8, 8, 8)
    const [first, second, third] = cut.years as [FieldYear, {open: number; close: number}, FieldYear]
    const years = (of: FieldYear) => ({...cut, years: [first, of, third]})
    const {kg} = crops(
      {
        ...certain,
        plans: [cut, years({...second, kg: 1234}), years({...second, close: second.open - 1, kg: 0})].map(
          (field) => plan(field),
        ),
      },
      1,
    )
    expect(kg(1, 1)[0]).toBe(1234)
    expect(kg(1, 2)[0]).toBe(kg(0, 2)[0]) // cut as long, they bear as much the year after
    expect(kg(2, 1)[0]).toBe(0)
    expect(kg(2, 2)[0]).toBeGreaterThan(1.05 * kg(0, 2)[0]!) // rested, they bear more
  })
  it("are the same however they are shared out", () => {
    const all = drawRisk(doubtful, 0, 60)
    const late = drawRisk(doubtful, 40, 60)
    for (const year of [0, 1])
      expect([...late.kg.subarray(20 * year, 20 * year + 20)]).toEqual([
        ...all.kg.subarray(60 * year + 40, 60 * year + 60),
      ])
  })
  it("of a field do not change when a field is added", () => {
    const [one, other] = [balanced("Long Acre", 8, 8), balanced("Well Field", 6, 8)]
    const {kg} = crops({...doubtful, plans: [plan(one), plan(other), plan(other, one)]}, 40)
    for (const year of [0, 1])
      for (let draw = 0; draw < 40; draw++)
        expect(kg(2, year)[draw]).toBeCloseTo(kg(0, year)[draw]! + kg(1, year)[draw]!, 8)
  })
  it("of a year do not change when years are added or the study begins earlier", () => {
    const short = crops({...doubtful, plans: [plan(given("Long Acre", 4000))]}, 40)
    const long = crops({...doubtful, plans: [plan(given("Long Acre", 4000, 4000))]}, 40)
    const early = crops({...doubtful, firstYear: 2025, plans: [plan(given("Long Acre", 1, 4000))]}, 40)
    expect([...long.kg(0, 0)]).toEqual([...short.kg(0)])
    expect([...early.kg(0, 1)]).toEqual([...short.kg(0)])
  })
  it("tell progress up to the whole", () => {
    const shares: number[] = []
    drawRisk({...certain, plans: [plan(given("Long Acre", 1))]}, 0, 200, (share) => shares.push(share))
    expect(shares).toEqual([0.5, 1])
  })
  it("need the same years in all plans and fields", () => {
    expect(() => drawRisk({...certain, plans: [plan(given("A", 1)), plan(given("A", 1, 2))]}, 0, 1)).toThrow(
      "must have 1 years",
    )
  })
})

describe("yields on many fields", () => {
  // Farm variation² of n equal fields = (e^(σy² + σf²) - 1)/n + (1 - 1/n)(e^σy² - 1), from the moments of the lognormal.
  const DRAWS = 20_000
  const spread = {...certain, yearSpread: 0.15, fieldSpread: 0.2}
  const fields = Array.from({length: 10}, (_, i) => given(`Field ${i + 1}`, 1000))
  const {kg} = crops(
    {...spread, plans: [1, 2, 5, 10].map((n) => plan(...fields.slice(0, n))).concat(plan(fields[1]!))},
    DRAWS,
  )
  it.each([
    [0, 1, 0.253958],
    [1, 2, 0.208865],
    [2, 5, 0.17636],
    [3, 10, 0.164101],
  ])("have the variation of the closed form (plan %s, %s fields)", (number, n, expected) => {
    const formula = Math.sqrt(
      (Math.exp(0.15 ** 2 + 0.2 ** 2) - 1) / n + (1 - 1 / n) * (Math.exp(0.15 ** 2) - 1),
    )
    expect(formula).toBeCloseTo(expected, 6)
    // The error of a deviation is some 1/√(2N) of it, 0.5 %; lognormal tails make it larger.
    expect(variation(kg(number)) / expected).toBeGreaterThan(0.97)
    expect(variation(kg(number)) / expected).toBeLessThan(1.03)
    expect(Math.abs(mean(kg(number)) / (1000 * n) - 1)).toBeLessThan((4 * expected) / Math.sqrt(DRAWS))
  })
  it("go together by the shared year", () => {
    // (e^σy² - 1)/(e^(σy² + σf²) - 1) = 0.352822; four errors of a correlation: 4·(1 - ρ²)/√N = 0.025
    expect(Math.abs(correlation(kg(0), kg(4)) - 0.352822)).toBeLessThan(0.03)
  })
  it("have a tenth above the sum of the tenths of the fields", () => {
    const tenth = (values: Float64Array) => values.toSorted()[Math.round(0.1 * DRAWS)]!
    expect(tenth(kg(2))).toBeGreaterThan(1.05 * 5 * tenth(kg(0)))
  })
  it("are off in all years alike by the doubt about a field", () => {
    const doubt = {...given("Field 1", 1000, 1000), doubt: 0.2}
    const {kg} = crops({...certain, plans: [plan(doubt)]}, DRAWS)
    expect([...kg(0, 1)]).toEqual([...kg(0, 0)])
    expect(variation(kg(0))).toBeCloseTo(Math.sqrt(Math.expm1(0.04)), 2)
    expect(mean(kg(0)) / 1000).toBeCloseTo(1, 2)
  })
  it("do not go together from one year to the next where they are given and not carried", () => {
    const {kg} = crops({...spread, plans: [plan(given("Field 1", 1000, 1000))]}, DRAWS)
    expect(Math.abs(correlation(kg(0, 0), kg(0, 1)))).toBeLessThan(0.03)
  })
})

describe("a price that meets the yield", () => {
  const DRAWS = 20_000
  const [ofPrice, ofYield] = [0.25, 0.2]
  const linked = (priceLink: number, price = {shape: "lognormal", mean: 2, variation: ofPrice} as const) => {
    const one = plan(given("Field 1", 1000))
    const priced = {...one, years: one.years.map((year) => ({...year, price}))}
    const found = crops({...certain, yearSpread: logSpread(ofYield), priceLink, plans: [priced]}, DRAWS)
    return {
      kg: found.kg(0),
      sales: found.sales(0),
      price: found.sales(0).map((money, i) => money / found.kg(0)[i]!),
    }
  }
  const {kg, sales, price} = linked(-0.3)
  it("keeps the mean and variation of both", () => {
    expect(mean(price) / 2).toBeCloseTo(1, 2)
    expect(variation(price)).toBeCloseTo(ofPrice, 2)
    expect(variation(kg)).toBeCloseTo(ofYield, 2)
  })
  it("lowers mean sales by exp(ρ·σp·σY)", () => {
    // e^(-0.3·0.246221·0.198042) = 0.985479
    const factor = Math.exp(-0.3 * logSpread(ofPrice) * logSpread(ofYield))
    expect(factor).toBeCloseTo(0.9854779, 6)
    expect(Math.abs(mean(sales) / mean(kg) / mean(price) - factor)).toBeLessThan(0.002)
  })
  it("has the rank correlation of normal scores", () => {
    // Spearman's of two normals is (6/π)·asin(ρ/2): -0.384565 at -0.4. Its error is some 1/√N = 0.007.
    const {kg, price} = linked(-0.4)
    expect((6 / Math.PI) * Math.asin(-0.2)).toBeCloseTo(-0.384565, 6)
    expect(Math.abs(correlation(ranks(kg), ranks(price)) + 0.384565)).toBeLessThan(0.02)
  })
  it("follows the yield wholly at 1, and has nothing to do with it at 0", () => {
    const whole = linked(1)
    expect(correlation(ranks(whole.kg), ranks(whole.price))).toBeCloseTo(1, 9)
    const none = linked(0)
    expect(Math.abs(correlation(none.kg, none.price))).toBeLessThan(0.03)
  })
})

describe("a price that remembers", () => {
  const DRAWS = 20_000
  const prices = (priceMemory: number, priceLink = 0) => {
    const one = plan(given("Field 1", 1, 1, 1))
    const price = {shape: "lognormal", mean: 2, variation: 0.2} as const
    const priced = {...one, years: one.years.map((year) => ({...year, price}))}
    const found = crops({...certain, priceMemory, priceLink, plans: [priced]}, DRAWS)
    return [0, 1, 2].map((year) => found.sales(0, year))
  }
  const logs = (values: Float64Array) => values.map(Math.log)
  it("goes with the price of the year before, less with the one before that, and keeps its spread", () => {
    const [first, second, third] = prices(0.6) as [Float64Array, Float64Array, Float64Array]
    // Correlations of normal scores are 0.6 and 0.6² = 0.36; four errors are 0.018 and 0.025.
    expect(Math.abs(correlation(logs(first), logs(second)) - 0.6)).toBeLessThan(0.02)
    expect(Math.abs(correlation(logs(first), logs(third)) - 0.36)).toBeLessThan(0.03)
    for (const year of [first, second, third]) {
      expect(variation(year)).toBeCloseTo(0.2, 2)
      expect(mean(year)).toBeCloseTo(2, 1)
    }
  })
  it("stays as it began at 1, and is new each year at 0", () => {
    const [first, , third] = prices(1)
    expect([...third!]).toEqual([...first!])
    const [one, other] = prices(0)
    expect(Math.abs(correlation(one!, other!))).toBeLessThan(0.03)
  })
  it("keeps only the part of its own that does not come from the yield", () => {
    // At a link of -0.8 the own part is √(1 - 0.64) = 0.6 of the score: correlation 0.36·0.5
    const [first, second] = prices(0.5, -0.8)
    expect(Math.abs(correlation(logs(first!), logs(second!)) - 0.18)).toBeLessThan(0.03)
  })
})

describe("a field by the balance", () => {
  it("carries its store from year to year as the balance does, where nothing is in doubt", () => {
    const {kg} = crops({...certain, plans: [plan(balanced("Long Acre", 8, 8, 8, 8))]}, 1)
    for (const year of [0, 1, 2, 3]) {
      const crop = inYear(
        "picked",
        year + 1,
        crowns,
        sites.generic,
        dayOf("2026-04-25")!,
        [8],
        [1],
        balanceDefaults,
      )
      expect(kg(0, year)[0]! / (crop as number)).toBeCloseTo(1, 9)
    }
  })
  it("bears less after a year of hard cutting", () => {
    const {kg} = crops({...certain, plans: [plan(balanced("A", 8, 8)), plan(balanced("A", 12, 8))]}, 1)
    expect(kg(1, 0)[0]).toBeGreaterThan(kg(0, 0)[0]!)
    expect(kg(1, 1)[0]).toBeLessThan(kg(0, 1)[0]!)
  })
  it("feels the sun of a year in the next one", () => {
    const {kg} = crops({...certain, sunSpread: 0.1, plans: [plan(balanced("A", 8, 8))]}, 200)
    expect(variation(kg(0, 0))).toBeLessThan(1e-7) // sun makes sugar only after the cutting
    expect(variation(kg(0, 1))).toBeGreaterThan(0.005)
  })
  it("bears more in a warm year, alike on all fields", () => {
    const {kg} = crops(
      {...certain, airSpread: 1, plans: [plan(balanced("A", 8)), plan(balanced("B", 6))]},
      400,
    )
    const warmer = crops({...certain, airSpread: 2, plans: [plan(balanced("A", 8))]}, 400).kg(0)
    const sure = crops({...certain, plans: [plan(balanced("A", 8))]}, 1).kg(0)[0]!
    expect(correlation(kg(0), kg(1))).toBeGreaterThan(0.99)
    // The same draw at twice the deviation lies on the same side of the usual year, and further off.
    for (const [draw, crop] of kg(0).entries()) {
      const warmth = normalOf(certain.seed, draw, keyOf("air", 2026))
      expect(Math.sign(crop - sure)).toBe(Math.sign(warmth))
      expect(Math.sign(warmth) * (warmer[draw]! - crop)).toBeGreaterThanOrEqual(0)
    }
  })
  it("is multiplied by its factor, its area and no more", () => {
    const field = balanced("A", 8)
    const half = {...field, area: 3, years: field.years.map((year) => ({...year, factor: 0.5}))}
    const {kg} = crops({...certain, plans: [plan(field), plan(half)]}, 1)
    expect(kg(1)[0]).toBeCloseTo(1.5 * kg(0)[0]!, 9)
  })
  it("loses its fern as often as the chance says, on all fields in the same years", () => {
    const fernLoss = {chance: 0.2, day: 200, left: 0.3}
    const plans = [plan(balanced("A", 8, 8)), plan(balanced("B", 6, 6)), plan(balanced("A", 8, 8))]
    const {kg} = crops({...certain, fernLoss, plans}, 1000)
    const best = Math.max(...kg(0, 1))
    const lost = [...kg(0, 1)].map((crop) => crop < 0.999 * best)
    // Four errors of a share of 0.2 in 1 000 draws: 0.05.
    expect(Math.abs(lost.filter(Boolean).length / 1000 - 0.2)).toBeLessThan(0.05)
    const other = Math.max(...kg(1, 1))
    expect([...kg(1, 1)].map((crop) => crop < 0.999 * other)).toEqual(lost)
    expect(variation(kg(0, 0))).toBeLessThan(1e-7) // the crop of the year itself is cut before
    const three = crops({...certain, fernLoss, plans: [plan(balanced("A", 8, 8, 8))]}, 1000)
    const later = [...three.kg(0, 2)].filter((crop, draw) => !lost[draw] && crop < 0.95 * best).length
    expect(Math.abs(later / 1000 - 0.8 * 0.2)).toBeLessThan(0.05) // in the second year alone
  })
  it("never loses its fern at a chance of 0", () => {
    const fernLoss = {chance: 0, day: 0, left: 0}
    const input = {...certain, plans: [plan(balanced("A", 8, 8))]}
    expect(drawRisk({...input, fernLoss}, 0, 50)).toEqual(drawRisk(input, 0, 50))
  })
  it.each([0.5, 0.1, 0])("with fern at %s in every year bears what CROP.IN_YEAR says", (left) => {
    const fernLoss = {chance: 1, day: 0, left}
    const {kg} = crops({...certain, fernLoss, plans: [plan(balanced("A", 8, 8, 8))]}, 1)
    for (const year of [0, 1, 2]) {
      const opening = dayOf("2026-04-25")!
      const crop = inYear("picked", year + 1, crowns, sites.generic, opening, [8], [left], balanceDefaults)
      expect(kg(0, year)[0]).toBeCloseTo(crop as number, 6)
    }
  })
  it("may give way to a given crop, as when it is replanted", () => {
    const field = balanced("A", 8, 8)
    const replanted = {...field, years: [field.years[0]!, {kg: 0}]}
    const {kg} = crops({...certain, yearSpread: 0.1, plans: [plan(field), plan(replanted)]}, 20)
    expect([...kg(1, 0)]).toEqual([...kg(0, 0)])
    expect([...kg(1, 1)]).toEqual(Array.from({length: 20}, () => 0))
  })
})
