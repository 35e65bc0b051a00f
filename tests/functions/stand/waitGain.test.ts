import {describe, expect, it} from "vitest"
import {waitGain} from "../../../functions/stand/waitGain"

describe("waitGain", () => {
  it("is today's worth of what the year brings above the interest on the ground", () => {
    // (700 - 0.06 x 9 565.9072)/1.06 = 118.9109
    expect(waitGain(700, 9565.9072, 0.06, 0, 0)).toBeCloseTo(118.9109, 4)
  })
  it("turns at the interest on the ground less the clearing", () => {
    // 0.06 x (8 650.4371 - 250) = 504.03: a year that brings 560 is worth waiting for, one of 380 is not.
    expect(waitGain(504.03, 8650.4371, 0.06, 250, 0)).toBeCloseTo(0, 2)
    expect(waitGain(560, 8650.4371, 0.06, 250, 0)).toBeGreaterThan(0)
    expect(waitGain(380, 8650.4371, 0.06, 250, 0)).toBeLessThan(0)
  })
  it("turns at the rate less the growth, times the ground, when returns grow", () => {
    expect(waitGain((0.06 - 0.02) * 12000, 12000, 0.06, 0, 0.02)).toBeCloseTo(0, 9)
  })
})
