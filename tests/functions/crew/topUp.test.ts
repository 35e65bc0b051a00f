import {expect, it} from "vitest"
import {topUp} from "../../../functions/crew/topUp"
import {cell} from "../cell"

it("fills piece pay up to the minimum, and is 0 above it", () => {
  expect(topUp(200, 0.6, 9, 14)).toBeCloseTo(6, 12) // 126 - 120
  expect(topUp(210, 0.6, 9, 14)).toBeCloseTo(0, 12)
  expect(topUp(300, 0.6, 9, 14)).toBe(0)
  expect(topUp(0, 0.6, 9, 14)).toBe(126)
})
it("hides the slow behind the fast when a crew is taken as one", () => {
  // 100 kg and 300 kg in 9 h each: 66 and 0; together 400 kg in 18 h: 252 - 240.
  expect(topUp(100, 0.6, 9, 14) + topUp(300, 0.6, 9, 14)).toBeCloseTo(66, 12)
  expect(topUp(400, 0.6, 18, 14)).toBeCloseTo(12, 12)
})
it.each(["-1,0.6,9,14", "200,-0.6,9,14", "200,0.6,-9,14", "200,0.6,9,-14"])(
  "CREW.TOP_UP refuses %s",
  (given) => expect(cell(`=CREW.TOP_UP(${given})`)).toMatchObject({code: "#NUM!"}),
)
