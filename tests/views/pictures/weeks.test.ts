import {describe, expect, it} from "vitest"
import {isoWeekOf, mondayOf} from "../../../src/views/pictures/weeks"
import {day} from "./plans"

describe("weeks", () => {
  // ISO 8601: the week that holds 4 January is week 1. 29 Dec 2008 is day 1 of week 1 of 2009, and
  // 3 Jan 2010 is day 7 of week 53 of 2009.
  it.each([
    ["2008-12-29", "2008-12-29", 1],
    ["2010-01-03", "2009-12-28", 53],
    ["2026-04-20", "2026-04-20", 17],
    ["2027-01-04", "2027-01-04", 1],
  ])("%s is in the week of %s, number %i", (date, monday, week) => {
    expect(mondayOf(day(date))).toBe(day(monday))
    expect(isoWeekOf(day(date))).toBe(week)
  })
})
