import {describe, expect, it} from "vitest"
import {heat} from "../../../functions/spear/heat"

// Nugent, J. "Calculating Growing Degree Days". Michigan State University Extension. Averaging
// method, base 50 °F. Printed to one decimal of a °F day, so agreement is to half of that.
const nugent = [
  {highF: 65, lowF: 40, baseF: 50, printed: 2.5},
  {highF: 60, lowF: 35, baseF: 50, printed: 0},
]
const celsius = (f: number) => ((f - 32) * 5) / 9
const HALF_A_PRINTED_DIGIT = (0.05 * 5) / 9

describe("heat", () => {
  it.each(nugent)("gives Nugent's $printed °F day at $highF/$lowF °F", ({highF, lowF, baseF, printed}) => {
    const gained = heat(celsius(highF), celsius(lowF), celsius(baseF), null)
    expect(Math.abs((gained as number) - (printed * 5) / 9)).toBeLessThanOrEqual(HALF_A_PRINTED_DIGIT)
  })
  it("takes Method 1, not Method 2, on a day that straddles the base", () => {
    // Method 2 would lift 35 °F to 50 °F first and give (60 + 50) / 2 - 50 = 5 °F day.
    expect(heat(celsius(60), celsius(35), celsius(50), null)).toBe(0)
  })
  it("gains one °C day for each °C both temperatures rise, above the base", () => {
    expect(heat(21, 13, 7, null)).toBe((heat(20, 12, 7, null) as number) + 1)
  })
  it("does not count what the mean has above the cap", () => {
    // Mean 26 °C, counted as 25: 25 - 5 = 20.
    expect(heat(32, 20, 5, 25)).toBe(20)
    expect(heat(26, 20, 5, 25)).toBe(18)
  })
  it("refuses a highest temperature below the lowest", () => {
    expect(heat(10, 12, 7, null)).toEqual({
      refused: "Highest temperature (10 °C) is below the lowest (12 °C)",
      code: "#NUM!",
    })
  })
})
