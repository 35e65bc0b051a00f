import {describe, expect, it} from "vitest"
import {isSameCell, type CellAddress, type Content, type Document} from "../../src/workbook/document"
import {readsElsewhere} from "../../src/workbook/readsElsewhere"
import {isFault, type Value} from "../../src/workbook/value"
import {Workbook} from "../../src/workbook/workbook"
import {column, documentOf, seeded, sheet} from "./documents"
import {anyEdit, anyOrder, below, farm, seeds} from "./sessions"

/** Row 3 comes first, then row 1, then row 2; the fourth row stays. */
const ORDER = [2, 0, 1, 3]

const plantings = (columns: Parameters<typeof sheet>[1], content: Content, ...more: Document["sheets"]) =>
  documentOf(
    sheet(
      "Plantings",
      ["Area", ...columns],
      [1, 2, 4, 8].map((area) => [area, content]),
    ),
    ...more,
  )
const other = sheet("Other", ["Number"], [[1], [2], [3], [4]])

describe("the formula of a column", () => {
  it.each([
    ["its own row", "=A1*2+SUM(A1:A1)", []],
    ["whole columns", "=A1/SUM(A:A)", []],
    ["all rows by their first and last", "=A1/SUM(A$1:A$4)", []],
    ["one cell for all", "=A1*$A$3", []],
    ["one cell of another sheet", "=A1*Other!$A$3", []],
    // Rows 1 and 2 stay together, so that row 1 still reads row 2.
    ["the row below", "=A2", [1, 2]],
    // All four rows are the same rows afterwards.
    ["the rows so far", "=SUM(A$1:A1)", [0, 1, 2]],
    ["the rows to come", "=SUM(A1:A$4)", [0, 1, 2]],
    ["the row of the same number elsewhere", "=Other!A1", [0, 1, 2]],
    ["two rows for all", "=SUM(A$2:A$3)", [0, 1, 2, 3]],
  ])("that reads %s", (_, formula, rows) => {
    const document = plantings([column("Out", {formula})], "=", other)
    expect(readsElsewhere(document, 0, ORDER)).toEqual(rows.map((row) => ({sheet: 0, row, col: 1})))
  })
})

describe("any other formula", () => {
  const found = (formula: string) =>
    readsElsewhere(plantings(["Free"], null, sheet("Plan", ["Out"], [[formula]]), other), 0, ORDER)
  it.each([
    ["=Plantings!A3+Plantings!$A$1", false],
    ["=SUM(Plantings!A1:A3)+SUM(Plantings!A:A)+SUM(Plantings!A1:A9)", false],
    ["=SUM(Plantings!A2:A1)+SUM(Plantings!1:2)", false],
    ["=SUM(Other!A2:A3)+SUM(A2:A3)", false],
    ["=SUM(plantings!A2:A3)", true],
    ["=1+SUM(Plantings!2:3)", true],
    ["=SUM(Plantings!$A$4:A9)", false],
    ["=SUM(Plantings!A3:A9)", true],
  ])("%s: %s", (formula, isFound) => {
    expect(found(formula)).toEqual(isFound ? [{sheet: 1, row: 0, col: 0}] : [])
  })

  it("is found in the total of a column too, which has no row", () => {
    const document = plantings(
      [column("Out", {total: "=SUM(A2:A3)"}), column("All", {total: "=SUM(A1:A4)"})],
      null,
    )
    expect(readsElsewhere(document, 0, ORDER)).toEqual([{sheet: 0, row: null, col: 1}])
  })

  it("is found in each row of a column elsewhere that reads a part of the rows", () => {
    const document = plantings(
      [],
      null,
      sheet("Plan", [column("Two", {formula: "=SUM(Plantings!A1:A2)"})], [["="], ["="], [1]]),
    )
    expect(readsElsewhere(document, 0, ORDER)).toEqual([{sheet: 1, row: 1, col: 0}])
  })

  it("is found by a name that a twin would take", () => {
    const values = (...names: string[]) =>
      documentOf(
        sheet(
          "Values",
          ["Name", "Value"],
          names.map((name, i) => [name, i]),
          {names: true},
        ),
        sheet("Plan", ["Out"], [["=rate*2"], ["=Fee"], ['="Rate"&Values!A1']]),
      )
    expect(readsElsewhere(values("Rate", "Fee", "RATE"), 0, [2, 0, 1])).toEqual([{sheet: 1, row: 0, col: 0}])
    expect(readsElsewhere(values("Rate", "Fee", "Price"), 0, [2, 0, 1])).toEqual([])
  })
})

/** What a value is to a reader: a sum in another order may differ in its last digit. */
const told = (value: Value) =>
  isFault(value) ? value.code : typeof value === "number" ? value.toPrecision(9) : value

describe("what is not found, and rests on nothing found", () => {
  it.each(seeds(30))("has the value it had, at its new place (seed %i)", (seed) => {
    const random = seeded(4000 + seed)
    const workbook = new Workbook(farm)
    for (let i = 0; i < 6; i++) workbook.revise(anyEdit(random, workbook.document, ["enter"]))
    const {document} = workbook
    const sheet = below(random, document.sheets.length)
    const order = anyOrder(random, document.sheets[sheet]!.rows.length)

    const found = readsElsewhere(document, sheet, order).filter((at): at is CellAddress => at.row !== null)
    const resting: CellAddress[] = [...found]
    for (const at of resting)
      for (const user of workbook.usersOf(at))
        if (!resting.some((one) => isSameCell(one, user))) resting.push(user)
    const cells = document.sheets.flatMap(({rows, columns}, sheet) =>
      rows.flatMap((_, row) => [...columns.keys()].map((col) => ({sheet, row, col}))),
    )
    const kept = cells.filter((at) => !resting.some((one) => isSameCell(one, at)))
    const before = kept.map((at) => told(workbook.valueAt(at)))

    workbook.revise({type: "moveRows", sheet, order})
    const home = (at: CellAddress) => (at.sheet === sheet ? {...at, row: order.indexOf(at.row)} : at)
    expect(kept.map((at) => told(workbook.valueAt(home(at))))).toEqual(before)
    expect(kept.length).toBeGreaterThan(10)
  })
})
