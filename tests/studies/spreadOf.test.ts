import {describe, expect, it} from "vitest"
import {normalAt} from "../../src/studies/normalAt"
import {chanceOf, percentileError, spreadOf} from "../../src/studies/spreadOf"

describe("spreadOf", () => {
  it("takes percentiles by type 7, the mean, and the mean of the worst tenth", () => {
    // 1 to 10: numpy.percentile gives 1.9, 5.5 and 9.1; deviation √(82.5/9), its error that over √10.
    const {at, mean, meanError, worstTenth} = spreadOf(Float64Array.of(4, 8, 1, 10, 2, 9, 3, 6, 5, 7))
    expect(at[0]).toBeCloseTo(1.9, 12)
    expect(at[2]).toBeCloseTo(5.5, 12)
    expect(at[4]).toBeCloseTo(9.1, 12)
    expect([mean, worstTenth]).toEqual([5.5, 1])
    expect(meanError).toBeCloseTo(Math.sqrt(82.5 / 9 / 10), 12)
  })
  it("rounds the worst tenth up to whole draws", () => {
    expect(spreadOf(Float64Array.from({length: 11}, (_, i) => i)).worstTenth).toBe(0.5)
  })
  it("leaves the values in their order", () => {
    const values = Float64Array.of(3, 1, 2)
    spreadOf(values)
    expect([...values]).toEqual([3, 1, 2])
  })
})

describe("percentileError", () => {
  // √(p(1 - p)/N)/f(x) for the normal distribution: 0.3/√N/0.17550 at a tenth.
  it.each([500, 1000, 5000, 10_000])(
    "agrees with the density of a known distribution for %s draws",
    (draws) => {
      const sorted = Float64Array.from({length: draws}, (_, i) =>
        Math.exp(0.24622068 * normalAt((i + 0.5) / draws)),
      )
      const low = Math.exp(0.24622068 * normalAt(0.1))
      const expected = ((0.3 / Math.sqrt(draws)) * 0.24622068) / 0.17549833
      expect(percentileError(sorted, 0.1) / low / expected).toBeCloseTo(1, 1)
    },
  )
  it("of a lognormal of variation 0.25 is 1.33 % of its tenth with 1 000 draws", () => {
    const sorted = Float64Array.from({length: 1000}, (_, i) =>
      Math.exp(0.24622068 * normalAt((i + 0.5) / 1000)),
    )
    expect(
      Math.abs(percentileError(sorted, 0.1) / Math.exp(0.24622068 * normalAt(0.1)) - 0.01331),
    ).toBeLessThan(5e-4)
  })
})

describe("chanceOf", () => {
  const values = Float64Array.from({length: 1000}, (_, i) => i)
  it("is the share of the draws, with the error of a share", () => {
    const {share, error} = chanceOf(values, (value) => value < 100)
    expect(share).toBe(0.1)
    expect(Math.abs(error - 0.0095)).toBeLessThan(1e-4) // √(0.1·0.9/1000)
  })
  it("is not sure of what never came up", () => {
    const {share, error} = chanceOf(values, (value) => value < 0)
    expect(share).toBe(0)
    expect(error).toBeCloseTo(Math.sqrt(((2 / 1004) * (1002 / 1004)) / 1004), 12)
  })
})
