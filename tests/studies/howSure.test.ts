import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {balanceDefaults} from "../../functions/root/balanceValues"
import {dailyBalance, driversOf, emptyCourse} from "../../functions/root/dailyBalance"
import {ASSUMED, drawPart, howSure, inputNames, quantiles, type HowSureInput} from "../../src/studies/howSure"
import {measureNext, widthFrom} from "../../src/studies/measureNext"
import {normal, randomOf, triangular} from "../../src/studies/random"
import {sites} from "../functions/root/sites"

const year = {first: dayOf("2026-01-01")!, days: 365}
const input: HowSureInput = {
  crowns: {structure: 6000, reserve: 6400},
  climate: sites.generic,
  year,
  open: 114,
  close: 169,
  healthy: [],
  values: balanceDefaults,
  likely: {},
  factor: 1,
  floor: null,
  sugarError: 0.05,
  factorError: 0.15,
  ...ASSUMED,
  seed: 7,
}
const certain = {
  ...input,
  sugarError: 0,
  massError: 0,
  factorError: 0,
  airSpread: 0,
  sunSpread: 0,
  valueSpread: 0,
}

describe("random numbers", () => {
  it("are the same for the same seed and draw, and others for the next", () => {
    const take = (seed: number, draw: number) => Array.from({length: 4}, randomOf(seed, draw))
    expect(take(7, 3)).toEqual(take(7, 3))
    expect(take(7, 3)).not.toEqual(take(7, 4))
    expect(take(7, 3)).not.toEqual(take(8, 3))
  })
  it("have the mean and deviation of their distributions", () => {
    const over = (draw: (random: () => number) => number) => {
      const values = Array.from({length: 20_000}, (_, i) => draw(randomOf(1, i)))
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length
      return [
        mean,
        Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length),
      ] as const
    }
    // Four standard errors of 20 000 draws: 4/√20 000 = 0.028 deviations.
    const [mean, deviation] = over(normal)
    expect(Math.abs(mean)).toBeLessThan(0.03)
    expect(Math.abs(deviation - 1)).toBeLessThan(0.03)
    // Triangular 0, 1, 4: mean 5/3, variance (0 + 1 + 16 - 0 - 0 - 4)/18.
    const [middle, wide] = over((random) => triangular(random, 0, 1, 4))
    expect(Math.abs(middle - 5 / 3)).toBeLessThan(0.03)
    expect(Math.abs(wide - Math.sqrt(13 / 18))).toBeLessThan(0.03)
    const [half] = over((random) => random())
    expect(Math.abs(half - 0.5)).toBeLessThan(0.01)
  })
})

