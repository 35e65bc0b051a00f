import {expect, it} from "vitest"
import {cell} from "../cell"

it("DEBT.DUE is the payment of a level loan, as the standard's PMT gives it", () => {
  // OASIS OpenFormula (2011), PMT: a payment is negative there.
  expect(cell("=DEBT.DUE(250000,0.06,10,1)+PMT(0.06,10,250000)")).toBeCloseTo(0, 8)
  expect(cell("=DEBT.DUE(250000,0.06,10,10,12)+12*PMT(0.06/12,120,250000)")).toBeCloseTo(0, 7)
})
it("DEBT.DUE is 0 before and after the loan", () => {
  expect(cell("=DEBT.DUE(250000,0.06,10,0)")).toBe(0)
  expect(cell("=DEBT.DUE(250000,0.06,10,11)")).toBe(0)
})
it("DEBT.DUE refuses a rate below 0 and no years", () => {
  expect(cell("=DEBT.DUE(250000,-0.01,10,1)")).toEqual({
    code: "#NUM!",
    reason: "Interest a year must be from 0 to 1 share/year, not -0.01 share/year",
  })
  expect(cell("=DEBT.DUE(250000,0.06,0,1)")).toMatchObject({code: "#NUM!"})
})
