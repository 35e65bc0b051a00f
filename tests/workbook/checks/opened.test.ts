import {expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords, mended} from "./looking"

const farm = (opens: string | null) =>
  documentOf(
    sheet(
      "Season plan",
      [column("Planting", {format: "text", part: "planting"}), column("Open", {format: "day", part: "open"})],
      [
        ["Otter Bend", opens],
        ["Low Meadow", "2031-04-27"],
      ],
    ),
    sheet(
      "Pickings",
      [
        column("Planting", {format: "text", part: "picking planting"}),
        column("Day", {format: "date", part: "picking day"}),
      ],
      [
        ["Otter Bend", "2031-04-23"],
        ["otter bend", "2031-04-20"],
        ["Otter Bend", "2030-04-12"],
      ],
    ),
  )
const found = (opens: string | null) => inWords(farm(opens), "opened otherwise")

it("tells a planting that was first picked before its opening, and puts the day there", () => {
  expect(found("2031-04-24")).toEqual([
    "B1: Otter Bend was first picked on 20 Apr 2031 and opens on 24 Apr 2031 by the plan: the limits that count from the opening are off",
  ])
  expect(mended(farm("2031-04-24"), "opened otherwise").sheets[0]!.rows[0]).toEqual([
    "Otter Bend",
    "2031-04-20",
  ])
})

it("tells one that was first picked more than five days after it, the longest usual gap", () => {
  expect(found("2031-04-14")).toHaveLength(1)
  expect(found("2031-04-15")).toEqual([])
  expect(found("2031-04-20")).toEqual([])
  expect(found(null)).toEqual([])
})
