import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {onDay} from "../../../functions/climate/onDay"
import {cell} from "../cell"

const numbered = (length: number) => Float64Array.from({length}, (_, i) => i + 1)

describe("onDay", () => {
  it.each([
    ["2026-01-01", 365, 1],
    ["2026-03-01", 365, 60],
    ["2028-03-01", 365, 61],
    ["2026-12-31", 366, 365],
    ["2028-12-31", 366, 366],
    ["2028-12-31", 365, 365],
  ])("takes for %s of %i rows the row %i", (iso, length, row) => {
    expect(onDay(numbered(length), dayOf(iso)!)).toBe(row)
  })
})

describe("CLIMATE.ON_DAY", () => {
  const daily = Array.from({length: 365}, (_, i) => [(i + 1) / 10, (i + 1) / 20, (i + 1) / 40])

  it("gives the column asked for", () => {
    // 10 April is day 100.
    expect(cell('=CLIMATE.ON_DAY("air","2026-04-10",T!A1:C365)', daily)).toBe(10)
    expect(cell('=CLIMATE.ON_DAY("soil","2026-04-10",T!A1:C365)', daily)).toBe(5)
    expect(cell('=CLIMATE.ON_DAY("sun","2026-04-10",T!A1:C365)', daily)).toBe(2.5)
  })
  it("gives a flat year's value on any day, from months", () => {
    const flat = Array.from({length: 12}, () => [10, 9, 12])
    expect(cell('=CLIMATE.ON_DAY("soil","2027-02-14",T!A1:C12)', flat)).toBeCloseTo(9, 12)
  })
  it("refuses another name", () => {
    expect(cell('=CLIMATE.ON_DAY("rain","2026-04-10",T!A1:C365)', daily)).toEqual({
      code: "#VALUE!",
      reason: 'What is asked for must be one of "air", "soil", "sun", not the text "rain"',
    })
  })
})
