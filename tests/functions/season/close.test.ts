import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {close} from "../../../functions/season/close"
import {cell} from "../cell"

const day = (iso: string) => dayOf(iso)!

// A hand example: five limits of one field in 2026.
const limits = [
  ["reserve", "2026-06-12"],
  ["spear size", "2026-06-09"],
  ["fern days", "2026-06-18"],
  ["price", "2026-06-20"],
  ["last date", "2026-06-24"],
] as const
const names = limits.map(([name]) => name)
const dates = limits.map(([, iso]) => day(iso))

describe("close", () => {
  it("is the earliest of the limit dates, wherever it stands", () => {
    expect(close(names, dates)).toBe(day("2026-06-09"))
    expect(close(names.toReversed(), dates.toReversed())).toBe(day("2026-06-09"))
  })
  it("with one limit is its date", () =>
    expect(close(["price"], [day("2026-06-20")])).toBe(day("2026-06-20")))
  it("moves with every limit by no more than that limit moves", () => {
    for (const [row, date] of dates.entries()) {
      const earlier = dates.with(row, date - 5)
      const moved = day("2026-06-09") - (close(names, earlier) as number)
      expect(moved).toBeGreaterThanOrEqual(0)
      expect(moved).toBeLessThanOrEqual(5)
    }
  })
  it.each(["", "  "])("refuses a date whose name is '%s'", (name) => {
    expect(close(["reserve", name], [day("2026-06-12"), day("2026-06-30")])).toEqual({
      refused: "Limit date 2026-06-30 has no name",
      code: "#VALUE!",
    })
  })
})

describe("SEASON.CLOSE in a cell", () => {
  const all = "=SEASON.CLOSE(T!A:A,T!B:B)"
  const rows: (string | null)[][] = limits.map(([name, iso]) => [name, iso])
  it("gives a date", () => expect(cell(all, rows)).toBe(day("2026-06-09")))

  it("leaves out limits that are blank or #N/A", () => {
    expect(cell(all, rows.with(1, ["spear size", "=NA()"]))).toBe(day("2026-06-12"))
    expect(cell(all, [...rows.with(1, ["spear size", null]), [null, null]])).toBe(day("2026-06-12"))
  })
  it("passes any other error on", () => {
    expect(cell(all, rows.with(4, ["last date", "=1/0"]))).toMatchObject({code: "#DIV/0!"})
  })
  it("is not measured yet when no limit has a date", () => {
    const none = {code: "#N/A", reason: "Limit dates: not measured yet"}
    expect(cell("=SEASON.CLOSE(T!A1:A2,T!B1:B2)", [["reserve", "=NA()"], ["price"]])).toEqual(none)
    expect(cell("=SEASON.CLOSE(T!A1:A2,T!B1:B2)")).toEqual(none)
  })
  it("refuses sizes that differ, a date without a name and a text that is no date", () => {
    expect(cell("=SEASON.CLOSE(T!A1:A5,T!B1:B4)", rows)).toEqual({
      code: "#VALUE!",
      reason: "Names of the limits has 5 cells and Limit dates has 4: sizes differ",
    })
    expect(cell(all, rows.with(3, [null, "2026-06-20"]))).toEqual({
      code: "#VALUE!",
      reason: "Limit date 2026-06-20 has no name",
    })
    expect(cell(all, rows.with(3, ["price", "never"]))).toEqual({
      code: "#VALUE!",
      reason: 'Limit dates must be a date such as 2026-04-25, not the text "never"',
    })
  })
})
