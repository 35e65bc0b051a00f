import {describe, expect, it} from "vitest"
import {dailyBalance, driversOf, emptyCourse} from "../../functions/root/dailyBalance"
import {bestWeeks} from "../../src/studies/bestWeeks"
import {drawWays, type WaysInput} from "../../src/studies/drawWays"
import {ASSUMED_RISK} from "../../src/studies/lenderRisk"
import {spreadOf} from "../../src/studies/spreadOf"
import {waysRisk} from "../../src/studies/waysRisk"
import {seeded} from "../workbook/documents"
import {everyWay, GROUND, smallCase} from "./everyWay"
import {sixPlantings} from "./sixPlantings"

const sand = {...sixPlantings.plantings[2]!, age: 8, factor: 1.1}
const {climate, year, values} = smallCase.site
const asked = {...smallCase, plantings: [sand]}
const doubtful: WaysInput = {
  ...ASSUMED_RISK,
  asked,
  ways: [
    [
      {name: "as found", weeks: [5, 4, 3, 7]},
      {name: "a week less", weeks: [4, 3, 2, 6]},
      {name: "cleared sooner", weeks: [5, 4, 7]},
    ],
  ],
  grounds: [GROUND],
  firstYear: 2026,
  gone: 0,
  climate,
  modelYear: year,
  values,
  fernLoss: null,
  seed: 5,
}
const NOTHING = {
  airSpread: 0,
  sunSpread: 0,
  yearSpread: 0,
  fieldSpread: 0,
  doubt: 0,
  priceVariation: 0,
} as const
const study = (input: WaysInput, draws: number) =>
  waysRisk(input, [drawWays(input, 0, draws)]).plantings[0]!.ways

describe("ways in years that are all as usual", () => {
  it.each([null, 212])(
    "are worth what trying every way finds (half the fern lost from day %s)",
    (lostFrom) => {
      const healthy = lostFrom === null ? [] : [{from: year.first + lostFrom, share: 0.5}]
      const own = {...asked, plantings: [{...sand, healthy}], nodes: {sugar: 121, structure: 41}}
      const {ways, ground} = bestWeeks(own).plantings[0]!
      const found = study({...doubtful, ...NOTHING, asked: own, grounds: [ground], ways: [ways]}, 2)
      expect(found[0]!.worth.mean).toBeCloseTo(everyWay(sand.crowns, 8, 1.1, lostFrom).worth, 6)
      const kept = found.filter(({name}) => name.startsWith("cleared"))
      expect(kept.length).toBeGreaterThan(0)
      for (const {weeks, worth} of kept)
        expect(worth.mean).toBeCloseTo(everyWay(sand.crowns, 8, 1.1, lostFrom, weeks.length).worth, 6)
      for (const {against} of found.slice(1)) expect(against!.more.mean).toBeLessThan(0)
    },
  )
  it("are worth what the study says where crops are foretold by age", () => {
    const foretold = Array.from({length: 13}, (_, age) => 4000 * 0.9 ** Math.max(0, age - 8))
    const own = {...asked, plantings: [{...sand, foretold}], nodes: {sugar: 61, structure: 31}}
    const [one] = bestWeeks(own).plantings
    const [found] = study({...doubtful, ...NOTHING, asked: own, grounds: [one!.ground], ways: [one!.ways]}, 1)
    expect(one!.years.length).toBeGreaterThan(1)
    expect(Math.abs(found!.worth.mean / one!.worth - 1)).toBeLessThan(5e-4)
    // By hand of the first year: foretold are 4 000 kg/ha in the 5 weeks of the table.
    expect(one!.choices[5]!.crop).toBeCloseTo(4000, 6)
  })
  it("of a planting that is cleared now are the ground less clearing it", () => {
    const ways = [[{name: "as found", weeks: []}]] as const
    expect(study({...doubtful, ways}, 3)[0]!.worth.at).toEqual(Array(5).fill(GROUND - 400))
  })
})

