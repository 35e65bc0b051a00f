import {describe, expect, it} from "vitest"
import {drawn, logSpread, type Distribution} from "../../src/studies/distribution"

const TENTH = -1.2815515655446004

// Values of the reference library scipy (stats.lognorm, beta, truncnorm), to the digits given.
describe.each<
  [
    string,
    Distribution,
    mean: number,
    deviation: number,
    tenths: [low: number, middle: number | null, high: number],
  ]
>([
  [
    "lognormal, mean 5 000, variation 0.25",
    {shape: "lognormal", mean: 5000, variation: 0.25},
    5000,
    1250,
    [3538.069, 4850.7125, 6650.354],
  ],
  [
    "judged from 2 000 by 5 000 to 7 000",
    {shape: "judged", least: 2000, likely: 5000, most: 7000},
    4833.3333,
    936.4743,
    [3550.552, 4872.65, 6056.9],
  ],
  [
    "bounded by 8 000, mean 5 000, deviation 1 250",
    {shape: "bounded", mean: 5000, deviation: 1250, most: 8000},
    5000,
    1250,
    [3292.644, 5080.77, 6590.9],
  ],
  [
    "normal, 5 000 and 1 500, cut at 0 and 8 000",
    {shape: "cut normal", mean: 5000, deviation: 1500, least: 0, most: 8000},
    4919.4601,
    1408.1716,
    [3061.42, null, 6759.24],
  ],
])("%s", (_, typed, mean, deviation, [low, middle, high]) => {
  const {at, ...moments} = drawn(typed)
  it("has the mean and deviation", () => {
    expect(Math.abs(moments.mean - mean)).toBeLessThan(1e-3)
    expect(Math.abs(moments.deviation - deviation)).toBeLessThan(1e-3)
  })
  it("has the tenth, the middle and the ninth tenth", () => {
    expect(Math.abs(at(TENTH) - low)).toBeLessThan(0.006)
    expect(Math.abs(at(-TENTH) - high)).toBeLessThan(0.006)
    if (middle !== null) expect(Math.abs(at(0) - middle)).toBeLessThan(0.006)
  })
  it("rises with the score, and its mean over even steps of the share is its mean", () => {
    const steps = 2000
    // Even steps of z, weighed by the normal density.
    let [sum, weight, before] = [0, 0, -Infinity]
    for (let i = 0; i <= steps; i++) {
      const z = -6 + (12 * i) / steps
      const density = Math.exp((-z * z) / 2)
      const value = at(z)
      expect(value).toBeGreaterThanOrEqual(before)
      before = value
      sum += value * density
      weight += density
    }
    expect(sum / weight / mean).toBeCloseTo(1, 5)
  })
})

describe("a price without doubt", () => {
  it.each<Distribution>([
    {shape: "lognormal", mean: 2.4, variation: 0},
    {shape: "judged", least: 2.4, likely: 2.4, most: 2.4},
    {shape: "bounded", mean: 2.4, deviation: 0, most: 5},
  ])("is the same at every score: %o", (typed) => {
    const {mean, deviation, at} = drawn(typed)
    expect([mean, deviation, at(-3), at(2)]).toEqual([2.4, 0, 2.4, 2.4])
  })
})

it("turns a variation into the deviation of logarithms", () => {
  expect(logSpread(0.25)).toBeCloseTo(0.24622068, 8) // √ln 1.0625
})

it.each<[Distribution, RegExp]>([
  [{shape: "judged", least: 3, likely: 2, most: 4}, /do not rise/],
  [{shape: "bounded", mean: 5, deviation: 4, most: 8}, /No beta curve/],
  [{shape: "cut normal", mean: 5, deviation: 1, least: 8, most: 8}, /Nothing is left/],
])("throws at numbers that make no distribution: %o", (typed, message) => {
  expect(() => drawn(typed)).toThrow(message)
})
