import {describe, expect, it} from "vitest"
import {dayOf, isoOf, modelYearOf} from "../../../functions/calendar"
import {alongYear, climateRange, type Climate} from "../../../functions/climate/climate"
import {MONTH_DAYS} from "../../../functions/climate/monthlyToDays"
import {CellFault, type Given, type Held} from "../../../functions/parameters"

const rows = (count: number, row: (i: number) => Held[] = (i) => [i / 10, i / 20, i / 40]): Held[][] =>
  Array.from({length: count}, (_, i) => row(i))
const read = (given: Given) => climateRange.read(given) as Climate
/** A good range of 12 months with one entry changed. */
const spoiled = (row: number, col: number, held: Held) =>
  rows(12).map((cells, i) => cells.map((good, j) => (i === row && j === col ? held : good)))

describe("climateRange", () => {
  it("takes daily rows as they stand", () => {
    const {air, soil, sun} = read(rows(365))
    expect([air.length, soil.length, sun.length]).toEqual([365, 365, 365])
    // Row 101 of the range, counted from 1: 100/10, 100/20, 100/40.
    expect([air[100], soil[100], sun[100]]).toEqual([10, 5, 2.5])
    expect([air[0], soil[0], sun[0]]).toEqual([0, 0, 0])
  })
  it("keeps a 366th row", () => {
    expect(read(rows(366)).air.at(-1)).toBe(36.5)
  })
  it("makes days of months and keeps each month's mean in its own column", () => {
    const climate = read(rows(12, (i) => [i - 5, 2 * i, 10 + (i % 3)]))
    let start = 0
    for (const [month, length] of MONTH_DAYS.entries()) {
      const mean = (days: Float64Array) =>
        days.slice(start, start + length).reduce((sum, day) => sum + day, 0) / length
      expect(mean(climate.air)).toBeCloseTo(month - 5, 10)
      expect(mean(climate.soil)).toBeCloseTo(2 * month, 10)
      expect(mean(climate.sun)).toBeCloseTo(10 + (month % 3), 10)
      start += length
    }
    expect(climate.air.length).toBe(365)
  })
  it("gives the same climate for the same numbers, wherever they stand", () => {
    expect(read(rows(12))).toBe(read(rows(12)))
    expect(read(rows(12))).not.toBe(read(spoiled(3, 1, 4)))
  })
  it.each([
    [7, "Climate must be a range of three columns: mean air and soil temperature, solar radiation"],
    [null, "Climate must be a range of three columns: mean air and soil temperature, solar radiation"],
    [
      rows(12, () => [1, 2]),
      "Climate must be a range of three columns: mean air and soil temperature, solar radiation",
    ],
    [rows(13), "Climate must have 12 monthly rows or 365 daily ones, not 13"],
    [rows(364), "Climate must have 12 monthly rows or 365 daily ones, not 364"],
    [spoiled(4, 0, "warm"), 'Climate, month 5: air temperature must be a number, not the text "warm"'],
    [spoiled(4, 2, true), "Climate, month 5: solar radiation must be a number, not TRUE"],
  ])("refuses what is of another kind or shape (%#)", (given, refused) => {
    expect(climateRange.read(given)).toEqual({refused, code: "#VALUE!"})
  })
  it.each([
    [spoiled(0, 0, -61), "Climate, month 1: air temperature must be from -60 to 60 °C, not -61 °C"],
    [spoiled(1, 1, 51), "Climate, month 2: soil temperature must be from -40 to 50 °C, not 51 °C"],
    [
      spoiled(11, 2, -1),
      "Climate, month 12: solar radiation must be from 0 to 50 MJ/m²/day, not -1 MJ/m²/day",
    ],
    [
      rows(365).with(59, [5, 5, 60]),
      "Climate, day 60: solar radiation must be from 0 to 50 MJ/m²/day, not 60 MJ/m²/day",
    ],
  ])("refuses what is outside its limits (%#)", (given, refused) => {
    expect(climateRange.read(given)).toEqual({refused, code: "#NUM!"})
  })
  it("says which entry is not measured yet", () => {
    expect(climateRange.read(spoiled(6, 1, null))).toEqual({
      refused: "Climate, month 7: soil temperature is not measured yet",
      code: "#N/A",
    })
  })
  it("quotes an error by its code", () => {
    expect(climateRange.read(spoiled(0, 0, new CellFault("#REF!", null)))).toMatchObject({
      refused: "Climate, month 1: air temperature must be a number, not #REF!",
    })
  })
})

/** Values that say which row they came from, counted from 1. */
const numbered = (length: number) => Float64Array.from({length}, (_, i) => i + 1)

describe("alongYear", () => {
  // Days of the year by hand: 1 July is day 182, in a leap year 183; 29 February is day 60, 1 March 60 or 61.
  it.each([
    {
      holds: "2026-04-25",
      from: 1,
      rows: 365,
      days: 365,
      at: {"2026-01-01": 1, "2026-03-01": 60, "2026-12-31": 365},
    },
    {
      holds: "2026-04-25",
      from: 1,
      rows: 366,
      days: 365,
      at: {"2026-01-01": 1, "2026-03-01": 60, "2026-12-31": 365},
    },
    {
      holds: "2028-04-25",
      from: 1,
      rows: 365,
      days: 366,
      at: {"2028-02-29": 60, "2028-03-01": 61, "2028-12-30": 365, "2028-12-31": 365},
    },
    {holds: "2028-04-25", from: 1, rows: 366, days: 366, at: {"2028-02-29": 60, "2028-12-31": 366}},
    {
      holds: "2026-10-01",
      from: 7,
      rows: 365,
      days: 365,
      at: {"2026-07-01": 182, "2026-12-31": 365, "2027-01-01": 1, "2027-06-30": 181},
    },
    {
      holds: "2027-10-01",
      from: 7,
      rows: 366,
      days: 366,
      at: {"2027-07-01": 182, "2027-12-31": 365, "2028-01-01": 1, "2028-02-29": 60, "2028-06-30": 182},
    },
    {
      holds: "2028-10-01",
      from: 7,
      rows: 366,
      days: 365,
      at: {"2028-07-01": 183, "2028-12-31": 366, "2029-01-01": 1, "2029-06-30": 181},
    },
    {
      holds: "2028-10-01",
      from: 7,
      rows: 365,
      days: 365,
      at: {"2028-07-01": 183, "2028-12-30": 365, "2028-12-31": 365, "2029-01-01": 1},
    },
  ])("lays $rows rows along the year from month $from that holds $holds", ({holds, from, rows, days, at}) => {
    const year = modelYearOf(dayOf(holds)!, from)
    const along = alongYear(numbered(rows), year)
    expect(along.length).toBe(days)
    for (const [iso, row] of Object.entries(at))
      expect([iso, along[dayOf(iso)! - year.first]]).toEqual([iso, row])
  })
  it("takes for each day the row of its number, day by day over four years", () => {
    const first = dayOf("2026-07-01")!
    const along = alongYear(numbered(366), {first, days: 4 * 365 + 1})
    let number = 182
    for (const [i, row] of along.entries()) {
      if (isoOf(first + i).endsWith("-01-01")) number = 1
      expect([isoOf(first + i), row]).toEqual([isoOf(first + i), number++])
    }
    expect(along.length).toBe(1461)
  })
})
