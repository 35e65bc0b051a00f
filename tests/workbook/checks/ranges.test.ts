import {expect, it} from "vitest"
import type {Content} from "../../../src/workbook/document"
import {documentOf, sheet} from "../documents"
import {inWords, mended} from "./looking"

/** Crops of plantings in column B, and what stands below or beside them. */
const crops = (...rows: Content[][]) => documentOf(sheet("Crops", ["Planting", "Crop", "Mean"], rows))
const four = [
  ["North Bench", 10, null],
  ["Long Acre", 20, null],
  ["Sand Piece", 30, null],
  ["Well Field", 40, null],
]

it("tells a total that stops short of its block at either end, and widens it", () => {
  const short = crops(...four, ["All", "=SUM(B1:B3)", null])
  expect(inWords(short, "range")).toEqual([
    "B5: Crop of All reads B1:B3: it stops short, row 4 holds numbers too",
  ])
  expect(mended(short, "range").sheets[0]!.rows[4]![1]).toBe("=SUM(B1:B4)")
  const late = crops(...four, ["All", "=SUM(B$3:B$4)", null])
  expect(inWords(late, "range")).toEqual([
    "B5: Crop of All reads B$3:B$4: it stops short, rows 1 to 2 hold numbers too",
  ])
  expect(mended(late, "range").sheets[0]!.rows[4]![1]).toBe("=SUM(B$1:B$4)")
})

it("tells none that is whole, none that moves along from row to row, and no total for its neighbour", () => {
  expect(inWords(crops(...four, ["All", "=SUM(B1:B4)", null]), "range")).toEqual([])
  const running = four.map(([name, crop], i) => [name!, crop!, `=AVERAGE(B${i + 1}:B${i + 2})`])
  expect(inWords(crops(...running), "range")).toEqual([])
  const two = crops(...four, ["All", "=SUM(B1:B4)", null], ["Mean", "=AVERAGE(B1:B4)", null])
  expect(inWords(two, "range")).toEqual([])
  const worked = [1, 2, 3].map((row) => ["a", row, `=B${row}*2`])
  const totals = crops(...worked, ["All", null, "=SUM(C1:C3)"], ["Mean", null, "=AVERAGE(C1:C3)"])
  expect(inWords(totals, "range")).toEqual([])
})

it("tells a range that runs on over a blank row into another block", () => {
  const past = crops(
    ...four.slice(0, 2),
    [null, null, null],
    ["Rented", 7, null],
    ["All", "=SUM(B1:B4)", null],
  )
  expect(inWords(past, "range")).toEqual([
    "B5: Crop of All reads B1:B4: it runs past its block, over the blank row 3",
  ])
})

it("lets a blank among measurements pass: the row is not blank", () => {
  const gap = crops(["a", 1, null], ["b", null, null], ["c", 3, null], ["All", "=SUM(B1:B3)", null])
  expect(inWords(gap, "range")).toEqual([])
})

it("tells a total that is counted together with its parts", () => {
  const twice = crops(
    ["a", 1, null],
    ["b", 2, null],
    ["Both", "=SUM(B1:B2)", null],
    ["All", "=SUM(B1:B3)", null],
  )
  expect(inWords(twice, "range")).toEqual([
    "B4: Crop of All reads B1:B3: it counts the total in row 3 together with its parts",
  ])
})
