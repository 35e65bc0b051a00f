import {describe, expect, it} from "vitest"
import {quantiles} from "../../src/studies/howSure"
import {keyOf, normalOf} from "../../src/studies/streams"
import {correlation, mean} from "./moments"

const DRAWS = 20_000
const stream = (key: number, seed = 7) =>
  Float64Array.from({length: DRAWS}, (_, draw) => normalOf(seed, draw, key))
describe("draws by key", () => {
  it("are the same for seed, draw and key, and others when one of them differs", () => {
    expect(normalOf(7, 3, 99)).toBe(normalOf(7, 3, 99))
    expect(
      new Set([normalOf(7, 3, 99), normalOf(8, 3, 99), normalOf(7, 4, 99), normalOf(7, 3, 98)]).size,
    ).toBe(4)
  })
  it("have mean 0, deviation 1 and the percentiles of the normal distribution", () => {
    const values = stream(keyOf("yield", 2027))
    // Four standard errors: 4/√20 000 = 0.028; of a tenth, 4·0.3/(√20 000·0.1755) = 0.048.
    expect(Math.abs(mean(values))).toBeLessThan(0.03)
    expect(Math.abs(Math.sqrt(mean(values.map((z) => z * z))) - 1)).toBeLessThan(0.02)
    const [low, , middle, , high] = quantiles(values)
    expect(Math.abs(low + 1.2816)).toBeLessThan(0.05)
    expect(Math.abs(middle)).toBeLessThan(0.04)
    expect(Math.abs(high - 1.2816)).toBeLessThan(0.05)
  })
  it("of names, years and seeds that differ by little have nothing to do with one another", () => {
    const streams = [
      stream(keyOf("field", "Field 1", 2026)),
      stream(keyOf("field", "Field 1", 2027)),
      stream(keyOf("field", "Field 2", 2026)),
      stream(keyOf("price", 2026)),
      stream(keyOf("price", 2026), 8),
    ]
    for (const [i, one] of streams.entries())
      for (const other of streams.slice(i + 1)) expect(Math.abs(correlation(one, other))).toBeLessThan(0.03)
  })
  it("tell names apart that run together", () => {
    expect(keyOf("a", "bc")).not.toBe(keyOf("ab", "c"))
    const keys = Array.from({length: 2000}, (_, i) =>
      keyOf("field", `Field ${i % 50}`, 2026 + Math.floor(i / 50)),
    )
    expect(new Set(keys).size).toBe(2000)
  })
  it.each([
    // Five fields of mean 100 and deviation 25: P10 = 500 - 1.2815516·25·√(5(1 + 4ρ)), worked out by hand.
    [0, 428.359],
    [0.36, 388.093],
    [1, 339.806],
  ])("add up over five fields at correlation %s to a P10 of %s", (rho, expected) => {
    const year = stream(keyOf("yield", 2026))
    const fields = [1, 2, 3, 4, 5].map((field) => stream(keyOf("field", field, 2026)))
    const farm = year.map((z, draw) =>
      fields.reduce((sum, own) => sum + 100 + 25 * (Math.sqrt(rho) * z + Math.sqrt(1 - rho) * own[draw]!), 0),
    )
    const error = (Math.sqrt(0.09 / DRAWS) / 0.1755) * 25 * Math.sqrt(5 * (1 + 4 * rho))
    expect(Math.abs(quantiles(farm)[0] - expected)).toBeLessThan(4 * error)
  })
})
