import {expect, it} from "vitest"
import {crate} from "../../../functions/pack/crate"
import {cell} from "../cell"

it("measures the old crate", () => {
  // Hexamer, F.M. (1901). Asparagus. Orange Judd: inside 24 in long, 12 in high, 19 in at the base, 14.5 in at the top.
  // 24·12·16.75 = 4824 in³ of 16.387064 ml: 79.05 litres.
  expect(crate(24 * 2.54, 12 * 2.54, 19 * 2.54, 14.5 * 2.54)).toBeCloseTo(4824 * 0.016387064, 9)
})
it("measures a straight box as one, and a wedge as half of it", () => {
  expect(crate(50, 20, 30, 30)).toBeCloseTo(30, 12)
  expect(crate(50, 20, 30, 1e-9)).toBeCloseTo(15, 6)
})
it("PACK.CRATE refuses a length of 0", () => {
  expect(cell("=PACK.CRATE(0,20,30,30)")).toMatchObject({code: "#NUM!"})
})
