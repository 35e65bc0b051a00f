import {expect, it} from "vitest"
import {inputsBehind} from "../../src/editor/inputsBehind"
import {addressText} from "../../src/workbook/cells"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

/** The result rests on a price and a mean; the mean on three samples and, in its weight, on a whole table of twenty. */
const farm = documentOf(
  sheet(
    "Plan",
    ["A", "B", column("C", {formula: "=A1*B1+Rate"}), "D"],
    [[2.5, "=AVERAGE(Samples!A1:A3)+SUM(Table!A:A)", "=", "words"]],
  ),
  sheet("Samples", ["A"], [[400], [410], [420]]),
  sheet(
    "Table",
    ["A"],
    Array.from({length: 20}, (_, i) => [i]),
  ),
  sheet("Names", ["Name", "Value"], [["Rate", 3]], {names: true}),
)

it("finds the typed numbers that a cell rests on, the nearest first, but no cells of a table", () => {
  const workbook = new Workbook(farm)
  const found = inputsBehind(workbook, cellAt("C1")).map((at) => addressText(farm, at, 0))
  expect(found).toEqual(["A1", "Names!B1", "Samples!A1", "Samples!A2", "Samples!A3"])
  expect(inputsBehind(workbook, cellAt("C1"), 2)).toHaveLength(2)
  expect(inputsBehind(workbook, cellAt("D1"))).toEqual([])
})

it("finds what the rows of a long worked-out column rest on", () => {
  // Twenty years of a budget: each the crop of its year by price less cost; the cost of planting stands in the first alone.
  const years = Array.from({length: 20}, (_, i) => [i === 0 ? 9800 : null, "="])
  const budget = documentOf(
    sheet("Answer", ["A"], [["=SUM(Budget!B:B)"]]),
    sheet("Budget", ["A", column("B", {formula: "=100*Price-SUM(A1)"})], years),
    sheet("Names", ["Name", "Value"], [["Price", 3]], {names: true}),
  )
  const found = inputsBehind(new Workbook(budget), cellAt("A1")).map((at) => addressText(budget, at, 0))
  expect(found.toSorted()).toEqual(["Budget!A1", "Names!B1"])
})
