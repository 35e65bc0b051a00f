import {describe, expect, it} from "vitest"
import {capacity} from "../../../functions/debt/capacity"
import {cover} from "../../../functions/debt/cover"
import {margin} from "../../../functions/debt/margin"
import {cell} from "../cell"

// Langemeier, M. (2025). Measuring Repayment Capacity and Farm Growth Potential. Hoosier Banker 109(1), table 1:
// an Indiana farm in 2023.
const farm = {
  income: 78853,
  taxes: 49769,
  interest: 72218,
  depreciation: 263567,
  living: 105863,
  principal: 59534,
}

describe("the published case", () => {
  const able = capacity(farm.income, 0, farm.taxes, farm.interest, farm.depreciation, farm.living)
  it("has a capacity of 259 006 and a margin of 127 254", () => {
    expect(able).toBe(259006)
    expect(margin(able, farm.interest, farm.principal, 0)).toBe(127254)
  })
  it("covers its term debt 1.97 times", () => {
    expect(cover(able, farm.interest, farm.principal)).toBeCloseTo(259006 / 131752, 12)
    expect(cover(able, farm.interest, farm.principal)).toBeCloseTo(1.97, 2)
  })
  it("cannot replace 1.15 times its depreciation: margin below 0, cover below 1, as published", () => {
    const given = `${able},${farm.interest},${farm.principal},${1.15 * farm.depreciation}`
    expect(cell(`=DEBT.REPLACE_MARGIN(${given})`)).toBeCloseTo(-175848.05, 2) // 127 254 - 303 102.05
    expect(cell(`=DEBT.REPLACE_COVER(${given})`)).toBeCloseTo(259006 / (131752 + 303102.05), 12)
  })
})

describe("DEBT.MARGIN", () => {
  it("takes off operating loans left unpaid", () => {
    expect(cell("=DEBT.MARGIN(259006,72218,59534,27254)")).toBe(100000)
    expect(cell("=DEBT.REPLACE_MARGIN(259006,72218,59534,50000,27254)")).toBe(50000)
    expect(cell("=DEBT.REPLACE_COVER(100,10,10,20,10)")).toBe(2)
  })
  it("takes the principal below 0 of a loan whose interest is added to the debt", () => {
    // Interest of 3 500 joins the debt, so nothing of it is due; another loan asks for 1 000 and 4 000.
    expect(cell("=DEBT.MARGIN(40000,3500,-3500)")).toBe(40000)
    expect(cell("=DEBT.MARGIN(40000,4500,500)")).toBe(35000)
    expect(cell("=DEBT.COVER(40000,4500,-500)")).toBe(10)
    expect(cell("=DEBT.REPLACE_MARGIN(40000,3500,-3500,15000)")).toBe(25000)
    expect(cell("=DEBT.REPLACE_COVER(40000,3500,-3500,20000)")).toBe(2)
    expect(cell("=DEBT.COVER(40000,3500,-3500)")).toMatchObject({code: "#N/A"})
  })
  it("is off-farm income more and a loss less", () => {
    expect(cell("=DEBT.CAPACITY(-10000,25000,2000,3000,4000,15000)")).toBe(5000)
  })
})

describe("DEBT.COVER", () => {
  it("is below 1 in the tight year", () => {
    const years = [182000, 96000, 118000, 171000, 205000]
    const covers = years.map((able) => cell(`=DEBT.COVER(${able},24000,80000)`) as number)
    // 182/104 and so on
    for (const [row, expected] of [1.75, 0.92, 1.13, 1.64, 1.97].entries())
      expect(Math.abs(covers[row]! - expected)).toBeLessThanOrEqual(0.005)
  })
  it("has no answer where nothing is due", () => {
    expect(cell("=DEBT.COVER(96000,0,0)")).toEqual({
      code: "#N/A",
      reason: "Nothing is due: there is no cover to work out",
    })
    expect(cell("=DEBT.REPLACE_COVER(96000,0,0,0)")).toEqual({
      code: "#N/A",
      reason: "Nothing is due or to be replaced: there is no cover to work out",
    })
  })
  it("refuses a due sum below 0", () =>
    expect(cell("=DEBT.COVER(96000,-1,0)")).toMatchObject({code: "#NUM!"}))
})
