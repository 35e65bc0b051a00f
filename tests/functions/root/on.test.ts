import {describe, expect, it} from "vitest"
import {EXAMPLE_CLIMATE} from "../../../functions/climate/climate"
import {dayOf} from "../../../functions/calendar"
import type {Given} from "../../../functions/parameters"
import {ROOT_ON} from "../../../functions/root/on"
import {ROOT_SEASON} from "../../../functions/root/season"
import {upkeep} from "../../../functions/root/upkeep"
import {balanceDefaults} from "../../../functions/root/balanceValues"
import {cell} from "../cell"
import {IN_CELLS, ask, generic, number} from "./generic"

const OPEN = "2026-04-25"
const CLOSE = "2026-06-19"
const on = (what: string, day: Given, ...rest: Given[]) =>
  number(ROOT_ON, what, day, 6000, 6400, generic, OPEN, CLOSE, ...rest)

// Worked example of the balance (physiology 8.4): S 6000, C 6400 kg/ha on 1 January, eight weeks from 25 April. Printed to
// whole kg and to 0.1 mg/g. The start of a day is the end of the day before it.
describe("the worked example", () => {
  const printed: [string, number, number, number, number, number | null][] = [
    ["2026-04-24", 503.8, 5901, 5811, 0, 0],
    ["2026-06-19", 422.4, 4183, 5721, 0, 6363],
    ["2026-07-08", 288.2, 2340, 5780, 2294, null],
    ["2026-07-19", 313.4, 2667, 5843, 3111, null],
    ["2026-08-08", 404.0, 4039, 5959, 4100, null],
    ["2026-08-29", 480.2, 5600, 6061, 4599, null],
    ["2026-10-15", 543.5, 7343, 6168, 4881, null],
    ["2026-12-31", 532.3, 6869, 6036, 4881, null],
  ]
  it.each(printed)("has c %2$s, C, S and F at the end of %s", (day, c, reserve, structure, fern, picked) => {
    expect(Math.abs(on("sugar", day) - c)).toBeLessThanOrEqual(0.05)
    expect(Math.abs(on("reserve", day) - reserve)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(on("structure", day) - structure)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(on("fern", day) - fern)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(on("picked", day) - (picked ?? 6363))).toBeLessThanOrEqual(0.5)
  })
  it("brings the crop and leaves the sugar of each week", () => {
    const kg = [626, 724, 797, 845, 866, 864, 840, 800]
    const sugar = [497.0, 488.9, 479.7, 469.5, 458.5, 446.8, 434.7, 422.4]
    const end = (weeks: number) => dayOf(OPEN)! - 1 + 7 * weeks
    for (const [week, printed] of kg.entries()) {
      expect(Math.abs(on("picked", end(week + 1)) - on("picked", end(week)) - printed)).toBeLessThanOrEqual(
        0.5,
      )
      expect(Math.abs(on("sugar", end(week + 1)) - sugar[week]!)).toBeLessThanOrEqual(0.05)
    }
  })
})

