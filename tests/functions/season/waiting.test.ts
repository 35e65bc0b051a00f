import {expect, it} from "vitest"
import {waiting} from "../../../functions/season/waiting"
import {cell} from "../cell"

const waits = {
  sprayed_planting: ["Long Acre", "Long Acre", "Sand Piece", ""],
  sprayed: [10, 12, 30, 1],
  pick_again: [17, 15, null, 99],
}

it("counts a picking from the day of spraying up to the first day allowed again, once however many waits it lies in", () => {
  const on = (planting: string, ...days: (number | null)[]) =>
    waiting(
      days.map(() => planting),
      days,
      waits,
    )
  expect(on("Long Acre", 9, 17)).toBe(0)
  expect(on("long acre", 10, 13, 16)).toBe(3)
  // A wait without an end is none, a row without a planting is no wait, and a picking without a day no picking.
  expect(on("Sand Piece", 30, 31)).toBe(0)
  expect(on("", 5)).toBe(0)
  expect(on("Long Acre", null)).toBe(0)
})

it("refuses ranges that do not belong together", () => {
  expect(waiting(["Long Acre"], [1, 2], waits)).toMatchObject({code: "#VALUE!"})
  expect(waiting(["Long Acre"], [1], {...waits, sprayed: [1]})).toMatchObject({code: "#VALUE!"})
})

it("counts what the sheets hold", () => {
  const rows = [
    ["Long Acre", "2026-05-04", "Long Acre", "2026-05-01", "2026-05-08"],
    ["Long Acre", "2026-05-08", null, null, null],
    [null, null, null, null, null],
  ]
  expect(cell("=SEASON.WAITING(T!A1:A3,T!B1:B3,T!C1:C3,T!D1:D3,T!E1:E3)", rows)).toBe(1)
})
