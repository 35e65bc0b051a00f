import {describe, expect, it} from "vitest"
import {sheetsBehind, sheetsBehindFormula} from "../../src/workbook/sheetsBehind"
import type {Content, Document} from "../../src/workbook/document"
import {revised} from "../../src/workbook/revised"
import {cellAt, column, documentOf, sheet} from "./documents"

/** Plan rests on Input by a column, on Sums by a total, and through Input on Deep; Names holds names; nothing rests on Aside. */
const farm = documentOf(
  sheet("Plan", [column("A", {formula: "=Input!A1", total: "=SUM(Sums!A:A)"})], [["="]]),
  sheet("Input", ["A"], [["='Deep down'!A1"]]),
  sheet("Sums", ["A"], [[1]]),
  sheet("Deep down", ["A"], [[2]]),
  sheet("Aside", ["A", "B"], [["=Plan!A1", "=Rate*2"]]),
  sheet("Names", ["Name", "Value"], [["Rate", "=Sums!A1"]], {names: true}),
)
const names = (sheets: ReadonlySet<number>) => [...sheets].map((sheet) => farm.sheets[sheet]!.name).sort()

describe("the sheets behind a sheet", () => {
  it("are those its formulas and totals point to, and so on", () => {
    expect(names(sheetsBehind(farm, 0))).toEqual(["Deep down", "Input", "Plan", "Sums"])
  })
  it("are of the names only what those that are used rest on", () => {
    const twoNames = documentOf(
      sheet("Plan", [column("A", {formula: "=Rate"})], [["="]]),
      sheet("Sums", ["A"], [[1]]),
      sheet("Aside", ["A"], [[1]]),
      sheet(
        "Names",
        ["Name", "Value"],
        [
          ["Rate", "=Other"],
          ["Other", "=Sums!A1"],
          ["Third", "=Aside!A1"],
        ],
        {names: true},
      ),
    )
    expect([...sheetsBehind(twoNames, 0)].toSorted()).toEqual([0, 1, 3])
    expect([...sheetsBehind(twoNames, 3)].toSorted()).toEqual([1, 2, 3]) // looked at itself, all of it counts
  })
  it("are those that name values too, where a name is used", () => {
    expect(names(sheetsBehind(farm, 4))).toEqual(["Aside", "Deep down", "Input", "Names", "Plan", "Sums"])
  })
  it("are the sheet alone where nothing points anywhere", () => {
    expect(names(sheetsBehind(farm, 2))).toEqual(["Sums"])
  })
  it("are those of the rows as an edit left them, of which most are what they were", () => {
    const others = ["Input", "Sums"].map((name) => sheet(name, ["A"], [[1]]))
    const began = documentOf(
      sheet(
        "Plan",
        ["A", "B"],
        [
          ["=Input!A1", 1],
          [2, 3],
        ],
      ),
      ...others,
    )
    const enter = (document: Document, text: string, content: Content) =>
      revised(document, {type: "enter", cells: [{at: cellAt(text), content}]})
    const second = enter(began, "B2", "=Sums!A1")
    const found = [began, second, enter(second, "A1", null), enter(second, "B2", null), began]
    expect(found.map((document) => [...sheetsBehind(document, 0)].toSorted())).toEqual([
      [0, 1],
      [0, 1, 2],
      [0, 2],
      [0, 1],
      [0, 1],
    ])
    expect(second.sheets[0]!.rows[0]).toBe(began.sheets[0]!.rows[0]) // its formulas are read once
  })
  it("of a formula are its own sheet and those it points to", () => {
    expect(names(sheetsBehindFormula(farm, "=INPUT!A1+1", 2))).toEqual(["Deep down", "Input", "Sums"])
    expect(names(sheetsBehindFormula(farm, "=Rate", 3))).toEqual(["Deep down", "Names", "Sums"])
  })
})
