import {expect, it} from "vitest"
import {load} from "../../../functions/cooler/load"
import {cell} from "../cell"

it("spreads the heat over the hours and adds what else there is", () => {
  expect(load(347.1, 16, 6)).toBeCloseTo(27.694, 3) // 21.694 + 6
  // 86.68 MJ in half an hour: 24.08/0.5 = 48.2 kW, 13.7 refrigeration tons of 3.517 kW.
  expect(load(86.68 / 3.6, 0.5, 0)).toBeCloseTo(48.16, 2)
  expect(load(86.68 / 3.6, 0.5, 0) / 3.517).toBeCloseTo(13.7, 1)
})
it("makes a hot day too much for a cooler of 25 kW by 2.4 kW", () => {
  expect(cell("=COOLER.LOAD(COOLER.HEAT(14200,24,2),16,6)-25")).toBeCloseTo(2.37, 2) // 341.904/16 + 6 = 27.37
})
it.each(["347,0", "-1,16", "347,16,-1"])("COOLER.LOAD refuses %s", (given) =>
  expect(cell(`=COOLER.LOAD(${given})`)).toMatchObject({code: "#NUM!"}),
)
it("COOLER.LOAD adds nothing where no other load is given", () => {
  expect(cell("=COOLER.LOAD(320,16)")).toBe(20)
})
