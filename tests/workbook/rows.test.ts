import {describe, expect, it} from "vitest"
import type {Content, Document} from "../../src/workbook/document"
import {blankRow, withRowsInserted, withRowsRemoved} from "../../src/workbook/rows"
import {formulaIn} from "../../src/workbook/cells"
import {column, documentOf, sheet} from "./documents"

const CHANGED = 0

/** A sheet of eight numbers whose rows move, and another sheet with one formula that looks at it. */
const looking = (formula: string): Document =>
  documentOf(
    sheet(
      "Root samples",
      ["Number", "Formula"],
      Array.from({length: 8}, (_, i) => [i + 1, null]),
    ),
    sheet("Plan", ["Out"], [[formula]]),
  )

const lookOf = ({sheets}: Document): Content | undefined => sheets[1]!.rows[0]![0]

/** What a formula on the other sheet says after rows were put in before row 4, and after row 4 and 5 were taken out. */
const inserted = (formula: string) => lookOf(withRowsInserted(looking(formula), CHANGED, 3, 2))
const removed = (formula: string) => lookOf(withRowsRemoved(looking(formula), CHANGED, 3, 2))

describe("rows put in before row 4 leave", () => {
  it.each([
    ["a cell above", "='Root samples'!A3", "='Root samples'!A3"],
    ["the cell there", "='Root samples'!A4", "='Root samples'!A6"],
    ["a fixed cell below", "='Root samples'!$A$8", "='Root samples'!$A$10"],
    ["a range that ends above", "=SUM('Root samples'!A1:A3)", "=SUM('Root samples'!A1:A3)"],
    ["a range across", "=SUM('Root samples'!A1:A4)", "=SUM('Root samples'!A1:A6)"],
    ["a range below", "=SUM('Root samples'!A4:A5)", "=SUM('Root samples'!A6:A7)"],
    ["a range of one cell", "=SUM('Root samples'!A4:A4)", "=SUM('Root samples'!A6:A6)"],
    ["a range written upside down", "=SUM('Root samples'!A6:A2)", "=SUM('Root samples'!A8:A2)"],
    ["whole columns", "=SUM('Root samples'!A:B)", "=SUM('Root samples'!A:B)"],
    ["whole rows across", "=SUM('Root samples'!3:$4)", "=SUM('Root samples'!3:$6)"],
    ["another sheet", "=Plan!A4+A4+SUM(4:4)", "=Plan!A4+A4+SUM(4:4)"],
    ["a text that looks like a cell", "=\"'Root samples'!A4\"", "=\"'Root samples'!A4\""],
    ["a sheet in another case", "='root SAMPLES'!A4", "='root SAMPLES'!A6"],
  ])("%s as it should be", (_, formula, after) => {
    expect(inserted(formula)).toBe(after)
  })
})

describe("rows 4 and 5 taken out leave", () => {
  it.each([
    ["a cell above", "='Root samples'!A3", "='Root samples'!A3"],
    ["a cell that is gone", "='Root samples'!A5+1", "=#REF!+1"],
    ["a fixed cell below", "='Root samples'!$A$6", "='Root samples'!$A$4"],
    ["a range that begins in them", "=SUM('Root samples'!A5:A7)", "=SUM('Root samples'!A4:A5)"],
    ["a range that ends in them", "=SUM('Root samples'!A2:A4)", "=SUM('Root samples'!A2:A3)"],
    ["a range across", "=SUM('Root samples'!$A$1:B8)", "=SUM('Root samples'!$A$1:B6)"],
    ["a sheet named twice", "=SUM('Root samples'!A1:'Root samples'!A5)", "=SUM('Root samples'!A1:A3)"],
    ["a range that is gone", "=SUM('Root samples'!A4:A5)", "=SUM(#REF!)"],
    ["a range of one cell that is gone", "=SUM('Root samples'!A4:A4)", "=SUM(#REF!)"],
    ["a range written upside down", "=SUM('Root samples'!A7:A5)", "=SUM('Root samples'!A5:A4)"],
    ["an upside down range that is gone", "=SUM('Root samples'!A5:A4)", "=SUM(#REF!)"],
    ["whole columns", "=SUM('Root samples'!A:B)", "=SUM('Root samples'!A:B)"],
    ["whole rows across", "=SUM('Root samples'!$3:4)", "=SUM('Root samples'!$3:3)"],
    ["whole rows that are gone", "=SUM('Root samples'!4:5)", "=SUM(#REF!)"],
    ["another sheet", "=Plan!A4+A5", "=Plan!A4+A5"],
  ])("%s as it should be", (_, formula, after) => {
    expect(removed(formula)).toBe(after)
  })
})

/** A running total, each row's double, and each row with the row above it. */
const running = (...rows: Content[][]) =>
  documentOf(
    sheet(
      "Pickings",
      [
        "Crop",
        column("So far", {formula: "=SUM(A1:A$1)"}),
        column("Twice", {formula: "=A1*2"}),
        column("Share", {formula: "=A1/SUM(A:A)", total: "=SUM(A1:A3)"}),
      ],
      rows,
    ),
  )
