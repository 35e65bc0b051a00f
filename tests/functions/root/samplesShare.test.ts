import {describe, expect, it} from "vitest"
import {samples} from "../../../functions/root/samples"
import {samplesShare} from "../../../functions/root/samplesShare"
import {cell} from "../cell"

// Feller, C., Fink, M. (2007). Refraction as a measure of soluble carbohydrates in storage roots of asparagus.
// HortScience 42, 57-60, abstract: coefficient of variation 20 % among plants of a field, 6 % among roots of a plant.
const [between, within] = [0.2, 0.06]

describe("samplesShare", () => {
  it.each([
    // 1.96²·(0.2² + 0.06²)/0.1² = 3.8416·0.0436/0.01 = 16.7, and 67.0 less a hair at half the margin.
    [0.1, 17],
    [0.05, 67],
  ])("for a margin of %s needs %s plants", (margin, plants) => {
    expect(samplesShare(margin, between, within, 1, 0.95)).toBe(plants)
  })
  it.each([
    // Half-width at 95 % by hand, 1.96·√(0.0436/n), rounded up in the last digit so that n plants just reach it.
    [0.184, 5],
    [0.13, 10],
    [0.106, 15],
    [0.0916, 20],
    [0.0748, 30],
    [0.0579, 50],
    [0.049, 70],
  ])("for a margin of %s needs %s plants, as the half-width says", (margin, plants) => {
    expect(samplesShare(margin, between, within, 1, 0.95)).toBe(plants)
  })
  it("hardly gains by more roots of a plant", () => {
    // With 5 roots 0.04 + 0.0036/5 = 0.04072 in place of 0.0436: 62.6 in place of 67.0.
    expect(samplesShare(0.05, between, within, 5, 0.95)).toBe(63)
  })
  it("is ROOT.SAMPLES of the spread and margin in shares, without variation in a plant", () => {
    expect(samplesShare(0.07, 0.3, 0, 1, 0.8)).toBe(samples(0.3, 0.07, 0.8))
  })
  it("is one plant at least", () => expect(samplesShare(0.1, 0, 0, 1, 0.95)).toBe(1))
})

describe("ROOT.SAMPLES_SHARE in a cell", () => {
  it("takes the published variation, one root and 0.95 by default", () => {
    expect(cell("=ROOT.SAMPLES_SHARE(0.05)")).toBe(cell("=ROOT.SAMPLES_SHARE(0.05,0.2,0.06,1,0.95)"))
    expect(cell("=ROOT.SAMPLES_SHARE(0.05)")).toBe(67)
  })
  it("refuses a margin of 0 and a part of a root", () => {
    expect(cell("=ROOT.SAMPLES_SHARE(0)")).toEqual({
      code: "#NUM!",
      reason: "Margin wanted on either side, as a share of the mean must be above 0, not 0",
    })
    expect(cell("=ROOT.SAMPLES_SHARE(0.1,0.2,0.06,0)")).toMatchObject({code: "#NUM!"})
    expect(cell("=ROOT.SAMPLES_SHARE(0.1,0.2,0.06,1.5)")).toMatchObject({code: "#NUM!"})
  })
})
