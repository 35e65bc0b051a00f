import {expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {sheetWith, withSheet} from "../../src/workbook/document"
import {planOf} from "../../src/workbook/plan"
import {spearSizesOf, type PlantingSpears} from "../../src/workbook/spears"
import {Workbook} from "../../src/workbook/workbook"
import {farm} from "../editor/morning"
import {column, documentOf, sheet} from "./documents"

const measured = [
  // Out of order, with a blank and a word between them: the formulas leave such rows out.
  ["Sand Piece", "2026-05-25", 10.9, 41],
  ["Long Acre", "2026-05-18", 12.2, 40],
  ["Sand Piece", "2026-05-04", 13.1, 40],
  ["Sand Piece", "2026-05-28", null, null],
  ["Sand Piece", "2026-05-11", 12.4, 42],
  ["Sand Piece", "2026-05-18", 11.6, 40],
  ["Home Strip", "2026-05-18", 12.2, 40],
  ["Home Strip", "2026-05-25", 12.4, 40],
]
const ofPlanting = (col: string) => `FILTER('Spears'!${col}:${col},'Spears'!A:A=A1)`
const workbook = new Workbook(
  documentOf(
    sheet(
      "Spears",
      [
        column("Field", {part: "spear planting"}),
        column("On", {part: "spear day", kind: "measured", format: "date"}),
        column("Mean", {part: "spear mean", kind: "measured", unit: "mm"}),
        column("Counted", {part: "spears counted", kind: "measured"}),
      ],
      measured,
    ),
    sheet(
      "Names",
      ["Name", "Value"],
      [
        ["Spear_limit", 9.5],
        ["As_of", "2026-05-25"],
      ],
      {names: true},
    ),
    sheet(
      "Formulas",
      [
        "Planting",
        column("Change", {formula: `=SPEAR.TREND(${ofPlanting("B")},${ofPlanting("C")})`}),
        column("Until", {formula: `=SPEAR.DATE_AT(${ofPlanting("B")},${ofPlanting("C")},Spear_limit)`}),
      ],
      ["Sand Piece", "Long Acre", "Home Strip"].map((name) => [name, "=", "="]),
    ),
  ),
)

it("has the line and the day that the formulas give, and none where they give none", () => {
  const {plantings, limit, asOf} = spearSizesOf(workbook)!
  expect([limit, asOf]).toEqual([9.5, dayOf("2026-05-25")])
  expect(plantings.map(({planting}) => planting)).toEqual(["Sand Piece", "Long Acre", "Home Strip"])
  const given = (row: number, col: number) => {
    const value = workbook.valueAt({sheet: 2, row, col})
    return typeof value === "number" ? value : null
  }
  for (const [row, {line, lastDay}] of plantings.entries()) {
    const slope = given(row, 1)
    // A cell holds 15 digits.
    expect(line?.slope ?? null).toEqual(slope === null ? null : expect.closeTo(slope, 12))
    expect(lastDay).toBe(given(row, 2))
  }
  // By hand: of 0, 7, 14, 21 days with 13.1, 12.4, 11.6, 10.9 mm the slope is -25.9/245 = -0.10571, the mean 12.0 at
  // 10.5 days; 9.5 mm 23.65 days later, 34.15 days after 4 May.
  expect(plantings[0]!.line).toMatchObject({
    mean: expect.closeTo(12, 9),
    slope: expect.closeTo(-25.9 / 245, 9),
  })
  expect(plantings[0]!.lastDay).toBe(dayOf("2026-06-07"))
  // The means stand 0.01, 0.03, 0.03 and 0.01 mm off the line: s = √(0.002/2) = 0.0316 mm, t for 2 degrees of freedom and 0.8
  // is 1.886, k = t·s = 0.0596 mm. (b² - k²/245)x² + 2·2.5·b·x + 2.5² - k²/4 = 0 gives x = 22.78 and 24.58: 33.3 and 35.1
  // days after 4 May.
  expect(plantings[0]!.lastDays).toEqual([dayOf("2026-06-06"), dayOf("2026-06-08")])
  expect(plantings.slice(1).map(({spread}) => spread)).toEqual([null, null])
})

it("keeps the cell of each mean, in the order of the days", () =>
  expect(spearSizesOf(workbook)!.plantings[0]!.days.map(({mean, at}) => [mean, at.row, at.col])).toEqual([
    [13.1, 2, 2],
    [12.4, 4, 2],
    [11.6, 5, 2],
    [10.9, 0, 2],
  ]))

it("takes the spears by size for their mean where none is typed, with the share under the limit and its day", () => {
  // 8×1 10×3: mean 9.5 mm, a quarter under 9.5. 8×2 10×2: mean 9, half. 50 points more after three weeks: 0.75 on 25 May.
  const rows = [
    ["Sand Piece", "2026-05-04", null, null, "8×1 10×3", "=", "="],
    ["Sand Piece", "2026-05-11", 9.1, 4, "8×2 10×2", "=", "="],
    ["Sand Piece", "2026-05-18", null, 4, "8×1", "=", "="],
    ["Sand Piece", "2026-05-25", null, null, "thin", "=", "="],
  ]
  const columns = farm.sheets[sheetWith(farm, "spears by size")]!.columns
  const counted = new Workbook(
    documentOf(
      sheet("Spear size", columns, rows),
      sheet(
        "Names",
        ["Name", "Value"],
        [
          ["Spear_limit", 9.5],
          ["Spear_share", 0.6],
        ],
        {names: true},
      ),
    ),
  )
  const {plantings, share} = spearSizesOf(counted)!
  const [{days, shareDay}] = plantings as [PlantingSpears]
  expect(days.map(({mean, counted, under}) => [mean, counted, under])).toEqual([
    [9.5, 4, 0.25],
    [9.1, 4, 0.5],
  ])
  expect(days[0]!.tally).toEqual({diameters: [8, 10], counts: [1, 3]})
  // 0.25 a week from 0.25: 0.6 after 9.8 days.
  expect([share, shareDay]).toEqual([0.6, dayOf("2026-05-13")])
})

it("expects with fewer than three means what the plan's own formula does", () => {
  const workbook = new Workbook(farm)
  const sheet = sheetWith(farm, "spears by size")
  // The demonstration farm's Long Acre, with two means.
  const rows = [
    ["Long Acre", "2026-05-11", 11.2, 40, null, "=", "="],
    ["Long Acre", "2026-05-18", 10.2, 40, null, "=", "="],
  ]
  workbook.show(withSheet(farm, sheet, {rows: [...farm.sheets[sheet]!.rows, ...rows]}))
  const {plantings} = spearSizesOf(workbook)!
  const [sand, long] = ["Sand Piece", "Long Acre"].map((name) =>
    plantings.find((one) => one.planting === name)!,
  )
  expect([sand!.isExpected, long!.isExpected]).toEqual([false, true])
  const {rows: planned} = planOf(workbook)!
  const limit = planned
    .find(({planting}) => planting === "Long Acre")!
    .limits.find(({name}) => name === "spear size")!.day
  expect(limit).not.toBeNull()
  expect(long!.lastDay).toBe(limit)
  // The line through the two would meet 9.5 mm 0.7/(1/7) = 4.9 days after the second, on 22 May.
  expect(limit).toBeGreaterThan(dayOf("2026-05-22")!)
})
