import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {askDayCost, dayCostOf, keepWeeks, meanDayCost} from "../../src/editor/commands/fieldLife"
import {answerYes} from "../../src/editor/editing"
import {createStore, type Store} from "../../src/editor/store"
import type {BestYear} from "../../src/studies/bestCourse"
import type {PlantingWeeks} from "../../src/studies/bestWeeks"
import {readFile} from "../../src/workbook/file"
import {rowsOf} from "../../src/workbook/season"

const farm = (): Store => {
  const url = new URL("../../workbooks/hollow-brook-farm.json", import.meta.url)
  const reading = readFile(readFileSync(url, "utf8"))
  if ("refused" in reading) throw new Error(reading.refused)
  return createStore(reading.document)
}

const year = (age: number, more: Partial<BestYear> = {}): BestYear => ({
  age,
  weeks: 7,
  why: "reserve",
  crop: 4000.4,
  margin: 3000.6,
  sugar: 500,
  reserveLeft: 4200,
  reserveWorth: 0.6543,
  nextWeek: {kg: 400, cost: 350, stopPrice: 2.7654},
  ...more,
})
const last = (age: number) =>
  year(age, {why: "last season", reserveWorth: 0, nextWeek: {kg: 300, cost: 0, stopPrice: 1.6}})

const planting = (name: string, age: number, years: BestYear[]): PlantingWeeks => ({
  planting: name,
  age,
  years,
  replaceAge: age + years.length,
  isAtEnd: false,
  worth: 50_000.4,
  ground: 44_350,
  clearNow: 44_000,
  keep: [44_000, 49_800, 50_000, 49_000],
  ways: [],
  choices: [],
  days: 47,
})
const asOf = dayOf("2026-05-25")!
const study = {season: 2026, asOf, little: 150}

const aheadOf = (store: Store) =>
  rowsOf(store.workbook, "ahead planting").map((row) => [
    row.word("ahead planting"),
    row.word("ahead season"),
    row.number("ahead weeks"),
  ])

describe("keeping what the study found", () => {
  it("writes a planting's row and its seasons ahead, in one step that can be undone", () => {
    const store = farm()
    const before = store.getState().document
    expect(store.run(keepWeeks([planting("Long Acre", 9, [year(9), last(10)])], study))).toBe(true)
    const row = rowsOf(store.workbook, "life planting").find(
      (one) => one.word("life planting") === "Long Acre",
    )!
    expect(row.number("life run on")).toBe(asOf)
    expect(row.number("life weeks")).toBe(7)
    expect(row.number("life days")).toBe(47)
    expect(row.word("life last season")).toBe("2027")
    expect(row.word("life near")).toBe("2027") // after one season 200 less, after none 6 000
    expect(row.number("life replace age")).toBe(11)
    expect(row.number("life reserve worth")).toBe(0.654)
    expect(row.number("life day cost")).toBe(50) // 350 over seven days
    expect(row.word("life why")).toContain("takes 350 money/ha from later seasons")
    expect(aheadOf(store)).toEqual([
      ["Long Acre", "2026", 7],
      ["Long Acre", "2027", 7],
    ])
    store.undo()
    expect(store.getState().document).toEqual(before)
  })
  it("puts new seasons in place of a planting's old ones, and leaves those of others", () => {
    const store = farm()
    store.run(
      keepWeeks([planting("Long Acre", 9, [year(9), last(10)]), planting("Sand Piece", 7, [last(7)])], study),
    )
    store.run(keepWeeks([planting("Long Acre", 9, [last(9)])], study))
    expect(aheadOf(store)).toEqual([
      ["Sand Piece", "2026", 7],
      ["Long Acre", "2026", 7],
    ])
  })
  it("says or later where the ages that were weighed end", () => {
    const store = farm()
    store.run(keepWeeks([{...planting("Long Acre", 9, [year(9), last(10)]), isAtEnd: true}], study))
    const row = rowsOf(store.workbook, "life planting").find(
      (one) => one.word("life planting") === "Long Acre",
    )!
    expect(row.word("life last season")).toBe("2027 or later")
  })
  it("says now for a planting that is best cleared before this season", () => {
    const store = farm()
    store.run(keepWeeks([{...planting("North Bench", 14, []), days: 0}], study))
    const [row] = rowsOf(store.workbook, "life planting")
    expect(row!.word("life last season")).toBe("now")
    expect(row!.number("life weeks")).toBe(0)
  })
})

describe("what a day costs later", () => {
  const areas = new Map([
    ["a", 1],
    ["b", 3],
    ["c", 5],
  ])
  const costing = (name: string, cost: number) =>
    planting(name, 8, [year(8, {nextWeek: {kg: 1, cost, stopPrice: 1}}), last(9)])
  it("is a seventh of what a week does", () => {
    expect(dayCostOf(costing("a", 700))).toBe(100)
    expect(dayCostOf(planting("a", 8, [year(8, {nextWeek: null})]))).toBeNull()
  })
  it("is weighed by ground, over the plantings that go on", () => {
    // (1·100 + 3·60)/4; c is in its last season.
    expect(meanDayCost([costing("a", 700), costing("b", 420), planting("c", 20, [last(20)])], areas)).toBe(70)
    expect(meanDayCost([planting("c", 20, [last(20)])], areas)).toBeNull()
  })
  it("is put into Next_year_cost only after a yes", () => {
    const store = farm()
    const value = () => store.workbook.evaluate("=Next_year_cost", 0)
    store.turn(askDayCost(store.getState().document, 83, 5)!)
    expect(value()).toBe(60)
    expect(store.getState().question!.asks).toMatch(
      /^Next_year_cost is 60 .* The study gives 83, .* 5 plantings that go on/,
    )
    answerYes(store)
    expect(value()).toBe(83)
  })
})
