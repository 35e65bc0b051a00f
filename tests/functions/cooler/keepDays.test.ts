import {describe, expect, it} from "vitest"
import {keepDays} from "../../../functions/cooler/keepDays"
import {cell} from "../cell"

describe("keepDays", () => {
  it("falls by the same factor each ten degrees", () => {
    expect(keepDays(1, 18, 2.57)).toBe(18)
    expect(keepDays(11, 18, 2.57)).toBeCloseTo(18 / 2.57, 12)
    expect(keepDays(21, 18, 2.57)).toBeCloseTo(18 / 2.57 ** 2, 12)
  })
  it("lies in the published range at 2 °C", () => {
    // Suslow, UC Davis: 14 to 21 days at 2 °C.
    expect(keepDays(2, 18, 2.57)).toBeGreaterThan(14)
    expect(keepDays(2, 18, 2.57)).toBeLessThan(21)
  })
  it("comes to the 3 days at 20 °C that it assumes", () => {
    expect(keepDays(20, 18, 2.57)).toBeCloseTo(3, 1)
  })
})

describe("COOLER.KEEP_DAYS", () => {
  it.each([
    [2, 16.4], // 18·2.57^-0.1
    [5, 12.3],
    [10, 7.7],
    [15, 4.8],
  ])("at %s °C is %s days by default", (temperature, days) =>
    expect(cell(`=COOLER.KEEP_DAYS(${temperature})`)).toBeCloseTo(days, 1),
  )
  it("refuses to freeze", () => {
    // Suslow, UC Davis: freezes at -0.6 °C.
    expect(cell("=COOLER.KEEP_DAYS(-0.7)")).toEqual({
      code: "#NUM!",
      reason: "Asparagus freezes at -0.6 °C, and -0.7 °C is given",
    })
    expect(cell("=COOLER.KEEP_DAYS(-0.5)")).toBeGreaterThan(18)
  })
  it("refuses to keep longer in the warm", () =>
    expect(cell("=COOLER.KEEP_DAYS(5,18,0.5)")).toMatchObject({code: "#NUM!"}))
})
