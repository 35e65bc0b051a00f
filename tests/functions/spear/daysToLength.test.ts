import {describe, expect, it} from "vitest"
import {daysToLength} from "../../../functions/spear/daysToLength"
import {cell} from "../cell"

const stretch = {Stretch_rate: 0.05, Stretch_base: 5}

describe("daysToLength", () => {
  it.each([
    // ln(23/2) = 2.44235; growth 0.15, 0.35, 0.75 and 1.15 a day: 16.28, 6.978, 3.256 and 2.124 days
    {temperature: 8, days: 16.28, digits: 2},
    {temperature: 12, days: 6.978, digits: 3},
    {temperature: 20, days: 3.256, digits: 3},
    {temperature: 28, days: 2.124, digits: 3},
  ])("takes $days days from 2 to 23 cm at $temperature °C", ({temperature, days, digits}) => {
    expect(daysToLength(temperature, 23, 2, stretch)).toBeCloseTo(days, digits)
  })
  it("adds up over two stretches of the same growth", () => {
    const [a, b, c] = [
      [2, 9],
      [9, 23],
      [2, 23],
    ].map(([from, to]) => daysToLength(14, to!, from!, stretch) as number)
    expect(a! + b!).toBeCloseTo(c!, 12)
  })
  it("needs no time for a length that is there, however cold", () => {
    expect(daysToLength(12, 2, 2, stretch)).toBe(0)
    expect(daysToLength(-3, 2, 2, stretch)).toBe(0)
  })
  it("never gets there at the base or below", () => {
    expect(daysToLength(5, 23, 2, stretch)).toEqual({
      refused: "Never: at 5 °C a spear does not grow, its base is 5 °C",
      code: "#N/A",
    })
    expect(daysToLength(-4, 23, 2, stretch)).toMatchObject({code: "#N/A"})
  })
  it("refuses a length below the one to start from", () => {
    expect(daysToLength(12, 1.5, 2, stretch)).toEqual({
      refused: "Length to reach (1.5 cm) is below the length to start from (2 cm)",
      code: "#NUM!",
    })
  })
})

describe("SPEAR.DAYS_TO_LENGTH", () => {
  const values = [
    ["Spear_start", 4],
    ["Stretch_rate", null],
  ]
  it("starts from the crop value Spear_start where no length is given", () => {
    const fromFour = Math.log(23 / 4) / 0.35
    expect(cell("=SPEAR.DAYS_TO_LENGTH(12,23)")).toBeCloseTo(Math.log(23 / 2) / 0.35, 12)
    expect(cell("=SPEAR.DAYS_TO_LENGTH(12,23,,T!A1:B2)", values)).toBeCloseTo(fromFour, 12)
    expect(cell("=SPEAR.DAYS_TO_LENGTH(12,23,T!C1,T!A1:B2)", values)).toBeCloseTo(fromFour, 12)
  })
  it("takes a length given before the crop value", () => {
    expect(cell("=SPEAR.DAYS_TO_LENGTH(12,23,8,T!A1:B2)", values)).toBeCloseTo(Math.log(23 / 8) / 0.35, 12)
  })
  it("compares the length to reach with a changed Spear_start", () => {
    expect(cell("=SPEAR.DAYS_TO_LENGTH(12,3,,T!A1:B2)", values)).toEqual({
      code: "#NUM!",
      reason: "Length to reach (3 cm) is below the length to start from (4 cm)",
    })
  })
  it("refuses a length of 0", () => {
    expect(cell("=SPEAR.DAYS_TO_LENGTH(12,23,0)")).toEqual({
      code: "#NUM!",
      reason: "Length to start from must be above 0 and up to 100 cm, not 0 cm",
    })
  })
})