describe("ways on drawn years", () => {
  const DRAWS = 3000
  const found = study(doubtful, DRAWS)
  it("come out as in a plain simulation with other random numbers", () => {
    const plain = plainly(DRAWS)
    const differences = plain.map((worths) => worths.map((worth, draw) => worth - plain[0]![draw]!))
    for (const [i, {worth, against}] of found.entries()) {
      const other = spreadOf(plain[i]!)
      // Each side has an error of its own; three of both together.
      expect(Math.abs(worth.mean - other.mean)).toBeLessThan(3 * Math.hypot(worth.meanError, other.meanError))
      expect(Math.abs(worth.at[0] - other.at[0])).toBeLessThan(3 * Math.hypot(worth.lowError, other.lowError))
      if (!against) continue
      const more = spreadOf(differences[i]!)
      expect(Math.abs(against.more.mean - more.mean)).toBeLessThan(
        3 * Math.hypot(against.more.meanError, more.meanError),
      )
      const share = differences[i]!.filter((sum) => sum > 0).length / DRAWS
      expect(Math.abs(against.better.share - share)).toBeLessThan(3 * Math.SQRT2 * against.better.error)
    }
  })
  it("differ with a much smaller error than on years drawn for each way by itself", () => {
    const apart = study({...doubtful, seed: 6}, DRAWS)
    for (const [i, {against}] of found.entries()) {
      if (!against) continue
      const separate = Math.hypot(found[0]!.worth.meanError, apart[i]!.worth.meanError)
      expect(against.more.meanError).toBeLessThan(separate / 3)
    }
  })
  it("spread by each thing that is drawn", () => {
    for (const [name, spread] of Object.entries(ASSUMED_RISK)) {
      if (!(name in NOTHING)) continue
      const [one] = study({...doubtful, ...NOTHING, [name]: spread}, 200)
      expect(one!.worth.at[4] - one!.worth.at[0]).toBeGreaterThan(100)
    }
  })
})

describe("of a year that is under way", () => {
  const {open, crowns} = sand
  const one: WaysInput = {...doubtful, ways: [[{name: "as found", weeks: [5]}]]}
  const worthsOf = (input: WaysInput) => drawWays(input, 0, 40).worths
  const usual = worthsOf({...one, ...NOTHING})[0]!
  it("nothing is left to chance once it is over", () => {
    for (const worth of worthsOf({...one, gone: year.days})) expect(worth).toBeCloseTo(usual, 8)
  })
  it("only what is still to be sold moves with the prices", () => {
    const course = emptyCourse(year.days)
    const cutting = {open, stop: open + 35, fernEnd: values.Fern_end - 1}
    const whole = new Float64Array(year.days).fill(1)
    const {picked} = dailyBalance(crowns, driversOf(climate, year, values), cutting, whole, values, course)
    const {prices} = smallCase.money
    const sales = (from: number) =>
      [0, 1, 2, 3, 4].reduce((sum, week) => {
        const [first, end] = [Math.max(from, open + 7 * week), open + 7 * week + 7]
        return first < end ? sum + prices[week]! * (picked[end - 1]! - picked[first - 1]!) : sum
      }, 0)
    const priced = {...one, ...NOTHING, priceVariation: 0.2}
    const whole40 = worthsOf(priced)
    for (const gone of [open + 14, open + 17]) {
      const left = sales(gone) / sales(0)
      for (const [draw, worth] of worthsOf({...priced, gone}).entries())
        expect(worth - usual).toBeCloseTo(left * (whole40[draw]! - usual), 6)
    }
  })
  it("only the weather of the days to come moves the crop", () => {
    // A season that is over leaves the weather to the fern alone, which a planting that is cleared does not need.
    const airy = {...one, ...NOTHING, airSpread: 1.5}
    expect(spreadOf(worthsOf(airy)).at[4] - spreadOf(worthsOf(airy)).at[0]).toBeGreaterThan(10)
    for (const worth of worthsOf({...airy, gone: open + 35})) expect(worth).toBeCloseTo(usual, 8)
  })
})

