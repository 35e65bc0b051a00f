import {describe, expect, it} from "vitest"
import {shareUnder} from "../../../functions/spear/shareUnder"
import {cell} from "../cell"

describe("shareUnder", () => {
  it("counts the spears below the limit", () => {
    // Of 20 spears the 3 of 8 mm are thinner than 9.5 mm.
    expect(shareUnder([8, 10, 12, 14], 9.5, [3, 9, 6, 2])).toBe(3 / 20)
    expect(shareUnder([8, 10, 12, 14], 9.5, null)).toBe(1 / 4)
  })
  it("does not count a spear of just the limit", () => {
    expect(shareUnder([9.5, 9.4], 9.5, null)).toBe(0.5)
  })
  it("runs from 0 below the thinnest to 1 above the thickest", () => {
    expect(shareUnder([8, 10], 7, [4, 1])).toBe(0)
    expect(shareUnder([8, 10], 11, [4, 1])).toBe(1)
  })
  it("refuses counts that add up to 0", () => {
    expect(shareUnder([8], 9.5, [0])).toEqual({refused: "Spears counted add up to 0", code: "#DIV/0!"})
  })
})

describe("SPEAR.SHARE_UNDER", () => {
  it("leaves out a row with a blank in it, diameter and count together", () => {
    const rows = [
      [8, 3],
      [9, null],
      [null, 9],
      [14, 1],
    ]
    expect(cell("=SPEAR.SHARE_UNDER(T!A1:A4,9.5,T!B1:B4)", rows)).toBe(0.75)
  })
  it("says that nothing is measured yet, and refuses a limit that is no spear's diameter", () => {
    expect(cell("=SPEAR.SHARE_UNDER(T!A1:A2,9.5)")).toEqual({
      code: "#N/A",
      reason: "Spear diameters: not measured yet",
    })
    expect(cell("=SPEAR.SHARE_UNDER({8,10},0)")).toEqual({
      code: "#NUM!",
      reason: "Diameter limit must be above 0 and up to 60 mm, not 0 mm",
    })
  })
})
