import {describe, expect, it} from "vitest"
import {reachTo} from "../../src/editor/block"
import {filled as filledSaying} from "../../src/editor/blockActs"
import {
  fillDown,
  fillRight,
  fillSeries,
  seriesBegins,
  type Filler,
  type Step,
} from "../../src/editor/commands/fill"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const farm = documentOf(
  sheet(
    "Plan",
    ["A", "B", column("C", {formula: "=A1*2"}), "D"],
    [
      [1, "=A1+$A$1", "=", "2026-01-31"],
      [2, null, "=", null],
      [3, "x", "=", null],
      [4, null, "=", null],
    ],
  ),
)
function at(from: string, to: string) {
  const store = createStore(farm)
  store.turn(choose(cellAt(from)))
  store.turn(reachTo(cellAt(to).row, cellAt(to).col))
  return store
}
const filled = (from: string, to: string, filler: Filler) => {
  const store = at(from, to)
  store.run((state) => filler(state).edit)
  return store.getState().document.sheets[0]!.rows
}
const columnOf = (rows: readonly (readonly unknown[])[], col: number) => rows.map((row) => row[col])

it("continues numbers by a step in the unit that is shown", () => {
  const store = createStore({
    ...documentOf(sheet("Plan", [column("Gap", {unit: "mm", format: 0})], [[25.4], [null], [null]])),
    region: {measures: "US"},
  })
  store.turn(choose(cellAt("A1")))
  store.turn(reachTo(2, 0))
  store.run((state) => fillSeries(0.5, "number", "rows")(state).edit)
  // From 1 in by half inches: 1.5 and 2 in of 25.4 mm.
  expect(columnOf(store.getState().document.sheets[0]!.rows, 0)).toEqual([25.4, 38.1, 50.8])
})

describe("filling", () => {
  it("copies the first chosen row down, formulas moved along, worked-out cells left", () => {
    const rows = filled("B1", "C3", fillDown)
    expect(columnOf(rows, 1)).toEqual(["=A1+$A$1", "=A2+$A$1", "=A3+$A$1", null])
    expect(columnOf(rows, 2)).toEqual(["=", "=", "=", "="])
  })
  it("copies the row above into a single row", () => {
    expect(columnOf(filled("A2", "B2", fillDown), 0)).toEqual([1, 1, 3, 4])
  })
  it("has nothing above the first row", () => {
    expect(at("A1", "B1").canRun((state) => fillDown(state).edit)).toBe(false)
  })
  it("copies the first chosen column to the right", () => {
    expect(filled("A1", "D2", fillRight).slice(0, 2)).toEqual([
      [1, 1, "=", 1],
      [2, 2, "=", 2],
    ])
  })
})

