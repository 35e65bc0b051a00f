import {describe, expect, it} from "vitest"
import {price} from "../../../functions/pack/price"
import {cell} from "../cell"

describe("price", () => {
  it("weighs each price by its weight", () => {
    // (300·3.1 + 500·2.6 + 200·1.4)/1000 = 2510/1000
    expect(price([300, 500, 200], [3.1, 2.6, 1.4])).toBeCloseTo(2.51, 12)
  })
  it("is the same for shares as for kg, and the price itself where all sell at one", () => {
    expect(price([0.3, 0.5, 0.2], [3.1, 2.6, 1.4])).toBeCloseTo(2.51, 12)
    expect(price([1, 7, 13], [2, 2, 2])).toBeCloseTo(2, 12)
  })
  it("refuses weights that add up to 0", () =>
    expect(price([0, 0], [1, 2])).toEqual({
      refused: "Weights add up to 0: there is no mean price",
      code: "#DIV/0!",
    }))
})

it("PACK.PRICE leaves out rows with a blank", () => {
  const table = [
    [300, 3.1],
    [null, 9],
    [500, 2.6],
    [7000, null],
    [200, 1.4],
  ]
  expect(cell("=PACK.PRICE(T!A1:A5,T!B1:B5)", table)).toBeCloseTo(2.51, 12)
  expect(cell("=PACK.PRICE(T!A1:A4,T!B1:B5)", table)).toMatchObject({code: "#VALUE!"})
})
