import {describe, expect, it} from "vitest"
import type {Content} from "../../../src/workbook/document"
import type {Edit} from "../../../src/workbook/edit"
import {Workbook} from "../../../src/workbook/workbook"
import {cellAt, documentOf, sheet} from "../documents"
import {farm, valuesOf} from "../sessions"

describe("a formula that lies very deep in itself", () => {
  const ways = [`=${"(".repeat(4000)}1${")".repeat(4000)}`, `=${"-".repeat(8000)}1`, `=1${"+1".repeat(5000)}`]

  it("is an error in its cell, and no trouble to the others", () => {
    const workbook = new Workbook(
      documentOf(sheet("Plan", ["A"], [...ways.map((formula) => [formula]), ["=1+1"]])),
    )
    const values = [0, 1, 2, 3].map((row) => workbook.valueAt({sheet: 0, row, col: 0}))
    expect(values.slice(0, 3).map((value) => value !== null && typeof value === "object")).toEqual([
      true,
      true,
      true,
    ])
    expect(values[3]).toBe(2)
    for (const formula of ways) {
      expect(workbook.normalized(formula)).toBeNull()
      expect(workbook.evaluate(formula, 0)).toMatchObject({code: "#ERROR!"})
    }
  })

  it("is worked out as long as it is not too deep or long", () => {
    const deepest = `=${"(".repeat(64)}1${")".repeat(64)}${"+1".repeat(499)}`
    const workbook = new Workbook(documentOf(sheet("Plan", ["A"], [[deepest]])))
    expect(workbook.valueAt({sheet: 0, row: 0, col: 0})).toBe(500)
  })
})

describe("a formula that gives a whole range", () => {
  const opened = documentOf(
    sheet(
      "Plan",
      ["A", "B"],
      [
        [1, null],
        [2, "=A2*10"],
        [3, "=A3*10"],
      ],
    ),
  )

  it("is the same error once typed as in the saved workbook, and leaves the formulas below it alone", () => {
    const workbook = new Workbook(opened)
    workbook.revise({type: "enter", cells: [{at: cellAt("B1"), content: "=A1:A3"}]})
    const now = valuesOf(workbook)
    expect(now).toEqual(valuesOf(new Workbook(workbook.document)))
    expect(now).toMatchObject({"Plan!B1": expect.stringMatching(/^#VALUE!/), "Plan!B2": 20, "Plan!B3": 30})
  })
})

describe("an array in braces", () => {
  // Given as such, the engine (3.5.0) throws "Value of the formula cell is not computed", or never follows A1.
  it.each(["=SUM({A1,2})", "=SUM({B1,2})", "=SUM({TRUE,2})"])(
    "cannot hold a cell or a name: %s",
    (formula) => {
      const workbook = new Workbook(documentOf(sheet("Plan", ["A", "B", "C"], [[1, "=A1*2", formula]])))
      expect(workbook.normalized(formula)).toBeNull()
      for (const value of [workbook.valueAt(cellAt("C1")), workbook.evaluate(formula, 0)])
        expect(value).toMatchObject({code: "#ERROR!"})
    },
  )
})

describe("whole rows", () => {
  it("may overlap, on opening as on an edit", () => {
    // The smallest document found on which hyperformula 3.5.0 throws when it is given whole rows as such.
    const rows = Array.from({length: 7}, (): Content[] => Array(7).fill(null))
    rows[2]![1] = "=SUM(Beds!2:3)"
    rows[3]![6] = "=SUM(Plan!6:8)"
    rows[5]![6] = "=Beds!D3"
    rows[6]![1] = "=SUM(Beds!2:$2)"
    rows[6]![5] = "=SUM(Beds!2:3)+SUM(Values!$A$5:A$5)"
    const sheets = [sheet("Plan", [..."ABCDEFG"], rows), sheet("Beds", ["A"], []), sheet("Values", ["A"], [])]
    const workbook = new Workbook(documentOf(...sheets))
    workbook.revise({type: "enter", cells: [{at: cellAt("1!A3"), content: 4}]})
    expect(["B3", "G4", "B7", "F7"].map((at) => workbook.valueAt(cellAt(at)))).toEqual([4, 4, 0, 4])
  })

  it("reach to the last column of their own sheet", () => {
    const beds = sheet(
      "Beds",
      ["A", "B", "C"],
      [
        [1, 2, 4],
        [8, 16, 32],
      ],
    )
    const workbook = new Workbook(
      documentOf(sheet("Plan", ["A"], [["=SUM(Beds!1:1)"], ["=SUM(beds!$1:2)"]]), beds),
    )
    expect(workbook.valueAt(cellAt("A1"))).toBe(7)
    expect(workbook.valueAt(cellAt("A2"))).toBe(63)
    expect(workbook.evaluate("=SUM(2:2)", 1)).toBe(56)
  })
})

describe("an edit that the engine cannot take", () => {
  it("changes nothing", () => {
    const workbook = new Workbook(farm)
    const before = valuesOf(workbook)
    const edit: Edit = {type: "enter", cells: [{at: cellAt("G1"), content: '=REPT("a",1000000000)'}]}
    expect(() => workbook.revise(edit)).toThrow("Invalid string length")
    expect(workbook.document).toBe(farm)
    expect(valuesOf(workbook)).toEqual(before)
    workbook.revise({type: "enter", cells: [{at: cellAt("B1"), content: 9}]})
    expect(workbook.valueAt(cellAt("C1"))).toBe(9 * 2 + 0.95)
  })
})
