import {expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

const plan = (open: string, measured = "2026-05-04", asOf: string | null = "2026-05-25") =>
  documentOf(
    sheet(
      "Plan",
      [
        column("Planting", {format: "text"}),
        column("Open", {format: "day"}),
        column("Sized", {format: "date", kind: "measured"}),
      ],
      [["Long Acre", open, measured]],
    ),
    sheet(
      "Named values",
      [column("Name", {format: "text"}), "Value"],
      [
        ["As_of", asOf],
        ["Season", 2026],
      ],
      {names: true},
    ),
  )

it("tells a year that a column of days does not show", () => {
  expect(inWords(plan("2025-04-25"), "date outside the season")).toEqual([
    "B1: Open of Long Acre is 25 Apr 2025, not in season 2026",
  ])
  expect(inWords(plan("2027-04-25"), "date outside the season")).toHaveLength(1)
})

it("lets pass what is of the season, or near the day on which the plan stands, as south of the line", () => {
  expect(inWords(plan("2026-04-25"), "date outside the season")).toEqual([])
  expect(inWords(plan("2025-11-20", "2025-11-20", "2025-12-01"), "date outside the season")).toEqual([])
  expect(inWords(plan("2025-04-25", "2026-05-04", null), "date outside the season")).toEqual([])
})

it("tells a measurement dated after the day on which the plan stands", () => {
  expect(inWords(plan("2026-04-25", "2026-05-26"), "date outside the season")).toEqual([
    "C1: Sized of Long Acre is 26 May 2026, after As_of, the day on which the plan stands",
  ])
  expect(inWords(plan("2026-04-25", "2026-05-25"), "date outside the season")).toEqual([])
})
