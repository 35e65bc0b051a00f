import {describe, expect, it} from "vitest"
import {dayOf, isoOf} from "../../../functions/calendar"
import {lastClose} from "../../../functions/fern/lastClose"
import {cell} from "../cell"

describe("lastClose", () => {
  it("leaves the days needed between the close and the end of the fern", () => {
    // 20 June: 10 days of June are left, then July 31, August 31, September 30, October 5: 107.
    expect(isoOf(lastClose(dayOf("2026-10-05")!, 107))).toBe("2026-06-20")
  })
  it("agrees with a grower's reckoning of a good 100 days from 24 June to autumn", () => {
    // Common practice (a Swiss grower's page): 24 June and 100 days are 6 + 31 + 31 + 30 + 2, so 2 October.
    expect(isoOf(lastClose(dayOf("2026-10-02")!, 100))).toBe("2026-06-24")
  })
  it("closes on the last day of the fern when no days are needed", () => {
    expect(lastClose(46000, 0)).toBe(46000)
  })
  it("takes a part of a day as a day, but not the noise of a calculation", () => {
    expect(lastClose(46000, 106.2)).toBe(46000 - 107)
    expect(lastClose(46000, 107.00000000000001)).toBe(46000 - 107)
  })
})

describe("FERN.LAST_CLOSE", () => {
  it("takes the days from FERN.DAYS_NEEDED", () => {
    expect(cell('=FERN.LAST_CLOSE("2026-10-05",FERN.DAYS_NEEDED(1100,14,28))')).toBe(dayOf("2026-06-20"))
  })
  it("refuses days below 0 and more than a year", () => {
    expect(cell('=FERN.LAST_CLOSE("2026-10-05",-1)')).toEqual({
      code: "#NUM!",
      reason: "Days of fern needed must be from 0 to 366 days, not -1 days",
    })
    expect(cell('=FERN.LAST_CLOSE("2026-10-05",367)')).toMatchObject({code: "#NUM!"})
  })
  it("says that the end of the fern has no date yet", () => {
    expect(cell("=FERN.LAST_CLOSE(T!A1,107)")).toEqual({
      code: "#N/A",
      reason: "Last day of green fern: no date yet",
    })
  })
})
