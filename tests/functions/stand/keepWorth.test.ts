import {describe, expect, it} from "vitest"
import {keepWorth, keepWorths} from "../../../functions/stand/keepWorth"
import {waitGain} from "../../../functions/stand/waitGain"
import {cell} from "../cell"

const GROUND = 9565.9072

describe("keepWorth", () => {
  it("is right for a field past its best", () => {
    // Invented nets against the planting of testStand.ts, checked in two languages.
    const worths = keepWorths([700, 520, 340, 160], GROUND, 0.06, 0)
    for (const [years, worth] of [9565.9072, 9684.8181, 9636.7988, 9440.3662, 9112.4755].entries())
      expect(worths[years]).toBeCloseTo(worth, 3)
  })
  it("is right for a field after a setback", () => {
    const worths = keepWorths([-200, 900, 1300, 1300, 1100, 900, 700, 500], GROUND, 0.06, 0)
    const expected = [8835.76, 9125.94, 9735.54, 10310.64, 10703.73, 10933.58, 11017.41, 10971.01]
    for (const [i, worth] of expected.entries()) expect(Math.abs(worths[i + 1]! - worth)).toBeLessThan(0.0051)
    expect(worths[7]).toBeCloseTo(11017.4075, 3)
  })
  it("pays the clearing when the crop goes", () => {
    // (1 000 + 5 000 - 350)/1.1 = 5 136.36 after a year, 5 000 - 350 now.
    expect(keepWorth([1000], 1, 5000, 0.1, 350)).toBeCloseTo(5650 / 1.1, 9)
    expect(keepWorth([1000], 0, 5000, 0.1, 350)).toBe(4650)
  })
  it("grows from no year to one by the gain of waiting", () => {
    const [now, later] = keepWorths([700], GROUND, 0.06, 250)
    expect(later! - now!).toBeCloseTo(waitGain(700, GROUND, 0.06, 250, 0), 9)
  })
})

it("STAND.KEEP_WORTH refuses more years than there is cash for", () => {
  expect(cell("=STAND.KEEP_WORTH({700,520},3,9000,0.06)")).toEqual({
    code: "#NUM!",
    reason: "Years kept (3) are more than the 2 years of net cash",
  })
})
