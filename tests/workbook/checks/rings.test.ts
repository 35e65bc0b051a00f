import {expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

const ring = documentOf(
  sheet(
    "Plan",
    [column("Planting", {format: "text"}), "Close", "Reserve", "Weeks"],
    [
      ["Long Acre", "=Stock!B1+7", "=B1-3", "=C1/7"], // Weeks rests on the ring and is not of it
      ["Well Field", 5, "=B2-3", "=C2/7"],
    ],
  ),
  sheet("Stock", [column("Planting", {format: "text"}), "Left"], [["Long Acre", "=SUM(Plan!C:C)"]]),
)

it("tells a ring once, by its way over the sheets, and nothing that only rests on it", () => {
  expect(inWords(ring, "ring")).toEqual([
    "B1: Goes round in a ring: Close of Long Acre → Left of Long Acre → Reserve of Long Acre → Close of Long Acre",
  ])
  expect(inWords(ring, "error")).toEqual([])
})

it("tells a formula that reads itself, and two rings apart", () => {
  const two = documentOf(sheet("Plan", ["A", "B", "C"], [["=A1+1", "=C1", "=B1"]]))
  expect(inWords(two, "ring")).toEqual([
    "A1: Goes round in a ring: A → A",
    "B1: Goes round in a ring: B of row 1 → C of row 1 → B of row 1",
  ])
})

it("tells each of two rings that a chain of cells joins, and nothing of the chain", () => {
  const joined = documentOf(
    sheet("Plan", ["A", "B", "C", "D", "E"], [["=B1+C1", "=A1", "=D1+1", "=E1", "=D1"]]),
  )
  expect(inWords(joined, "ring").toSorted()).toEqual([
    "A1: Goes round in a ring: A → B of row 1 → A",
    "D1: Goes round in a ring: D of row 1 → E of row 1 → D of row 1",
  ])
})
