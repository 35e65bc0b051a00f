import {describe, expect, it} from "vitest"
import {
  insertingRefused,
  removingRefused,
  withColumnsInserted,
  withColumnsRemoved,
} from "../../src/workbook/columns"
import type {Content, Document} from "../../src/workbook/document"
import {formulaIn} from "../../src/workbook/cells"
import {Workbook} from "../../src/workbook/workbook"
import {below, crowded, engineFormulas, formulasOf, plainCopy, seeds, session} from "./sessions"
import {cellAt, column, documentOf, seeded, sheet} from "./documents"

const CHANGED = 0

/** A sheet of eight numbers in one row, and another sheet with one formula that looks at it. */
const looking = (formula: string): Document =>
  documentOf(
    sheet("Root samples", [..."ABCDEFGH"], [[1, 2, 3, 4, 5, 6, 7, 8]]),
    sheet("Plan", ["Out"], [[formula]]),
  )

const lookOf = ({sheets}: Document): Content | undefined => sheets[1]!.rows[0]![0]

/** What a formula on the other sheet says after two columns were put in before D, and after D and E were taken out. */
const inserted = (formula: string) => lookOf(withColumnsInserted(looking(formula), CHANGED, 3, 2))
const removed = (formula: string) => lookOf(withColumnsRemoved(looking(formula), CHANGED, 3, 2))

describe("columns put in before column D leave", () => {
  it.each([
    ["a cell to the left", "='Root samples'!C1", "='Root samples'!C1"],
    ["the cell there", "='Root samples'!D1", "='Root samples'!F1"],
    ["a fixed cell to the right", "='Root samples'!$H$1", "='Root samples'!$J$1"],
    ["a range that ends before", "=SUM('Root samples'!A1:C1)", "=SUM('Root samples'!A1:C1)"],
    ["a range across", "=SUM('Root samples'!A1:D1)", "=SUM('Root samples'!A1:F1)"],
    ["a range of one cell", "=SUM('Root samples'!D1:D1)", "=SUM('Root samples'!F1:F1)"],
    ["a range written backwards", "=SUM('Root samples'!F1:B1)", "=SUM('Root samples'!H1:B1)"],
    ["whole columns across", "=SUM('Root samples'!A:$D)", "=SUM('Root samples'!A:$F)"],
    ["whole rows", "=SUM('Root samples'!1:2)", "=SUM('Root samples'!1:2)"],
    ["a column beyond Z", "='Root samples'!Z1", "='Root samples'!AB1"],
    ["another sheet", "=Plan!D1+D1+SUM(D:D)", "=Plan!D1+D1+SUM(D:D)"],
    ["a text that looks like a cell", "=\"'Root samples'!D1\"", "=\"'Root samples'!D1\""],
    ["a sheet in another case", "='root SAMPLES'!D1", "='root SAMPLES'!F1"],
  ])("%s as it should be", (_, formula, after) => {
    expect(inserted(formula)).toBe(after)
  })
})

describe("columns D and E taken out leave", () => {
  it.each([
    ["a cell to the left", "='Root samples'!C1", "='Root samples'!C1"],
    ["a cell that is gone", "='Root samples'!E1+1", "=#REF!+1"],
    ["a fixed cell to the right", "='Root samples'!$F$1", "='Root samples'!$D$1"],
    ["a range that begins in them", "=SUM('Root samples'!E1:G1)", "=SUM('Root samples'!D1:E1)"],
    ["a range that ends in them", "=SUM('Root samples'!B1:D1)", "=SUM('Root samples'!B1:C1)"],
    ["a range across", "=SUM('Root samples'!$A$1:H2)", "=SUM('Root samples'!$A$1:F2)"],
    ["a range that is gone", "=SUM('Root samples'!D1:E1)", "=SUM(#REF!)"],
    ["whole columns across", "=SUM('Root samples'!A:$E)", "=SUM('Root samples'!A:$C)"],
    ["whole columns that are gone", "=SUM('Root samples'!D:D)", "=SUM(#REF!)"],
    ["whole rows", "=SUM('Root samples'!1:2)", "=SUM('Root samples'!1:2)"],
    ["another sheet", "=Plan!D1+E1", "=Plan!D1+E1"],
  ])("%s as it should be", (_, formula, after) => {
    expect(removed(formula)).toBe(after)
  })
})

const pickings = documentOf(
  sheet(
    "Pickings",
    [
      "Crop",
      column("Price", {part: "value"}),
      column("Income", {formula: "=A1*B1", total: "=SUM(C1:C2)/SUM(B:B)"}),
      column("So far", {formula: "=SUM(C$1:C1)"}),
    ],
    [[4, 2, "=", "="], [5, 3, "=", "="], [6]],
  ),
)
const [plan] = pickings.sheets

