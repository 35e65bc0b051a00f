import {describe, expect, it} from "vitest"
import {blend} from "../../../functions/crop/blend"
import {cell} from "../cell"

describe("blend", () => {
  it("weighs the own record by n/(n + k), Bühlmann's credibility", () => {
    // Z = 4/(4 + 3) = 4/7; 4 000 + 4/7 x 350 = 4 200.
    expect(blend(4350, 4000, 4, 3)).toBeCloseTo(4200, 9)
  })
  it("is the group without a record, half way at k years, and nears the own record with many", () => {
    expect(blend(4350, 4000, 0, 3)).toBe(4000)
    expect(blend(4350, 4000, 3, 3)).toBe(4175)
    expect(blend(4350, 4000, 1e9, 3)).toBeCloseTo(4350, 5)
  })
  it("lies between the two and is theirs when they agree", () => {
    for (const years of [1, 2, 5, 20]) {
      expect(blend(4350, 4000, years, 3)).toBeGreaterThan(4000)
      expect(blend(4350, 4000, years, 3)).toBeLessThan(4350)
      expect(blend(4100, 4100, years, 3)).toBeCloseTo(4100, 9)
    }
  })
})

describe("CROP.BLEND in a cell", () => {
  it.each([0, -3])("refuses k of %s", (k) => {
    expect(cell(`=CROP.BLEND(4350,4000,4,${k})`)).toEqual({
      code: "#NUM!",
      reason: `Years at which both weigh the same must be above 0 years, not ${k} years`,
    })
  })
  it("refuses years below 0 and parts of a year", () => {
    expect(cell("=CROP.BLEND(4350,4000,-1,3)")).toMatchObject({code: "#NUM!"})
    expect(cell("=CROP.BLEND(4350,4000,1.5,3)")).toMatchObject({code: "#NUM!"})
  })
})
