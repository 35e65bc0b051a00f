import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {isRefusal} from "../../functions/refusal"
import type {Content} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {Workbook} from "../../src/workbook/workbook"
import {
  lastAgeWeighed,
  nearSeasons,
  nearWords,
  weeksStudy,
  type WeeksStudy,
} from "../../src/studies/weeksStudy"
import type {PlantingWeeks} from "../../src/studies/bestWeeks"

function open(name: string): Workbook {
  const reading = readFile(readFileSync(new URL(`../../workbooks/${name}.json`, import.meta.url), "utf8"))
  if ("refused" in reading) throw new Error(reading.refused)
  return new Workbook(reading.document)
}

function study(workbook: Workbook): WeeksStudy {
  const read = weeksStudy(workbook)
  if (read === null || isRefusal(read)) throw new Error(read?.refused)
  return read
}

function enter(workbook: Workbook, name: string, key: Content, heading: string, content: Content) {
  const sheet = workbook.document.sheets.findIndex((one) => one.name === name)
  const {columns, rows} = workbook.document.sheets[sheet]!
  const at = {
    sheet,
    row: rows.findIndex(([first]) => first === key),
    col: columns.findIndex((column) => column.heading === heading),
  }
  workbook.revise({type: "enter", cells: [{at, content}]})
}

it("reads the prices by their weeks, as the sheets do, in whatever order they are typed", () => {
  const workbook = open("hollow-brook-farm")
  enter(workbook, "Prices", 2, "Week from opening", 14)
  expect(study(workbook).input.money.prices).toEqual([
    3.65, 3.65, 3.3, 3.15, 3, 2.85, 2.7, 2.6, 2.5, 2.4, 2.4, 2.4, 2.4, 3.5,
  ])
})

describe("what the study reads from the demonstration farm", () => {
  const {input, season, asOf, areas, little, lastAge} = study(open("hollow-brook-farm"))
  const planting = (name: string) => input.plantings.find((one) => one.planting === name)!

  it("is its money as typed", () => {
    expect(input.money).toEqual({
      prices: [3.65, 3.5, 3.3, 3.15, 3, 2.85, 2.7, 2.6, 2.5, 2.4],
      pick: 0.95,
      haul: 0.03,
      pack: 0.45,
      packout: 0.86,
      weekCost: 0,
      yearCost: 900,
      clear: 350,
      rest: 0,
      restIncome: 0,
      otherUse: 0,
      rate: 0.07,
      lossFlow: -900,
    })
    expect([season, asOf, little]).toEqual([2026, dayOf("2026-05-25"), 150])
    expect(areas.get("Long Acre")).toBe(6.4)
  })
  it("knows what a new planting loses on old ground, as the sheet Replant does, and where the table by age ends", () => {
    // North Bench: yes under Old ground, no rest, of which Rest and ground takes 15 %.
    expect(planting("North Bench").ground).toEqual({rest: 0, loss: 0.15})
    expect(planting("Long Acre").ground).toEqual({rest: 0, loss: 0})
    expect(lastAge).toBe(20)
  })
  it("has the plantings that are sampled and opened, with their factor but without their ageing", () => {
    expect(input.plantings.map(({planting, age}) => [planting, age])).toEqual([
      ["North Bench", 14],
      ["Long Acre", 9],
      ["Sand Piece", 7],
      ["Well Field", 5],
      ["Home Strip", 2],
    ])
    // Of the sheet Expected crop: 1.1981 for North Bench, whose ageing of .625 is left to the years.
    expect(planting("North Bench").factor).toBeCloseTo(1.1981, 4)
    expect(input.ageFactors[14]).toBeCloseTo(0.625, 4)
    expect(input.ageFactors.slice(0, 9)).toEqual(Array.from({length: 9}, () => 1)) // youth is in the crowns
    expect(planting("Long Acre").open).toBe(dayOf("2026-04-25")! - dayOf("2026-01-01")!)
  })
  it("counts on the crop that the sheet Replant counts on, by age", () => {
    // North Bench has brought 3 964 kg/ha at full bearing, in the mean of three years (farm.md's record over the age factors:
    // 3 420/.8574, 3 010/.7716, 2 780/.6945); at age 15 the factor is .5625, past 20 that of 20.
    const full = (3420 / 0.8574 + 3010 / 0.7716 + 2780 / 0.6945) / 3
    const {foretold} = planting("North Bench")
    expect(foretold![15]).toBeCloseTo(full * 0.5625, 6)
    expect(foretold![25]).toBe(foretold![20])
    // This season is the balance's, fitted to the record: not that of the age factor.
    expect(Math.abs(foretold![14]! / (full * 0.625) - 1)).toBeGreaterThan(0.1)
    // A new planting brings the mean of the farm's records at full bearing.
    expect(input.successor.foretold![3]! / input.successor.foretold![6]!).toBeCloseTo(0.5, 9)
    expect(input.successor.foretold![6]).toBeCloseTo(4931.7, 1)
  })
  it("goes on with the last row of the table past its end", () => {
    expect(input.caps.slice(0, 7)).toEqual([0, 0, 2, 4, 6, 8, 8])
    expect(input.caps).toHaveLength(input.oldest + 1)
    expect(input.ageFactors.at(-1)).toBeCloseTo(0.3322, 4)
  })
  it("plants what is like Home Strip, at what a planting costs", () => {
    const {age, crowns, open, flows} = input.successor
    expect(age).toBe(2)
    expect(flows).toEqual([-9800, -1500])
    expect(crowns).toEqual(planting("Home Strip").crowns)
    expect(open).toBe(planting("Home Strip").open)
  })
})