describe("a series", () => {
  it.each<[number, Step, string[]]>([
    [1, "days", ["2026-01-31", "2026-02-01", "2026-02-02", "2026-02-03"]],
    [2, "weeks", ["2026-01-31", "2026-02-14", "2026-02-28", "2026-03-14"]],
    [1, "months", ["2026-01-31", "2026-02-28", "2026-03-31", "2026-04-30"]],
    [1, "years", ["2026-01-31", "2027-01-31", "2028-01-31", "2029-01-31"]],
    // 31 January 2026 is a Saturday.
    [1, "working days", ["2026-01-31", "2026-02-02", "2026-02-03", "2026-02-04"]],
    [-1, "working days", ["2026-01-31", "2026-01-30", "2026-01-29", "2026-01-28"]],
    [-1, "months", ["2026-01-31", "2025-12-31", "2025-11-30", "2025-10-31"]],
  ])("of dates goes on by %d %s", (by, step, days) => {
    expect(columnOf(filled("D1", "D4", fillSeries(by, step, "rows")), 3)).toEqual(days)
  })
  it.each<[number, Step]>([
    [1e9, "days"],
    [1e7, "months"],
    [1e300, "years"],
    [-40_000, "working days"], // 153 years back
    [1e15, "working days"],
  ])("of dates puts nothing in beyond the years of the calendar: %d %s", (by, step) => {
    expect(fillSeries(by, step, "rows")(at("D1", "D4").getState()).edit).toBeNull()
  })
  it("keeps 29 February in leap years", () => {
    const store = at("D1", "D4")
    store.run(() => ({type: "enter", cells: [{at: cellAt("D1"), content: "2024-02-29"}]}))
    store.run((state) => fillSeries(2, "years", "rows")(state).edit)
    expect(columnOf(store.getState().document.sheets[0]!.rows, 3)).toEqual([
      "2024-02-29",
      "2026-02-28",
      "2028-02-29",
      "2030-02-28",
    ])
  })
  it("of numbers goes on by a step, without a trace of binary fractions", () => {
    expect(columnOf(filled("A1", "A4", fillSeries(0.1, "number", "rows")), 0)).toEqual([1, 1.1, 1.2, 1.3])
  })
  it("of numbers ends where there is no such number any more", () => {
    // Beside 1.7E+308 there is no twofold: the greatest number is 1.8E+308.
    expect(columnOf(filled("A1", "A4", fillSeries(1.7e308, "number", "rows")), 0).slice(0, 2)).toEqual([
      1, 1.7e308,
    ])
    expect(columnOf(filled("A1", "A4", fillSeries(1.7e308, "number", "rows")), 0)).not.toContain("Infinity")
  })
  it("goes over as many cells as asked for, past the last row, but not past the last column", () => {
    const weekly = (cells: number) => {
      const store = at("D1", "D1")
      filledSaying(store, fillSeries(7, "weeks", "rows", cells))
      return store
    }
    const store = weekly(6)
    const {rows} = store.getState().document.sheets[0]!
    // 31 January, and every seven weeks: 21 March, 9 May, 27 June, 15 August, 3 October; rows 5 and 6 are new.
    const sevenWeeks = ["2026-01-31", "2026-03-21", "2026-05-09", "2026-06-27", "2026-08-15", "2026-10-03"]
    expect(columnOf(rows, 3)).toEqual(sevenWeeks)
    expect(columnOf(rows, 2)).toEqual(["=", "=", "=", "=", "=", "="])
    store.undo()
    expect(store.getState().document).toBe(farm)
    const across = at("A1", "A1")
    filledSaying(across, fillSeries(1, "number", "cols", 9))
    expect(across.getState().document.sheets[0]!.rows[0]).toEqual([1, 2, "=", 4])
  })
  it("goes along a row, passing a worked-out cell", () => {
    expect(filled("A1", "D1", fillSeries(1, "number", "cols"))[0]).toEqual([1, 2, "=", 4])
  })
  it("begins with a number or a date", () => {
    expect(
      [at("A1", "A2"), at("D1", "D2"), at("B3", "B4")].map((store) => seriesBegins(store.getState())),
    ).toEqual(["number", "date", null])
  })
})

it("says which cells the rule of their column left out, and why", () => {
  const store = createStore(
    documentOf(
      sheet(
        "Plan",
        ["A", column("Length", {unit: "cm", rule: {most: 30}})],
        [
          [10, 20],
          [90, null],
          [40, null],
        ],
      ),
    ),
  )
  store.turn(choose(cellAt("A1")))
  store.turn(reachTo(2, 1))
  filledSaying(store, fillRight)
  const {document, said} = store.getState()
  expect(columnOf(document.sheets[0]!.rows, 1)).toEqual([10, null, null])
  expect(said).toBe(
    "1 cell filled. 2 of 3 cells cannot be filled. B2: Length 90 cm is above 30 cm (did you mean 9 cm?); B3: Length 40 cm is above 30 cm (did you mean 4 cm?). Nothing else changed.",
  )

  store.turn(choose(cellAt("A2")))
  store.turn(reachTo(1, 1))
  filledSaying(store, fillRight)
  expect(store.getState().said).toBe(
    "Nothing was filled: 1 of 1 cell cannot be filled. B2: Length 90 cm is above 30 cm (did you mean 9 cm?).",
  )
})
