import {describe, expect, it} from "vitest"
import {olympic} from "../../../functions/crop/olympic"
import {cell} from "../cell"

describe("olympic", () => {
  it("gives the mean of five crop years without the best and the worst", () => {
    // Rule of 7 CFR 1437.102, by hand: 3 600, 4 100 and 3 900 are left of
    // 3 600, 4 100, 2 500, 4 400, 3 900; 11 600 / 3 = 3 866.67. The simple mean is 3 700.
    expect(olympic([3600, 4100, 2500, 4400, 3900])).toBeCloseTo(3866.67, 2)
  })
  it("leaves out one highest and one lowest where several share them", () => {
    expect(olympic([5, 5, 1, 1, 3])).toBe(3) // 5, 1 and 3 are left
    expect(olympic([5, 5, 5, 2])).toBe(5)
    expect(olympic([4, 4, 4])).toBe(4)
  })
  it("of three is the middle one, in any order and in numbers of any length", () => {
    expect(olympic([950, 10000, 3000])).toBe(3000)
    expect(olympic([10000, 3000, 950])).toBe(3000)
    expect(olympic([950, 10000, 300])).toBe(950)
  })
  it("does not hear how far out the ends are", () => {
    expect(olympic([0, 3600, 3900, 4100, 99000])).toBe(olympic([2500, 3600, 3900, 4100, 4400]))
  })
  it("leaves its list as it was", () => {
    const given = [3, 1, 2]
    olympic(given)
    expect(given).toEqual([3, 1, 2])
  })
  it.each([[[4000]], [[4000, 5000]]])("has no answer for %o", (yields) => {
    expect(olympic(yields)).toEqual({
      refused: `only ${yields.length} of at least 3 yields recorded`,
      code: "#N/A",
    })
  })
})

describe("CROP.OLYMPIC in a cell", () => {
  it("leaves blanks out and counts a typed 0", () => {
    expect(cell("=CROP.OLYMPIC(T!A1:A5)", [[3600], [null], [4100], [2500], [null]])).toBe(3600)
    expect(cell("=CROP.OLYMPIC(T!A1:A3)", [[3600], [0], [4100]])).toBe(3600)
    expect(cell("=CROP.OLYMPIC(T!A1:A3)", [[3600], [null], [4100]])).toMatchObject({code: "#N/A"})
  })
  it("passes an error on and refuses a yield below 0", () => {
    expect(cell("=CROP.OLYMPIC(T!A1:A4)", [[3600], ["=1/0"], [4100], [1]])).toMatchObject({code: "#DIV/0!"})
    expect(cell("=CROP.OLYMPIC({3600,-1,4100})")).toMatchObject({code: "#NUM!"})
  })
})
