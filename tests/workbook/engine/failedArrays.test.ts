import {expect, it} from "vitest"
import {Workbook} from "../../../src/workbook/workbook"
import {cellAt, documentOf, sheet} from "../documents"
import {valuesOf} from "../sessions"

it.each([
  ["=SORT(B1:B3)", /^#CYCLE!/],
  ["=FILTER(A1:A3,B1:B3>0)", /^#N\/A/],
  ["=COUNT(B1:B3)", 0],
])("a formula over cells that another failed to fill can be typed: %s", (formula, gives) => {
  const workbook = new Workbook(
    documentOf(sheet("Plan", ["A", "B", "C"], [[1, "=TRANSPOSE(B1:D1)", null], [2, null, null], [3, null, null]])), // prettier-ignore
  )
  workbook.revise({type: "enter", cells: [{at: cellAt("C2"), content: formula}]})
  const values = valuesOf(workbook)
  expect(values["Plan!C2"]).toEqual(typeof gives === "number" ? gives : expect.stringMatching(gives))
  expect(valuesOf(new Workbook(workbook.document))).toEqual(values)
})
