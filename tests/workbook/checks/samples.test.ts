import {expect, it} from "vitest"
import type {Content} from "../../../src/workbook/document"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

const crowns = (opens: Content, names: Content[][] = []) =>
  documentOf(
    sheet(
      "Crowns",
      [
        column("Planting", {format: "text", part: "planting"}),
        column("Sampled", {format: "date", part: "sampled on"}),
        column("Opens", {format: "day", part: "opens"}),
      ],
      [["Long Acre", "2025-02-24", opens]],
    ),
    sheet("Named values", [column("Name", {format: "text"}), "Value"], names, {names: true}),
  )

it("tells samples older at the opening than 14 months, or than the farm's own number of days", () => {
  // From 24 Feb 2025 to 25 Apr 2026 there are 365 + 60 = 425 days.
  expect(inWords(crowns("2026-04-25"), "old sample")).toEqual([])
  expect(inWords(crowns("2026-04-26"), "old sample")).toEqual([
    "B1: The samples of Long Acre, 24 Feb 2025, are 426 days old at its opening: more than 425",
  ])
  expect(inWords(crowns("2026-04-26", [["Sample_oldest", 430]]), "old sample")).toEqual([])
})

it("counts to the day the plan stands on where there is no opening", () => {
  expect(inWords(crowns(null, [["As_of", "2026-05-25"]]), "old sample")[0]).toContain("455 days old by now")
})
