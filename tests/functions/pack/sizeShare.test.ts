import {describe, expect, it} from "vitest"
import {sizeShare} from "../../../functions/pack/sizeShare"
import {cell} from "../cell"

describe("sizeShare", () => {
  it("is the normal share of the logarithms", () => {
    // ln(9.525/12)/0.30 = -0.76996; the normal share below it is 0.2207 (table 26.1 of Abramowitz & Stegun, from memory).
    expect(sizeShare(12, 0.3, 0, 9.525, "count")).toBeCloseTo(0.2207, 4)
  })
  it("parts at the median, and adds up to the whole", () => {
    expect(sizeShare(12, 0.3, 0, 12, "count")).toBeCloseTo(0.5, 12)
    const edges = [0, 7.94, 12.7, 17.46, 22.23, 1000]
    for (const by of ["count", "weight"] as const) {
      const parts = edges.slice(1).map((to, row) => sizeShare(12, 0.3, edges[row]!, to, by) as number)
      expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 12)
    }
  })
  it("by weight is the share by count with each spear taken as the square of its diameter", () => {
    // Slices of 0.01 mm, each weighed at its middle.
    let [below, all] = [0, 0]
    for (let d = 0; d < 80; d += 0.01) {
      const weight = (sizeShare(12, 0.3, d, d + 0.01, "count") as number) * (d + 0.005) ** 2
      all += weight
      if (d < 11.995) below += weight
    }
    expect(sizeShare(12, 0.3, 0, 12, "weight")).toBeCloseTo(below / all, 5)
  })
})

describe("PACK.SIZE_SHARE", () => {
  it("counts spears where nothing else is said", () => {
    expect(cell("=PACK.SIZE_SHARE(12,0.3,0,12,T!A1)")).toBeCloseTo(0.5, 12)
    expect(cell('=PACK.SIZE_SHARE(12,0.3,0,12,"weight")')).toBeLessThan(0.5)
  })
  it.each([
    ["12,0.3,12,12", "#NUM!", "Upper diameter (12 mm) is not above the lower (12 mm)"],
    ["12,0,0,12", "#NUM!", "Deviation of the logarithms of the diameters must be above 0 and up to 2, not 0"],
    ['12,0.3,0,12,"number"', "#VALUE!", 'Share by must be one of "count", "weight", not the text "number"'],
  ])("refuses %s", (given, code, reason) => {
    expect(cell(`=PACK.SIZE_SHARE(${given})`)).toEqual({code, reason})
  })
})
