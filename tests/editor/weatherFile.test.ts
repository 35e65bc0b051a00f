import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {readWeather} from "../../src/editor/weatherFile"
import type {Content, Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {Workbook} from "../../src/workbook/workbook"

const file = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}
const {document} = file

/** The rows that a text puts on the sheet: day, high, low, sun, soil. */
function rows(text: string, into = document) {
  const read = readWeather(text, into, 2026)
  if ("refused" in read) throw new Error(read.refused)
  const found: Content[][] = []
  for (const {at, content} of read.edit.type === "enter" ? read.edit.cells : [])
    (found[at.row] ??= [null, null, null, null, null])[at.col] = content
  return found
}
const asks = (text: string, into = document) => {
  const read = readWeather(text, into, 2026)
  return "refused" in read ? read.refused : read.asks
}

describe("a table of weather in text", () => {
  it.each([
    ["with headings in any order", "tmin,date,tmax\n4,2026-03-01,11\n"],
    ["without headings, in the order of the sheet", "2026-03-01,11,4"],
    ["parted by semicolons, with decimal commas", "Date;Max;Min\r\n2026-03-01;11,0;4,0"],
    ["parted by tabs", "Day\tHigh °C\tLow °C\n1 Mar 2026\t11\t4"],
    ["with a mark of its encoding and blank lines", "\ufeffdate,high,low\n\n2026-03-01,11,4\n\n"],
    ["in quotes", '"date","high","low"\n"2026-03-01","11","4"'],
    ["with the time of day", "date,high,low\n2026-03-01T00:00,11,4"],
    ["with the digits of the date in one", "date,high,low\n20260301,11,4"],
  ])("is read %s", (_, text) => {
    expect(rows(text)).toEqual([["2026-03-01", 11, 4, null, null]])
  })

  it("takes sun and soil where they are there, and the station's codes for nothing as blanks", () => {
    const text = "date,tmax,tmin,solar,soil max\n2026-03-01,11,4,8.5,6\n2026-03-02,-999,NA,-99.9,"
    expect(rows(text)).toEqual([
      ["2026-03-01", 11, 4, 8.5, 6],
      ["2026-03-02", null, null, null, null],
    ])
  })

  it.each([
    ["date,max °F,min °F\n2026-03-01,50,41", [10, 5, null], "°F"],
    ["date,max,min,solar W/m2\n2026-03-01,10,5,100", [10, 5, 8.64], "W/m²"],
    ["date,max,min,solar kWh/m²\n2026-03-01,10,5,2.5", [10, 5, 9], "kWh/m²"],
    ["date,max,min,global J/cm²\n2026-03-01,10,5,905", [10, 5, 9.05], "J/cm²"],
  ])("turns other units into the sheet's and says so: %s", (text, values, name) => {
    expect(rows(text)[0]!.slice(1, 4)).toEqual(values)
    expect(asks(text)).toContain(`What stands in ${name} is turned into the sheet's unit.`)
  })

  it("says that it takes °C where the workbook shows °F and no heading names either", () => {
    const us = {...document, region: {measures: "US"}} as const
    const words = "Its temperatures are taken as °C, since no heading says °F."
    expect(asks("date,max,min\n2026-03-01,10,5", us)).toContain(words)
    expect(rows("date,max,min\n2026-03-01,10,5", us)[0]!.slice(1, 3)).toEqual([10, 5])
    expect(asks("date,max °F,min °F\n2026-03-01,50,41", us)).not.toContain(words)
    expect(asks("date,max,min\n2026-03-01,10,5")).not.toContain(words)
  })

  it("reads dates of two meanings as the workbook does", () => {
    const text = "date,max,min\n3/4/2026,10,5"
    expect(asks(text)).toContain("could be 3 Apr 2026 or 4 Mar 2026")
    expect(rows(text, {...document, region: {dates: "month first"}})[0]![0]).toBe("2026-03-04")
  })

  it("names the days that are missing between", () => {
    const text = ["2026-03-01", "2026-03-02", "2026-03-04", "2026-03-08"]
      .map((day) => `${day},9,2`)
      .join("\n")
    expect(asks(text)).toBe(
      "4 days of weather, 1 Mar 2026 to 8 Mar 2026. 4 days between are missing: 3 Mar, 5 Mar to 7 Mar.",
    )
  })

  it("leaves out a line that cannot be read, and says why", () => {
    const text =
      "date,max,min\n2026-03-01,9,2\n2026-03-02,warm,2\n2026-03-03,98,2\n2026-03-04,2,9\n2026-03-01,8,2"
    expect(asks(text)).toBe(
      "1 day of weather, 1 Mar 2026 to 1 Mar 2026. No day between is missing. 4 lines are left out: " +
        "line 3: “warm” is not a number; High takes a number in °C; " +
        "line 4: High 98 °C is above 60 °C (did you mean 9.8 °C?); " +
        "line 5: the high 2 is below the low 9; line 6: 1 Mar 2026 is there twice.",
    )
  })

  it.each([
    ["13/03/2026", "12/03/2026", "2026-03-12"],
    ["03/13/2026", "03/12/2026", "2026-03-12"],
  ])("takes day and month in the order that the file shows: %s", (clear, unclear, day) => {
    expect(rows(`${clear},9,2\n${unclear},9,2`)[0]![0]).toBe(day)
  })

  it("refuses dates that could be two", () => {
    expect(asks("03/04/2026,9,2")).toBe(
      "No line of it could be read. Line 1: “03/04/2026” could be 3 Apr 2026 or 4 Mar 2026; type the month in letters",
    )
  })

  it.each([
    ["", "It is empty"],
    ["  \n ", "It is empty"],
    ["date,rain\n2026-03-01,4", "It has no column for the highest temperature; its headings are date, rain"],
    ["a,b,c", "It has no column for the day; its headings are a, b, c"],
  ])("refuses %j", (text, refused) => {
    expect(asks(text)).toBe(refused)
  })

  it("changes the days that are there, and adds the others below", () => {
    const workbook = new Workbook(document)
    const first = readWeather("2026-03-01,9,2\n2026-03-02,8,1", document, 2026)
    if ("refused" in first) throw new Error(first.refused)
    const then = workbook.revise(first.edit)
    expect(asks("2026-03-02,8,1\n2026-03-01,9,2", then)).toBe("All 2 days of it are on the sheet already")
    const text = "2026-03-03,7,1\n2026-03-02,8.5,1"
    expect(asks(text, then)).toContain("1 of them change a day that is on the sheet.")
    expect(rows(text, then)).toEqual([
      undefined,
      [null, 8.5, null, null, null],
      ["2026-03-03", 7, 1, null, null],
    ])
  })
})

