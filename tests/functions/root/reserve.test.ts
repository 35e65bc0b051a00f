import {describe, expect, it} from "vitest"
import {reserve} from "../../../functions/root/reserve"
import {sugarOf} from "../../../functions/root/sugarOf"
import {cell} from "../cell"

describe("reserve", () => {
  it("falls from 6 000 to 4 000 kg/ha between 500 and 400 mg/g", () => {
    // 6 000·500/500 and 6 000·400/600.
    expect([reserve(500, 6000), reserve(400, 6000)]).toEqual([6000, 4000])
  })
  it("undoes sugarOf", () => {
    for (const store of [1, 1200, 3000, 7195])
      expect(reserve(sugarOf(store, 6117) as number, 6117)).toBeCloseTo(store, 8)
  })
  it("is not what sugar in a root of fixed mass would be", () => {
    // With the 12 t of dry root at 500 mg/g held fixed, 400 mg/g would be 4 800 kg/ha, 20 % too much.
    expect((0.4 * 12000) / reserve(400, 6000)).toBeCloseTo(1.2, 12)
  })
  it("grows with the structural root in proportion", () => {
    expect(reserve(420.5, 9000)).toBeCloseTo(1.5 * reserve(420.5, 6000), 9)
  })
})

describe("ROOT.RESERVE in a cell", () => {
  it("refuses 1000 mg/g and more", () => {
    expect(cell("=ROOT.RESERVE(1000,6000)")).toEqual({
      code: "#NUM!",
      reason: "Sugar in the root must be 0 or more and below 1000 mg/g, not 1000 mg/g",
    })
    expect(cell("=ROOT.RESERVE(999.9,1)")).toBeCloseTo(9999, 6)
  })
  it("refuses a structural root below 0, and has no answer for a blank one", () => {
    expect(cell("=ROOT.RESERVE(500,-1)")).toMatchObject({code: "#NUM!"})
    expect(cell("=ROOT.RESERVE(500,T!A1)")).toEqual({
      code: "#N/A",
      reason: "Structural root (dry root without its sugar): not measured yet",
    })
  })
})
