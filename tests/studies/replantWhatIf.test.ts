import {describe, expect, it} from "vitest"
import {perYear} from "../../functions/stand/perYear"
import {weigh, ratesAbout, whatKeeps, whatMoves} from "../../src/studies/replantWhatIf"
import type {ReplantField, Replanting} from "../../src/workbook/replant"

// An old field and a new planting whose numbers are typed, without clearing or rest. Level yearly sums by hand from the
// discounted flows: 2 092 at 7 %, 2 425 at 4 %, 1 753 at 10 %, rounded.
const flows = [-9800, -1500, 900, 3600, 5200, 5600, 5600, 5500, 5300, 5000, 4600, 4200]
const margins = [3100, 2700, 2250, 1700, 1200]

const field: ReplantField = {
  row: 0,
  field: "Hill Field",
  area: null,
  first: 2026,
  seasons: margins.map((cash, i) => ({year: 2026 + i, cash, crop: null, at: {sheet: 0, row: 0, col: i}})),
  price: null,
  onOldGround: false,
  rest: 0,
  lease: null,
  leaseAct: "",
  leaseYears: null,
  ground: 0,
  level: 0,
  keepYears: 3,
  keepLeast: 2,
  keepMost: 3,
  waitGain: 0,
  earlyCost: 0,
  warning: "",
  note: "",
  cells: {},
}
const replanting: Replanting = {
  sheet: 0,
  region: {},
  money: {
    rate: 0.07,
    clear: 0,
    restIncome: 0,
    otherUse: 0,
    little: 150,
    packout: 0.86,
    losses: [0.15, 0.1, 0],
    spread: 0.3,
  },
  newYears: flows.map((cash, age) => ({
    age,
    yielding: Math.max(0, cash),
    other: Math.min(0, cash),
    sales: 0,
    at: {sheet: 1, row: age, col: 0},
  })),
  fields: [field],
}

describe("weigh", () => {
  it.each([
    [0.04, 2425, 2028],
    [0.07, 2092, 2029],
    [0.1, 1753, 2029],
  ])(
    "at a rate of %s a year must bring %s, and %s is the first season better replanted",
    (rate, level, year) => {
      const weighed = weigh(replanting, field, {rate})!
      expect(Math.round(weighed.level)).toBe(level)
      expect(weighed.replantIn).toBe(year)
      expect(weighed.level).toBeCloseTo(perYear(flows, rate), 9) // the whole list is the best life
    },
  )
  it("gains by waiting what the season brings above the level, a year from now", () => {
    const {level, waitGain} = weigh(replanting, field)!
    expect(waitGain).toBeCloseTo((3100 - level) / 1.07, 9)
  })
  it("asks less of a season when clearing costs something, for that is put off as well", () => {
    // At the rate of the clearing: .07·500 less than of the ground alone.
    const {ground, level} = weigh(replanting, field, {clear: 500})!
    expect(level).toBeCloseTo(0.07 * ground - 35, 9)
  })
  it("takes the loss on old ground from what goes with the yield alone", () => {
    const {level} = weigh(replanting, {...field, onOldGround: true})!
    const less = flows.map((cash) => (cash > 0 ? 0.85 * cash : cash))
    expect(level).toBeCloseTo(perYear(less, 0.07), 9)
    expect(weigh(replanting, {...field, onOldGround: true}, {loss: -0.15})!.level).toBeCloseTo(
      perYear(flows, 0.07),
      9,
    )
  })
  it("moves a crop's cash by its yield and its price", () => {
    // It leaves 3 000 and sells for 8 000: a tenth less yield takes 300; a tenth less price 800, of nine tenths 720.
    const grown = {
      ...field,
      seasons: [{...field.seasons[0]!, cash: 2100, crop: {leaves: 3000, sells: 8000}}],
    }
    const gain = (supposed: Parameters<typeof weigh>[2]) =>
      weigh(replanting, grown, supposed)!.waitGain * 1.07
    expect(gain({}) - gain({oldYield: 0.9})).toBeCloseTo(300, 6)
    expect(gain({}) - gain({price: 0.9})).toBeCloseTo(800, 6)
    expect(gain({}) - gain({price: 0.9, oldYield: 0.9})).toBeCloseTo(300 + 720, 6)
  })
  it("has no year for a field that is best through all its seasons", () => {
    const kept = {...field, seasons: field.seasons.slice(0, 2)}
    expect(weigh(replanting, kept)!.replantIn).toBeNull()
  })
  it("weighs nothing without a new planting", () => {
    expect(weigh({...replanting, newYears: []}, field)).toBeNull()
  })
})

