import {expect, it} from "vitest"
import {breakRate} from "../../../functions/crew/breakRate"
import {cell} from "../cell"

it("is the weight whose worth is the wage", () => {
  // 15.20/1.45 = 10.4828
  expect(breakRate(15.2, 1.45)).toBeCloseTo(10.4828, 4)
  expect(breakRate(15.2, 1.45) * 1.45).toBeCloseTo(15.2, 12)
})
it.each([
  ["15,0", "Left of the price for picking must be above 0 money/kg, not 0 money/kg"],
  ["15,-0.2", "Left of the price for picking must be above 0 money/kg, not -0.2 money/kg"],
  ["-1,1", "Cost of an hour of picking must be 0 money/h or more, not -1 money/h"],
])("CREW.BREAK_RATE refuses %s", (given, reason) => {
  expect(cell(`=CREW.BREAK_RATE(${given})`)).toEqual({code: "#NUM!", reason})
})
