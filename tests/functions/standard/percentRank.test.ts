import {describe, expect, it} from "vitest"
import {worked} from "./sheet"

// OASIS (2011). OpenDocument 1.2 part 2, 6.18.58: r/(n-1), in proportion between the neighbours.
describe("PERCENTRANK", () => {
  it.each([
    ["{1,2,3,4,5},1", 0],
    ["{1,2,3,4,5},2", 0.25],
    ["{1,2,3,4,5},5", 1],
    ["{1,2,3,4,5},2.5", 0.375], // rank 1 + (2.5 - 2)/(3 - 2) = 1.5 of 4
    ["{10,20,40},30", 0.75], // rank 1 + (30 - 20)/(40 - 20) = 1.5 of 2
    ["{5,1,3},3", 0.5], // in any order
    ["{7},7", 1], // the special case of one number
  ])("PERCENTRANK(%s) is %f", (given, wanted) => expect(worked(`=PERCENTRANK(${given})`)).toBe(wanted))

  it("goes back the way PERCENTILE came", () => {
    for (const share of [0, 0.125, 0.3, 0.5, 0.9, 1])
      expect(worked(`=PERCENTRANK({3,8,9,15,27},PERCENTILE({3,8,9,15,27},${share}),9)`)).toBeCloseTo(share, 8)
  })
  it("cuts off what is beyond the digits, three when left out", () => {
    expect(worked("=PERCENTRANK({1,2,3,4},3)")).toBe(0.666)
    expect(worked("=PERCENTRANK({1,2,3,4},3,1)")).toBe(0.6)
    expect(worked("=PERCENTRANK({0,1,2},0.58,2)")).toBe(0.29) // 0.29·100 is 28.999999999999996 in binary
  })
  it("stands between equal numbers and the next in proportion", () =>
    // Ranks 0, 1, 1, 3 of 3: half way from 2 to 4 is rank 2.
    expect(worked("=PERCENTRANK({1,2,2,4},3)")).toBe(0.666))
  it("refuses a number outside the others, none at all, and no whole number of digits", () => {
    expect(worked("=PERCENTRANK({1,2,3},4)")).toMatchObject({
      code: "#NUM!",
      reason: "The number must be from 1 to 3, not 4",
    })
    expect(worked("=PERCENTRANK(T!A1:A3,4)")).toMatchObject({code: "#N/A"})
    expect(worked("=PERCENTRANK({1,2,3},2,1.5)")).toMatchObject({code: "#NUM!"})
    expect(worked("=PERCENTRANK({1,2,3},2,0)")).toMatchObject({
      code: "#NUM!",
      reason: "Digits after the point must be 1 or more, not 0",
    })
  })
})
