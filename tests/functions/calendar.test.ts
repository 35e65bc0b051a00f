import {describe, expect, it} from "vitest"
import {dateOf, dayOf, dayOfYear, dayOn, isoOf, modelYearOf, monthsLater} from "../../functions/calendar"

const day = (iso: string) => dayOf(iso)!

describe("dayOfYear", () => {
  // 31 + 28 + 31 + 30 + 31 + 30 = 181 days to the end of June; one more from 29 February of a leap year on.
  it.each([
    ["2026-01-01", 1],
    ["2026-03-01", 60],
    ["2026-07-01", 182],
    ["2026-12-31", 365],
    ["2028-02-29", 60],
    ["2028-03-01", 61],
    ["2028-12-31", 366],
    ["2100-12-31", 365],
    ["2000-12-31", 366],
  ])("counts %s as day %i", (iso, number) => {
    expect(dayOfYear(day(iso))).toBe(number)
  })
  it("leaves a part of a day off", () => {
    expect(dayOfYear(day("2026-12-31") + 0.99)).toBe(365)
  })
})

describe("modelYearOf", () => {
  it.each([
    ["2026-04-25", 1, "2026-01-01", 365],
    ["2026-01-01", 1, "2026-01-01", 365],
    ["2026-12-31", 1, "2026-01-01", 365],
    ["2028-12-31", 1, "2028-01-01", 366],
    ["2026-07-01", 7, "2026-07-01", 365],
    ["2026-06-30", 7, "2025-07-01", 365],
    ["2027-09-20", 7, "2027-07-01", 366],
    ["2028-06-30", 7, "2027-07-01", 366],
    ["2028-07-01", 7, "2028-07-01", 365],
  ])("of %s from month %i starts on %s and has %i days", (iso, startMonth, first, days) => {
    const year = modelYearOf(day(iso), startMonth)
    expect([isoOf(year.first), year.days]).toEqual([first, days])
  })
})

describe("dateOf and dayOn", () => {
  it("part a day and put it together again", () => {
    expect(dateOf(dayOf("2024-02-29")! + 0.9)).toEqual({year: 2024, month: 2, date: 29})
    for (const iso of ["1904-01-01", "2026-12-31", "9999-12-31"]) {
      const {year, month, date} = dateOf(dayOf(iso)!)
      expect(isoOf(dayOn(year, month, date))).toBe(iso)
    }
  })
  it("let month and day run over", () => {
    expect(isoOf(dayOn(2026, 14, 1))).toBe("2027-02-01")
    expect(isoOf(dayOn(2024, 3, 0))).toBe("2024-02-29")
  })
})

describe("monthsLater", () => {
  it.each([
    ["2026-04-20", 1, "2026-05-20"],
    ["2024-01-31", 1, "2024-02-29"],
    ["2026-03-31", -1, "2026-02-28"],
    ["2026-12-31", 2, "2027-02-28"],
  ])("from %s by %i is %s", (from, months, to) => expect(isoOf(monthsLater(dayOf(from)!, months))).toBe(to))
})
