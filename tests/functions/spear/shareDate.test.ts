import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {shareDate} from "../../../functions/spear/shareDate"
import {cell} from "../cell"

const first = dayOf("2026-05-04")!
const days = [0, 7, 14, 21].map((later) => first + later)

describe("shareDate", () => {
  it("gives the last day on which the line is at or under the share", () => {
    // 0.05 a week from 0.10 on 4 May: 0.50 after just 8 weeks, on 29 June; 0.49 on no whole day, the last before is 27 June.
    expect(shareDate(days, [0.1, 0.15, 0.2, 0.25], 0.5)).toBe(dayOf("2026-06-29"))
    expect(shareDate(days, [0.1, 0.15, 0.2, 0.25], 0.49)).toBe(dayOf("2026-06-27"))
  })
  it("draws the line of least squares through counts that scatter", () => {
    // Days 0, 7, 14, 21 with 0.1, 0.3, 0.2, 0.4: mean day 10.5, mean 0.25, slope (10.5·0.3 + 3.5·-0.1)/245 = 0.08/7:
    // 0.5 after 10.5 + 0.25·7/0.08 = 32.375 days.
    expect(shareDate(days, [0.1, 0.3, 0.2, 0.4], 0.5)).toBe(first + 32)
    expect(shareDate([...days].reverse(), [0.4, 0.2, 0.3, 0.1], 0.5)).toBe(first + 32)
  })
  it("fires first at a quarter and last at three quarters, the ends of the published rule", () => {
    // Web page for growers (stopSign): "when 1/4 to 3/4 of the spears are below 3/8 inch".
    const on = (share: number) => shareDate(days, [0.1, 0.15, 0.2, 0.25], share) as number
    expect(on(0.25)).toBe(days[3])
    expect(on(0.75)).toBeGreaterThan(on(0.25))
  })
  it("gives a day in the past when the share was met before the first count", () => {
    expect(shareDate([first, first + 10], [0.6, 0.7], 0.5)).toBe(first - 10)
  })
  it("refuses shares that do not rise, and says when they are above the limit already", () => {
    expect(shareDate(days, [0.2, 0.2, 0.2, 0.2], 0.5)).toEqual({
      refused: "The share of thin spears does not rise",
      code: "#N/A",
    })
    expect(shareDate(days, [0.7, 0.7, 0.6, 0.6], 0.5)).toEqual({
      refused: "The share of thin spears does not rise, and their mean is above the limit already",
      code: "#N/A",
    })
  })
  it("refuses counts of one day, and a share that is met on no day of the calendar", () => {
    expect(shareDate([first, first], [0.1, 0.2], 0.5)).toEqual({
      refused: "Thin spears counted on one day only: a line needs two different days",
      code: "#N/A",
    })
    expect(shareDate([first, first + 7], [0.1, 0.1 + 1e-10], 0.5)).toMatchObject({code: "#N/A"})
  })
})

describe("SPEAR.SHARE_DATE", () => {
  it("leaves out a row with a blank in it, day and share together", () => {
    const rows = [
      ["2026-05-04", 0.1],
      [null, 0.9],
      ["2026-05-11", 0.15],
      ["2026-05-18", null],
    ]
    expect(cell("=SPEAR.SHARE_DATE(T!A1:A4,T!B1:B4,0.5)", rows)).toBe(dayOf("2026-06-29"))
  })
  it("refuses a share of 0, and shares in per cent", () => {
    expect(cell("=SPEAR.SHARE_DATE({1,2},{0.1,0.2},0)")).toMatchObject({code: "#NUM!"})
    expect(cell('=SPEAR.SHARE_DATE({"2026-05-04","2026-05-11"},{10,20},0.5)')).toMatchObject({code: "#NUM!"})
  })
})
