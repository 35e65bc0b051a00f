import {describe, expect, it} from "vitest"
import {pool} from "../../../functions/root/pool"
import {structure} from "../../../functions/root/structure"
import {sugarOf} from "../../../functions/root/sugarOf"
import {cell} from "../cell"

describe("structure", () => {
  it("is 6 000 kg/ha for 500 mg/g in 600 g of 20 000 plants", () => {
    // 600 g·20 000 = 12 000 kg dry root, half of it sugar.
    expect(structure(500, 600, 20000)).toBe(6000)
  })
  it("is all the dry root when there is no sugar", () => expect(structure(0, 600, 20000)).toBe(12000))

  it("gives with the store of the same sample the sugar that was sampled", () => {
    for (const sugar of [1, 288.2, 420.5, 999])
      expect(sugarOf(pool(sugar, 480, 18586), structure(sugar, 480, 18586))).toBeCloseTo(sugar, 9)
  })
})

describe("ROOT.STRUCTURE in a cell", () => {
  it("refuses a root that is all sugar and plants below 0", () => {
    expect(cell("=ROOT.STRUCTURE(1000,600,20000)")).toEqual({
      code: "#NUM!",
      reason: "Sugar in the root must be 0 or more and below 1000 mg/g, not 1000 mg/g",
    })
    expect(cell("=ROOT.STRUCTURE(500,600,-1)")).toEqual({
      code: "#NUM!",
      reason: "Plants per hectare must be 0 per ha or more, not -1 per ha",
    })
  })
})
