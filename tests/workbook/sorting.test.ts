import {HyperFormula} from "hyperformula"
import {describe, expect, it, vi} from "vitest"
import type {Content, Document} from "../../src/workbook/document"
import {sortOrder, withRowsMoved} from "../../src/workbook/sorting"
import type {Value} from "../../src/workbook/value"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, column, documentOf, sheet} from "./documents"
import {seeds, session} from "./sessions"

describe("the order of rows by their values", () => {
  const fault = {code: "#N/A", reason: "", began: null}
  const by = (values: readonly Value[], descending = false) =>
    sortOrder(
      values.map((value) => [value]),
      [{col: 0, descending}],
    ).map((row) => values[row])

  it("has numbers before words, truth values, blanks and errors, whichever way it goes", () => {
    const mixed = [fault, null, "b", true, 2, "", "a", false, 10]
    expect(by(mixed)).toEqual([2, 10, "a", "b", false, true, null, "", fault])
    expect(by(mixed, true)).toEqual([10, 2, "b", "a", true, false, null, "", fault])
  })

  it("has words by the alphabet and by the numbers in them, in whatever case", () => {
    expect(by(["Row 10", "row 9", "Élan", "Row 1", "elm", "eland"])).toEqual([
      "Élan",
      "eland",
      "elm",
      "Row 1",
      "row 9",
      "Row 10",
    ])
  })

  it("leaves rows that are equal in their order, both ways", () => {
    const values = [
      ["a", 1],
      ["A", 2],
      ["b", 3],
      ["a", 4],
    ]
    expect(sortOrder(values, [{col: 0, descending: false}])).toEqual([0, 1, 3, 2])
    expect(sortOrder(values, [{col: 0, descending: true}])).toEqual([2, 0, 1, 3])
  })

  it("goes by the second key where the first is equal, and takes a value that is missing as blank", () => {
    const values = [["b", 1], ["a", 1], ["a", 2], ["b"]]
    const keys = [
      {col: 0, descending: false},
      {col: 1, descending: true},
    ]
    expect(sortOrder(values, keys)).toEqual([2, 1, 0, 3])
    expect(sortOrder(values, [])).toEqual([0, 1, 2, 3])
  })
})

/** Row 3 comes first, then row 1, then row 2; a fourth row stays. */
const ORDER = [2, 0, 1, 3]
const plantings = (more: Document["sheets"] = [], ...free: Content[]) =>
  documentOf(
    sheet(
      "Plantings",
      [
        "Planting",
        "Area",
        column("Twice", {formula: "=B1*2"}),
        column("Share", {formula: "=B1/SUM(B:B)"}),
        column("To the first", {formula: "=B1-$B$1"}),
        column("So far", {formula: "=SUM(B$1:B1)", total: "=B1+SUM(B1:B4)+SUM(B1:B2)"}),
        "Free",
      ],
      [
        ["Long Acre", 1, "=", "=", "=", "=", free[0] ?? null],
        ["Well Field", 2, "=", "=", "=", "=", free[1] ?? null],
        ["Sand Piece", 4, 99, "=", "=", "=", free[2] ?? null],
        ["Top Corner", 8, "=", "="],
      ],
    ),
    ...more,
  )
const sorted = (document: Document) => withRowsMoved(document, 0, ORDER)

