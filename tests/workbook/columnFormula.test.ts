import {describe, expect, it} from "vitest"
import {contentAt, isTypedOver, type Content, type Document} from "../../src/workbook/document"
import type {Edit} from "../../src/workbook/edit"
import {formulaIn} from "../../src/workbook/cells"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, column, documentOf, sheet} from "./documents"

describe("the formula of a column", () => {
  const plan = (...rows: Content[][]) =>
    documentOf(sheet("Plan", ["Area", column("Twice", {formula: "=A1*2"}), "Note"], rows))
  const columnB = (document: Document) =>
    document.sheets[0]!.rows.map((_, row) => formulaIn(document, {sheet: 0, row, col: 1}))

  it("stands in every row that follows it, moved down to the row", () => {
    const workbook = new Workbook(plan([1, "="], [2, "="], [3, 9]))
    expect(columnB(workbook.document)).toEqual(["=A1*2", "=A2*2", null])
    expect([0, 1, 2].map((row) => workbook.valueAt({sheet: 0, row, col: 1}))).toEqual([2, 4, 9])
  })

  it("comes with a row typed below the last, and with the rows between", () => {
    const next = new Workbook(plan([1, "="])).revise({type: "enter", cells: [{at: cellAt("A3"), content: 5}]})
    expect(next.sheets[0]!.rows).toEqual([
      [1, "="],
      [null, "=", null],
      [5, "=", null],
    ])
  })

  it("comes with inserted rows", () => {
    const next = new Workbook(plan([1, "="], [2, "="])).revise({
      type: "insertRows",
      sheet: 0,
      before: 1,
      count: 2,
    })
    expect(next.sheets[0]!.rows.slice(1, 3)).toEqual([
      [null, "=", null],
      [null, "=", null],
    ])
    expect(columnB(next)).toEqual(["=A1*2", "=A2*2", "=A3*2", "=A4*2"])
  })

  it.each([
    ["insertRows", {before: 0}],
    ["insertRows", {before: 2}],
    ["removeRows", {first: 0}],
    ["removeRows", {first: 1}],
  ] as const)("is still followed by every row after %s %o", (type, where) => {
    const document = plan([1, "="], [2, "="], [3, "="])
    const edit = {type, sheet: 0, count: 1, ...where} as Edit
    const next = new Workbook(document).revise(edit)
    expect(next.sheets[0]!.columns).toEqual(document.sheets[0]!.columns)
    expect(next.sheets[0]!.rows.map((row) => row[1])).toEqual(next.sheets[0]!.rows.map(() => "="))
  })

  it("is written out in a row that points elsewhere after rows moved", () => {
    // Each row reads the row below; after the insertion the first still reads what it read, now two rows down.
    const document = documentOf(
      sheet(
        "Plan",
        ["Area", column("Next", {formula: "=A2"})],
        [
          [1, "="],
          [2, "="],
          [3, "="],
          [4, "="],
        ],
      ),
    )
    const workbook = new Workbook(document)
    workbook.revise({type: "insertRows", sheet: 0, before: 3, count: 1})
    expect(formulaIn(workbook.document, cellAt("B3"))).toBe("=A5")
    expect(isTypedOver(workbook.document, cellAt("B3"))).toBe(true)
    // The new row reads the row below it too, and the last row finds nothing there.
    expect(["B1", "B2", "B3", "B4", "B5"].map((at) => workbook.valueAt(cellAt(at)))).toEqual([
      2,
      3,
      4,
      4,
      null,
    ])
  })

  it.each([
    ["=", false],
    [9, true],
    ["=A1*3", true],
    [null, true],
    ["word", true],
  ])("is typed over by %j: %s", (content, typedOver) => {
    expect(isTypedOver(plan([1, content]), cellAt("B1"))).toBe(typedOver)
  })

  it("is not typed over below the last row or in a typed column", () => {
    expect(isTypedOver(plan([1, "="]), cellAt("B2"))).toBe(false)
    expect(isTypedOver(plan([1, "="]), cellAt("A1"))).toBe(false)
  })

  it("stays typed over when rows move", () => {
    const next = new Workbook(plan([1, "="], [2, 9])).revise({
      type: "insertRows",
      sheet: 0,
      before: 0,
      count: 1,
    })
    expect(contentAt(next, cellAt("B3"))).toBe(9)
  })
})