describe("a study that cannot be run", () => {
  it("says which named value is missing", () => {
    const workbook = open("hollow-brook-farm")
    enter(workbook, "Named values", "Rate", "Value", null)
    expect(weeksStudy(workbook)).toMatchObject({refused: "Rate on Named values: not given yet"})
  })
  it("says which input is missing", () => {
    const workbook = open("hollow-brook-farm")
    enter(workbook, "Life inputs", "Oldest age", "Value", null)
    expect(weeksStudy(workbook)).toMatchObject({refused: "Oldest age on Life inputs: not given yet"})
  })
  it("says what the planting lacks that stands for a new one, or that none is named", () => {
    const workbook = open("hollow-brook-farm")
    enter(workbook, "Life inputs", "A new planting is like", "Value", "Top Corner") // it was never sampled
    expect(weeksStudy(workbook)).toMatchObject({
      refused:
        "A new planting is like Top Corner, by Life inputs, which has not all of root samples, root mass, a count of plants and an opening",
    })
    enter(workbook, "Life inputs", "A new planting is like", "Value", null)
    expect(weeksStudy(workbook)).toMatchObject({
      refused: "A new planting is like, on Life inputs: no planting named yet",
    })
  })
  it("says which number is out of its limits", () => {
    const workbook = open("hollow-brook-farm")
    enter(workbook, "Named values", "Packout", "Value", 1.2)
    expect(weeksStudy(workbook)).toMatchObject({
      refused: "Packed share of the harvested weight must be above 0 and up to 1, not 1.2",
    })
  })
  it("is no mistake of a workbook without numbers", () => {
    const read = weeksStudy(open("blank"))
    expect(read !== null && isRefusal(read)).toBe(true)
  })
})

it("counts on nothing where the farm has no record", () => {
  const workbook = open("hollow-brook-farm")
  const sheet = workbook.document.sheets.findIndex(({name}) => name === "Records")
  const {columns, rows} = workbook.document.sheets[sheet]!
  const col = columns.findIndex(({heading}) => heading === "Saleable crop")
  workbook.revise({
    type: "enter",
    cells: rows.map((_, row) => ({at: {sheet, row, col}, content: null})),
  })
  const {successor, plantings} = study(workbook).input
  for (const {foretold} of [successor, ...plantings]) expect(foretold).toBeNull()
})

it("calls seasons near that come within a sum of the best", () => {
  const one = {age: 12, keep: [100, 240, 300, 260, 90]} as unknown as PlantingWeeks
  expect(nearSeasons(one, 50)).toEqual([2, 3])
  expect(nearSeasons(one, 0)).toEqual([2, 2])
  expect(nearSeasons(one, 60)).toEqual([1, 3])
  expect(nearWords(one, 2026, 60)).toBe("2026 to 2028")
  expect(nearWords(one, 2026, 0)).toBe("2027")
  expect(nearWords(one, 2026, 200)).toBe("now to 2028")
  // Its last season of those weighed comes near too: longer may be as good.
  expect(nearWords(one, 2026, 210)).toBe("now or later")
  expect(nearWords({...one, keep: [100, 240, 300]}, 2026, 0)).toBe("2027 or later")
  // Its seasons begin at age 12: the third is at 14.
  expect(lastAgeWeighed(one, 60)).toBe(14)
  expect(lastAgeWeighed({...one, keep: [500, 100]}, 60)).toBe(12)
})
