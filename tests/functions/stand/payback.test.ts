import {describe, expect, it} from "vitest"
import {payback} from "../../../functions/stand/payback"
import {flows, twelveYears} from "./testStand"

describe("payback", () => {
  it("is the year in which the running sum comes to 0 or more", () => {
    // -9 800 -11 300 -10 400 -6 800 -1 600 4 000; and the planting of testStand.ts: 1 000 at the end of year 7.
    expect(payback(twelveYears)).toBe(6)
    expect(payback(flows)).toBe(7)
    expect(payback([-100, 60, 40])).toBe(3)
  })
  it("never comes for a planting that does not earn its cost", () => {
    expect(payback([-100, 60, 39])).toEqual({
      refused: "Never in 3 years: 1 money/ha are still to be earned back",
      code: "#N/A",
    })
  })
})
