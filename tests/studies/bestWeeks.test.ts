import {describe, expect, it} from "vitest"
import {AT_ONCE} from "../../functions/stand/chain"
import {ground} from "../../functions/stand/ground"
import {riskyWorths} from "../../functions/stand/riskyWorth"
import {stopPrice} from "../../functions/season/stopPrice"
import {worth} from "../../functions/stand/worth"
import {bestWeeks, gatherWeeks, NODES, weeksPart} from "../../src/studies/bestWeeks"
import type {BestWeeksInput} from "../../src/studies/bestWeeksAsked"
import {mustLeave} from "../../src/studies/plantingSeason"
import {everyWay, GROUND, smallCase} from "./everyWay"
import {sixPlantings} from "./sixPlantings"

const {money, successor, plantings, site} = sixPlantings
const sand = plantings[2]!

/** The six plantings with other money; small grids where only the direction counts. */
const changed = (input: Partial<BestWeeksInput>, ofMoney: Partial<typeof money> = {}) =>
  bestWeeks({...sixPlantings, ...input, money: {...money, ...ofMoney}})
const coarse = {nodes: {sugar: 13, structure: 7}}

describe("the best weeks, against every way tried one by one", () => {
  it.each([
    ["a strong planting", sand.crowns, null],
    ["a weak planting", {structure: 4200, reserve: 2400}, null],
    ["a planting that brings nothing any more", {structure: 3000, reserve: 200}, null],
    ["a planting that loses half its fern in August", sand.crowns, 212],
  ])("%s is cut and cleared as trying finds", (_, crowns, healthyFrom) => {
    const healthy = healthyFrom === null ? [] : [{from: site.year.first + healthyFrom, share: 0.5}]
    const asked = {...sand, age: 8, crowns, factor: 1.1, healthy}
    const tried = everyWay(crowns, 8, 1.1, healthyFrom)
    const found = bestWeeks({...smallCase, plantings: [asked], nodes: {sugar: 121, structure: 41}})
    expect(found.ground).toBe(GROUND)
    expect(found.replants).toBe(false)
    const [one] = found.plantings
    expect(Math.abs(one!.worth / tried.worth - 1)).toBeLessThan(5e-4)
    expect(one!.years.map(({weeks}) => weeks)).toEqual(tried.weeks)
    expect(one!.replaceAge).toBe(8 + tried.weeks.length)
    for (const [i, {reserveLeft}] of one!.years.entries()) expect(reserveLeft).toBeCloseTo(tried.left[i]!, 6)
    for (const [seasons, kept] of one!.keep.entries())
      expect(Math.abs(kept / everyWay(crowns, 8, 1.1, healthyFrom, seasons).worth - 1)).toBeLessThan(5e-4)
    const rough = bestWeeks({...smallCase, plantings: [asked]}).plantings[0]!
    expect(Math.abs(rough.worth / tried.worth - 1)).toBeLessThan(2e-3)
  })
})

