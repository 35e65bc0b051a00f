import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {limit} from "../../../functions/season/limit"
import {cell} from "../cell"

const names = ["reserve", "spear size", "fern days", "price", "last date"]
const isos = ["2026-06-12", "2026-06-09", "2026-06-18", "2026-06-20", "2026-06-24"]
const dates = isos.map((iso) => dayOf(iso)!)

describe("limit", () => {
  it("is the name with the earliest date", () => {
    expect(limit(names, dates)).toBe("spear size")
    expect(limit(names.toReversed(), dates.toReversed())).toBe("spear size")
  })
  it("on a tie is the one listed first", () => {
    const tie = dates.with(3, dates[1]!)
    expect(limit(names, tie)).toBe("spear size")
    expect(limit(names.toReversed(), tie.toReversed())).toBe("price")
  })
  it("refuses a date without a name, also one that would not win", () => {
    expect(limit(names.with(4, ""), dates)).toEqual({
      refused: "Limit date 2026-06-24 has no name",
      code: "#VALUE!",
    })
  })
})

describe("SEASON.LIMIT in a cell", () => {
  const all = "=SEASON.LIMIT(T!A:A,T!B:B)"
  const rows = names.map((name, row) => [name, isos[row]!])
  it("gives the name, leaving out limits that are #N/A", () => {
    expect(cell(all, rows)).toBe("spear size")
    expect(cell(all, rows.with(1, ["spear size", "=NA()"]))).toBe("reserve")
  })
  it("passes other errors on and refuses names that are no words", () => {
    expect(cell(all, rows.with(0, ["reserve", "=1/0"]))).toMatchObject({code: "#DIV/0!"})
    expect(cell(all, rows.with(0, ["=5", "2026-06-12"]))).toEqual({
      code: "#VALUE!",
      reason: "Names of the limits must be words, not 5",
    })
  })
  it("has no answer without a date", () => {
    expect(cell(all, [["reserve"], ["price", "=NA()"]])).toEqual({
      code: "#N/A",
      reason: "Limit dates: not measured yet",
    })
  })
})
