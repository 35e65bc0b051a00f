import {describe, expect, it} from "vitest"
import {createStore} from "../../src/editor/store"
import {widthsIn} from "../../src/views/sheetColumns"
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

describe("columns of sentences", () => {
  const columns = [
    column("Name", {format: "text", width: 8}),
    column("Found", {width: 4}),
    column("What it is", {format: "text", width: 50}),
  ]
  const widths = [128, 64, 800]

  it("are no wider than the page leaves beside what stays in view", () => {
    // 1 000 less 30 for the numbers of the rows, 128 for the name and 16 for the bar.
    const kept = {widths, keeps: 1, numbers: 30}
    expect(widthsIn(1000, columns, kept)).toEqual([128, 64, 800])
    expect(widthsIn(900, columns, kept)).toEqual([128, 64, 726])
    expect(widthsIn(320, columns, kept)).toEqual([128, 64, 192])
  })

  it("leave each other their part where the first is one too", () => {
    const both = [column("Subject", {format: "text", width: 16}), columns[2]!]
    // 36 of a hundred of 400, and what is left of it after 16 for the bar.
    expect(widthsIn(400, both, {widths: [256, 800], keeps: 0, numbers: 0})).toEqual([144, 240])
  })
})