// Small cases of the whole study, solved by a program of its own in another language: the balance written from its published
// steps, roots and the ratio of sugar to root on 81 x 141 nodes, the worth of the ground halved in. It was run for this test.
describe("the best weeks, against a solver written on its own", () => {
  const [north, long, , well] = plantings
  /** A crop by age: invented, falling by 7 % a year after age 7. */
  const byAge = (full: number) =>
    Array.from({length: 31}, (_, age) => full * ([0, 0, 0.2, 0.5, 0.85][age] ?? 0.93 ** Math.max(0, age - 7)))
  const risky: BestWeeksInput = {
    ...sixPlantings,
    money: {
      ...money,
      prices: [3.2, 3.1, 2.9, 2.6, 2.4, 2.2, 2.0, 1.9],
      weekCost: 35,
      yearCost: 820,
      clear: 600,
      rest: 1,
      restIncome: -120,
      rate: 0.06,
      lossFlow: -700,
    },
    successor: {...successor, flows: [-8200, -1100], factor: 0.9},
    plantings: [
      {...sand, factor: 0.95},
      {...north!, factor: 1.15, ground: {rest: 2, loss: 0.2}},
      {...long!, factor: 0.9},
    ],
    caps: [0, 0, 1, 3, 5, 7],
    technicalWeeks: 9,
    lossChances: [0, 0.01, 0.02, 0.02, 0.03],
    oldest: 16,
  }
  const recorded: BestWeeksInput = {
    ...sixPlantings,
    money: {
      ...money,
      prices: [3.5, 3.4, 3.1, 2.9, 2.7, 2.5, 2.4],
      weekCost: 20,
      yearCost: 950,
      clear: 450,
      rate: 0.05,
    },
    successor: {...successor, flows: [-9000, -1400], foretold: byAge(5100)},
    plantings: [
      {...sand, foretold: byAge(5400)},
      {...north!, foretold: byAge(4000), ground: {rest: 1, loss: 0.12}},
      {...well!, foretold: byAge(5000)},
    ],
    lossChances: [0.015],
    oldest: 20,
  }
  const givenUp: BestWeeksInput = {
    ...sixPlantings,
    money: {...money, prices: [3.4, 3.2, 3.0, 2.8, 2.6], clear: 500, rate: 0.08},
    successor: {...successor, flows: [-1e6, 0]},
    plantings: [
      sand,
      {...well!, healthy: [{from: site.year.first + 205, share: 0.4}]},
      {...long!, factor: 0.8},
    ],
    caps: [0, 0, 2, 3, 5, 6],
    technicalWeeks: 11,
    lossChances: [0.05],
    oldest: 12,
  }
  const sevens = (count: number) => Array<number>(count).fill(7)
  const eights = (count: number) => Array<number>(count).fill(8)
  it.each([
    [
      "rest, old ground, a chance of loss by age and a cost of a week",
      risky,
      13_340.5,
      [
        [25_934.8, 16, [...sevens(8), 9]],
        [5573.9, 16, [6, 9]],
        [21_513.5, 16, [6, ...sevens(5), 9]],
      ],
    ],
    [
      "crops foretold by age",
      recorded,
      30_107.5,
      [
        [42_537.8, 18, [...eights(10), 10]],
        [20_702.8, 17, [7, 8, 10]],
        [44_215.6, 17, [...eights(11), 10]],
      ],
    ],
    [
      "ground given up at an age, and a fern that was lost",
      givenUp,
      0,
      [
        [16_485.5, 12, [6, 6, 6, 6, 11]],
        [20_620.8, 12, [6, 6, 6, 6, 6, 6, 11]],
        [8264.1, 12, [6, 6, 11]],
      ],
    ],
  ] as [string, BestWeeksInput, number, [number, number, number[]][]][])(
    "agree with %s",
    (_, input, ground, solved) => {
      const found = bestWeeks({...input, nodes: NODES})
      expect(Math.abs(found.ground - ground)).toBeLessThanOrEqual(0.002 * ground)
      for (const [i, [worth, replaceAge, weeks]] of solved.entries()) {
        const one = found.plantings[i]!
        expect(Math.abs(one.worth / worth - 1)).toBeLessThan(0.002)
        expect(one.replaceAge).toBe(replaceAge)
        expect(one.years).toHaveLength(weeks.length)
        for (const [at, year] of one.years.entries())
          expect(Math.abs(year.weeks - weeks[at]!)).toBeLessThanOrEqual(1)
      }
    },
  )
})

