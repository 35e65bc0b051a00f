import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

const between = (start: string, end: string, unit: string) =>
  worked(`=DATEDIF("${start}","${end}","${unit}")`)

describe("DATEDIF", () => {
  it.each([
    // OASIS OpenFormula subcommittee, message of 1 May 2009 on its specification of that day.
    ["1990-02-15", "1993-09-15", "y", 3],
    ["1990-02-15", "1993-09-15", "d", 1308],
    ["1990-02-15", "1993-09-15", "yd", 212],
    // By counting on the calendar.
    ["1990-02-15", "1993-09-15", "m", 43],
    ["1990-02-15", "1993-09-14", "m", 42],
    ["1990-02-15", "1993-09-14", "md", 30],
    ["1990-02-15", "1993-09-15", "ym", 7],
    ["2026-04-20", "2026-05-19", "m", 0],
    ["2026-12-31", "2027-01-01", "y", 0],
    ["2026-04-20", "2026-04-20", "d", 0],
  ])("from %s to %s in %s is %i", (start, end, unit, wanted) => {
    expect(between(start, end, unit)).toBe(wanted)
    expect(between(start, end, unit.toUpperCase())).toBe(wanted)
  })
  it("holds a month full on the last day of a shorter one, and no day count below 0", () => {
    expect(between("2026-01-31", "2026-02-28", "m")).toBe(1)
    expect(between("2026-01-31", "2026-03-01", "md")).toBe(1) // one day after 28 February
    expect(between("2024-02-29", "2025-02-28", "yd")).toBe(0)
    expect(between("2024-02-29", "2025-02-28", "y")).toBe(1)
  })
  it("parts any span into years, months and days that lead back to its end", () => {
    for (const end of ["2026-02-27", "2027-02-28", "2027-03-01", "2028-02-29", "2031-12-30"])
      for (const start of ["2024-02-29", "2025-08-31", "2026-01-01"])
        expect(
          worked(
            `=EDATE("${start}",12*DATEDIF("${start}","${end}","y")+DATEDIF("${start}","${end}","ym"))` +
              `+DATEDIF("${start}","${end}","md")-DATEVALUE("${end}")`,
          ),
        ).toBe(0)
  })
  it("leaves off a part of a day and reads the dates of cells", () => {
    const {valueOf, enter} = opened(['=DATEDIF(T!A1,T!B1+0.5,"d")'], [["2026-04-20", "2026-04-22"]])
    expect(valueOf()).toBe(2)
    enter("A1", "2026-04-10")
    expect(valueOf()).toBe(12)
  })
  it("refuses dates out of order and another unit", () => {
    expect(between("2026-04-21", "2026-04-20", "d")).toMatchObject({
      code: "#NUM!",
      reason: "The first date (2026-04-21) is after the last (2026-04-20)",
    })
    expect(between("2026-04-20", "2026-04-21", "w")).toMatchObject({
      code: "#VALUE!",
      reason: 'The unit must be "y", "m", "d", "md", "ym" or "yd", not "w"',
    })
  })
})
