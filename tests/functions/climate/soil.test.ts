import {describe, expect, it} from "vitest"
import {MONTH_DAYS} from "../../../functions/climate/monthlyToDays"
import {soil} from "../../../functions/climate/soil"
import {cell} from "../cell"

const air = [0.6, 1.5, 4.5, 9.1, 13.9, 17.6, 19.3, 18.5, 15.4, 10.8, 6, 2.3]
const months = air.map((_, i) => i + 1)

describe("soil", () => {
  it("stays flat in a flat year", () => {
    for (const month of months)
      expect(soil(month, new Float64Array(12).fill(11), 0.75, 20)).toBeCloseTo(11, 12)
  })
  it("is the air itself with its whole swing and no lag", () => {
    for (const month of months) expect(soil(month, air, 1, 0)).toBeCloseTo(air[month - 1]!, 12)
  })
  it("swings about the mean of all days", () => {
    // January 36.5, all else 0: the year's mean is 31·36.5/365 = 3.1. Half the swing: 3.1 + 33.4/2 = 19.8 and
    // 3.1 - 3.1/2 = 1.55.
    const january = [36.5, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]
    expect(soil(1, january, 0.5, 0)).toBeCloseTo(19.8, 12)
    expect(soil(2, january, 0.5, 0)).toBeCloseTo(1.55, 12)
    expect(soil(6, january, 0, 20)).toBeCloseTo(3.1, 12)
  })
  it("comes later, round the year", () => {
    // July, August, December and January have 31 days each: 31 days later each takes exactly the month before.
    expect(soil(8, air, 1, 31)).toBeCloseTo(19.3, 12)
    expect(soil(1, air, 1, 31)).toBeCloseTo(2.3, 12)
  })
  it("follows a sine of the year with three quarters of its swing and 20 days later", () => {
    // Air 10 - 9.5·cos(2π(d - 20)/365), soil 10 - 0.75·9.5·cos(2π(d - 40)/365). Straight lines between months stand in
    // for the sine, hence the tolerance, chosen; without the lag April would be 2.3 °C off.
    const meansOf = (swing: number, coldest: number) => {
      let day = 0
      return MONTH_DAYS.map((length) => {
        let sum = 0
        for (let i = 0; i < length; i++) sum += 10 - swing * Math.cos((2 * Math.PI * (++day - coldest)) / 365)
        return sum / length
      })
    }
    const expected = meansOf(0.75 * 9.5, 40)
    for (const month of months)
      expect(Math.abs(soil(month, meansOf(9.5, 20), 0.75, 20) - expected[month - 1]!)).toBeLessThan(0.02)
  })
})

describe("CLIMATE.SOIL", () => {
  const column = air.map((mean) => [mean])

  it("takes a row or a column, three quarters of the swing and 20 days unless told otherwise", () => {
    expect(cell("=CLIMATE.SOIL(4,T!A1:A12)", column)).toBe(cell("=CLIMATE.SOIL(4,T!A1:L1,0.75,20)", [air]))
    expect(cell("=CLIMATE.SOIL(4,T!A1:A12)", column)).toBe(soil(4, air, 0.75, 20))
  })
  it.each([
    ["=CLIMATE.SOIL(4,T!A1:A11)", "#VALUE!", "Mean air temperatures must be 12, January to December, not 11"],
    ["=CLIMATE.SOIL(4,T!A2:A13)", "#N/A", "Mean air temperature of month 12: not measured yet"],
    ["=CLIMATE.SOIL(13,T!A1:A12)", "#NUM!", "Month must be a whole number from 1 to 12, not 13"],
    [
      "=CLIMATE.SOIL(4,T!A1:A12,0.75,2.5)",
      "#NUM!",
      "Days the soil comes later must be a whole number from 0 to 182 days, not 2.5 days",
    ],
    [
      '=CLIMATE.SOIL(4,{1,2,3,4,5,"six",7,8,9,10,11,12})',
      "#VALUE!",
      'Mean air temperature must be a number, not the text "six"',
    ],
    [
      "=CLIMATE.SOIL(4,{1,2,3,4,5,66,7,8,9,10,11,12})",
      "#NUM!",
      "Mean air temperature must be from -60 to 60 °C, not 66 °C",
    ],
  ])("refuses %s", (formula, code, reason) => {
    expect(cell(formula, column)).toEqual({code, reason})
  })
})
