import {expect, it} from "vitest"
import {bestRest} from "../../../functions/stand/restYears"
import {cell} from "../cell"
import {crop, other} from "./testStand"

// Invented planting (testStand.ts) at 6 %: 3 years of rest at 300 are worth a penalty of 4.4377 % (restPenalty.test.ts).
it.each([
  ["a penalty above it", [0.05, 0.05, 0.05, 0], 3],
  ["a penalty below it", [0.04, 0.04, 0.04, 0], 0],
  ["no penalty", [0], 0],
])("rests as long as it pays: %s", (_, penalties, years) => {
  expect(bestRest({crop, other}, penalties, 0.06, 300, 0)).toBe(years)
})

it("STAND.REST_YEARS refuses lists that differ", () => {
  expect(cell("=STAND.REST_YEARS({0,100},{-50},0.06,{0.1,0})")).toMatchObject({code: "#VALUE!"})
})
