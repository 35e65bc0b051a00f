import {describe, expect, it} from "vitest"
import {atAge} from "../../../functions/crop/atAge"
import {band} from "../../../functions/crop/band"
import {cell} from "../cell"

const ages = [3, 4, 6]
const yields = [900, 2400, 4800]

describe("band", () => {
  it("lies the spread below or above the yield of the table", () => {
    // 3 600 x 0.8 = 2 880; 3 600 x 1.2 = 4 320.
    expect(band(5, ages, yields, 0.2, -1)).toBeCloseTo(2880, 9)
    expect(band(5, ages, yields, 0.2, 1)).toBeCloseTo(4320, 9)
  })
  it("has the yield of the table in its middle, and is that yield without a spread", () => {
    for (const age of [3, 3.7, 5, 6]) {
      const [lower, upper] = [band(age, ages, yields, 0.3, -1), band(age, ages, yields, 0.3, 1)] as [
        number,
        number,
      ]
      expect((lower + upper) / 2).toBeCloseTo(atAge(age, ages, yields) as number, 9)
      expect(band(age, ages, yields, 0, -1)).toBe(atAge(age, ages, yields))
    }
  })
  it("reaches from nothing to the double at a spread of 1", () => {
    expect(band(5, ages, yields, 1, -1)).toBe(0)
    expect(band(5, ages, yields, 1, 1)).toBe(7200)
  })
  it("refuses what the table refuses", () => {
    expect(band(7, ages, yields, 0.2, 1)).toMatchObject({code: "#N/A"})
    expect(band(5, [3, 3, 6], yields, 0.2, 1)).toMatchObject({code: "#VALUE!"})
  })
})

describe("CROP.BAND in a cell", () => {
  const call = (spread: string, side: string) =>
    cell(`=CROP.BAND(5,{3,4,6},{900,2400,4800},${spread},${side})`)
  it("takes -1 or 1 for the side and a share for the spread", () => {
    expect(call("0.2", "1")).toBeCloseTo(4320, 9)
    expect(call("0.2", "0")).toEqual({code: "#NUM!", reason: "Side must be -1 (lower) or 1 (upper), not 0"})
    expect(call("20", "1")).toEqual({
      code: "#NUM!",
      reason: "Spread on either side must be from 0 to 1, not 20",
    })
  })
})
