import {describe, expect, it} from "vitest"
import {breakPrice} from "../../../functions/debt/breakPrice"
import {cell} from "../cell"

describe("breakPrice", () => {
  it("moves the price until what is due is just met", () => {
    // 2.40 + (104 000 - 96 000)/210 000
    expect(breakPrice(2.4, 210000, 96000, 104000, 1)).toBeCloseTo(2.4381, 4)
  })
  it("is the planned price where capacity and due agree already, and lower where there is more", () => {
    expect(breakPrice(2.4, 210000, 104000, 104000, 1)).toBe(2.4)
    expect(breakPrice(2.4, 210000, 182000, 104000, 1)).toBeCloseTo(2.4 - 78000 / 210000, 12)
  })
  it("reaches the cover wanted", () => {
    const price = breakPrice(2.4, 210000, 96000, 104000, 1.25) as number
    expect((96000 + 210000 * (price - 2.4)) / 104000).toBeCloseTo(1.25, 12)
  })
})

it("DEBT.BREAK_PRICE takes a cover of 1 where none is given, and refuses to divide by no weight", () => {
  expect(cell("=DEBT.BREAK_PRICE(2.4,210000,96000,104000,T!A1)")).toBeCloseTo(2.4381, 4)
  expect(cell("=DEBT.BREAK_PRICE(2.4,0,96000,104000)")).toEqual({
    code: "#DIV/0!",
    reason: "No weight is sold: no price can pay what is due",
  })
})