describe("rows in another order", () => {
  it("go with what they hold, and follow the formulas of their columns still", () => {
    expect(sorted(plantings()).sheets[0]!.rows).toEqual([
      ["Sand Piece", 4, 99, "=", "=", "=", null],
      ["Long Acre", 1, "=", "=", "=", "=", null],
      ["Well Field", 2, "=", "=", "=", "=", null],
      ["Top Corner", 8, "=", "="],
    ])
  })

  it("take what a column formula points at in one fixed cell along, and leave the rest of it", () => {
    expect(sorted(plantings()).sheets[0]!.columns.map(({formula}) => formula)).toEqual([
      undefined,
      undefined,
      "=B1*2",
      "=B1/SUM(B:B)",
      "=B1-$B$2",
      "=SUM(B$1:B1)",
      undefined,
    ])
  })

  it("are worked out at their new places", () => {
    const workbook = new Workbook(plantings())
    workbook.revise({type: "moveRows", sheet: 0, order: ORDER})
    const columnOf = (letter: string) =>
      [1, 2, 3, 4].map((row) => workbook.valueAt(cellAt(`${letter}${row}`)))
    // Areas are now 4, 1, 2, 8, of 15 in all; the first planting's is 1.
    expect(columnOf("C")).toEqual([99, 2, 4, 16])
    expect(columnOf("D")).toEqual([4, 1, 2, 8].map((area) => expect.closeTo(area / 15, 12)))
    expect(columnOf("E")).toEqual([3, 0, 1, null])
    expect(columnOf("F")).toEqual([4, 5, 7, null])
  })

  it.each([
    ["a cell of its own row", "=B1+C1", "=B2+C2"],
    ["a range in its own row", "=SUM(B1:D1)", "=SUM(B2:D2)"],
    ["a cell of another row", "=B3+$B$2", "=B1+$B$3"],
    ["a cell below the last row", "=B9", "=B9"],
    ["all moved rows", "=SUM(B1:B3)", "=SUM(B1:B3)"],
    ["all rows and those below", "=SUM(B1:B90)", "=SUM(B1:B90)"],
    ["whole columns", "=SUM(B:B)", "=SUM(B:B)"],
    ["two rows that stay together", "=SUM(B1:$B$2)", "=SUM(B2:$B$3)"],
    ["two rows upside down", "=SUM(B2:B1)", "=SUM(B3:B2)"],
    ["whole rows that stay together", "=SUM(1:2)", "=SUM(2:3)"],
    ["two rows that are torn apart", "=SUM(B2:B3)", "=SUM(B2:B3)"],
    ["moved rows and one that stays", "=SUM(B2:B4)", "=SUM(B2:B4)"],
    ["a row and those below the last", "=SUM(B4:B9)", "=SUM(B4:B9)"],
    ["the same rows elsewhere", "=Other!A1+SUM(Other!A1:A2)", "=Other!A1+SUM(Other!A1:A2)"],
  ])("are followed by a formula in row 1 that points at %s", (_, formula, after) => {
    const other = sheet("Other", ["Number"], [[1], [2]])
    expect(sorted(plantings([other], formula)).sheets[0]!.rows[1]![6]).toBe(after)
  })

  it("are followed by formulas of other sheets, each row of a column its own", () => {
    const beds = sheet(
      "Beds",
      [column("Area", {formula: "=Plantings!B1*2", total: "=Plantings!B1"}), "Sum"],
      [["=", "=SUM(Plantings!A3:C3)"], ["="], ["="], ["="]],
    )
    const workbook = new Workbook(plantings([beds]))
    const before = ["1!A1", "1!A2", "1!A3", "1!A4", "1!B1"].map((at) => workbook.valueAt(cellAt(at)))
    const next = workbook.revise({type: "moveRows", sheet: 0, order: ORDER})
    expect(["1!A1", "1!A2", "1!A3", "1!A4", "1!B1"].map((at) => workbook.formulaAt(cellAt(at)))).toEqual([
      "=Plantings!B2*2",
      "=Plantings!B3*2",
      "=Plantings!B1*2",
      "=Plantings!B4*2",
      "=SUM(Plantings!A1:C1)",
    ])
    expect(before).toEqual([2, 4, 8, 16, 103])
    expect(["1!A1", "1!A2", "1!A3", "1!A4", "1!B1"].map((at) => workbook.valueAt(cellAt(at)))).toEqual(before)
    expect(next.sheets[1]!.columns[0]!.total).toBe("=Plantings!B2")
  })

  it("rewrite the total of a column like any formula", () => {
    expect(sorted(plantings()).sheets[0]!.columns[5]!.total).toBe("=B2+SUM(B1:B4)+SUM(B2:B3)")
  })

  it("take the values that they name along", () => {
    const values = sheet(
      "Values",
      ["Name", "Value"],
      [
        ["Rate", 2],
        ["Fee", 5],
      ],
      {names: true},
    )
    const workbook = new Workbook(documentOf(sheet("Plan", ["Out"], [["=Rate*10+Fee"]]), values))
    workbook.revise({type: "moveRows", sheet: 1, order: [1, 0]})
    expect(workbook.valueAt(cellAt("A1"))).toBe(25)
    workbook.revise({type: "enter", cells: [{at: cellAt("1!B2"), content: 3}]})
    expect(workbook.valueAt(cellAt("A1"))).toBe(35)
  })

  it("put back in their old order are what they were, with the sheets that do not look at them untouched", () => {
    const document = plantings([sheet("Other", ["Word"], [["a"]])], "=SUM(B1:B2)", "=B3", "=SUM(B1:B3)")
    const next = sorted(document)
    expect(next.sheets[1]).toBe(document.sheets[1])
    expect(withRowsMoved(next, 0, [1, 2, 0, 3])).toEqual(document)
  })

  it.each([[[0, 1]], [[0, 1, 2, 2]], [[0, 1, 2, 4]], [[1, 2, 3, 4]]])(
    "are all of the rows, each once: not %j",
    (order) => {
      expect(() => withRowsMoved(plantings(), 0, order)).toThrow(
        "This is no order of the 4 rows of Plantings",
      )
    },
  )

  it("are worked out without building the engine anew, undone too", () => {
    const document = plantings([sheet("Beds", [column("Area", {formula: "=Plantings!B1"})], [["="], ["="]])])
    const workbook = new Workbook(document)
    const build = vi.spyOn(HyperFormula, "buildFromSheets")
    workbook.revise({type: "moveRows", sheet: 0, order: ORDER}, 0)
    workbook.show(document, 0)
    expect(workbook.valueAt(cellAt("1!A2"))).toBe(2)
    expect(build).not.toHaveBeenCalled()
    build.mockRestore()
  })

  it("take along where an error began, and undone put it back", () => {
    const document = plantings([sheet("Beds", ["Out"], [["=Plantings!G3+1"]])], null, null, "=1/0")
    const workbook = new Workbook(document)
    workbook.revise({type: "moveRows", sheet: 0, order: ORDER})
    expect(workbook.valueAt(cellAt("1!A1"))).toMatchObject({code: "#DIV/0!", began: cellAt("G1")})
    workbook.show(document)
    expect(workbook.valueAt(cellAt("1!A1"))).toMatchObject({code: "#DIV/0!", began: cellAt("G3")})
  })

  it("change only what reads something else at its new place, or reads by the order", () => {
    const prices = sheet("Prices", ["Of", "Price"], [["=SUM(Plantings!B:B)", "=INDEX(Plantings!B1:B4,1)"]])
    const workbook = new Workbook(plantings([prices]))
    workbook.revise({type: "moveRows", sheet: 0, order: ORDER})
    // So far, by row of now: 4, 1, 2 of areas where 1, 3 and 7 of rows 1 to 3 had been; the first area was 1.
    expect(workbook.changes).toEqual([
      {at: cellAt("F1"), was: 7, now: 4},
      {at: cellAt("F2"), was: 1, now: 5},
      {at: cellAt("F3"), was: 3, now: 7},
      {at: cellAt("1!B1"), was: 1, now: 4},
    ])
  })

  it.each(seeds(10))("keep the values true through a session (seed %i)", (seed) => {
    const {found, wanted} = session(300 + seed, ["moveRows"])
    expect(found).toEqual(wanted)
  })
})
