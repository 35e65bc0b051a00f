import {describe, expect, it} from "vitest"
import {EXAMPLE_CLIMATE} from "../../../functions/climate/climate"
import {dayOf, isoOf} from "../../../functions/calendar"
import type {Given} from "../../../functions/parameters"
import {ROOT_LAST_CLOSE} from "../../../functions/root/lastClose"
import {ROOT_SEASON} from "../../../functions/root/season"
import {cell} from "../cell"
import {IN_CELLS, ask, day, generic, number} from "./generic"

const OPEN = "2026-04-25"
const lastClose = (floor: number, ...rest: Given[]) =>
  ask(ROOT_LAST_CLOSE, floor, 6000, 6400, generic, OPEN, ...rest)
const lowest = (close: number, ...rest: Given[]) =>
  number(ROOT_SEASON, "lowest reserve", 6000, 6400, generic, OPEN, close, ...rest)

describe("ROOT.LAST_CLOSE", () => {
  it.each([
    // An independent calculation of the equations of physiology 8.2 for the worked example's field (S 6000, C 6400, generic
    // climate, opening 25 April), closing a day later each time: the last whose lowest store is not below the floor.
    [2000, "2026-07-03"], // 2008.1, and 1986.1 a day later
    [2200, "2026-06-24"], // 2215.8, 2191.8
    [2500, "2026-06-12"], // 2522.3, 2495.7
    [3000, "2026-05-26"], // 3000.08, 2971.2
  ])("at a floor of %s is %s", (floor, close) => {
    expect(isoOf(lastClose(floor) as number)).toBe(close)
  })
  it("keeps the year's lowest at or above the floor, and the day after does not", () => {
    for (const floor of [1500, 1777, 2340, 2345, 3456.7]) {
      const close = lastClose(floor) as number
      expect(lowest(close)).toBeGreaterThanOrEqual(floor)
      expect(lowest(close + 1)).toBeLessThan(floor)
    }
  })
  it("respects a floor that is just the lowest of a close", () => {
    const close = dayOf("2026-06-19")!
    expect(lastClose(lowest(close))).toBe(close)
    expect(lastClose(lowest(close) + 0.001)).toBe(close - 1)
  })
  it("is the day before the opening where only a year without cutting holds", () => {
    const uncut = lowest(dayOf(OPEN)! - 1)
    expect(lastClose(uncut)).toBe(dayOf(OPEN)! - 1)
    expect(lastClose(uncut + 1)).toEqual({
      refused: `Never: even without cutting the store falls to ${uncut.toFixed(0)} kg/ha, below your floor of ${uncut + 1}`,
      code: "#N/A",
    })
  })
  it.each([0, 1])("is none where no close takes the store below %s kg/ha", (floor) => {
    // With no draw at all by spears and fern the store stays near what it was.
    const values: Given = [
      ["Cut_rate", 0],
      ["Fern_build", 0],
    ]
    expect(lastClose(floor, null, values)).toEqual({
      refused: "No close before the fern's end, 2026-10-15, takes the store below your floor",
      code: "#N/A",
    })
  })
  it("is no date when the floor is 0, since no store falls below it", () => {
    expect(lastClose(0)).toMatchObject({code: "#N/A"})
    expect(ask(ROOT_LAST_CLOSE, 0, 6000, 0, generic, OPEN)).toMatchObject({code: "#N/A"})
  })
  it("is never where the store is below the floor from the start", () => {
    expect(ask(ROOT_LAST_CLOSE, 1, 6000, 0, generic, OPEN)).toEqual({
      refused: "Never: even without cutting the store falls to 0 kg/ha, below your floor of 1",
      code: "#N/A",
    })
  })
  it("comes earlier for a field with less in store and for a higher floor", () => {
    const from = (floor: number, reserve: number) =>
      number(ROOT_LAST_CLOSE, floor, 6000, reserve, generic, OPEN)
    expect(from(2000, 6000)).toBeLessThan(from(2000, 6400))
    expect(from(2400, 6400)).toBeLessThan(from(2300, 6400))
  })
  it("may open on the first day of the year", () => {
    const close = number(ROOT_LAST_CLOSE, 2000, 6000, 6400, generic, "2026-01-01")
    const low = (day: number) => number(ROOT_SEASON, "lowest reserve", 6000, 6400, generic, "2026-01-01", day)
    expect(low(close)).toBeGreaterThanOrEqual(2000)
    expect(low(close + 1)).toBeLessThan(2000)
  })
  it("is none for an opening after the fern's end", () => {
    expect(ask(ROOT_LAST_CLOSE, 2000, 6000, 6400, generic, "2026-11-01")).toEqual({
      refused: "No season: the opening, 2026-11-01, comes after the fern's end, 2026-10-15",
      code: "#N/A",
    })
    const opening = (day: string) => ask(ROOT_LAST_CLOSE, 2000, 6000, 6400, generic, day)
    expect(opening("2026-10-16")).toMatchObject({refused: expect.stringMatching(/^No season: /)})
    expect(opening("2026-10-15")).toMatchObject({refused: expect.stringMatching(/^No close before /)})
  })
  it("in a model year from July is the same moved by half a year", () => {
    const south = generic.map((_, i) => generic[(i + 365 - 181) % 365]!)
    const july: Given = [["Year_start", 7]]
    // 24 June is day 175; from 1 July on day 175 is 22 December.
    expect(day(ROOT_LAST_CLOSE, 2200, 6000, 6400, south, "2026-10-23", null, july)).toBe("2026-12-22")
  })
})

describe("ROOT.LAST_CLOSE in a cell", () => {
  const call = (floor: string, rest = "", climate = EXAMPLE_CLIMATE) =>
    `=ROOT.LAST_CLOSE(${floor},6000,6400,${climate},"2026-04-25"${rest})`

  it("gives a date", () => {
    expect(cell(`=TEXT(${call("2200", "", IN_CELLS).slice(1)},"YYYY-MM-DD")`, generic)).toBe("2026-06-24")
  })
  it("takes defaults for what is blank", () => {
    expect(cell(call("2200", ",T!A1,T!A1:B2"))).toBe(cell(call("2200")))
    expect(cell(call("2200", ",T!A1:B2,"))).toBe(cell(call("2200")))
  })
  it.each([
    [call("-1"), "#NUM!", "Your floor for the lowest of the year must be 0 kg/ha or more, not -1 kg/ha"],
    [call("T!A1"), "#N/A", "Your floor for the lowest of the year: not measured yet"],
    [
      call('"2200"'),
      "#VALUE!",
      'Your floor for the lowest of the year must be a number, not the text "2200"',
    ],
    [call("2200", ",1.1"), "#NUM!", "Healthy share of the fern must be from 0 to 1, not 1.1"],
    [call("2200", ',,{"Fern_low",130}'), "#NUM!", "Crop value Fern_low (130) must be below Fern_high (120)"],
  ])("refuses %s", (formula, code, reason) => {
    expect(cell(formula)).toEqual({code, reason})
  })
  it("passes errors on, the leftmost first", () => {
    expect(cell(call("1/0", ",NA()"))).toMatchObject({code: "#DIV/0!"})
    expect(cell(call("-1", ",1/0"))).toMatchObject({code: "#DIV/0!"})
  })
})
