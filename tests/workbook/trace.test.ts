import {describe, expect, it} from "vitest"
import type {Content} from "../../src/workbook/document"
import {errorBegan, keyOfRow, kindAt, originOf, usedOf} from "../../src/workbook/trace"
import {isFault} from "../../src/workbook/value"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, column, documentOf, sheet} from "./documents"

/** Three plantings; ten root samples of Long Acre, two of them blank, two of Well Field and one of a field 12; two named values. */
const farm = documentOf(
  sheet(
    "Plan",
    [
      "Planting",
      column("Area", {kind: "carried over", unit: "ha", rule: {usual: [0.5, 20]}}),
      column("Opens", {kind: "typed"}),
      column("Crop", {formula: "=B1*2"}),
      column("Spears", {kind: "measured", rule: {usual: [3, 30]}}),
    ],
    [
      ["Long Acre", 6.4, "2026-04-18", "=", 12],
      ["Well Field", 40, "=C1+7", 9, null],
      ["Sand Piece", null, null, "=", 31],
      [null, null, null, "=", null],
    ],
  ),
  sheet(
    "Root samples",
    ["Planting", column("Reading", {kind: "measured"}), column("Sugar", {formula: "=B1*18"})],
    [
      ...[22, 23, 24, null, 25, 26, 27, null, 28, 29].map((reading) => ["Long Acre", reading, "="]),
      ["Well Field", 21, "="],
      ["Well Field", 20, "="],
      [12, 19, "="],
    ],
  ),
  sheet(
    "Named values",
    ["Name", "Value"],
    [
      ["Rate", 0.95],
      ["Base_temperature", 7.1],
    ],
    {names: true},
  ),
  sheet("Out", ["Planting", "Formula"], []),
  sheet("Weather", ["Day", "Air"], []),
)

/** The origin of a formula of the sheet Out, in a row about Long Acre unless another key is given. */
function originOfFormula(formula: string, key: Content = "Long Acre", row = 0) {
  const before = Array.from({length: row}, () => [null, null])
  const out = {...farm.sheets[3]!, rows: [...before, [key, formula]]}
  const document = {...farm, sheets: farm.sheets.with(3, out)}
  return originOf(new Workbook(document), {sheet: 3, row, col: 1})
}

const inputOf = (formula: string, key?: Content, row?: number) =>
  originOfFormula(formula, key, row).inputs[0]!
const rowsOf = (formula: string, key?: Content, row?: number) =>
  inputOf(formula, key, row).cells.map((cell) => cell.row + 1)

describe("kindAt", () => {
  it.each([
    ["A1", "typed", "a word in a typed column"],
    ["C1", "typed", "a date"],
    ["C2", "worked out", "a formula in a typed column"],
    ["B1", "carried over", "a value of a column that is carried over"],
    ["B2", "questioned", "a value outside what is usual"],
    ["B3", "carried over", "a blank of such a column"],
    ["D1", "worked out", "a cell on the formula of its column"],
    ["D2", "typed over", "a number over that formula"],
    ["E1", "measured", "a measured value"],
    ["E2", "missing", "a blank where a measurement belongs"],
    ["E3", "questioned", "an unusual measurement"],
    ["E4", "measured", "a blank in a row that holds nothing"],
    ["D9", "worked out", "the column of a formula below the last row"],
    ["Z1", "typed", "a cell outside the sheet"],
  ])("of %s is “%s”: %s", (at, kind) => {
    expect(kindAt(farm, cellAt(at))).toBe(kind)
  })

  it("keeps the edges of what is usual as usual", () => {
    const usual = column("Area", {rule: {usual: [0.5, 20]}})
    const document = documentOf(sheet("Plan", [usual], [[0.5], [20], [0.49], [20.1]]))
    expect([0, 1, 2, 3].map((row) => kindAt(document, {sheet: 0, row, col: 0}))).toEqual([
      "typed",
      "typed",
      "questioned",
      "questioned",
    ])
  })
})

