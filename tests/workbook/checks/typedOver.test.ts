import {expect, it} from "vitest"
import type {Document, Note} from "../../../src/workbook/document"
import {withExtras} from "../../../src/workbook/extras"
import {column, documentOf, sheet} from "../documents"
import {inWords, mended, told} from "./looking"

const cover = (...held: (number | string | null)[]) =>
  documentOf(
    sheet(
      "Cash",
      [
        column("Year", {format: "text"}),
        column("Capacity", {format: 0}),
        column("Due", {format: 0}),
        column("Cover", {formula: "=B1/C1", format: 2}),
      ],
      held.map((content, i) => [`${2026 + i}`, 96_000, 104_000, content]),
    ),
  )

it("puts the formula's own value beside what is typed over", () => {
  // 96 000 / 104 000 = 0.923
  expect(inWords(cover("=", 1.3), "typed over")).toEqual([
    "D2: Cover of 2027 is typed over: 1.30 stands there, its formula gives 0.92",
  ])
})

it("tells a cell that was emptied, and none that follows its column", () => {
  expect(inWords(cover("=", "="), "typed over")).toEqual([])
  expect(inWords(cover(null), "typed over")).toEqual([
    "D1: Cover of 2026 is typed over: it is blank, its formula gives 0.92",
  ])
})

it("puts the formula back", () => {
  expect(mended(cover("=", 1.3), "typed over").sheets[0]!.rows[1]![3]).toBe("=")
})

it("tells more than three cells of one column together, and mends them together", () => {
  const document = cover(1, 1, "=", 1, 1)
  expect(inWords(document, "typed over")).toEqual([
    "D1: 4 cells of Cover, Cash, are typed over; the first is Cover of 2026",
  ])
  expect(told(document, "typed over")[0]!.fix!.words).toBe("Put formula back: all 4")
  expect(mended(document, "typed over").sheets[0]!.rows.map((row) => row[3])).toEqual([
    "=",
    "=",
    "=",
    "=",
    "=",
  ])
})

it("does not guess what a formula gives that asks for its own row", () => {
  const document = documentOf(sheet("Days", [column("Day", {formula: "=ROW()*2"})], [["="], [7]]))
  expect(inWords(document, "typed over")).toEqual(["A2: Day is typed over: 7 stands there"])
})

it("tells one whose note is settled apart from the others of its column", () => {
  const noted = (document: Document, row: number, more: Partial<Note>) =>
    withExtras(document, [
      {at: {sheet: 0, row, col: 3}, note: {text: "As the bank has it", written: "2026-05-25T10:00", ...more}},
    ])
  const document = noted(noted(cover(1, 1, 1, 1, 1), 0, {settled: true}), 1, {})
  expect(told(document, "typed over").map(({cells, note}) => [cells.length, note?.settled])).toEqual([
    [1, true],
    [4, undefined],
  ])
})