describe("the worth of the ground", () => {
  // A season that is never cut brings its yearly cost alone: here below 0, so that a sum comes in every year.
  const uncut = (lossChances: number[], rest: number, comes = 1400) =>
    changed(
      {caps: [0], technicalWeeks: 0, lossChances, ...coarse},
      {yearCost: -comes, rest, restIncome: 200, lossFlow: -500},
    )
  const flowsOf = (comes: number) => [-9800, -1500, ...Array<number>(23).fill(comes)]
  it("is that of the plain chain when nothing is cut", () => {
    const between = {clear: 350, rest: 2, restIncome: 200}
    const planted = worth(flowsOf(1400), 0.07, between, 0) as number
    expect(uncut([0], 2).successor.worth).toBeCloseTo(planted, 4)
    expect(uncut([0], 2).ground).toBeCloseTo(ground(planted, 0.07, 2, 200, 0), 4)
  })
  it("is that of the chain at risk when a planting may be lost", () => {
    const chances = [0, 0.01, 0.02, 0.05]
    const planted = Math.max(...riskyWorths(flowsOf(2500), 0.07, chances, -500, {...AT_ONCE, clear: 350}))
    expect(uncut(chances, 0, 2500).ground).toBeCloseTo(planted, 4)
  })
  it("is the other use, where planting pays less", () => {
    const found = changed(coarse, {otherUse: 90_000})
    expect(found.ground).toBe(90_000)
    expect(found.replants).toBe(false)
  })
  it("is on old ground that of plantings which yield so much less, and of the other plantings as before", () => {
    // A loss of yield takes from the factor of the successor; rest comes before it.
    const old = {...sand, planting: "old", ground: {rest: 2, loss: 0.2}}
    const rested = {restIncome: -150}
    const found = changed({...coarse, plantings: [sand, old]}, rested)
    const poor = {...successor, factor: 0.8 * successor.factor}
    const alone = changed({...coarse, plantings: [sand], successor: poor}, {...rested, rest: 2})
    expect(found.plantings[1]).toMatchObject({...alone.plantings[0]!, planting: "old"})
    expect(found.plantings[1]!.ground).toBe(alone.ground)
    expect(found.plantings[0]).toEqual(changed({...coarse, plantings: [sand]}, rested).plantings[0])
    expect(found.plantings[0]!.ground).toBe(found.ground)
    expect(alone.ground).toBeLessThan(found.ground)
  })
  it("asks of a season what keeps a planting as good as clearing it now", () => {
    // Each season is uncut and leaves just that: interest on the ground less clearing, and what the chance of a loss takes.
    const input = {...sixPlantings, caps: [0], technicalWeeks: 0, lossChances: [0.03], ...coarse}
    const owned = {...money, otherUse: 20_000, lossFlow: -500, clear: 350}
    const leaves = mustLeave({...input, money: owned}, 20_000, 7)
    expect(leaves).toBeCloseTo((0.07 * 19_650 + 0.03 * 150) / 0.97, 9)
    const dear = {...successor, flows: [-1e6, 0]}
    const one = bestWeeks({
      ...input,
      successor: dear,
      plantings: [sand],
      money: {...owned, yearCost: -leaves},
    }).plantings[0]!
    for (const kept of one.keep) expect(kept).toBeCloseTo(19_650, 6)
  })
  it("falls with dearer planting, clearing and losses and with worse prices", () => {
    const {ground: before} = changed(coarse)
    const cheaper = [
      changed({...coarse, successor: {...successor, flows: [-14_000, -1500]}}),
      changed(coarse, {clear: 2000}),
      changed({...coarse, lossChances: [0.03]}),
      changed(coarse, {prices: money.prices.map((price) => 0.9 * price)}),
    ]
    for (const {ground: after} of cheaper) expect(after).toBeLessThan(before)
  })
})