describe("the weather by day", () => {
  const byDay = document.sheets.findIndex(({name}) => name === "Weather by day")
  const dayRow = (workbook: Workbook, row: number) =>
    [2, 3, 4, 5].map((col) => workbook.valueAt({sheet: byDay, row, col}))
  const brought = (text: string) => {
    const workbook = new Workbook(document)
    const read = readWeather(text, document, 2026)
    if ("refused" in read) throw new Error(read.refused)
    workbook.revise(read.edit)
    return workbook
  }
  const close = (workbook: Workbook, row: number) => workbook.valueAt({sheet: 0, row, col: 5})
  const days = (year: number, count: number, line: (i: number) => string) =>
    Array.from({length: count}, (_, i) => {
      const day = new Date(Date.UTC(year, 0, 1 + i)).toISOString().slice(0, 10)
      return `${day},${line(i)}`
    }).join("\n")

  it("takes the day's mean of high and low, and names a gap", () => {
    const normal = dayRow(new Workbook(document), 61)
    const workbook = brought("2026-03-01,14,4,9,7\n2026-03-02,16,6,8.5\n2026-03-04,12,4")
    expect(dayRow(workbook, 59)).toEqual([9, 7, 9, "recorded"])
    // The soil follows: normal on 2 March 3.9 by the months' lines, and 0.75 of how much warmer 1 and 2 March were.
    const [air, soil, sun, rests] = dayRow(workbook, 60)
    expect([air, sun, rests]).toEqual([11, 8.5, "recorded"])
    expect(soil).toBeGreaterThan(4)
    expect(dayRow(workbook, 61).slice(0, 1)).toEqual(normal.slice(0, 1))
    expect(dayRow(workbook, 61)[3]).toBe("gap: normal")
    expect(dayRow(workbook, 120)[3]).toBe("normal")
    const checks = document.sheets.findIndex(({name}) => name === "Checks")
    const row = document.sheets[checks]!.rows.findIndex(([name]) => name === "Days of weather missing")
    expect([1, 2].map((col) => workbook.valueAt({sheet: checks, row, col}))).toEqual([
      1,
      "2026-03-03 to 2026-03-03",
    ])
  })

  it("takes the sun from high and low where it is not measured (FAO-56, equation 50)", () => {
    const workbook = brought("2026-07-15,26.6,14.8")
    // 0.16·√11.8 of the radiation above the air at 46.5° N on day 196, 40.50 MJ/m²/day by equations 21 to 25.
    const sun = dayRow(workbook, 195)[2] as number
    expect(Math.abs(sun - 0.16 * Math.sqrt(11.8) * 40.5)).toBeLessThan(0.01)
  })

  it("moves the plan: a warm spring brings the crop forward and the reserve down", () => {
    const plan = new Workbook(document)
    const warm = brought(days(2026, 144, (i) => `${12 + i / 8},${4 + i / 8}`))
    const yieldOf = (workbook: Workbook) => workbook.valueAt({sheet: 0, row: 1, col: 9}) as number
    expect(yieldOf(warm)).not.toBeCloseTo(yieldOf(plan), 0)
    expect(close(warm, 1)).not.toBe(close(plan, 1))
  })

  it("fills the days to come from a former year when it is asked to", () => {
    const text = `${days(2024, 366, (i) => `${20 + (i % 3)},10`)}\n${days(2026, 30, () => "5,1")}`
    const workbook = brought(text)
    const names = document.sheets.findIndex(({name}) => name === "Named values")
    const row = document.sheets[names]!.rows.findIndex(([name]) => name === "Days_to_come")
    expect(dayRow(workbook, 99)[3]).toBe("normal")
    workbook.revise({type: "enter", cells: [{at: {sheet: names, row, col: 1}, content: 2024}]})
    expect(dayRow(workbook, 9).filter((_, i) => i !== 1 && i !== 2)).toEqual([3, "recorded"])
    // 10 April is day 101 of 2024: its high was 20 + 100 mod 3 = 21.
    expect(dayRow(workbook, 99).filter((_, i) => i !== 1 && i !== 2)).toEqual([15.5, "as in 2024"])
  })
})
