import {expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

const farm = (...days: string[]) =>
  documentOf(
    sheet(
      "Pickings",
      [
        column("Planting", {format: "text", part: "picking planting"}),
        column("Day", {format: "date", part: "picking day"}),
      ],
      days.map((day) => ["Sand Piece", day]),
    ),
    sheet(
      "Spray waits",
      [
        column("Planting", {format: "text", part: "wait planting"}),
        column("Sprayed", {format: "date", part: "sprayed"}),
        column("Pick again from", {format: "date", part: "pick again"}),
      ],
      [
        ["Sand Piece", "2026-05-24", "2026-06-05"],
        ["Long Acre", "2026-04-01", "2026-07-01"],
      ],
    ),
  )

it("tells a picking between spraying and the end of the wait", () => {
  expect(inWords(farm("2026-05-23", "2026-05-27", "2026-06-05"), "picked in a wait")).toEqual([
    "B2: Sand Piece was picked on 27 May 2026, and by the wait of its label may be picked again from 5 Jun 2026: ask before it is sold",
  ])
  expect(inWords(farm("2026-05-23", "2026-06-05"), "picked in a wait")).toEqual([])
})
