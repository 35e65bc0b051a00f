import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {pickings} from "../../../functions/season/pickings"
import {cell} from "../cell"

const day = (iso: string) => dayOf(iso)!

describe("pickings", () => {
  it("gives the 8 pickings of the Malheur trial from its mean gap", () => {
    // Feibert, E.B.G., Shock, C.C., Saunders, L., Willison, G. (1997). Malheur Experiment Station, Oregon State
    // University: 8 pickings from 8 to 30 April (any year will do), so 22 days hold 7 gaps.
    expect(pickings(day("2026-04-08"), day("2026-04-30"), 22 / 7)).toBe(8)
    // A little longer and the last one falls behind the close.
    expect(pickings(day("2026-04-08"), day("2026-04-30"), 3.15)).toBe(7)
  })
  it("counts both ends of a season picked daily", () => {
    // East Anglian Daily Times (2019): the British season runs from 23 April to 21 June, 59 days apart, 60 counted.
    expect(pickings(day("2019-04-23"), day("2019-06-21"), 1)).toBe(60)
  })
  it("counts the gaps that fit whole", () => {
    // 20 April to 9 June is 50 days; 50 / 2.4 = 20.83: 20 gaps, 21 pickings.
    expect(pickings(day("2026-04-20"), day("2026-06-09"), 2.4)).toBe(21)
    // 20 x 2.5 = 50: the last picking falls on the close itself.
    expect(pickings(day("2026-04-20"), day("2026-06-09"), 2.5)).toBe(21)
    expect(pickings(day("2026-04-20"), day("2026-06-09"), 2.51)).toBe(20)
  })
  it("is 1 when the season is one day, or shorter than the gap", () => {
    expect(pickings(day("2026-04-20"), day("2026-04-20"), 3)).toBe(1)
    expect(pickings(day("2026-04-20"), day("2026-04-22"), 3)).toBe(1)
  })
  it("loses no picking to the rounding of a division", () => {
    // 15 x 2.2 = 33 days, though 33 / 2.2 comes out just below 15 in binary.
    expect(pickings(46000, 46033, 2.2)).toBe(16)
    let counted = 0
    for (let gaps = 1; gaps <= 60; gaps++)
      for (let days = 1; days <= 90; days++) {
        expect(pickings(46000, 46000 + days, days / gaps)).toBe(gaps + 1)
        counted++
      }
    expect(counted).toBe(5400)
  })
  it("refuses a close before the opening", () => {
    expect(pickings(day("2026-04-20"), day("2026-04-19"), 2)).toEqual({
      refused: "Close (2026-04-19) is before the opening (2026-04-20)",
      code: "#NUM!",
    })
  })
})

describe("SEASON.PICKINGS in a cell", () => {
  it("takes dates from cells and from text", () => {
    expect(cell('=SEASON.PICKINGS(T!A1,"2026-06-09",T!B1)', [["2026-04-20", 2.4]])).toBe(21)
  })
  it.each([0, -1])("refuses a gap of %s days", (gap) => {
    expect(cell(`=SEASON.PICKINGS("2026-04-20","2026-06-09",${gap})`)).toEqual({
      code: "#NUM!",
      reason: `Days between pickings must be above 0 days, not ${gap} days`,
    })
  })
  it("waits for a date that is blank", () => {
    expect(cell('=SEASON.PICKINGS("2026-04-20",T!A1,2)')).toEqual({
      code: "#N/A",
      reason: "Last day of cutting: no date yet",
    })
  })
})