it("gives the same at the same seed, however the draws are shared out, and other draws at another", () => {
  const whole = drawWays(doubtful, 0, 30)
  expect(drawWays(structuredClone(doubtful), 0, 30)).toEqual(whole)
  const parts = [drawWays(doubtful, 12, 30), drawWays(doubtful, 0, 12)]
  expect(waysRisk(doubtful, parts)).toEqual(waysRisk(doubtful, [whole]))
  expect(drawWays({...doubtful, seed: 6}, 0, 30).worths[0]).not.toBe(whole.worths[0])
})

it("gives a planting the same draws whatever others are asked of", () => {
  const other = {...sixPlantings.plantings[1]!, age: 9}
  const both = {
    ...doubtful,
    asked: {...asked, plantings: [other, sand]},
    ways: [doubtful.ways[0]!, doubtful.ways[0]!],
    grounds: [GROUND + 5000, GROUND],
  }
  const {plantings} = waysRisk(both, [drawWays(both, 0, 20)])
  expect(plantings[1]!.ways).toEqual(study(doubtful, 20))
})

it("tells how far it is", () => {
  const shares: number[] = []
  drawWays(doubtful, 5, 25, (share) => shares.push(share))
  expect(shares).toEqual([0.5, 1])
})

/** The same by hand, day by day; numbers of the small case written out. Worths of each way over the draws. */
function plainly(draws: number): Float64Array[] {
  const random = seeded(23)
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const priceSpread = Math.sqrt(Math.log(1 + 0.15 ** 2))
  const whole = new Float64Array(365).fill(1)
  const course = emptyCourse(365)
  const all = doubtful.ways[0]!.map(() => new Float64Array(draws))
  for (let draw = 0; draw < draws; draw++) {
    const doubt = Math.exp(0.1 * normal() - 0.1 ** 2 / 2)
    let own = 0
    const years = [0, 1, 2, 3].map((at) => {
      const [warmth, sun, shared, field] = [normal(), normal(), normal(), normal()] as const
      own = at === 0 ? normal() : 0.5 * own + Math.sqrt(0.75) * normal()
      const z = -0.3 * shared + Math.sqrt(0.91) * own
      return {
        drivers: driversOf(
          {
            air: climate.air.map((air) => air + ASSUMED_RISK.airSpread * warmth),
            soil: climate.soil.map((soil) => soil + 0.75 * ASSUMED_RISK.airSpread * warmth),
            sun: climate.sun.map((light) => light * (1 + ASSUMED_RISK.sunSpread * sun)),
          },
          year,
          values,
        ),
        yields: doubt * Math.exp(0.15 * shared - 0.15 ** 2 / 2 + 0.2 * field - 0.2 ** 2 / 2),
        times: Math.exp(priceSpread * z - priceSpread ** 2 / 2),
      }
    })
    for (const [way, {weeks}] of doubtful.ways[0]!.entries()) {
      // From the first year on: the chance that it still stands, and what a sum of that year's end is worth today.
      let [crowns, standing, today, worth] = [sand.crowns, 1, 1, 0]
      for (const [at, season] of weeks.entries()) {
        const {drivers, yields, times} = years[at]!
        const stop = sand.open + 7 * season
        dailyBalance(
          crowns,
          drivers,
          {open: sand.open, stop, fernEnd: values.Fern_end - 1},
          whole,
          values,
          course,
        )
        let income = 0
        for (let day = sand.open; day < stop; day++) {
          const price = times * smallCase.money.prices[Math.floor((day - sand.open) / 7)]!
          income += (course.picked[day]! - course.picked[day - 1]!) * (0.86 * (price - 0.45) - 0.95 - 0.03)
        }
        const aged = 1.1 * smallCase.ageFactors[8 + at]!
        today /= 1.07
        worth += standing * today * 0.96 * (yields * aged * income - 60 * season - 900)
        worth += standing * today * 0.04 * (-900 + GROUND)
        standing *= 0.96
        crowns = {structure: course.structure[364]!, reserve: course.reserve[364]!}
      }
      all[way]![draw] = worth + standing * today * (GROUND - 400)
    }
  }
  return all
}
