import {describe, expect, it} from "vitest"
import {reserve} from "../../../functions/root/reserve"
import {sugarOf} from "../../../functions/root/sugarOf"
import {cell} from "../cell"

describe("sugarOf", () => {
  it("is 333.33 mg/g for 3 000 of sugar beside 6 000 kg/ha", () => {
    expect(sugarOf(3000, 6000)).toBeCloseTo(1000 / 3, 10)
  })
  it("falls to a third, not to a quarter, when half the store of 500 mg/g is gone", () => {
    expect(sugarOf(6000, 6000)).toBe(500)
    expect(sugarOf(3000, 6000)).toBeCloseTo(333.333, 3)
  })
  it("undoes reserve", () => {
    for (const sugar of [0, 80, 288.2, 532.3, 999])
      expect(sugarOf(reserve(sugar, 5811), 5811)).toBeCloseTo(sugar, 9)
  })
  it("is 0 in an empty root", () => expect(sugarOf(0, 6000)).toBe(0))

  it("refuses where there is no root", () => {
    expect(sugarOf(0, 0)).toEqual({
      refused: "There is no root: store and structural root are both 0 kg/ha",
      code: "#DIV/0!",
    })
  })
})

describe("ROOT.SUGAR_OF in a cell", () => {
  it("refuses a store below 0, text and no root", () => {
    expect(cell("=ROOT.SUGAR_OF(-1,6000)")).toEqual({
      code: "#NUM!",
      reason: "Sugar in the store must be 0 kg/ha or more, not -1 kg/ha",
    })
    expect(cell('=ROOT.SUGAR_OF("3000",6000)')).toMatchObject({code: "#VALUE!"})
    expect(cell("=ROOT.SUGAR_OF(0,0)")).toMatchObject({code: "#DIV/0!"})
  })
})
