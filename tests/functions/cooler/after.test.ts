import {expect, it} from "vitest"
import {after} from "../../../functions/cooler/after"
import {time} from "../../../functions/cooler/time"
import {cell} from "../cell"

it("halves the difference to the water in each half-time", () => {
  expect(after(25, 1, 2.2, 0)).toBe(25)
  expect(after(25, 1, 2.2, 2.2)).toBeCloseTo(13, 12)
  expect(after(25, 1, 2.2, 6.6)).toBeCloseTo(4, 12)
  expect(after(25, 1, 2.2, 1e4)).toBe(1)
})
it("comes to the temperature that the time was worked out for", () => {
  expect(after(22, 0.5, 1.7, time(22, 2.9, 0.5, 1.7) as number)).toBeCloseTo(2.9, 12)
})
it("COOLER.AFTER refuses water that warms the spears", () => {
  expect(cell("=COOLER.AFTER(5,8,2.2,3)")).toEqual({
    code: "#NUM!",
    reason: "Water at 8 °C is warmer than the spears, 5 °C",
  })
  expect(cell("=COOLER.AFTER(5,1,2.2,-3)")).toMatchObject({code: "#NUM!"})
})
