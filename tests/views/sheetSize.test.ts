import {describe, expect, it} from "vitest"
import {createStore} from "../../src/editor/store"
import {widthAsFarAs, widthOnSheet} from "../../src/views/sheetSize"
import {column, documentOf, sheet} from "../workbook/documents"

const plan = (area: number) =>
  createStore(
    documentOf(
      sheet(
        "Plan",
        [
          column("Planting", {width: 8}),
          column("Area", {unit: "ha", format: 1, width: 3, total: "=SUM(B:B)"}),
          column("Note", {width: 10}),
        ],
        [["Long Acre", area, null]],
      ),
    ),
  )

describe("the width of a column", () => {
  it("is its own, in px, where its total has room in it", () => {
    expect(widthOnSheet(plan(6.4), 0, 1)).toBe(3 * 16)
  })

  it("grows with a total that would be cut", () => {
    // "6 400.0" has 7 letters of 9 px, and 16 px are kept about it.
    expect(widthOnSheet(plan(6400), 0, 1)).toBe(7 * 9 + 16)
  })

  it("is summed as far as a column, from the numbers of the rows", () => {
    expect(widthAsFarAs(plan(6.4), 0, 1)).toBe(30 + 8 * 16 + 3 * 16)
  })
})