const three = running([4, "=", "=", "="], [5, "=", "=", "="], [6, "=", 9, "="])
const rowsOf = ({sheets}: Document) => sheets[0]!.rows
const written = (document: Document, row: number, col: number) => formulaIn(document, {sheet: 0, row, col})

describe("a sheet with column formulas", () => {
  it("gives new rows the formulas of their columns and keeps the others on them", () => {
    const next = withRowsInserted(three, 0, 1, 1)
    expect(rowsOf(next)).toEqual([
      [4, "=", "=", "="],
      [null, "=", "=", "="],
      [5, "=", "=", "="],
      [6, "=", 9, "="],
    ])
    expect(next.sheets[0]!.columns.map(({formula}) => formula)).toEqual(
      three.sheets[0]!.columns.map(({formula}) => formula),
    )
    expect(written(next, 3, 1)).toBe("=SUM(A4:A$1)")
  })

  it("writes out the formulas that a new first row would make different", () => {
    const next = withRowsInserted(three, 0, 0, 1)
    // What stood in row 1 stands in row 2: the fixed start of the running total moves along for every row.
    expect([1, 2, 3].map((row) => written(next, row, 1))).toEqual([
      "=SUM(A2:A$2)",
      "=SUM(A3:A$2)",
      "=SUM(A4:A$2)",
    ])
    expect([1, 2].map((row) => written(next, row, 2))).toEqual(["=A2*2", "=A3*2"])
  })

  it("keeps the rows on their column when the first of them alone changes", () => {
    const steps = documentOf(
      sheet(
        "Pickings",
        ["Crop", column("Step", {formula: "=A2-A1"})],
        [4, 5, 6, 7].map((crop) => [crop, "="]),
      ),
    )
    const next = withRowsInserted(steps, 0, 1, 1)
    expect(rowsOf(next).map((row) => row[1])).toEqual(["=A3-A1", "=", "=", "=", "="])
    expect([1, 2, 4].map((row) => written(next, row, 1))).toEqual(["=A3-A2", "=A4-A3", "=A6-A5"])
  })

  it("keeps its formula where as many rows leave it as follow it", () => {
    const two = documentOf(
      sheet(
        "Pickings",
        ["Crop", column("Step", {formula: "=A2-A1"})],
        [
          [4, "="],
          [5, "="],
        ],
      ),
    )
    const next = withRowsInserted(two, 0, 1, 1)
    expect(next.sheets[0]!.columns[1]!.formula).toBe("=A2-A1")
    expect(rowsOf(next).map((row) => row[1])).toEqual(["=A3-A1", "=", "="])
  })

  it("follows the rows that stay, not those that go", () => {
    const document = documentOf(
      sheet("Plan", [column("Area", {formula: "=Beds!A1"})], [["="], ["="], ["="], ["="]]),
      sheet("Beds", ["Area"], [[1], [2], [3], [4]]),
    )
    const next = withRowsRemoved(document, 0, 0, 3)
    expect(rowsOf(next)).toEqual([["="]])
    expect(written(next, 0, 0)).toBe("=Beds!A4")
  })

  it("stretches the total over rows put in, and shrinks it over rows taken out", () => {
    const total = ({sheets}: Document) => sheets[0]!.columns[3]!.total
    expect(total(withRowsInserted(three, 0, 1, 4))).toBe("=SUM(A1:A7)")
    expect(total(withRowsRemoved(three, 0, 0, 2))).toBe("=SUM(A1:A1)")
  })

  it("keeps a typed-over cell and its row", () => {
    expect(rowsOf(withRowsRemoved(three, 0, 0, 1))[1]).toEqual([6, "=", 9, "="])
  })

  it("says #REF! in the rows that lost a cell, while the column keeps a formula that works", () => {
    const document = documentOf(
      sheet(
        "Pickings",
        ["Crop", column("Change", {formula: "=A2-$A$1"})],
        [
          [4, "="],
          [5, "="],
          [6, "="],
        ],
      ),
    )
    const next = withRowsRemoved(document, 0, 0, 1)
    expect([0, 1].map((row) => written(next, row, 1))).toEqual(["=A2-#REF!", "=A3-#REF!"])
    expect(next.sheets[0]!.columns[1]!.formula).not.toContain("#REF!")
  })

  it("leaves the given document alone, and keeps what does not change", () => {
    const document = {...three, sheets: [...three.sheets, sheet("Other", ["Word"], [["a"]])]}
    const before = structuredClone(document)
    const next = withRowsRemoved(withRowsInserted(document, 0, 1, 1), 0, 1, 1)
    expect(document).toEqual(before)
    expect(next).toEqual(before)
    expect(next.sheets[1]).toBe(document.sheets[1])
    expect(next.sheets[0]!.rows[0]).toBe(document.sheets[0]!.rows[0])
  })

  it("can lose its last row", () => {
    expect(rowsOf(withRowsRemoved(three, 0, 0, 3))).toEqual([])
  })

  it("has blank rows with the formulas of its columns alone", () => {
    expect(blankRow(three.sheets[0]!.columns)).toEqual([null, "=", "=", "="])
  })
})
