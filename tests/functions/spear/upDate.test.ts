import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {upDate} from "../../../functions/spear/upDate"
import {cell} from "../cell"

const first = dayOf("2026-03-20")!
const days = (count: number) => Array.from({length: count}, (_, later) => first + later)
const steady = (count: number, soil: number) => Array.from({length: count}, () => soil)

describe("upDate", () => {
  // Heißner, A. and others (2006). Spear yield and quality of white asparagus as affected by soil temperature.
  // European Journal of Agronomy 25, 336-344, abstract: 255 °C·day above 4.4 °C; 16.5 days at 20 °C.
  it("brings white spears to the first harvest on the day that holds Heißner's 16.5 days", () => {
    // 15.6 °C·day a day: 249.6 after 16 days, 265.2 after 17.
    expect(upDate(days(30), steady(30, 20), 4.4, 255)).toBe(first + 16)
  })
  it("counts the day on which the sum is just reached", () => {
    expect(upDate(days(30), steady(30, 20), 4.4, 249.6)).toBe(first + 15)
    // 0.1 °C a day, ten times: doubles give 0.9999999999999999.
    expect(upDate(days(30), steady(30, 5.1), 5, 1)).toBe(first + 9)
  })
  it("gains nothing on a day below the base, and loses nothing", () => {
    // 10 + 0 + 10
    expect(upDate(days(3), [15, -8, 15], 5, 20)).toBe(first + 2)
    expect(upDate(days(3), [15, -8, 15], 5, 10)).toBe(first)
  })
  it("says how much is lacking while the sum is not reached", () => {
    expect(upDate(days(16), steady(16, 20), 4.4, 255)).toEqual({
      refused: "Not reached by 2026-04-04: 5.4 °C·day short",
      code: "#N/A",
    })
  })
  it("refuses days that do not rise, even behind the day that is found", () => {
    const refused = {
      refused: "Days must rise from row to row: 2026-03-20 comes after 2026-03-21",
      code: "#VALUE!",
    }
    expect(upDate([first, first + 1, first], [20, 20, 20], 4.4, 15)).toEqual(refused)
    expect(upDate([first, first], [20, 20], 4.4, 15)).toMatchObject({code: "#VALUE!"})
  })
})

describe("SPEAR.UP_DATE", () => {
  it("leaves out a row with a blank in it, day and temperature together", () => {
    const rows = [
      ["2026-04-01", 15],
      ["2026-04-02", null],
      [null, 60],
      ["2026-04-04", 15],
    ]
    expect(cell("=SPEAR.UP_DATE(T!A1:A4,T!B1:B4,5,20)", rows)).toBe(dayOf("2026-04-04"))
    expect(cell("=SPEAR.UP_DATE(T!A1:A4,T!B1:B4,5,20.5)", rows)).toEqual({
      code: "#N/A",
      reason: "Not reached by 2026-04-04: 0.5 °C·day short",
    })
  })
  it("refuses a heat sum of 0 and a base outside its range", () => {
    expect(cell('=SPEAR.UP_DATE({"2026-04-01"},{12},4.4,0)')).toEqual({
      code: "#NUM!",
      reason: "Heat sum to reach must be above 0 °C·day, not 0 °C·day",
    })
    expect(cell('=SPEAR.UP_DATE({"2026-04-01"},{12},25,50)')).toEqual({
      code: "#NUM!",
      reason: "Temperature below which nothing grows must be from -5 to 20 °C, not 25 °C",
    })
  })
})
