import {expect, it} from "vitest"
import {AT_ONCE} from "../../../functions/stand/chain"
import {cheapestLife} from "../../../functions/stand/cheapestLife"
import {life} from "../../../functions/stand/life"
import {unitCost} from "../../../functions/stand/unitCost"
import {costs, stand, yields} from "./testStand"

it("is one year longer than the best life at a good price", () => {
  // Invented planting (testStand.ts) at 6 %: 16 years against 15, checked in two languages.
  expect(cheapestLife(costs, yields, 0.06)).toBe(16)
  expect(life(stand(), 0.06, AT_ONCE, 0)).toBe(15)
})
it("is the best life when the price is that least cost", () => {
  const price = unitCost(costs, yields, 0.06, null) as number
  expect(life(stand(price / 100), 0.06, AT_ONCE, 0)).toBe(cheapestLife(costs, yields, 0.06))
})
it("refuses lists that differ", () => {
  expect(cheapestLife([1, 2], [1], 0.06)).toMatchObject({code: "#VALUE!"})
})