describe("keyOfRow", () => {
  it.each([
    ["A1", "Long Acre"],
    ["E2", "Well Field"],
    ["A4", "row 4"],
    ["A12", "row 12"],
  ])("of the row of %s is %s", (at, key) => {
    expect(keyOfRow(farm, cellAt(at))).toBe(key)
  })

  it("is the row's number where the first column is worked out", () => {
    const document = documentOf(sheet("Plan", ["Planting"], [[2026], ["=A1"]]))
    expect([0, 1].map((row) => keyOfRow(document, {sheet: 0, row}))).toEqual(["2026", "row 2"])
  })
})

describe("originOf", () => {
  it("gives the formula of the column and puts it in the words of its own row", () => {
    const origin = originOf(new Workbook(farm), cellAt("D1"))
    expect(origin).toMatchObject({kind: "worked out", formula: "=B1*2", inWords: "‹Area›*2", functions: []})
    expect(origin.inputs).toEqual([{text: "B1", words: "Area", cells: [cellAt("B1")]}])
  })

  it("has no formula, words or inputs for what was typed", () => {
    expect(originOf(new Workbook(farm), cellAt("A1"))).toEqual({
      at: cellAt("A1"),
      kind: "typed",
      formula: null,
      inWords: null,
      inputs: [],
      functions: [],
    })
  })

  it("names the functions that have sources of their own, each once", () => {
    const {functions} = originOfFormula("=SUM(spear.heat(20,9,7),ABS(-1),spear.heat(21,9,7))")
    expect(functions.map(({name}) => name)).toEqual(["SPEAR.HEAT"])
  })

  it("names the standard functions that were added", () => {
    const {functions} = originOfFormula("=SUM(int(2.5),FORECAST(1,{1,2},{1,2}))")
    expect(functions.map(({name, section}) => [name, section])).toEqual([
      ["FORECAST", "6.18.28"],
      ["INT", "6.17.2"],
    ])
  })

  it.each([
    ["=Plan!B1", "Area, Plan"],
    ["=Plan!B2", "Area of Well Field, Plan"],
    ["=plan!$B$2", "Area of Well Field, Plan"],
    ["=Plan!B4", "Area of row 4, Plan"],
    ["=Plan!B1:B3", "Area, Plan"],
    ["=Plan!A2:B2", "Planting and Area of Well Field, Plan"],
    ["=Plan!A1:C2", "Planting to Opens, Plan"],
    ["=Plan!A1:D2", "Planting to Crop, Plan"],
    ["=Plan!2:2", "Planting to Spears of Well Field, Plan"],
    ["='Root samples'!B:B", "Reading, Root samples, rows 1 to 10"],
    ["='Root samples'!$C:B", "Reading and Sugar, Root samples"],
    ["=Weather!B:B", "Air, Weather"],
    ["=Plan!Z1", "column Z, Plan"],
    ["=A1", "Planting"],
    ["=A5", "Planting of row 5"],
    ["=Rate", "Rate"],
    ["=base_temperature", "base temperature"],
  ])("puts the input of %s in words", (formula, words) => {
    expect(inputOf(formula).words).toBe(words)
  })

  it("puts a whole formula in words, its texts and numbers as they stand", () => {
    const formula = "=IF(A1=\"Rate\",'Root samples'!B11*Rate,Nothing+Gone!A1)"
    expect(originOfFormula(formula).inWords).toBe(
      'IF(‹Planting›="Rate",‹Reading of Well Field, Root samples›*‹Rate›,Nothing+Gone!A1)',
    )
  })

  it("tells its own row from another of its sheet", () => {
    expect(originOf(new Workbook(farm), cellAt("C2")).inWords).toBe("‹Opens of Long Acre›+7")
  })

  it("lists each input once", () => {
    expect(originOfFormula("=Rate+A1*Rate+A1").inputs.map(({text}) => text)).toEqual(["Rate", "A1"])
  })

  it("points a name at the cell of its value", () => {
    expect(inputOf("=Base_temperature").cells).toEqual([cellAt("2!B2")])
  })
})

