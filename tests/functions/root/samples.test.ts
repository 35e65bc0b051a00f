import {describe, expect, it} from "vitest"
import {normalQuantile} from "../../../functions/root/normalQuantile"
import {samples} from "../../../functions/root/samples"
import {cell} from "../cell"

describe("samples", () => {
  it("rounds 10.8 up to 11 at a spread of 30, a margin of 15 and 0.9", () => {
    // (1.645·30/15)² = 10.82, with 1.645 from NIST/SEMATECH e-Handbook 1.3.6.7.2.
    expect(samples(30, 15, 0.9)).toBe(11)
  })
  it("does not round up what is a whole number but for the calculation", () => {
    // A spread of √n·margin/z needs just n plants.
    for (const n of [1, 2, 3, 17, 50, 250])
      expect(samples((Math.sqrt(n) * 15) / normalQuantile(0.9), 15, 0.9)).toBe(n)
  })
  it("reaches the margin with that many and not with one less", () => {
    for (const [spread, margin, confidence] of [
      [30, 7, 0.95],
      [60, 10, 0.8],
      [12, 5, 0.99],
    ] as const) {
      const half = (n: number) => (normalQuantile(confidence) * spread) / Math.sqrt(n)
      const n = samples(spread, margin, confidence)
      expect(half(n)).toBeLessThanOrEqual(margin)
      expect(half(n - 1)).toBeGreaterThan(margin)
    }
  })
  it("is one plant at least, also where all plants are alike", () => {
    expect(samples(0, 15, 0.9)).toBe(1)
    expect(samples(0.001, 15, 0.9)).toBe(1)
  })
})

describe("ROOT.SAMPLES in a cell", () => {
  it("takes 0.9 when no confidence is given", () => expect(cell("=ROOT.SAMPLES(30,15)")).toBe(11))

  it.each([
    ["=ROOT.SAMPLES(30,0)", "Margin wanted on either side of the mean must be above 0 mg/g, not 0 mg/g"],
    ["=ROOT.SAMPLES(-1,15)", "Standard deviation among plants must be 0 mg/g or more, not -1 mg/g"],
    ["=ROOT.SAMPLES(30,15,1)", "Confidence must be above 0 and up to 0.9999, not 1"],
  ])("refuses %s", (formula, reason) => {
    expect(cell(formula)).toEqual({code: "#NUM!", reason})
  })
})
