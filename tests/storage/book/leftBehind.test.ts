import {expect, it} from "vitest"
import {leftBehind} from "../../../src/storage/book/leftBehind"
import type {Document} from "../../../src/workbook/document"
import {column, documentOf, sheet} from "../../workbook/documents"

const written = "2026-05-01T10:00:00.000Z"
const id = "0".repeat(32)

const plain = documentOf(sheet("Plan", ["Planting", "Area"], [["Long Acre", 6]]))

/** One of each thing that only our own form holds. */
const full: Document = {
  ...documentOf(
    sheet(
      "Plan",
      [
        column("Planting", {part: "planting", about: "What the field is called"}),
        column("Area", {rule: {least: 0, usual: [1, 9]}, total: "=SUM(B:B)"}),
        column("Sugar", {kind: "measured"}),
        column("Crop", {kind: "carried over", rule: {words: ["green, thick", "white"]}}),
      ],
      [["Long Acre", 6, 410, "x".repeat(40_000)]],
      {
        rowEach: "planting",
        about: "The fields",
        extras: [
          {row: 0, col: 0, note: {text: "Measured again", written, settled: true}},
          {row: 0, col: 1, cases: {Dry: 5}, note: {text: "Paced off", written}},
          {row: 0, col: 2, compared: true},
        ],
      },
    ),
    {...sheet("Named values", ["Name", "Value"], [["Rate", 0.95]], {names: true}), group: "The book"},
  ),
  cases: ["Dry"],
  region: {measures: "US"},
  copy: {id, kept: written, after: []},
  reading: {madeBy: "RT", on: "2026-05-25", digest: "0".repeat(64), results: "0".repeat(64)},
  field: [{id, device: "Phone", entered: written, row: {"picking weight": 5}}],
}

it("tells of a plain workbook only that versions stay here", () => {
  expect(leftBehind(plain, "ods", "formulas")).toEqual(["Versions stay on this device"])
})

it("tells that formulas of columns are lost where no row holds them, in a copy with formulas", () => {
  const unfilled = documentOf(sheet("Losses", ["Planting", column("Twice", {formula: "=B1*2"})], []))
  expect(leftBehind(unfilled, "xlsx", "formulas")[0]).toBe(
    "What 1 column of sheets without rows would work out is not in it",
  )
  expect(leftBehind(unfilled, "xlsx", "values").join()).not.toContain("without rows")
})

it("tells each thing that a copy with formulas does not hold", () => {
  expect(leftBehind(full, "xlsx", "formulas")).toEqual([
    "The totals under the columns are not in it",
    "What columns stand for in the plan and its pictures is not in it",
    "What is questioned when it is typed into 1 column is not in it",
    "The words that 1 column may hold are not in it: they are too long for a list there, or have commas",
    "That 2 columns hold what is measured or carried over is not in it",
    "What is said of 2 sheets and columns is not in it",
    "The groups of the sheets are not in it",
    "Which sheets have a row for each planting is not in it",
    "What changes in 1 case is not in it: Dry",
    "By which cells cases are compared is not in it",
    "Which notes are settled is not in it: 1 of 2",
    "When notes were written is not in it",
    "The list of 1 act of the field is not in it, with devices and times; what they entered is",
    "How numbers are shown here is not in it: there they are metric",
    "That it is a reading copy is not in it, nor the digest",
    "Which file copies it goes back to is not in it",
    "1 text is cut after 32767 characters",
    "Versions stay on this device",
  ])
})

it("tells of values alone what became of formulas and names, and of .ods that it has the times of notes", () => {
  const [formulas, names, ...rest] = leftBehind(full, "ods", "values")
  expect([formulas, names]).toEqual([
    "Formulas are in it in words alone",
    "Names of values are in it as words alone: 1",
  ])
  expect(rest).toContain("The limits on what is typed into 2 columns are not in it")
  expect(rest.join()).not.toMatch(/When notes|totals|metric|questioned/)
})
