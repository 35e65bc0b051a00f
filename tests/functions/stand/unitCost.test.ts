import {describe, expect, it} from "vitest"
import {perYear} from "../../../functions/stand/perYear"
import {unitCost} from "../../../functions/stand/unitCost"
import {cell} from "../cell"
import {costs, stand, yields} from "./testStand"

describe("unitCost", () => {
  it("is least over the cheapest life, and given for any other", () => {
    // Invented planting (testStand.ts) at 6 %, checked in two languages.
    expect(unitCost(costs, yields, 0.06, null)).toBeCloseTo(82.557097, 5)
    expect(unitCost(costs, yields, 0.06, 15)).toBeCloseTo(82.644846, 5)
  })
  it("is the price at which that life just pays its interest", () => {
    const price = unitCost(costs, yields, 0.06, 15) as number
    expect(perYear(stand(price / 100).slice(0, 15), 0.06)).toBeCloseTo(0, 9)
  })
  it("takes no notice of years before the first cost and crop", () => {
    expect(unitCost([0, 20], [0, 50], 0, null)).toBeCloseTo(0.4, 12)
  })
  it("agrees with a published cost of production", () => {
    // Michigan State University Extension E-3483 (2023): break-even 0.73 a lb at 5 500 lb, so the costs are 4 015 an acre.
    expect(unitCost([4015], [5500], 0, null)).toBeCloseTo(0.73, 12)
  })
})

describe("STAND.UNIT_COST in a cell", () => {
  it("refuses lists that differ, no crop, and a life before the first crop or beyond the last year", () => {
    expect(cell("=STAND.UNIT_COST({100,20},{0,50,60},0.05)")).toEqual({
      code: "#VALUE!",
      reason: "Costs are given for 2 years and yields for 3: sizes differ",
    })
    expect(cell("=STAND.UNIT_COST({100,20},{0,0},0.05)")).toMatchObject({code: "#DIV/0!"})
    expect(cell("=STAND.UNIT_COST({100,20},{0,50},0.05,1)")).toMatchObject({code: "#DIV/0!"})
    expect(cell("=STAND.UNIT_COST({100,20},{0,50},0.05,3)")).toMatchObject({code: "#NUM!"})
  })
})
