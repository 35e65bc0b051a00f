import {describe, expect, it} from "vitest"
import {effectSpreads} from "../../src/studies/effectSpreads"

describe("effectSpreads", () => {
  it("splits a table of three fields and four years", () => {
    // By hand: MS of fields 0.0048, of years 0.0402889, of the rest 0.0038889.
    const {year, field, rest} = effectSpreads([
      [0.1, -0.2, 0.05, 0.09],
      [0.05, -0.1, 0.12, -0.03],
      [-0.02, -0.25, 0.01, 0.06],
    ])!
    expect(year ** 2).toBeCloseTo(0.0121333, 7) // (0.0402889 - 0.0038889)/3
    expect(field ** 2).toBeCloseTo(0.00022778, 8) // (0.0048 - 0.0038889)/4
    expect(rest ** 2).toBeCloseTo(0.0038889, 7)
  })
  it("finds years alone, and fields alone", () => {
    // Variance of 1, 2, 6 with n - 1: mean 3, (4 + 1 + 9)/2 = 7.
    expect(
      effectSpreads([
        [1, 2, 6],
        [1, 2, 6],
      ]),
    ).toEqual({year: Math.sqrt(7), field: 0, rest: 0})
    expect(
      effectSpreads([
        [1, 1],
        [2, 2],
        [6, 6],
      ]),
    ).toEqual({year: 0, field: Math.sqrt(7), rest: 0})
  })
  it("counts a variance below 0 as 0", () => {
    // Rows and columns have the same means: all is rest.
    const {year, field, rest} = effectSpreads([
      [1, -1],
      [-1, 1],
    ])!
    expect([year, field]).toEqual([0, 0])
    expect(rest).toBeCloseTo(2, 12) // √(4/1)
  })
  it("has nothing to say of one field or one year", () => {
    expect(effectSpreads([[1, 2, 3]])).toBeNull()
    expect(effectSpreads([[1], [2]])).toBeNull()
    expect(effectSpreads([])).toBeNull()
  })
  it("throws at rows that differ in length", () => {
    expect(() => effectSpreads([[1, 2], [1]])).toThrow(/differ in length/)
  })
})
