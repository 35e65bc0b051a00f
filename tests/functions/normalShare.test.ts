import {describe, expect, it} from "vitest"
import {normalQuantile} from "../../functions/root/normalQuantile"
import {normalShare} from "../../functions/normalShare"

describe("the share of the normal distribution below z", () => {
  it.each([
    // Abramowitz & Stegun (1964), Handbook of Mathematical Functions, table 26.1 (from memory).
    [0, 0.5],
    [1, 0.841344746068543],
    [2, 0.977249868051821],
    [-3, 0.00134989803163],
  ])("at %s is %s", (z, share) => expect(normalShare(z)).toBeCloseTo(share, 14))
  it("is one less the share below the other side", () => {
    for (const z of [0.3, 1.7, 4, 8.9]) expect(normalShare(-z) + normalShare(z)).toBeCloseTo(1, 15)
  })
  it("undoes the quantile", () => {
    for (const p of [0.5, 0.8, 0.95]) expect(2 * normalShare(normalQuantile(p)) - 1).toBeCloseTo(p, 13)
  })
  it("ends at 0 and 1 without a step", () => {
    expect([normalShare(-Infinity), normalShare(-9.1)]).toEqual([0, 0])
    expect([normalShare(9.1), normalShare(Infinity)]).toEqual([1, 1])
    expect(normalShare(-9)).toBeCloseTo(0, 15)
  })
})
