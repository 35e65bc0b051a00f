import {describe, expect, it} from "vitest"
import {yieldFactors} from "../../src/studies/yieldFactors"

const study = {seed: 1, firstYear: 2026, fieldSpread: 0.2}
const usual = [0, 0, 0]

describe("yieldFactors", () => {
  it("are those of the year alone where nothing of the field is left to chance", () => {
    const of = yieldFactors({...study, fieldSpread: 0}, "Long Acre", 0, 2)
    expect(of(5, [Math.log(0.8), Math.log(1.1)])[0]).toBeCloseTo(0.8, 12)
    expect(of(5, [Math.log(0.8), Math.log(1.1)])[1]).toBeCloseTo(1.1, 12)
  })

  it("have the mean 1, and the spread of both chances together", () => {
    const of = yieldFactors(study, "Long Acre", 0.15, 3)
    const logs = Array.from({length: 20_000}, (_, draw) => Math.log(of(draw, usual)[1]!))
    const mean = (all: readonly number[]) => all.reduce((sum, one) => sum + one, 0) / all.length
    expect(Math.abs(mean(logs.map(Math.exp)) - 1)).toBeLessThan(0.01)
    const middle = mean(logs)
    // The variance of a sum of independent parts: 0.2² + 0.15² = 0.0625, a deviation of 0.25.
    expect(Math.abs(Math.sqrt(mean(logs.map((one) => (one - middle) ** 2))) - 0.25)).toBeLessThan(0.005)
  })

  it("carry the doubt about a field through all its years", () => {
    const of = yieldFactors({...study, fieldSpread: 0}, "Long Acre", 0.15, 3)
    const [first, ...others] = of(9, usual)
    expect(first).not.toBe(1)
    expect(others).toEqual([first, first])
  })

  it("belong to the field's name and the calendar year", () => {
    const of = (name: string, firstYear: number) =>
      yieldFactors({...study, firstYear}, name, 0.15, 3)(4, usual)
    expect(of("Long Acre", 2027).slice(0, 2)).toEqual(of("Long Acre", 2026).slice(1))
    expect(of("Well Field", 2026)).not.toEqual(of("Long Acre", 2026))
  })
})
