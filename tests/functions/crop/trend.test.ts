import {describe, expect, it} from "vitest"
import {cropTrend} from "../../../functions/crop/trend"
import {cell} from "../cell"

const years = [2018, 2019, 2020, 2021, 2022, 2023, 2024, 2025]
const yields = [3600, 4100, 2500, 4400, 3900, 4200, 4300, 4600]

describe("cropTrend", () => {
  it("draws the line of least squares", () => {
    // Σ(x - x̄)(y - ȳ) = 6300, Σ(x - x̄)² = 42; mean 3950, 4.5 years on from the middle
    expect(cropTrend("slope", years, yields)).toBeCloseTo(150, 9)
    expect(cropTrend("next year", years, yields)).toBeCloseTo(4625, 9)
  })
  it("takes the middle of the 28 slopes between two years", () => {
    // 920/7: the 14th and the 15th of the sorted slopes are 125 and 137.857...
    expect(cropTrend("middle slope", years, yields)).toBeCloseTo(131.42857, 5)
  })
  it("gives the spread with n - 1", () => {
    // √(3 060 000/7) = 661.17; over 3950
    expect(cropTrend("spread", years, yields)).toBeCloseTo(0.16738, 5)
  })
  it("agrees by both methods on a straight line, in any order of the rows", () => {
    const line = [4, 1, 3, 2].map((x) => 2020 + x)
    const along = line.map((year) => 3000 + 50 * (year - 2020))
    for (const what of ["slope", "middle slope"] as const)
      expect(cropTrend(what, line, along)).toBeCloseTo(50, 9)
    expect(cropTrend("next year", line, along)).toBeCloseTo(3250, 9)
  })
  it("lets one bad year pull the line of least squares, and the middle slope hardly", () => {
    const flat = [2021, 2022, 2023, 2024, 2025]
    const bad = [4000, 4000, 4000, 4000, 1000]
    expect(cropTrend("slope", flat, bad)).toBeCloseTo(-600, 9) // 2·(1000 - 4000)/10
    expect(cropTrend("middle slope", flat, bad)).toBe(0)
  })
  it("minds gaps between the years", () => {
    expect(cropTrend("middle slope", [2020, 2024], [3000, 3400])).toBe(100)
  })
  it("refuses one year only, and a year given twice", () => {
    expect(cropTrend("slope", [2020], [1])).toEqual({
      refused: "Yields of one year only: a trend needs two different years",
      code: "#N/A",
    })
    expect(cropTrend("slope", [2020, 2020, 2021], [1, 2, 3])).toEqual({
      refused: "Year 2020 is given twice",
      code: "#VALUE!",
    })
    expect(cropTrend("spread", [2020, 2021], [0, 0])).toMatchObject({code: "#N/A"})
  })
})

it("CROP.TREND leaves out years without a yield", () => {
  const table = [
    [2020, 3000],
    [2021, null],
    [2022, 3200],
  ]
  expect(cell('=CROP.TREND("slope",T!A:A,T!B:B)', table)).toBeCloseTo(100, 9)
  expect(cell('=CROP.TREND("steepness",T!A:A,T!B:B)', table)).toMatchObject({code: "#VALUE!"})
})
