import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {checkWords} from "../../src/editor/checks"
import {
  addMissingRows,
  addPlanting,
  plantingRefused,
  plantingsWithoutRows,
} from "../../src/editor/commands/plantings"
import {createStore} from "../../src/editor/store"
import {findingsIn} from "../../src/workbook/checks/checks"
import type {Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {valueNamed} from "../../src/workbook/names"
import {planOf} from "../../src/workbook/plan"

const {document: farm} = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}
const brook = {name: "Brook End", planted: "2020-04-20", area: 3.5}

describe("a new planting in the middle", () => {
  const store = createStore(farm)
  const before = planOf(store.workbook)!
  store.run(addPlanting(brook, "Long Acre"))
  const {document} = store.getState()

  it("stands after the other on every sheet that has a row for each, in one step", () => {
    const each = document.sheets.filter(({rowEach}) => rowEach === "planting")
    expect(each.length).toBeGreaterThan(6)
    for (const {name, rows} of each)
      expect(
        rows.slice(1, 3).map(([key]) => key),
        name,
      ).toEqual(["Long Acre", "Brook End"])
    expect(store.getState().undoable.map(({name}) => name)).toEqual(["planting Brook End added"])
  })

  it("stands on its ground in the years ahead too, after the stands that are there", () => {
    const ahead = document.sheets.find(({name}) => name === "Stands ahead")!
    expect(ahead.rows.at(-1)!.slice(0, 4)).toEqual(["Brook End", "Brook End", null, null])
    const years = document.sheets.findIndex(({name}) => name === "Crop by year")
    const row = 10 * (ahead.rows.length - 1) // ten rows of years for each stand
    const ofIt = (col: number) => store.workbook.valueAt({sheet: years, row, col})
    expect([ofIt(1), ofIt(3), ofIt(5)]).toEqual(["Brook End", 2026, 3.5])
  })

  it("moves no other planting's plan, and is in the totals", () => {
    const after = planOf(store.workbook)!
    expect(
      after.rows
        .filter(({planting}) => planting !== "Brook End")
        .map(({planting, closes, crop}) => [planting, closes, crop]),
    ).toEqual(before.rows.map(({planting, closes, crop}) => [planting, closes, crop]))
    const sheet = document.sheets.findIndex(({name}) => name === "Season plan")
    expect(store.workbook.evaluate("=SUM(C:C)", sheet)).toBeCloseTo(28 + 3.5, 9)
  })

  it("is told by the checks to have no record, and to be missing nowhere", () => {
    const plan = document.sheets.findIndex(({name}) => name === "Season plan")
    store.run(() => ({type: "enter", cells: [{at: {sheet: plan, row: 2, col: 4}, content: "2026-04-27"}]}))
    const found = findingsIn(store.workbook, checkWords(store.workbook)).map(
      ({rule, sentence}) => `${rule}: ${sentence}`,
    )
    expect(found).toContain("no yield record: 1 planting has no yield record: Brook End")
    // The plan that was agreed before it was there does not have it, and should not.
    expect(
      found.filter((one) => one.startsWith("missing planting") && !one.includes("not on Agreed plan;")),
    ).toEqual([])
  })

  it("goes again with one step back", () => {
    while (store.getState().undoable.length > 1) store.undo()
    store.undo()
    expect(store.getState().document).toBe(farm)
  })
})

it("needs a name that no other planting has", () => {
  expect(plantingRefused(farm, " ")).toBe("A planting needs a name")
  expect(plantingRefused(farm, "long acre")).toBe(
    "There is a planting called Long Acre already: choose another name",
  )
  expect(createStore(farm).canRun(addPlanting({...brook, name: "Long Acre"}, null))).toBe(false)
})

const {document: blank} = readFile(
  readFileSync(new URL("../../workbooks/blank.json", import.meta.url), "utf8"),
) as {document: Document}

it("begins a blank workbook", () => {
  const store = createStore(blank)
  store.run(addPlanting(brook, null))
  expect(planOf(store.workbook)!.rows.map(({planting}) => planting)).toEqual(["Brook End"])
})

it("has a close by its first day of cutting alone, whose year is the season where none is typed", () => {
  const store = createStore(blank)
  store.run(addPlanting({...brook, opens: "2027-04-20"}, null))
  const [row] = planOf(store.workbook)!.rows
  // Planted in 2020: eight weeks at age 7, from 20 April to 14 June.
  expect([row!.age, row!.closes, row!.heldBy]).toEqual([7, dayOf("2027-06-14"), "weeks for its age"])
  expect(store.getState().undoable).toHaveLength(1)
  // Its week is not told as long as no day is typed on which the plan stands.
  const week = blank.sheets.findIndex(({name}) => name === "This week")
  expect([1, 2, 3].map((col) => store.workbook.valueAt({sheet: week, row: 0, col}))).toEqual(["", "", ""])
  const second = createStore(store.getState().document)
  second.run(addPlanting({name: "North Gate", planted: null, area: 2, opens: "2028-04-20"}, null))
  expect(valueNamed(second.workbook, "Season")).toBe(2027)
})

it("may be typed or pasted among the plantings, and then gets its rows where it has none, in one step", () => {
  expect(plantingsWithoutRows(farm)).toEqual([])
  expect(createStore(farm).canRun(addMissingRows)).toBe(false)
  const store = createStore(blank)
  const plantings = blank.sheets.findIndex(({name}) => name === "Plantings")
  const typed = ["Brook End", "", "North Gate"].map((content, row) => ({
    at: {sheet: plantings, row, col: 0},
    content: content || null,
  }))
  store.run(() => ({type: "enter", cells: typed}))
  const plan = blank.sheets.findIndex(({name}) => name === "Season plan")
  store.run(() => ({type: "enter", cells: [{at: {sheet: plan, row: 0, col: 0}, content: "brook end"}]}))
  const before = store.getState().document
  expect(plantingsWithoutRows(before)).toEqual(["Brook End", "North Gate"])

  store.run(addMissingRows)
  const {document} = store.getState()
  expect(plantingsWithoutRows(document)).toEqual([])
  expect(document.sheets[plan]!.rows.map(([name]) => name)).toEqual(["brook end", "North Gate"])
  const crowns = document.sheets.find(({name}) => name === "Crowns")!
  expect(crowns.rows.map(([name]) => name)).toEqual(["Brook End", "North Gate"])
  const ahead = document.sheets.find(({name}) => name === "Stands ahead")!
  expect(ahead.rows.map((row) => row.slice(0, 2))).toEqual([
    ["Brook End", "Brook End"],
    ["North Gate", "North Gate"],
  ])
  expect(store.getState().undoable.at(-1)!.name).toBe("rows of 2 plantings")
  store.undo()
  expect(store.getState().document).toBe(before)
})
