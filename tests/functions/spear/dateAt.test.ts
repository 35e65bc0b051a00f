import {describe, expect, it} from "vitest"
import {dayOf, isoOf} from "../../../functions/calendar"
import {isRefusal} from "../../../functions/refusal"
import {dateAt} from "../../../functions/spear/dateAt"
import {cell} from "../cell"

const first = dayOf("2026-05-04")!
const days = [0, 7, 14, 21].map((later) => first + later)
const diameters = [13.1, 12.4, 11.6, 10.9]
const iso = (...given: Parameters<typeof dateAt>) => {
  const day = dateAt(...given)
  return isRefusal(day) ? day : isoOf(day)
}

describe("dateAt", () => {
  it("gives the last day that is still at or above the limit", () => {
    // Mean day 10.5, mean diameter 12.0, slope -25.9/245: 10.5 + 2.5·245/25.9 = 34.15 days after 4 May.
    expect(iso(days, diameters, 9.5)).toBe("2026-06-07")
  })
  it("moves with one more measurement", () => {
    // First three: mean day 7, mean 37.1/3, slope -1.5/14: 7 + (37.1/3 - 9.5)·14/1.5 = 33.76 days after 4 May.
    expect(iso(days.slice(0, 3), diameters.slice(0, 3), 9.5)).toBe("2026-06-06")
  })
  it("meets Anscombe's line where it stands", () => {
    // Anscombe, F.J. (1973), The American Statistician 27, 17-21, first set: y = 3.00 + 0.500x. Turned round by
    // day = 20 - x it falls: y = 13.00 - 0.500·day, which is 5.2 at 15.6 days, well inside day 15.
    const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5]
    const y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68]
    const turned = x.map((at) => first + 20 - at)
    expect(dateAt(turned, y, 5.2)).toBe(first + 15)
  })
  it("takes a day on which the line is just at the limit", () => {
    // 0.1 mm a day from 13 mm: 11 mm after just 20 days, and 11.01 only after 19.9.
    expect(dateAt([first, first + 10], [13, 12], 11)).toBe(first + 20)
    expect(dateAt([first, first + 10], [13, 12], 11.01)).toBe(first + 19)
    // 0.7 mm in 7 days: 10.8 mm after just 2, which doubles put a hair before.
    expect(dateAt([first, first + 7], [11, 10.3], 10.8)).toBe(first + 2)
  })
  it("keeps the promise in its name for any line that falls", () => {
    for (const slope of [-0.31, -0.07, -0.013])
      for (const limit of [8, 9.5, 12.2, 14.9]) {
        const line = (later: number) => 14 + slope * later
        const later = (dateAt(days, [0, 7, 14, 21].map(line), limit) as number) - first
        expect(line(later)).toBeGreaterThanOrEqual(limit)
        expect(line(later + 1)).toBeLessThan(limit)
      }
  })
  it("gives a day in the past when the line was under the limit before the first measurement", () => {
    // 0.1 mm a day: 9 mm on 4 May was 9.5 mm five days before.
    expect(iso([first, first + 10], [9, 8], 9.5)).toBe("2026-04-29")
  })
  it("does not depend on the order of the rows", () => {
    expect(iso([...days].reverse(), [...diameters].reverse(), 9.5)).toBe("2026-06-07")
  })
  it("refuses a line that does not fall", () => {
    const refused = {refused: "Not thinning: the line through the diameters does not fall", code: "#N/A"}
    expect(dateAt(days, [12, 12, 12, 12], 9.5)).toEqual(refused)
    expect(dateAt(days, [...diameters].reverse(), 9.5)).toEqual(refused)
  })
  it("says so when spears that are not thinning are under the limit already", () => {
    expect(dateAt(days, [9, 9, 9, 9], 9.5)).toEqual({
      refused:
        "Not thinning: the line through the diameters does not fall, and its mean of 9.0 mm is under 9.5 mm already",
      code: "#N/A",
    })
  })
  it("refuses a line that meets the limit on no day of the calendar", () => {
    expect(dateAt([first, first + 7], [12, 12 - 1e-9], 9.5)).toEqual({
      refused: "Not thinning fast enough: the line meets 9.5 mm on no day of the calendar",
      code: "#N/A",
    })
    expect(dateAt([first, first + 7], [9, 9 - 1e-9], 9.5)).toMatchObject({code: "#N/A"})
  })
  it("refuses measurements of one day", () => {
    expect(dateAt([first, first], [12, 11], 9.5)).toEqual({
      refused: "Diameters of one day only: a trend needs two different days",
      code: "#N/A",
    })
  })
})

describe("SPEAR.DATE_AT", () => {
  it("leaves out a row with a blank in it, day and diameter together", () => {
    const rows = [
      ["2026-05-04", 13.1],
      ["2026-05-11", 12.4],
      [null, 30],
      ["2026-05-18", 11.6],
      ["2026-05-25", null],
    ]
    expect(cell("=SPEAR.DATE_AT(T!A1:A5,T!B1:B5,9.5)", rows)).toBe(dayOf("2026-06-06"))
    rows[4]![1] = 10.9
    expect(cell("=SPEAR.DATE_AT(T!A1:A5,T!B1:B5,9.5)", rows)).toBe(dayOf("2026-06-07"))
  })
  it.each([
    ["{13,0}", "9.5", "Mean spear diameters must be above 0 and up to 60 mm, not 0 mm"],
    ["{13,61}", "9.5", "Mean spear diameters must be above 0 and up to 60 mm, not 61 mm"],
    ["{13,12}", "-1", "Diameter limit must be above 0 and up to 60 mm, not -1 mm"],
  ])("refuses diameters %s with a limit of %s", (given, limit, reason) => {
    expect(cell(`=SPEAR.DATE_AT({"2026-05-04","2026-05-11"},${given},${limit})`)).toEqual({
      code: "#NUM!",
      reason,
    })
  })
})