describe("whatKeeps", () => {
  const of = (seasons: number, one = field) =>
    Object.fromEntries(whatKeeps(replanting, one, seasons).map(({input, from}) => [input, from]))
  // To a thousandth: years whose worths rounding alone tells apart count as equal.
  it("finds what makes one season more right: a year must then bring 1 700 at most", () => {
    const more = of(4)
    // Dearer planting: 2 092 less what the first two years cost more, level over the life, is 1 700.
    const level = (planting: number) =>
      perYear(
        flows.map((cash) => (cash < 0 ? planting * cash : cash)),
        0.07,
      )
    expect(level(more["Cost of planting"]!)).toBeCloseTo(1700, 3)
    expect(more["Cost of planting"]).toBeGreaterThan(1)
    const yielding = (factor: number) =>
      perYear(
        flows.map((cash) => (cash > 0 ? factor * cash : cash)),
        0.07,
      )
    expect(yielding(more["Crop of a new planting"]!)).toBeCloseTo(1700, 3)
    expect(perYear(flows, more["Rate a year"]!)).toBeCloseTo(1700, 3)
    // What prices do is not known where the cash is typed.
    expect(more).not.toHaveProperty("Prices")
  })
  it("finds what makes one season fewer right: a year must then bring 2 250 at least", () => {
    const fewer = of(2)
    expect(perYear(flows, fewer["Rate a year"]!)).toBeCloseTo(2250, 3)
    expect(fewer["Rate a year"]).toBeLessThan(0.07)
  })
  it("finds the price and the crop of a field that is grown", () => {
    // 3 000 left after harvest, sold for 8 000: keeping its one season is right while it brings what a year must, 2 092.
    const grown = {...field, seasons: [{...field.seasons[0]!, cash: 2000, crop: {leaves: 3000, sells: 8000}}]}
    const sold = {...replanting, newYears: replanting.newYears.map((year) => ({...year, sales: 1e-9}))}
    const found = Object.fromEntries(whatKeeps(sold, grown, 1).map(({input, from}) => [input, from]))
    const lacks = perYear(flows, 0.07) - 2000
    expect(found["Crop of this field"]).toBeCloseTo(1 + lacks / 3000, 6)
    expect(found["Prices"]).toBeCloseTo(1 + lacks / 8000, 6)
  })
  it("says where nothing within reach is enough, and nothing of what is best already", () => {
    const poor = {...field, seasons: [{...field.seasons[0]!, cash: -9000}]}
    expect(of(1, poor)["Rate a year"]).toBeNull()
    expect(whatKeeps(replanting, field, 3)).toEqual([])
  })
})

describe("whatMoves", () => {
  it("sorts inputs by how far they move the gain of waiting, and leaves out what is not known", () => {
    const moved = whatMoves(replanting, field)
    expect(moved.map(({apart}) => apart)).toEqual(moved.map(({apart}) => apart).toSorted((a, b) => b - a))
    expect(moved.map(({input}) => input)).not.toContain("Prices")
    expect(moved.map(({input}) => input)).not.toContain("Clearing") // it costs nothing here
    expect(moved).toHaveLength(4)
  })
  it("weighs a field without a loss on old ground against the loss that the workbook has", () => {
    const lossOf = (one: ReplantField) =>
      whatMoves(replanting, one).find(({input}) => input === "Loss on old ground")
    expect(lossOf(field)).toMatchObject({
      range: "none to 15\u202f%",
      low: weigh(replanting, field)!,
      high: weigh(replanting, {...field, onOldGround: true})!,
    })
    // After two years of rest nothing is lost.
    expect(lossOf({...field, rest: 2})).toBeUndefined()
  })
})

it("compares rates three points either way, none below one point", () => {
  expect(ratesAbout(0.07)).toEqual([0.04, 0.07, 0.1])
  expect(ratesAbout(0.02)).toEqual([0.01, 0.02, 0.05])
})
