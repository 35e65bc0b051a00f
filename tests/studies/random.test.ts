import {describe, expect, it} from "vitest"
import {randomOf, sfc32} from "../../src/studies/random"
import {keyOf, normalOf} from "../../src/studies/streams"

describe("the generator", () => {
  it("gives the printed numbers of sfc32", () => {
    // Reference vector of PractRand's sfc32 (Doty-Humphrey) as carried by the repository rust-random/rngs: a = 0, b = 2, c = 1,
    // counter = 1, the first 15 numbers left out.
    const next = sfc32(0, 2, 1)
    expect([next(), next(), next(), next()]).toEqual([0x03b80bb8, 0xa87dbc7e, 0x1787178c, 0x4c7b7234])
  })

  // By a program of our own in Python 3 with whole numbers of 32 bits; the normal scores by scipy 1.17 (norm.ppf).
  it.each([
    [1, 0, keyOf("yield", 2026), 57365165, 0x0b775979, -1.697618663385105],
    [1, 9999, keyOf("price", 2027), 494372578, 0xec491e10, 1.425479531056714],
    [7, 3, keyOf("field", "Long Acre", 2030), 4262309723, 0x46d4080c, -0.5927541653867282],
    [2026, 41, keyOf("field", "Long Acre"), 4225668545, 0xa09f4602, 0.3250551144520076],
  ])("gives the same digits for seed %s and draw %s elsewhere", (seed, draw, key, words, number, score) => {
    expect(key >>> 0).toBe(words)
    expect(randomOf(seed ^ key, draw)()).toBe(number / 2 ** 32)
    expect(Math.abs(normalOf(seed, draw, key) - score)).toBeLessThan(1e-13)
  })
})
