import {describe, expect, it} from "vitest"
import {after} from "../../../functions/root/after"
import {reserve} from "../../../functions/root/reserve"
import {spearsTo} from "../../../functions/root/spearsTo"
import {sugarOf} from "../../../functions/root/sugarOf"
import {cell} from "../cell"

const green = {
  Spear_dry: 0.08,
  Stub_share: 0.55,
  Unsold_share: 0.12,
  Spear_cost: 1.5,
  Upkeep_rate: 0.0022,
  Upkeep_q10: 2,
}

describe("spearsTo", () => {
  it("is 7.70 t/ha from 500 to 400 mg/g in 56 days", () => {
    // 6000 - 4000 kg/ha less 56·7.07373 = 396.13 for upkeep leaves 1603.87; over 0.20832: 7699.1.
    expect(Math.abs((spearsTo(6000, 500, 400, 56, 11, green) as number) - 7699.1)).toBeLessThanOrEqual(0.05)
  })
  it("undoes after", () => {
    for (const spears of [0, 100, 6363]) {
      const to = after(6000, reserve(520, 6000), spears, 56, 11, green) as number
      expect(spearsTo(6000, 520, to, 56, 11, green)).toBeCloseTo(spears, 6)
    }
  })
  it("without days is the difference of the stores over the draw", () => {
    expect(spearsTo(6000, 500, 400, 0, 11, green)).toBeCloseTo(2000 / 0.20832, 6)
  })
  it("is nothing where upkeep alone comes down to the floor, whatever rounding leaves", () => {
    const to = sugarOf(6000 - 56 * 13.2, 6000) as number // upkeep at 20 °C is 13.2 kg/ha a day
    expect(spearsTo(6000, 500, to, 56, 20, green)).toBeCloseTo(0, 6)
    expect(spearsTo(6000, 500, to + 1e-11, 56, 20, green)).toBeGreaterThanOrEqual(0)
  })
  it.each([500, 501])("refuses to come down from 500 to %s mg/g", (to) => {
    expect(spearsTo(6000, 500, to, 56, 11, green)).toEqual({
      refused: `Sugar to come down to (${to} mg/g) is not below that at the start (500 mg/g)`,
      code: "#NUM!",
    })
  })
  it("refuses a floor that upkeep alone goes below", () => {
    // From 500 to 490 mg/g: 6000 - 6000·490/510 = 235.3 kg/ha; upkeep takes 56·7.0737 = 396.1.
    expect(spearsTo(6000, 500, 490, 56, 11, green)).toEqual({
      refused:
        "No spears: the root breathes 396.1 kg/ha in 56 days, more than the 235.3 kg/ha from 500 to 490 mg/g",
      code: "#NUM!",
    })
  })
})

describe("ROOT.SPEARS_TO in a cell", () => {
  it("undoes ROOT.AFTER", () => {
    expect(cell("=ROOT.SPEARS_TO(6000,500,ROOT.AFTER(6000,6000,6000,56,11),56,11)")).toBeCloseTo(6000, 6)
  })
  it("follows the crop values given", () => {
    // Without upkeep 2000 kg/ha are left for spears; at 0.1365 kg a kg: 14 652 kg/ha.
    const values = [
      ["Upkeep_rate", 0],
      ["Spear_dry", 0.065],
      ["Stub_share", 0.25],
    ]
    expect(cell("=ROOT.SPEARS_TO(6000,500,400,56,11,T!A1:B3)", values)).toBeCloseTo(2000 / 0.1365, 6)
  })
  it("refuses 1000 mg/g at the start", () => {
    expect(cell("=ROOT.SPEARS_TO(6000,1000,400,56,11)")).toEqual({
      code: "#NUM!",
      reason: "Sugar in the root at the start must be 0 or more and below 1000 mg/g, not 1000 mg/g",
    })
  })
})
