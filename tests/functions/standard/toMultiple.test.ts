import {describe, expect, it} from "vitest"
import {worked} from "./sheet"

// OASIS (2011). OpenDocument 1.2 part 2, 6.17.1 and 6.17.3: without a way, or with 0, towards plus (CEILING) or minus
// (FLOOR) infinity; with another, by the absolute value, away from 0 (CEILING) or towards it (FLOOR).
describe("CEILING and FLOOR", () => {
  it.each([
    ["CEILING(-2.5,-1)", -2],
    ["FLOOR(-2.5,-1)", -3],
    ["CEILING(-2.5,-1,1)", -3],
    ["FLOOR(-2.5,-1,1)", -2],
    ["CEILING(2.5,1)", 3],
    ["FLOOR(2.5,1)", 2],
    ["CEILING(7,5)", 10],
    ["FLOOR(7,5)", 5],
    ["CEILING(-11,-2)", -10],
    ["FLOOR(-11,-2)", -12],
    ["CEILING(-4,-2)", -4],
    ["FLOOR(-4,-2)", -4],
  ])("%s is %f", (call, wanted) => expect(worked(`=${call}`)).toBe(wanted))

  it("take 1 for a multiple that is left out, so that they are the mathematical ceiling and floor", () => {
    for (const number of [-2.5, -2, 0, 2, 2.5]) {
      expect(worked(`=CEILING(${number})`)).toBe(Math.ceil(number))
      expect(worked(`=FLOOR(${number})`)).toBe(Math.floor(number))
    }
    expect(worked("=CEILING(-2.5,,1)")).toBe(-3) // an empty parameter counts as left out
  })
  it("give 0 when either number is 0", () => {
    for (const call of ["CEILING(0,5)", "CEILING(5,0)", "FLOOR(0,5)", "FLOOR(-5,0)"])
      expect(worked(`=${call}`)).toBe(0)
  })
  it("keep a number that is a multiple but for the last bits", () => {
    expect(worked("=CEILING(0.3,0.1)")).toBeCloseTo(0.3, 12) // 0.3/0.1 is 2.9999999999999996 in binary
    expect(worked("=FLOOR(0.3,0.1)")).toBeCloseTo(0.3, 12)
  })
  it("refuse a multiple below 0 for a number above 0", () => {
    for (const name of ["CEILING", "FLOOR"])
      expect(worked(`=${name}(2.5,-1)`)).toMatchObject({
        code: "#NUM!",
        reason: "The multiple must be above 0 for a number above 0, not -1",
      })
  })
})
