import {describe, expect, it} from "vitest"
import {carry} from "../../../functions/crop/carry"
import {cell} from "../cell"

describe("carry", () => {
  it("takes the same share of the planned yield for every day over", () => {
    // 6 x 0.006 = 0.036; 4 500 x 0.964 = 4 338.
    expect(carry(4500, 6, 0.006)).toBeCloseTo(4338, 9)
    const days = [0, 1, 2, 3].map((day) => carry(4500, day, 0.006) as number)
    for (const day of [1, 2, 3]) expect(days[day - 1]! - days[day]!).toBeCloseTo(27, 9)
  })
  it("changes nothing without days over or without a loss", () => {
    expect(carry(4500, 0, 0.006)).toBe(4500)
    expect(carry(4500, 6, 0)).toBe(4500)
  })
  it("may take the whole crop but no more", () => {
    expect(carry(4500, 4, 0.25)).toBe(0)
    expect(carry(4500, 5, 0.25)).toEqual({
      refused: "5 days at 0.25 a day take more than the whole crop: too far for this rule",
      code: "#NUM!",
    })
  })
})

describe("CROP.CARRY in a cell", () => {
  it.each(["-1,6,0.006", "4500,-1,0.006", "4500,6,-0.006", "4500,6,1.1"])("refuses %s", (given) => {
    expect(cell(`=CROP.CARRY(${given})`)).toMatchObject({code: "#NUM!"})
  })
  it("refuses to go too far and waits for a blank", () => {
    expect(cell("=CROP.CARRY(4500,200,0.006)")).toMatchObject({code: "#NUM!"})
    expect(cell("=CROP.CARRY(4500,T!A1,0.006)")).toMatchObject({code: "#N/A"})
  })
})
