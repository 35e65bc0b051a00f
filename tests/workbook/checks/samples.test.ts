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
      [["Long Acre", "2026-03-05", opens]],
    ),
    sheet("Named values", [column("Name", {format: "text"}), "Value"], names, {names: true}),
  )

it("tells samples dug before the last season, with their day, or those older than the farm's own number of days", () => {
  expect(inWords(crowns("2026-04-25"), "old sample")).toEqual([])
  // From 5 Mar 2026 to 25 Apr 2027 there are 365 + 51 = 416 days.
  expect(inWords(crowns("2027-04-25"), "old sample")).toEqual([
    "B1: The samples of Long Acre, 5 Mar 2026, are 416 days old at its opening: more than 300, so that a season lies between",
  ])
  expect(inWords(crowns("2027-04-25", [["Sample_oldest", 416]]), "old sample")).toEqual([])
  expect(inWords(crowns("2026-04-25", [["Sample_oldest", 50]]), "old sample")).toEqual([
    "B1: The samples of Long Acre, 5 Mar 2026, are 51 days old at its opening: more than 50",
  ])
})

it("counts to the day the plan stands on where there is no opening", () => {
  expect(inWords(crowns(null, [["As_of", "2027-01-10"]]), "old sample")[0]).toContain("311 days old by now")
})