describe("a sheet with column formulas", () => {
  it("moves the formulas of its columns and totals, and its rows follow on", () => {
    const {columns, rows} = withColumnsInserted(pickings, 0, 1, 1).sheets[0]!
    expect(columns.map(({heading, formula, total}) => [heading, formula, total])).toEqual([
      ["Crop", undefined, undefined],
      ["New column", undefined, undefined],
      ["Price", undefined, undefined],
      ["Income", "=A1*C1", "=SUM(D1:D2)/SUM(C:C)"],
      ["So far", "=SUM(D$1:D1)", undefined],
    ])
    expect(rows).toEqual([[4, null, 2, "=", "="], [5, null, 3, "=", "="], [6]])
    expect(columns[2]!.part).toBe("value")
  })

  it("says #REF! in a column formula whose column went, for every row that follows it", () => {
    const next = withColumnsRemoved(pickings, 0, 1, 1)
    const {columns, rows} = next.sheets[0]!
    expect(columns.map(({formula}) => formula)).toEqual([undefined, "=A1*#REF!", "=SUM(B$1:B1)"])
    expect(columns[1]!.total).toBe("=SUM(B1:B2)/SUM(#REF!)")
    expect(rows).toEqual([[4, "=", "="], [5, "=", "="], [6]])
    expect(formulaIn(next, cellAt("B2"))).toBe("=A2*#REF!")
  })

  it("keeps the numbers it works out", () => {
    const workbook = new Workbook(pickings)
    workbook.revise({type: "insertColumns", sheet: 0, before: 0, count: 2})
    // 4 × 2 and 5 × 3, then their sum.
    expect(["E1", "E2", "F2"].map((at) => workbook.valueAt(cellAt(at)))).toEqual([8, 15, 23])
  })
})

describe("new columns", () => {
  it("are typed, with headings that no other column has", () => {
    const once = withColumnsInserted(pickings, 0, 4, 1)
    const {columns, rows} = withColumnsInserted(once, 0, 0, 2).sheets[0]!
    expect(columns.map(({heading}) => heading)).toEqual([
      "New column 2",
      "New column 3",
      "Crop",
      "Price",
      "Income",
      "So far",
      "New column",
    ])
    expect(columns[0]).toEqual({heading: "New column 2", kind: "typed"})
    expect(rows[2]).toEqual([null, null, 6])
  })

  it("put in and taken out again leave the document what it was, and the other sheets untouched", () => {
    const document = {...pickings, sheets: [...pickings.sheets, sheet("Other", ["Word"], [["a"]])]}
    const before = structuredClone(document)
    const next = withColumnsRemoved(withColumnsInserted(document, 0, 1, 2), 0, 1, 2)
    expect(document).toEqual(before)
    expect(next).toEqual(before)
    expect(next.sheets[1]).toBe(document.sheets[1])
  })
})

describe("what cannot be done to columns", () => {
  const values = sheet("Values", ["Name", "Value", "Note"], [["Rate", 2]], {names: true})

  it("is said in a sentence", () => {
    expect([
      insertingRefused(values, 1),
      removingRefused(values, 1, 1),
      removingRefused(plan!, 0, 4),
    ]).toEqual([
      "Columns A and B of Values hold the names and their values, so none can stand before or between them: choose a column further right",
      "Columns A and B of Values hold the names and their values, so they have to stay: choose a column further right",
      "Pickings would have no column left, and a sheet needs one: take the whole sheet out",
    ])
    expect([insertingRefused(values, 2), removingRefused(values, 2, 1), insertingRefused(plan!, 0)]).toEqual([
      null,
      null,
      null,
    ])
    expect(removingRefused(plan!, 1, 3)).toBeNull()
  })

  it("throws when it is tried, and changes nothing", () => {
    const workbook = new Workbook(pickings)
    expect(() => workbook.revise({type: "removeColumns", sheet: 0, first: 0, count: 4})).toThrow(
      "no column left",
    )
    expect(workbook.document).toBe(pickings)
  })
})

describe("columns that move", () => {
  it.each(seeds(20))("leave every formula as the engine itself rewrites it (seed %i)", (seed) => {
    const random = seeded(2000 + seed)
    const document = crowded(random)
    const engine = plainCopy(document)
    const index = below(random, document.sheets.length)
    const {name, columns} = document.sheets[index]!
    const col = below(random, columns.length)
    const count = Math.min(1 + below(random, 2), columns.length - col)
    const id = engine.getSheetId(name)!
    const inserts = random() < 0.5 || count === columns.length
    if (inserts) engine.addColumns(id, [col, count])
    else engine.removeColumns(id, [col, count])
    const next = (inserts ? withColumnsInserted : withColumnsRemoved)(document, index, col, count)
    const expected = engineFormulas(engine, next)
    expect(expected.size).toBeGreaterThan(10)
    expect([...formulasOf(next)].sort()).toEqual([...expected].sort())
  })

  it.each(seeds(10))("keep the values true through a session (seed %i)", (seed) => {
    const {found, wanted} = session(100 + seed, ["insertColumns", "removeColumns"])
    expect(found).toEqual(wanted)
  })
})
