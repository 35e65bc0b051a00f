import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {close} from "../../../functions/season/close"
import {slack} from "../../../functions/season/slack"
import {cell} from "../cell"

const names = ["reserve", "spear size", "fern days", "price", "last date"]
const isos = ["2026-06-12", "2026-06-09", "2026-06-18", "2026-06-20", "2026-06-24"]
const dates = isos.map((iso) => dayOf(iso)!)

describe("slack", () => {
  it("is the days from the earliest limit to the next", () => {
    // From 9 June, spear size, to 12 June, reserve.
    expect(slack(names, dates)).toBe(3)
    expect(slack(names.toReversed(), dates.toReversed())).toBe(3)
  })
  it("is 0 on a tie", () => expect(slack(names, dates.with(4, dates[1]!))).toBe(0))

  it("is how far the close moves when its limit is lifted", () => {
    const without =
      (close(names.toSpliced(1, 1), dates.toSpliced(1, 1)) as number) - (close(names, dates) as number)
    expect(slack(names, dates)).toBe(without)
  })
  it("has no next limit when there is one", () => {
    expect(slack(["price"], [dates[3]!])).toEqual({
      refused: "Only one limit date (price): there is no next one",
      code: "#N/A",
    })
  })
  it("refuses a date without a name", () => {
    expect(slack(["", "price"], [dates[0]!, dates[3]!])).toEqual({
      refused: "Limit date 2026-06-12 has no name",
      code: "#VALUE!",
    })
  })
  it("leaves its lists as they were", () => {
    const given = [...dates]
    slack(names, given)
    expect(given).toEqual(dates)
  })
})

describe("SEASON.SLACK in a cell", () => {
  const all = "=SEASON.SLACK(T!A:A,T!B:B)"
  const rows = names.map((name, row) => [name, isos[row]!])
  it("counts only limits that have a date", () => {
    expect(cell(all, rows)).toBe(3)
    // Reserve is not known: from 9 June to 18 June, fern days.
    expect(cell(all, rows.with(0, ["reserve", "=NA()"]))).toBe(9)
  })
  it("has no answer with one date left, or none, and passes other errors on", () => {
    expect(
      cell(all, [
        ["reserve", "=NA()"],
        ["price", "2026-06-20"],
      ]),
    ).toEqual({
      code: "#N/A",
      reason: "Only one limit date (price): there is no next one",
    })
    expect(cell(all, [["reserve", "=NA()"]])).toEqual({code: "#N/A", reason: "Limit dates: not measured yet"})
    expect(cell(all, rows.with(4, ["last date", "=1/0"]))).toMatchObject({code: "#DIV/0!"})
  })
})
