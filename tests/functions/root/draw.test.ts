import {describe, expect, it} from "vitest"
import {draw} from "../../../functions/root/draw"
import {rootValues} from "../../../functions/root/values"
import {cell} from "../cell"

const green = {Spear_dry: 0.08, Stub_share: 0.55, Unsold_share: 0.12, Spear_cost: 1.5}

describe("draw", () => {
  it("is 208.32 kg for a tonne of green spears", () => {
    // 1000·0.08 = 80 kg dry matter, 124 with stubs, 138.88 with what is not sold; times 1.5.
    expect(draw(1000, green)).toBeCloseTo(208.32, 9)
  })
  it("is 136.5 kg for a tonne of white spears", () => {
    // 65 kg dry matter, 81.25 with stubs, 91 with what is not sold; times 1.5.
    expect(draw(1000, {...green, Spear_dry: 0.065, Stub_share: 0.25})).toBeCloseTo(136.5, 9)
  })
  it("is in proportion to the crop, and 0 for none", () => {
    expect(draw(6000, green)).toBeCloseTo(6 * draw(1000, green), 9)
    expect(draw(0, green)).toBe(0)
  })
  it("builds spears at the cost that follows from what they are made of", () => {
    // Penning de Vries, F.W.T., Brunsting, A.H.M., van Laar, H.H. (1974). Journal of Theoretical Biology 45, 339-377
    // (factors from memory): g sugar per g of protein (nitrogen from amides, or from nitrate), carbohydrate, lipid,
    // lignin, organic acid and mineral. The make-up of a spear is assumed.
    const cost = (protein: number) =>
      0.32 * protein + 0.52 * 1.242 + 0.02 * 3.106 + 0.01 * 2.174 + 0.04 * 0.929 + 0.09 * 0.05
    expect(rootValues.Spear_cost.value).toBeGreaterThan(cost(1.887))
    expect(rootValues.Spear_cost.value).toBeLessThan(cost(2.475))
  })
})

describe("ROOT.DRAW in a cell", () => {
  it("follows the crop values given", () => {
    const white = [
      ["Spear_dry", 0.065],
      [null, null],
      ["Stub_share", 0.25],
      ["Spear_cost", null],
    ]
    expect(cell("=ROOT.DRAW(1000,T!A1:B4)", white)).toBeCloseTo(136.5, 9)
    expect(
      cell("=ROOT.DRAW(1000,T!A1:B2)", [
        ["Unsold_share", 0],
        ["Spear_cost", 1],
      ]),
    ).toBeCloseTo(124, 9)
  })
  it("refuses spears below 0 and crop values no crop has", () => {
    expect(cell("=ROOT.DRAW(-1)")).toEqual({
      code: "#NUM!",
      reason: "Saleable spears must be 0 kg/ha or more, not -1 kg/ha",
    })
    expect(cell("=ROOT.DRAW(1000,T!A1:B1)", [["Spear_dry", 8]])).toEqual({
      code: "#NUM!",
      reason: "Crop value Spear_dry must be above 0 and up to 0.3, not 8",
    })
    expect(cell("=ROOT.DRAW(1000,T!A1:B1)", [["Spear_dryness", 0.08]])).toMatchObject({code: "#VALUE!"})
  })
})