describe("a planting", () => {
  const found = bestWeeks(sixPlantings)
  it("is worth at least what clearing it now is, and keeping it for the best number of years", () => {
    for (const one of found.plantings) {
      expect(one.worth).toBeGreaterThanOrEqual(one.clearNow)
      expect(one.keep[0]).toBe(one.clearNow)
      // Both hold the error of the straight lines between nodes.
      expect(Math.abs(Math.max(...one.keep) / one.worth - 1)).toBeLessThan(2e-3)
      expect(one.keep.indexOf(Math.max(...one.keep))).toBe(one.replaceAge - one.age)
    }
  })
  it("in its last season is cut to the technical limit, and its reserve is worth nothing", () => {
    for (const {years} of [found.successor, ...found.plantings]) {
      if (years.length === 0) continue
      expect(years.at(-1)).toMatchObject({weeks: 10, why: "last season", reserveWorth: 0})
      for (const {weeks, age} of years.slice(0, -1))
        expect(weeks).toBeLessThanOrEqual(sixPlantings.caps[Math.min(age, 5)]!)
    }
  })
  it("in its last season stops where a week no longer pays its picking", () => {
    // From week 5 on a kg leaves 0.86 x (1.50 - 0.45) - 0.98 = -0.077.
    const prices = [3.65, 3.5, 3.3, 3.15, 1.5]
    const found = changed(coarse, {prices})
    const lasts = found.plantings.flatMap(({years}) => years.slice(-1))
    expect(lasts.length).toBeGreaterThan(3)
    for (const last of lasts) expect(last).toMatchObject({weeks: 4, why: "last season, price"})
    // One that goes on stops there for the same reason, if its reserve has not stopped it before.
    const others = found.plantings.flatMap(({years}) => years.slice(0, -1)).filter(({age}) => age > 3)
    expect(others.some(({why}) => why === "price")).toBe(true)
    for (const {weeks, why} of others) expect(why).toBe(weeks === 4 ? "price" : "reserve")
  })
  it("is never cut longer than its table while it goes on, however good the price", () => {
    const {plantings: all} = changed(coarse, {prices: [9]})
    for (const {years} of all)
      for (const {weeks, age, why} of years.slice(0, -1)) {
        const most = sixPlantings.caps[Math.min(age, 5)]!
        expect(weeks).toBeLessThanOrEqual(most)
        expect(why === "most weeks").toBe(weeks === most)
      }
  })
  it("is worth no less with more in its roots", () => {
    const reserves = [1000, 2000, 3000, 4000, 5000, 6000, 7000, 8000]
    const asked = reserves.map((reserve) => ({...sand, crowns: {structure: 5500, reserve}}))
    const worths = changed({plantings: asked}).plantings.map((one) => one.worth)
    for (let i = 1; i < worths.length; i++) expect(worths[i]).toBeGreaterThanOrEqual(worths[i - 1]!)
  })
  it("is cleared no earlier when a new planting is dearer", () => {
    const ages = [2000, 9800, 20_000, 30_000].map((cost) =>
      changed({...coarse, successor: {...successor, flows: [-cost, -1500]}}),
    )
    const chain = ages.map((one) => one.successor.replaceAge)
    expect(chain).toEqual(chain.toSorted((a, b) => a - b))
    expect(chain.at(-1)).toBeGreaterThan(chain[0]!)
    for (const i of plantings.keys()) {
      const field = ages.map((one) => one.plantings[i]!.replaceAge)
      expect(field).toEqual(field.toSorted((a, b) => a - b))
    }
  })
  it("says when only the end of the ages clears it", () => {
    expect(changed({...coarse, oldest: 9}).plantings[2]!).toMatchObject({replaceAge: 9, isAtEnd: true})
    expect(found.plantings[2]!.isAtEnd).toBe(false)
  })
  it("older than the oldest age is cleared", () => {
    const [north] = changed({...coarse, oldest: 14}).plantings
    expect(north).toMatchObject({years: [], replaceAge: 14, days: 0, choices: []})
    expect(north!.keep).toEqual([north!.clearNow])
  })
})

