import {describe, expect, it} from "vitest"
import {size} from "../../../functions/pack/size"
import {cell} from "../cell"

const inch = (sixteenths: number) => (sixteenths * 25.4) / 16

// United States Standards for Grades of Fresh Asparagus (USDA), as quoted in two trade summaries.
const floors = [0, 5, 8, 11, 14].map(inch)
const names = ["very small", "small", "medium", "large", "very large"]

describe("size", () => {
  it.each([
    [10.9, "medium"],
    [11, "large"],
    [5, "small"],
    [4.99, "very small"],
    [7.84, "small"], // 0.49 in: too thin for U.S. No. 1, which begins with medium at 1/2 in
    [8, "medium"],
    [14, "very large"],
    [20, "very large"],
  ])("of %s/16 inch is %s", (sixteenths, name) => {
    expect(size(inch(sixteenths), floors, names)).toBe(name)
  })
  it("has none for what is thinner than the standard takes in", () => {
    // Codex Alimentarius, STAN 225-2001, scope: green and violet-green spears under 3 mm and others under 8 mm are outside it.
    for (const [thin, floor] of [
      [2.9, 3],
      [7.9, 8],
    ] as const) {
      expect(size(thin, [floor], ["in"])).toMatchObject({code: "#N/A"})
      expect(size(floor, [floor], ["in"])).toBe("in")
    }
  })
  it("reaches a floor that a calculation left a hair above", () => {
    expect(0.1 + 0.2).toBeGreaterThan(0.3)
    expect(size(3, [1, 10 * (0.1 + 0.2)], ["a", "b"])).toBe("b")
  })
  it("has no name below the first, and none where none is typed", () => {
    expect(size(7, [8, 12], ["a", "b"])).toEqual({
      refused: "7 mm is below the smallest size, which begins at 8 mm",
      code: "#N/A",
    })
    expect(size(9, [8, 12], ["", "b"])).toEqual({
      refused: "The size that begins at 8 mm has no name",
      code: "#VALUE!",
    })
  })
  it("refuses diameters that do not rise", () =>
    expect(size(9, [12, 8], ["a", "b"])).toEqual({
      refused: "Smallest diameters of the sizes must rise from row to row: 8 comes after 12",
      code: "#VALUE!",
    }))
})

it("PACK.SIZE reads whole columns with blank rows", () => {
  const table = [
    [8, "thin"],
    [null, null],
    [12, "thick"],
  ]
  expect(cell("=PACK.SIZE(11.9,T!A:A,T!B:B)", table)).toBe("thin")
  expect(cell("=PACK.SIZE(12,T!A:A,T!B:B)", table)).toBe("thick")
})
