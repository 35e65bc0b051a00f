import {describe, expect, it} from "vitest"
import {atLeast, roundDown, roundUp, wholeIfNearly} from "../../functions/rounding"

describe("rounding", () => {
  it("takes a whole number that a calculation has blurred as that number", () => {
    // Both are 3, but doubles leave the first a hair below and the second a hair above.
    expect(0.3 / 0.1).toBeLessThan(3)
    expect(4.2 / 1.4).toBeGreaterThan(3)
    expect([roundUp(0.3 / 0.1), roundDown(0.3 / 0.1)]).toEqual([3, 3])
    expect([roundUp(4.2 / 1.4), roundDown(4.2 / 1.4)]).toEqual([3, 3])
  })
  it("leaves any other value as it is", () => {
    expect([wholeIfNearly(0.3 / 0.1), wholeIfNearly(2.001), wholeIfNearly(-2.5)]).toEqual([3, 2.001, -2.5])
  })
  it("rounds everything else outward", () => {
    expect([roundUp(2.001), roundDown(2.999)]).toEqual([3, 2])
    expect([roundUp(-2.999), roundDown(-2.001)]).toEqual([-2, -3])
  })
  it("gives a plain 0", () => {
    expect([roundUp(-0.4), roundUp(-0), roundDown(-0), roundDown(-1e-12)]).toEqual([0, 0, 0, 0])
  })
  it("takes a value a hair below a limit as at it", () => {
    expect(0.1 * 3 - 0.3).not.toBe(0)
    expect([atLeast(0.3, 0.1 * 3), atLeast(2, 1), atLeast(0.999, 1)]).toEqual([true, true, false])
  })
})
