import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {opened, worked} from "./sheet"

describe("EDATE", () => {
  it.each([
    ["2026-04-20", 1, "2026-05-20"],
    ["2026-04-20", -4, "2025-12-20"],
    ["2026-01-31", 1, "2026-02-28"],
    ["2024-01-31", 1, "2024-02-29"], // a leap year
    ["2024-03-31", -1, "2024-02-29"],
    ["2000-01-30", 1, "2000-02-29"],
    ["2100-01-30", 1, "2100-02-28"], // no leap year
    ["2024-02-29", 12, "2025-02-28"],
    ["2026-12-31", 2, "2027-02-28"],
    ["2026-04-20", 1.9, "2026-05-20"],
  ])("%s and %f months is %s", (start, months, wanted) =>
    expect(worked(`=EDATE("${start}",${months})`)).toBe(dayOf(wanted)),
  )
  it("is the last of the month from the last of a longer one, as EOMONTH has it", () => {
    for (let months = -30; months <= 30; months++)
      expect(worked(`=EDATE("2026-01-31",${months})-EOMONTH("2026-01-31",${months})`)).toBe(0)
  })
  it("is a date, and follows an edit", () => {
    const {valueOf, isDate, enter} = opened(["=EDATE(T!A1,T!B1)"], [["2026-04-20", 1]])
    expect(isDate()).toBe(true)
    enter("B1", 2)
    expect(valueOf()).toBe(dayOf("2026-06-20"))
    enter("A1", "2026-05-31")
    expect(valueOf()).toBe(dayOf("2026-07-31"))
  })
  it("refuses a date outside the years of the standard", () =>
    expect(worked('=EDATE("9999-12-31",1)')).toMatchObject({
      code: "#NUM!",
      reason: "The date must be from 1904-01-01 to 9999-12-31",
    }))
})
