import {expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

const farm = (...weights: number[]) =>
  documentOf(
    sheet(
      "Season plan",
      [
        column("Planting", {format: "text", part: "planting"}),
        column("Close", {format: "date", part: "close"}),
        column("High", {unit: "t", part: "crop high"}),
      ],
      [
        ["Long Acre", "2026-06-10", 2.5],
        ["Well Field", "2026-06-10", null],
      ],
    ),
    sheet(
      "Pickings",
      [
        column("Planting", {format: "text", part: "picking planting"}),
        column("Weight", {unit: "kg", format: 0, part: "picking weight"}),
      ],
      [...weights.map((kg) => ["Long Acre", kg]), ["Well Field", 9000], ["Long Acre", null]],
    ),
  )

it("tells a planting from which more was picked than its plan expects at most", () => {
  expect(inWords(farm(1000, 1501), "picked too much")).toEqual([
    "Pickings!B2: 2 501 kg were picked from Long Acre, and its plan expects 2 500 kg at most: look at its pickings, its area and its plan",
  ])
  expect(inWords(farm(1000, 1500), "picked too much")).toEqual([])
})
