import {expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

const farm = (closed: string | null) =>
  documentOf(
    sheet(
      "Pickings",
      [
        column("Planting", {format: "text", part: "picking planting"}),
        column("Day", {format: "date", part: "picking day"}),
      ],
      [
        ["Sand Piece", "2026-06-10"],
        ["Sand Piece", "2026-06-12"],
        ["Long Acre", "2026-06-20"],
      ],
    ),
    sheet(
      "Plantings",
      [
        column("Planting", {format: "text", part: "name of planting"}),
        column("Closed", {format: "date", part: "closed"}),
      ],
      [["Sand Piece", closed]],
    ),
  )

it("tells pickings after the day on which their planting was closed", () => {
  const found = (closed: string | null) => inWords(farm(closed), "picked after its close")
  expect(found("2026-06-11")).toEqual([
    "Plantings!B1: Sand Piece was closed to fern on 11 Jun 2026 and picked on 12 Jun 2026: one of the two is off",
  ])
  expect(found("2026-06-12")).toEqual([])
  expect(found(null)).toEqual([])
})
