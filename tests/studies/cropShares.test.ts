import {describe, expect, it} from "vitest"
import {dailyBalance, driversOf, emptyCourse} from "../../functions/root/dailyBalance"
import {bestWeeks} from "../../src/studies/bestWeeks"
import {cropShares} from "../../src/studies/cropShares"
import {opened} from "../../src/studies/plantingSeason"
import {sixPlantings} from "./sixPlantings"

const {site, money, caps, oldest} = sixPlantings
const north = sixPlantings.plantings[0]!
/** An old field on record: it loses a tenth a year. Invented. */
const foretold = Array.from({length: 26}, (_, age) => 2800 * 0.9 ** (age - 14))
/** So good a price, and so few weeks, that every season is cut for all of them. */
const dear = {
  ...sixPlantings,
  money: {...money, prices: [9], otherUse: 1000},
  caps: [4],
  successor: {...sixPlantings.successor, flows: [-1e6, 0]},
}

/** Crops of North Bench by the balance itself, year after year, cut for so many weeks. */
function crops(weeks: number, years: number): number[] {
  const drivers = driversOf(site.climate, site.year, site.values)
  const [whole, course] = [new Float64Array(365).fill(1), emptyCourse(365)]
  let {crowns} = north
  return Array.from({length: years}, () => {
    const cutting = {open: north.open, stop: north.open + 7 * weeks, fernEnd: site.values.Fern_end - 1}
    const {picked, structure, reserve} = dailyBalance(crowns, drivers, cutting, whole, site.values, course)
    crowns = {structure: structure[364]!, reserve: reserve[364]!}
    return picked[364]!
  })
}

describe("what a planting brings by age", () => {
  const shares = cropShares(sixPlantings, {...north, foretold}, opened(sixPlantings, north.open))
  it("is, cut for the weeks of the table, what is foretold, though its roots grow in the balance", () => {
    const modelled = crops(8, 6)
    expect(modelled[5]! / modelled[0]!).toBeGreaterThan(1.5) // an old field that would come back
    for (const [year, crop] of modelled.entries())
      expect(shares[14 + year]! * crop).toBeCloseTo(foretold[14 + year]!, 6)
  })
  it("is for other weeks as much more or less as the balance says", () => {
    const [table, shorter] = [crops(8, 1)[0]!, crops(7, 1)[0]!]
    expect(shares[14]! * shorter).toBeCloseTo((2800 * shorter) / table, 6)
  })
  it("is by the factor and ageing alone where nothing is foretold", () => {
    const plain = cropShares(sixPlantings, {...north, factor: 1.2}, opened(sixPlantings, north.open))
    for (let age = 14; age < oldest; age++)
      expect(plain[age]).toBeCloseTo(1.2 * sixPlantings.ageFactors[age]!, 12)
  })
  it("is by them too in years without a season", () => {
    const young = {...sixPlantings.plantings[5]!, foretold: caps.map((weeks) => 500 * weeks)}
    const shares = cropShares(sixPlantings, young, opened(sixPlantings, young.open))
    expect(shares.slice(0, 2)).toEqual([0, 1])
    expect(shares[2]).toBeGreaterThan(0)
  })
})

it("is counted in the seasons that are found, and falls short after a fern that was lost", () => {
  const lost = {...north, foretold, planting: "lost", healthy: [{from: site.year.first + 200, share: 0.2}]}
  const [kept, short] = bestWeeks({...dear, plantings: [{...north, foretold}, lost]}).plantings
  const years = kept!.years.slice(0, -1)
  expect(years.length).toBeGreaterThan(2)
  for (const {age, crop, weeks} of years) {
    expect(weeks).toBe(4)
    expect(crop).toBeCloseTo(foretold[age]!, 6)
  }
  const [first, second] = short!.years
  expect([first!.weeks, second!.weeks]).toEqual([4, 4])
  expect(first!.crop).toBeCloseTo(foretold[14]!, 6)
  expect(second!.crop).toBeLessThan(0.95 * foretold[15]!)
})
