import {describe, expect, it} from "vitest"
import {betaAt, betaShare} from "../../src/studies/betaShare"

describe("the share of the beta distribution", () => {
  it("is x^a where b is 1, and the mirror of it where a is 1", () => {
    for (const x of [0.01, 0.3, 0.9]) {
      expect(betaShare(x, 3.4, 1)).toBeCloseTo(x ** 3.4, 13)
      expect(betaShare(x, 1, 2.6)).toBeCloseTo(1 - (1 - x) ** 2.6, 13)
    }
  })
  it("is a sum of binomial terms for whole numbers", () => {
    // I_x(2, 3) = 6x² - 8x³ + 3x⁴
    for (const x of [0.1, 0.5, 0.8])
      expect(betaShare(x, 2, 3)).toBeCloseTo(6 * x ** 2 - 8 * x ** 3 + 3 * x ** 4, 13)
  })
  it("is the arcsine law for two halves, and mirrors itself", () => {
    expect(betaShare(0.2, 0.5, 0.5)).toBeCloseTo((2 / Math.PI) * Math.asin(Math.sqrt(0.2)), 12)
    expect(betaShare(0.3, 5.375, 3.225) + betaShare(0.7, 3.225, 5.375)).toBeCloseTo(1, 13)
  })
  it("ends at 0 and 1", () => expect([betaShare(0, 2, 3), betaShare(1, 2, 3)]).toEqual([0, 1]))
  it("is undone by its inverse", () => {
    for (const [a, b] of [
      [3.4, 2.6],
      [5.375, 3.225],
      [0.7, 12],
      [200, 300],
    ] as const)
      for (const share of [1e-6, 0.1, 0.5, 0.9, 0.999])
        expect(betaShare(betaAt(share, a, b), a, b)).toBeCloseTo(share, 11)
  })
})
