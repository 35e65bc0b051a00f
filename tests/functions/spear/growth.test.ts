import {describe, expect, it} from "vitest"
import {daysBetween, growth} from "../../../functions/spear/growth"
import {cell} from "../cell"

const stretch = {Stretch_rate: 0.05, Stretch_base: 5}

describe("growth", () => {
  // Krarup, C., Contreras, S. (2002). Elongation and branching of asparagus spears during a spring harvest. Chilean
  // Journal of Agricultural Research, abstract: 0.22 to 1.07 a day, rising with temperature, seven cultivars alike.
  it("covers the range of Krarup & Contreras from 9.4 to 26.4 °C", () => {
    expect(growth(9.4, stretch)).toBeCloseTo(0.22, 12)
    expect(growth(26.4, stretch)).toBeCloseTo(1.07, 12)
  })
  it("is 0.25 a day at 10 °C and 1 at 25 °C", () => {
    // 0.05·(10 - 5) and 0.05·(25 - 5)
    expect([growth(10, stretch), growth(25, stretch)]).toEqual([0.25, 1])
  })
  it("stands still at the base and below", () => {
    expect([growth(5, stretch), growth(4, stretch), growth(-20, stretch)]).toEqual([0, 0, 0])
  })
})

describe("daysBetween", () => {
  it("doubles a length in the time that turns it into e times itself, times ln 2", () => {
    expect(daysBetween(10, 10 * Math.E, 25, stretch)).toBeCloseTo(1, 12)
    expect(daysBetween(10, 20, 25, stretch)).toBeCloseTo(Math.LN2, 12)
  })
})

describe("SPEAR.GROWTH", () => {
  it("follows the crop values given", () => {
    const rows = [
      ["Stretch_rate", 0.1],
      ["Stretch_base", 6],
    ]
    expect(cell("=SPEAR.GROWTH(10,T!A1:B2)", rows)).toBeCloseTo(0.4, 12) // 0.1·(10 - 6)
    expect(cell("=SPEAR.GROWTH(6,T!A1:B2)", rows)).toBe(0)
    expect(cell("=SPEAR.GROWTH(10,T!A1:B2)", [["Stretch_rate", null]])).toBe(0.25)
  })
  it("refuses a temperature no field has, a blank one and an unknown crop value", () => {
    expect(cell("=SPEAR.GROWTH(61)")).toEqual({
      code: "#NUM!",
      reason: "Mean air temperature must be from -60 to 60 °C, not 61 °C",
    })
    expect(cell("=SPEAR.GROWTH(T!A1)")).toEqual({
      code: "#N/A",
      reason: "Mean air temperature: not measured yet",
    })
    expect(cell("=SPEAR.GROWTH(10,T!A1:B1)", [["Stretch", 1]])).toEqual({
      code: "#VALUE!",
      reason: "There is no crop value named Stretch",
    })
  })
})
