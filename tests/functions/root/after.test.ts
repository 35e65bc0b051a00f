import {describe, expect, it} from "vitest"
import {after} from "../../../functions/root/after"
import {draw} from "../../../functions/root/draw"
import {sugarOf} from "../../../functions/root/sugarOf"
import {spearsTo} from "../../../functions/root/spearsTo"
import {upkeep} from "../../../functions/root/upkeep"
import {cell} from "../cell"

const green = {
  Spear_dry: 0.08,
  Stub_share: 0.55,
  Unsold_share: 0.12,
  Spear_cost: 1.5,
  Upkeep_rate: 0.0022,
  Upkeep_q10: 2,
}

describe("after", () => {
  it("leaves 420.5 mg/g of 500 after 6 t of spears in 56 days", () => {
    // Spears draw 6·208.32 = 1249.92, the root breathes 56·7.0737 = 396.13: 4353.95 left of 6000 kg/ha,
    // and 1000·4353.95/(4353.95 + 6000) = 420.51.
    expect(Math.abs((after(6000, 6000, 6000, 56, 11, green) as number) - 420.51)).toBeLessThanOrEqual(0.005)
  })
  it("leaves all where nothing is cut and no day passes", () => {
    expect(after(6000, 3000, 0, 0, 11, green)).toBe(sugarOf(3000, 6000))
  })
  it("undoes spearsTo", () => {
    for (const to of [250, 400, 480]) {
      const spears = spearsTo(6000, 500, to, 56, 11, green) as number
      expect(after(6000, 6000, spears, 56, 11, green)).toBeCloseTo(to, 8)
    }
  })
  it("falls with more spears, more days and a warmer soil", () => {
    const base = after(6000, 6000, 6000, 56, 11, green) as number
    expect(after(6000, 6000, 6001, 56, 11, green)).toBeLessThan(base)
    expect(after(6000, 6000, 6000, 57, 11, green)).toBeLessThan(base)
    expect(after(6000, 6000, 6000, 56, 12, green)).toBeLessThan(base)
  })
  it("may use the store up to nothing, whatever rounding leaves", () => {
    const all = draw(5000, green) + upkeep(6000, 11, 40, green)
    expect(after(6000, all, 5000, 40, 11, green)).toBeCloseTo(0, 9)
    expect(after(6000, all - 1e-10, 5000, 40, 11, green)).toBeCloseTo(0, 9)
  })
  it("refuses a season that takes more than the store holds", () => {
    // 5·208.32 = 1041.6 and 56·7.0737 = 396.1.
    expect(after(6000, 1400, 5000, 56, 11, green)).toEqual({
      refused:
        "The store empties: spears draw 1041.6 kg/ha and the root breathes 396.1 kg/ha, more than the 1400 kg/ha in it",
      code: "#NUM!",
    })
  })
})

describe("ROOT.AFTER in a cell", () => {
  it("follows the crop values given", () => {
    // A white crop draws 6·136.5 = 819: 4784.87 left, 443.67 mg/g.
    const white = [
      ["Spear_dry", 0.065],
      ["Stub_share", 0.25],
    ]
    expect(
      Math.abs((cell("=ROOT.AFTER(6000,6000,6000,56,11,T!A1:B2)", white) as number) - 443.67),
    ).toBeLessThan(0.01)
  })
  it("carries refusals into the cell", () => {
    expect(cell("=ROOT.AFTER(6000,100,6000,56,11)")).toMatchObject({code: "#NUM!"})
    expect(cell("=ROOT.AFTER(0,0,0,56,11)")).toMatchObject({code: "#DIV/0!"})
    expect(cell("=ROOT.AFTER(6000,6000,T!A1,56,11)")).toEqual({
      code: "#N/A",
      reason: "Saleable spears: not measured yet",
    })
  })
})