describe("a day", () => {
  it("the first, has one day of upkeep and of loss behind it", () => {
    const breathed = upkeep(6000, generic[0]![1]!, 1, balanceDefaults)
    expect(on("reserve", "2026-01-01")).toBeCloseTo(6400 - breathed, 9)
    expect(on("structure", "2026-01-01")).toBeCloseTo(6000 * (1 - 0.00028), 9)
  })
  it("the last, is the year end of ROOT.SEASON", () => {
    const end = (what: string) => number(ROOT_SEASON, what, 6000, 6400, generic, OPEN, CLOSE)
    expect(on("sugar", "2026-12-31")).toBe(end("sugar at year end"))
    expect(on("reserve", "2026-12-31")).toBe(end("reserve"))
    expect(on("picked", "2026-12-31")).toBe(end("picked"))
  })
  it("while cutting holds no fern, and picks nothing before or after", () => {
    expect(on("fern", CLOSE)).toBe(0)
    expect(on("fern", "2026-06-20")).toBeGreaterThan(0)
    expect(on("picked", "2026-04-24")).toBe(0)
    expect(on("picked", OPEN)).toBeGreaterThan(0)
    expect(on("picked", CLOSE)).toBeGreaterThan(on("picked", "2026-06-18"))
    expect(on("picked", "2026-06-20")).toBe(on("picked", CLOSE))
  })
  it("has a sugar that is 1000 C/(C + S)", () => {
    for (const day of ["2026-01-01", "2026-05-20", "2026-07-19", "2026-12-31"])
      expect(on("sugar", day)).toBeCloseTo(
        (1000 * on("reserve", day)) / (on("reserve", day) + on("structure", day)),
        9,
      )
  })
  it("does not know what comes later", () => {
    const later = (close: string) => number(ROOT_ON, "sugar", "2026-05-20", 6000, 6400, generic, OPEN, close)
    expect(later("2026-05-20")).toBe(later("2026-06-19"))
  })
  it("with a part of a day counts as that day", () => {
    expect(on("sugar", dayOf("2026-07-19")! + 0.75)).toBe(on("sugar", "2026-07-19"))
  })
  it.each(["2025-12-31", "2027-01-01"])("outside the model year of the opening, %s, is refused", (day) => {
    expect(ask(ROOT_ON, "sugar", day, 6000, 6400, generic, OPEN, CLOSE)).toEqual({
      refused: `Day ${day} must be in the model year of the opening, 2026-01-01 to 2026-12-31`,
      code: "#NUM!",
    })
  })
  it("may be the 366th, and in a year from July the end of June", () => {
    const state = (day: string, open: string, close: string, values: Given = null) =>
      ask(ROOT_ON, "fern", day, 6000, 6400, generic, open, close, null, values)
    expect(state("2028-12-31", "2028-04-24", "2028-06-18")).toBeTypeOf("number")
    const july: Given = [["Year_start", 7]]
    expect(state("2027-06-30", "2026-10-23", "2026-12-17", july)).toBeTypeOf("number")
    expect(state("2026-07-01", "2026-10-23", "2026-12-17", july)).toBe(0)
    expect(state("2026-06-30", "2026-10-23", "2026-12-17", july)).toEqual({
      refused: "Day 2026-06-30 must be in the model year of the opening, 2026-07-01 to 2027-06-30",
      code: "#NUM!",
    })
  })
})

describe("the healthy share", () => {
  it("changes nothing before its day", () => {
    const lost: Given = [["2026-08-01", 0.5]]
    expect(on("reserve", "2026-07-31", lost)).toBe(on("reserve", "2026-07-31"))
    expect(on("reserve", "2026-08-01", lost)).toBeLessThan(on("reserve", "2026-08-01"))
  })
  it("as one number holds for the whole fern, and 1 is the default", () => {
    expect(on("reserve", "2026-10-15", 1)).toBe(on("reserve", "2026-10-15"))
    expect(on("reserve", "2026-10-15", 0.8)).toBe(on("reserve", "2026-10-15", [["2026-01-01", 0.8]]))
    expect(on("reserve", "2026-10-15", 0.8)).toBeLessThan(on("reserve", "2026-10-15"))
  })
})

describe("ROOT.ON in a cell", () => {
  const call = (what: string, rest = "") =>
    `=ROOT.ON("${what}",T!E1,6000,6400,${IN_CELLS},"2026-04-25","2026-06-19"${rest})`
  const cells = (day: string | null) => generic.map((row, i) => [...row, null, i === 0 ? day : null])

  it("gives the state of a day that stands in a cell", () => {
    expect(Math.abs((cell(call("sugar"), cells("2026-07-19")) as number) - 313.4)).toBeLessThanOrEqual(0.05)
  })
  it.each([
    [call("sugar"), "#N/A", "Day: no date yet"],
    [
      call("soil"),
      "#VALUE!",
      'What is asked for must be one of "sugar", "reserve", "structure", "fern", "picked", not the text "soil"',
    ],
    [call("sugar").replace("T!E1", '"19 July"'), "#VALUE!", /^Day must be a date such as .*"19 July"$/],
    [call("sugar").replace("T!E1", "0"), "#NUM!", /^Day must be a date from 1904-01-01 to 9999-12-31/],
    [
      call("sugar", ",2").replace("T!E1", '"2026-07-19"'),
      "#NUM!",
      /^Healthy share of the fern must be from 0/,
    ],
    [call("sugar", ",1/0"), "#DIV/0!", ""],
    [call("sugar").replace("6000", "1/0").replace("T!E1", "NA()"), "#N/A", ""],
  ])("refuses %s", (formula, code, reason) => {
    const given = cell(formula, cells(null)) as {code: string; reason: string}
    expect(given.code).toBe(code)
    if (reason) expect(given.reason).toMatch(reason)
  })
  it("refuses a close before the opening with the day that means not cut", () => {
    expect(
      cell(`=ROOT.ON("sugar","2026-07-19",6000,6400,${EXAMPLE_CLIMATE},"2026-04-25","2026-04-01")`),
    ).toEqual({
      code: "#NUM!",
      reason: "Close 2026-04-01 must not be before the opening 2026-04-25; the day before it means not cut",
    })
  })
})
