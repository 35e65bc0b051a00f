import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {trend} from "../../../functions/spear/trend"
import {cell} from "../cell"

// Anscombe, F.J. (1973). Graphs in statistical analysis. The American Statistician 27, 17-21. The first three
// sets share their x; the least-squares line of each is printed as y = 3.00 + 0.500x.
const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5]
const anscombe = {
  I: [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68],
  II: [9.14, 8.14, 8.74, 8.77, 9.26, 8.1, 6.13, 3.1, 9.13, 7.26, 4.74],
  III: [7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73],
}
const first = dayOf("2026-05-04")!
const days = [0, 7, 14, 21].map((later) => first + later)
const diameters = [13.1, 12.4, 11.6, 10.9]

describe("trend", () => {
  it.each(Object.entries(anscombe))("gives the slope printed for Anscombe's set %s", (_, y) => {
    expect(Math.abs((trend(x, y) as number) - 0.5)).toBeLessThanOrEqual(0.0005)
  })
  it("gives the slope of four weekly means", () => {
    // From the middle day -10.5, -3.5, 3.5, 10.5; Σxy = 10.5·(10.9 - 13.1) + 3.5·(11.6 - 12.4) = -25.9;
    // Σx² = 2·(110.25 + 12.25) = 245; -25.9 / 245 = -0.1057.
    expect(trend(days, diameters)).toBeCloseTo(-25.9 / 245, 12)
  })
  it("takes rows in any order and several on one day", () => {
    expect(trend([...days].reverse(), [...diameters].reverse())).toBeCloseTo(-25.9 / 245, 12)
    // Two on the first day weigh like their mean counted twice: 12 and 14 on day 0, 11 on day 2: (11 - 13) / 2.
    expect(trend([first, first, first + 2], [12, 14, 11])).toBeCloseTo(-1, 12)
  })
  it("is exactly 0 where the diameter stays", () => {
    expect(trend([first, first + 7, first + 13], [12.4, 12.4, 12.4])).toBe(0)
  })
  it.each([
    [[first], [12]],
    [
      [first, first],
      [12, 11],
    ],
  ])("refuses measurements of one day", (day, diameter) => {
    expect(trend(day, diameter)).toEqual({
      refused: "Diameters of one day only: a trend needs two different days",
      code: "#N/A",
    })
  })
})

describe("SPEAR.TREND", () => {
  it("leaves out a row with a blank in it, day and diameter together", () => {
    const rows = [
      ["2026-05-04", 13],
      ["2026-05-06", null],
      [null, 5],
      ["2026-05-08", 11],
    ]
    expect(cell("=SPEAR.TREND(T!A1:A4,T!B1:B4)", rows)).toBe(-0.5) // 2 mm in 4 days
  })
  it("says that nothing is measured yet while the diameters are blank", () => {
    expect(cell("=SPEAR.TREND(T!A1:A2,T!B1:B2)", [["2026-05-04"], ["2026-05-11"]])).toEqual({
      code: "#N/A",
      reason: "Mean spear diameters: not measured yet",
    })
  })
  it("refuses a diameter of 0", () => {
    expect(cell('=SPEAR.TREND({"2026-05-04","2026-05-11"},{13,0})')).toEqual({
      code: "#NUM!",
      reason: "Mean spear diameters must be above 0 and up to 60 mm, not 0 mm",
    })
  })
})