describe("a season", () => {
  const found = bestWeeks(sixPlantings)
  const long = found.plantings[1]!
  it("is the best of its choices, by weeks and nearly by days", () => {
    const best = long.choices.reduce((most, one) => (one.worth > most.worth ? one : most))
    expect(best.weeks).toBe(long.years[0]!.weeks)
    expect(Math.abs(long.days - 7 * best.weeks)).toBeLessThan(7)
    expect(best.worth).toBeCloseTo(long.worth, 6)
    expect(best).toMatchObject({crop: long.years[0]!.crop, margin: long.years[0]!.margin})
  })
  it("brings its margin and what it leaves, both of the year's end", () => {
    for (const {margin, later, worth: today} of long.choices)
      expect(today).toBeCloseTo((margin + later) / 1.07, 6)
  })
  it("ends where the next week costs later seasons more than it brings", () => {
    const {weeks, why, nextWeek} = long.years[0]!
    expect(why).toBe("reserve")
    const [now, then] = [long.choices[weeks]!, long.choices[weeks + 1]!]
    expect(nextWeek!.kg).toBeCloseTo(then.crop - now.crop, 6)
    expect(nextWeek!.cost).toBeCloseTo(now.later - then.later, 6)
    expect(nextWeek!.cost).toBeGreaterThan(then.margin - now.margin)
    // At the stop price the week would pay exactly: kg·(packout·(p - pack) - pick - haul) = cost.
    const {kg, cost, stopPrice: price} = nextWeek!
    expect(kg * (0.86 * (price - 0.45) - 0.98)).toBeCloseTo(cost, 6)
    expect(price).toBeCloseTo(stopPrice(0.95, 0.03, 0.45, 0.86, 0, cost, 1, kg), 9)
    // It lies above the price of that week, and the price of the week before above what that one needs.
    expect(price).toBeGreaterThan(money.prices[weeks]!)
  })
  it("loses about the worth of the sugar and the root that a week takes", () => {
    // The week's sugar alone costs less than all it takes: the root gains less with it.
    const seasons = found.plantings.flatMap(({years}) => years.slice(0, 1))
    expect(seasons.length).toBeGreaterThan(3)
    for (const {nextWeek, reserveWorth} of seasons)
      expect(reserveWorth * 208.32 * (nextWeek!.kg / 1000)).toBeLessThan(nextWeek!.cost)
  })
})

it("moves little when the grid is made finer", () => {
  const [rough, plain, fine] = [
    {sugar: 13, structure: 7},
    {sugar: 25, structure: 11},
    {sugar: 49, structure: 21},
  ].map((nodes) => bestWeeks({...sixPlantings, plantings: plantings.slice(1, 3), nodes}))
  expect(Math.abs(plain!.ground / fine!.ground - 1)).toBeLessThan(0.01)
  expect(Math.abs(plain!.ground / fine!.ground - 1)).toBeLessThan(Math.abs(rough!.ground / fine!.ground - 1))
  for (const [i, one] of fine!.plantings.entries()) {
    const other = plain!.plantings[i]!
    expect(Math.abs(other.worth / one.worth - 1)).toBeLessThan(0.01)
    expect(other.replaceAge).toBe(one.replaceAge)
    for (const [year, {weeks}] of one.years.entries())
      expect(Math.abs(other.years[year]!.weeks - weeks)).toBeLessThanOrEqual(1)
  }
})

it("gives the same however the plantings are shared out, also among more workers than plantings", () => {
  const input = {...sixPlantings, ...coarse}
  const part = (from: number, to: number) => weeksPart(input, from, to, () => {})
  const whole = bestWeeks(input)
  expect(gatherWeeks([part(4, 6), part(0, 1), part(1, 4)])).toEqual(whole)
  expect(gatherWeeks([part(6, 6), part(0, 6)])).toEqual(whole)
})

it("tells progress up to the whole, never back", () => {
  const shares: number[] = []
  bestWeeks({...sixPlantings, ...coarse}, (share) => shares.push(share))
  expect(shares).toEqual(shares.toSorted((a, b) => a - b))
  expect(shares.at(-1)).toBe(1)
  expect(shares.length).toBeGreaterThan(10)
})

it("takes and gives plain data, that a worker can be sent", () => {
  const asked = structuredClone({...sixPlantings, ...coarse})
  expect(structuredClone(bestWeeks(asked))).toEqual(bestWeeks({...sixPlantings, ...coarse}))
})
