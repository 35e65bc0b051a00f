import {describe, expect, it} from "vitest"
import {density} from "../../../functions/crop/density"
import {cell} from "../cell"

describe("density", () => {
  // Gilsanz, J.C. and others, "Long-term effects of rows per bed and in-row spacing on yield and spear size of
  // asparagus", Clinton, North Carolina: 43 100 plants a hectare in place of 21 550 gave 64 to 80 % more over
  // 11 to 13 years in three hybrids.
  it("gains 64 to 80 % when 21 550 plants are doubled, with n0 of 65 600", () => {
    const gain = density(43100, 65600) / density(21550, 65600) - 1
    expect(gain).toBeGreaterThanOrEqual(0.64)
    expect(gain).toBeLessThanOrEqual(0.8)
    // By hand: doubling n gains exp(-n/n0); exp(-0.328506) = 0.7200.
    expect(gain).toBeCloseTo(0.72, 2)
  })
  it("gives 0.4816 at 43 100 plants", () => {
    // 43 100 / 65 600 = 0.657012; exp(-0.657012) = 0.5184.
    expect(density(43100, 65600)).toBeCloseTo(0.4816, 4)
  })
  it("starts at 0, has 1 - 1/e at n0, and nears 1", () => {
    expect(density(0, 65600)).toBe(0)
    expect(density(65600, 65600)).toBeCloseTo(1 - 1 / Math.E, 12)
    expect(density(1e7, 65600)).toBeCloseTo(1, 12)
  })
  it("gains exp(-n/n0) by doubling", () => {
    for (const plants of [8500, 20000, 66000])
      expect(density(2 * plants, 15000) / density(plants, 15000) - 1).toBeCloseTo(
        Math.exp(-plants / 15000),
        12,
      )
  })
  it("keeps a single plant in sight", () => expect(density(1, 1e12)).toBeCloseTo(1e-12, 20))
})

describe("CROP.DENSITY in a cell", () => {
  it("refuses n0 of 0 and plants below 0", () => {
    expect(cell("=CROP.DENSITY(43100,0)")).toMatchObject({code: "#NUM!"})
    expect(cell("=CROP.DENSITY(-1,65600)")).toMatchObject({code: "#NUM!"})
  })
})
