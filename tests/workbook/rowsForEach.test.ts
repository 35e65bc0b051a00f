import {expect, it} from "vitest"
import {revised} from "../../src/workbook/revised"
import {column, documentOf, sheet} from "./documents"

const farm = documentOf(
  sheet("Loans", [column("Loan", {part: "loan"}), "Sum"], [["Tractor", 900]]),
  sheet("Years", [column("Place", {formula: "=ROW()"}), "Note"], [["=", "first"]], {
    rowsFor: {each: "loan", count: 3},
  }),
)
const enter = (row: number, content: string | null, col = 0) =>
  ({type: "enter", cells: [{at: {sheet: 0, row, col}, content}]}) as const
const yearsAfter = (document: typeof farm) => document.sheets[1]!.rows

it("gives a sheet its rows for each row that is added to another, at its end and with its formulas", () => {
  const two = revised(farm, enter(1, "Cooler"))
  expect(yearsAfter(two)).toEqual([["=", "first"], ...Array.from({length: 5}, () => ["=", null])])
  expect(yearsAfter(revised(two, {type: "several", edits: [enter(3, "Shed")], name: ""}))).toHaveLength(12)
})
it("takes none away, and counts no row without a name", () => {
  const two = revised(farm, enter(1, "Cooler"))
  expect(yearsAfter(revised(two, enter(1, null)))).toHaveLength(6)
  expect(yearsAfter(revised(farm, {type: "insertRows", sheet: 0, before: 1, count: 4}))).toHaveLength(3)
})
it("leaves the sheet as it is while the other one stays as it was", () => {
  expect(yearsAfter(revised(farm, {type: "removeRows", sheet: 1, first: 0, count: 1}))).toEqual([])
})
