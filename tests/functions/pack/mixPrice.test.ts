import {describe, expect, it} from "vitest"
import {mixPrice} from "../../../functions/pack/mixPrice"
import {sizeShare} from "../../../functions/pack/sizeShare"
import {cell} from "../cell"

const floors = [0, 9.525, 12.7]
const share = (from: number, to: number) => Number(sizeShare(12, 0.3, from, to, "weight"))

describe("mixPrice", () => {
  it("weighs each class by its share of the weight", () => {
    const [thin, middle, thick] = [share(0, 9.525), share(9.525, 12.7), share(12.7, 1000)]
    expect(thin + middle + thick).toBeCloseTo(1, 12)
    expect(mixPrice(12, 0.3, floors, [1, 2, 4])).toBeCloseTo(thin + 2 * middle + 4 * thick, 12)
  })

  it("falls as spears thin, where every class sells as before", () => {
    const at = (median: number) => Number(mixPrice(median, 0.3, floors, [1, 2, 4]))
    expect(at(13)).toBeGreaterThan(at(11))
    expect(at(11)).toBeGreaterThan(at(9))
    expect(mixPrice(12, 0.3, floors, [3, 3, 3])).toBeCloseTo(3, 12)
  })

  it("leaves out a class without a price, and what is thinner than the first, but not the class's ground", () => {
    const [middle, thick] = [share(9.525, 12.7), share(12.7, 1000)]
    expect(mixPrice(12, 0.3, floors, [null, 2, 4])).toBeCloseTo(
      (2 * middle + 4 * thick) / (middle + thick),
      12,
    )
    expect(mixPrice(12, 0.3, [9.525, 12.7], [2, 4])).toBeCloseTo(
      (2 * middle + 4 * thick) / (middle + thick),
      12,
    )
    expect(mixPrice(12, 0.3, [9.525, null, 12.7], [2, 9, 4])).toBeCloseTo(
      (2 * middle + 4 * thick) / (middle + thick),
      12,
    )
  })

  it("refuses what has no answer", () => {
    expect(mixPrice(12, 0.3, floors, [null, null, null])).toMatchObject({code: "#N/A"})
    expect(mixPrice(12, 0.3, floors, [1, 2])).toMatchObject({code: "#VALUE!"})
    expect(mixPrice(12, 0.3, [0, 12, 9], [1, 2, 3])).toMatchObject({refused: expect.stringMatching("rise")})
    expect(mixPrice(12, 0.3, floors, [1, -2, 3])).toMatchObject({code: "#NUM!"})
    expect(mixPrice(1, 0.05, [40, 50], [1, 2])).toMatchObject({code: "#DIV/0!"})
  })
})

it("PACK.MIX_PRICE takes whole columns", () => {
  const table = [
    [0, 1],
    [9.525, 2],
    [12.7, 4],
    [null, null],
  ]
  expect(cell("=PACK.MIX_PRICE(12,0.3,T!A:A,T!B:B)", table)).toBeCloseTo(
    Number(mixPrice(12, 0.3, floors, [1, 2, 4])),
    12,
  )
})
