import {describe, expect, it} from "vitest"
import {reachTo} from "../../src/editor/block"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {summaryOf} from "../../src/editor/summary"
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

describe("the summary of what is chosen", () => {
  it.each([
    ["A1", "A1", ""],
    ["A1", "A4", "4 of 4 filled; 4 numbers: sum 10, mean 2.5, 1 to 4"],
    ["A4", "A5", "1 of 2 filled; 1 number: sum 4, mean 4, 4 to 4"],
    ["B3", "B4", "1 of 2 filled"],
    ["D1", "D2", "1 of 2 filled; 1 date: 31 Jan 2026 to 31 Jan 2026"],
  ])("of %s:%s is %j", (from, to, summary) => {
    expect(summaryOf(at(from, to))).toBe(summary)
  })
  it("has no sum over different units", () => {
    const units = documentOf(
      sheet(
        "S",
        [column("A", {unit: "ha", format: 1}), column("B", {unit: "kg", format: 0})],
        [
          [1.25, 3],
          [2, 5],
        ],
      ),
    )
    const store = createStore(units)
    store.turn(reachTo(1, 1))
    expect(summaryOf(store)).toBe("4 of 4 filled; 4 numbers in different units")
    store.turn(choose(cellAt("A1")))
    store.turn(reachTo(1, 0))
    expect(summaryOf(store)).toBe(
      "2 of 2 filled; 2 numbers: sum 3.3 ha, mean 1.63 ha, 1.3 ha to 2.0 ha".replaceAll(" ha", "\u00a0ha"),
    )
  })
})
