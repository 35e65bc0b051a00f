import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {age} from "../../../functions/stand/age"
import {cell} from "../cell"

const planted = dayOf("2017-04-12")!

describe("age", () => {
  it("is the season year less the planting year, whatever the month", () => {
    expect(age(planted, 2026)).toBe(9)
    expect(age(dayOf("2017-01-01")!, 2026)).toBe(9)
    expect(age(dayOf("2017-12-31")!, 2026)).toBe(9)
  })
  it("is 0 in the planting year", () => {
    expect(age(planted, 2017)).toBe(0)
  })
  it("refuses a season before the planting year", () => {
    expect(age(planted, 2016)).toEqual({
      refused: "Season 2016 is before the planting (2017-04-12)",
      code: "#NUM!",
    })
  })
  it("refuses a year typed where the date belongs", () => {
    // The number 2017 as a day: 2017 days after 1899-12-30. To 1904-12-30 it is 5·365 + 1 = 1826 days (one leap day,
    // in 1904); 191 more lead to 9 July 1905 (1 + 31 + 28 + 31 + 30 + 31 + 30 = 182 to 30 June, and 9). 2026 - 1905 = 121.
    expect(age(2017, 2026)).toEqual({
      refused:
        "Planted on 1905-07-09, it would be 121 years old in 2026: a year may stand where the date belongs",
      code: "#NUM!",
    })
  })
  it("allows 100 years and refuses 101", () => {
    expect(age(planted, 2117)).toBe(100)
    expect(age(planted, 2118)).toMatchObject({code: "#NUM!"})
  })
})

describe("STAND.AGE", () => {
  it("takes a date in a cell and a date in quotes", () => {
    expect(cell("=STAND.AGE(T!A1,2026)", [["2017-04-12"]])).toBe(9)
    expect(cell('=STAND.AGE("2017-04-12",2026)')).toBe(9)
  })
  it("refuses a date where the season belongs, and a part of a year", () => {
    expect(cell("=STAND.AGE(T!A1,T!A1)", [["2017-04-12"]])).toEqual({
      code: "#NUM!",
      reason: `Season must be a whole number from 1904 to 9999, not ${planted}`,
    })
    expect(cell('=STAND.AGE("2017-04-12",2026.5)')).toMatchObject({code: "#NUM!"})
  })
})
