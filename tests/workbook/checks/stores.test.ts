import {expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

it("tells a store of sugar below zero", () => {
  const document = documentOf(
    sheet(
      "Crowns",
      [
        column("Planting"),
        column("Store", {unit: "kg/ha", format: 0, part: "store at start"}),
        column("Gap"),
      ],
      [
        ["Long Acre", -20, -20],
        ["Well Field", 0, 0],
      ],
    ),
  )
  expect(inWords(document, "negative store")).toEqual([
    "B1: Store of Long Acre is −20 kg/ha: there is no store below zero",
  ])
})