describe("the cells of a whole column on another sheet", () => {
  it("are those of this row's planting", () => {
    expect(rowsOf("=SUM('Root samples'!B:B)")).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])
    expect(rowsOf("=SUM('Root samples'!B:B)", "Well Field")).toEqual([11, 12])
    expect(rowsOf("=SUM('Root samples'!B:B)", "well field")).toEqual([11, 12])
    expect(rowsOf("=SUM('Root samples'!B:B)", 12)).toEqual([13])
  })

  it("are all of them where the sheet has no row of the planting", () => {
    expect(rowsOf("=SUM('Root samples'!B:B)", "Sand Piece")).toHaveLength(13)
  })

  it("are all of them where this row has no planting", () => {
    // Row 4 of Plan has none either: no planting is not a planting that both have.
    expect(rowsOf("=SUM(Plan!B:B)", null, 3)).toEqual([1, 2, 3, 4])
  })

  it("are not narrowed when the formula says which rows", () => {
    expect(rowsOf("=SUM('Root samples'!B2:B12)", "Well Field")).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])
    expect(rowsOf("=SUM('Root samples'!B12:B10)", "Well Field")).toEqual([10, 11, 12])
  })

  it("are all on the sheet of the formula itself, and end with its last row", () => {
    const document = documentOf(
      sheet(
        "Plan",
        ["Planting", "Area", "Sum"],
        [
          ["A", 1, "=SUM(B:B)"],
          ["B", 2],
          ["A", 3],
        ],
      ),
    )
    const [input] = originOf(new Workbook(document), cellAt("C1")).inputs
    expect(input!.cells.map(({row}) => row)).toEqual([0, 1, 2])
    expect(rowsOf("=SUM('Root samples'!B11:B99)")).toEqual([11, 12, 13])
    expect(rowsOf("=SUM(Weather!B:B)")).toEqual([])
  })
})

describe("usedOf", () => {
  const workbook = new Workbook(farm)
  const used = (formula: string, key: string) =>
    usedOf(inputOf(formula, key).cells, (at) => workbook.valueAt(at))

  it("counts what a range holds, and what is blank", () => {
    expect(used("=AVERAGE('Root samples'!B:B)", "Long Acre")).toBe("8 of 10 used, 2 blank")
    expect(used("=AVERAGE('Root samples'!B:B)", "Well Field")).toBe("2 of 2 used")
  })

  it("takes a zero for a measurement", () => {
    expect(usedOf([cellAt("A1"), cellAt("A2")], ({row}) => (row === 0 ? 0 : null))).toBe(
      "1 of 2 used, 1 blank",
    )
  })

  it("takes a formula that gives no word for blank", () => {
    expect(usedOf([cellAt("A1"), cellAt("A2")], ({row}) => (row === 0 ? 412 : ""))).toBe(
      "1 of 2 used, 1 blank",
    )
  })
})

describe("errorBegan", () => {
  const began = (samples: Content, reserve: Content, plan: Content) => {
    const workbook = new Workbook(
      documentOf(
        sheet("Plan", ["Planting", "Close"], [["Long Acre", plan]]),
        sheet("Reserve", ["Planting", "Left"], [["Long Acre", reserve]]),
        sheet(
          "Root samples",
          ["Planting", "Reading"],
          [
            ["Long Acre", samples],
            [null, null],
          ],
        ),
      ),
    )
    const value = workbook.valueAt(cellAt("B1"))
    return {at: errorBegan(value), code: isFault(value) ? value.code : value}
  }

  it("goes back through two sheets to the cell at fault", () => {
    expect(began("=1/0", "='Root samples'!B1*2", "=Reserve!B1+7")).toEqual({
      at: cellAt("2!B1"),
      code: "#DIV/0!",
    })
    expect(began("=1/0", "=SUM('Root samples'!B1:B2)", "=IF(Reserve!B1>1,1,2)").at).toEqual(cellAt("2!B1"))
  })

  it("is the formula that cannot use a value, not the value", () => {
    expect(began("wet", "='Root samples'!B1*2", "=Reserve!B1+7")).toEqual({
      at: cellAt("1!B1"),
      code: "#VALUE!",
    })
  })

  it("is the cell of a function of ours that refused", () => {
    expect(began(-80, "=SPEAR.HEAT(20,'Root samples'!B1,7)", "=Reserve!B1").at).toEqual(cellAt("1!B1"))
  })

  it("is nowhere for a value", () => {
    expect(began(1, "='Root samples'!B1*2", "=Reserve!B1+7")).toEqual({at: null, code: 9})
  })
})