describe("the study of how sure", () => {
  const parts = [drawPart(input, 0, 1000)]
  const found = howSure(parts, 1000)

  it("gives the same however the draws are shared out, and again with the same seed", () => {
    expect(
      howSure([drawPart(input, 400, 1000), drawPart(input, 5, 400), drawPart(input, 0, 5)], 1000),
    ).toEqual(found)
  })
  it("differs with another seed", () => {
    expect(howSure([drawPart({...input, seed: 8}, 0, 1000)], null)).not.toEqual(found)
  })
  it("is the plain balance when nothing is in doubt", () => {
    const course = dailyBalance(
      input.crowns,
      driversOf(sites.generic, year, balanceDefaults),
      {open: 114, stop: 170, fernEnd: 287},
      new Float64Array(365).fill(1),
      balanceDefaults,
      emptyCourse(365),
    )
    const sure = howSure([drawPart(certain, 0, 20)], null)
    for (const quantile of sure.picked) expect(quantile).toBeCloseTo(course.picked[364]!, 9)
    expect(sure.refill).toEqual([240, 240, 240, 240, 240]) // day 241 counted from 1: 29 August
    expect(sure.noRefill).toBe(0)
    const least = Math.min(...course.reserve)
    for (const quantile of sure.lowest) expect(quantile).toBeCloseTo(least, 9)
    expect(sure.underFloor).toBe(null)
    const under = (floor: number) => howSure([drawPart(certain, 0, 20)], floor).underFloor
    expect([under(least + 1), under(least)]).toEqual([1, 0])
    expect(sure.singles).toHaveLength(12)
    // Stores are kept in single precision, about 7 digits.
    for (const single of sure.singles)
      for (const [week, store] of single.entries())
        expect(Math.abs(store - course.reserve[Math.min(364, 7 * week + 6)]!)).toBeLessThan(0.001)
    expect(sure.pickedFrom).toEqual([])
  })
  it("nests its bands, and holds the plain balance in the middle one", () => {
    for (const [low, lower, middle, upper, high] of [found.picked, found.nextSugar, ...found.store]) {
      expect(low).toBeLessThanOrEqual(lower)
      expect(lower).toBeLessThanOrEqual(middle)
      expect(middle).toBeLessThanOrEqual(upper)
      expect(upper).toBeLessThanOrEqual(high)
    }
    const [, lower, , upper] = found.picked
    expect(lower).toBeLessThan(6363)
    expect(upper).toBeGreaterThan(6363)
  })
  it("counts the draws whose lowest store lies under the floor, as its quantiles do", () => {
    const under = (floor: number) => howSure(parts, floor).underFloor!
    for (const [i, share] of [0.1, 0.25, 0.5, 0.75, 0.9].entries())
      expect(Math.abs(under(found.lowest[i]!) - share)).toBeLessThan(0.002)
  })
  it("draws a crop value from its likely range, and from 20 % either way where it has none", () => {
    const {inputs} = drawPart({...input, likely: {Spear_dry: [0.065, 0.1], Cut_rate: [0.02, 0.03]}}, 0, 500)
    const drawn = (name: (typeof inputNames)[number]) =>
      Array.from({length: 500}, (_, row) => inputs[row * inputNames.length + inputNames.indexOf(name)]!)
    const within = (name: (typeof inputNames)[number], low: number, high: number) => {
      const [least, most] = [Math.min(...drawn(name)), Math.max(...drawn(name))]
      expect(least).toBeGreaterThanOrEqual(low)
      expect(most).toBeLessThanOrEqual(high)
      expect(most - least).toBeGreaterThan(0.8 * (high - low))
    }
    within("Spear_dry", 0.065, 0.1)
    within("Stub_share", 0.44, 0.66)
    within("Cut_rate", 0.0125, 0.03) // 0.0125 was typed below its likely range
  })
  it("names the one input that is in doubt as the whole of the width", () => {
    const only = howSure([drawPart({...certain, factorError: 0.2}, 0, 400)], null)
    expect(only.pickedFrom[0]).toMatchObject({name: "own record"})
    // The crop is the factor times a constant: its correlation with it is 1; the others are chance, 1/√400 = 0.05.
    expect(only.pickedFrom[0]!.share).toBeGreaterThan(0.9)
    expect(only.pickedFrom.reduce((sum, {share}) => sum + share, 0)).toBeCloseTo(1, 9)
    expect(inputNames).toContain(only.pickedFrom[1]!.name)
  })
  it("tells progress up to the whole", () => {
    const shares: number[] = []
    drawPart(input, 0, 200, (share) => shares.push(share))
    expect(shares).toEqual([0.5, 1])
  })
})

it("takes quantiles with straight lines between the sorted values", () => {
  // 0 to 10 in any order: each tenth is its own value.
  expect(quantiles(Float64Array.of(10, 3, 7, 0, 5, 1, 9, 2, 8, 4, 6))).toEqual([1, 2.5, 5, 7.5, 9])
})

describe("words for what was found", () => {
  const from = (...names: [string, number][]) =>
    ({pickedFrom: names.map(([name, share]) => ({name, share}))}) as const
  it("name the inputs with their share", () => {
    expect(widthFrom(from(["own record", 0.5], ["Cut_rate", 0.3], ["root mass", 0.004]))).toBe(
      "own record 50 %, cut rate 30 %",
    )
  })
  it("pass over the weather, which nobody can measure beforehand", () => {
    expect(measureNext(from(["warmth of the year", 0.6], ["root mass", 0.3]), 0.05, 10)).toMatch(
      /^Dig and weigh/,
    )
    expect(measureNext(from(["warmth of the year", 1]), 0.05, 10)).toMatch(/^Nothing/)
  })
  it("count the plants that would halve the error of the sugar", () => {
    // (0.2² + 0.06²)/0.033² = 40.04 plants, 41 rounded up; ten are there.
    expect(measureNext(from(["sugar of the root sample", 1]), 0.066, 10)).toBe(
      "Sample 31 more plants for sugar: the error of the mean falls from 6.6 to about 3.3 %.",
    )
  })
})
