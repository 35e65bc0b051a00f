import {describe, expect, it} from "vitest"
import {EXAMPLE_CLIMATE} from "../../../functions/climate/climate"
import {dayOf} from "../../../functions/calendar"
import {CROP_IN_YEAR} from "../../../functions/crop/inYear"
import type {Given} from "../../../functions/parameters"
import {ROOT_SEASON} from "../../../functions/root/season"
import {cell} from "../cell"
import {IN_CELLS, ask, day, generic, number} from "../root/generic"

const OPEN = "2026-04-25"
const inYear = (what: string, year: number, weeks: Given, ...rest: Given[]) =>
  number(CROP_IN_YEAR, what, year, 6000, 6400, generic, OPEN, weeks, ...rest)
/** One year of eight weeks from a start, by ROOT.SEASON. */
const eightWeeks = (what: string, [structure, reserve] = [6000, 6400], ...fern: Given[]) =>
  number(ROOT_SEASON, what, structure!, reserve!, generic, OPEN, "2026-06-19", ...fern)
const column = (...held: (number | null)[]): Given => held.map((one) => [one])

describe("CROP.IN_YEAR", () => {
  it("comes to the steady state of eight weeks after 15 years", () => {
    // Physiology 8.4: S 6117, C 7195, 6890 kg/ha, sugar 530, 454, 319, refill on day 245; check 24 allows 5 kg.
    expect(Math.abs(inYear("picked", 15, 8) - 6890)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(inYear("structure", 15, 8) - 6117)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(inYear("reserve", 15, 8) - 7195)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(inYear("sugar at opening", 15, 8) - 530)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(inYear("sugar at close", 15, 8) - 454)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(inYear("lowest sugar", 15, 8) - 319)).toBeLessThanOrEqual(0.5)
    expect(inYear("refill date", 15, 8)).toBe(dayOf("2040-09-02")) // day 245 of a year of 365
  })
  it("stays there to the 60th year", () => {
    expect(inYear("picked", 60, 8)).toBeCloseTo(inYear("picked", 59, 8), 6)
  })
  it.each([
    // Physiology 8.4, line K: mean of 15 years at one length from the steady state, printed to whole kg. That state is
    // printed to whole kg as well, so that a mean may be off by 1.
    [0, 0],
    [2, 1654],
    [4, 3621],
    [5, 4629],
    [6, 5564],
    [7, 6334],
    [8, 6891],
    [9, 7065],
    [10, 5517],
  ])("brings in the mean of 15 years, with %s weeks, %s kg/ha", (weeks, printed) => {
    let sum = 0
    for (let year = 1; year <= 15; year++)
      sum += number(CROP_IN_YEAR, "picked", year, 6117, 7195, generic, OPEN, weeks)
    expect(Math.abs(sum / 15 - printed)).toBeLessThanOrEqual(1.5)
  })
  it("is in its first year what ROOT.SEASON gives, and in the second what it gives from there", () => {
    const first = (what: string) => eightWeeks(what)
    for (const what of ["picked", "lowest date", "refill date", "reserve", "potential left"])
      expect(inYear(what, 1, 8)).toBe(first(what))
    const second = eightWeeks("picked", [first("structure"), first("reserve")])
    expect(inYear("picked", 2, 8)).toBe(second)
  })
  it("gives dates of the year it is asked for", () => {
    const at = (year: number) => day(CROP_IN_YEAR, "lowest date", year, 6117, 7195, generic, OPEN, 8)
    expect(at(1).slice(0, 4)).toBe("2026")
    expect(at(3)).toBe(at(1).replace("2026", "2028")) // the steady state: the same day, in a leap year too
    expect(at(60)).toBe(at(1).replace("2026", "2085"))
  })
  it("in a model year from July gives dates on both sides of the new year", () => {
    const south = generic.map((_, i) => generic[(i + 365 - 181) % 365]!)
    const at = (what: string, year: number) =>
      day(CROP_IN_YEAR, what, year, 6117, 7195, south, "2026-10-23", 8, null, [["Year_start", 7]])
    expect(at("lowest date", 1).slice(0, 4)).toBe("2027") // January
    expect(at("lowest date", 4)).toBe(at("lowest date", 1).replace("2027", "2030"))
  })
})

describe("weeks", () => {
  it("go year by year, and the last goes on", () => {
    // An independent calculation of the equations of physiology 8.2, year after year from S 6000, C 6400 in the generic
    // climate: 8, 9, 6 and 6 weeks bring 6362.85, 7448.31, 4787.99 and 5345.83 kg/ha.
    const picked = [6362.85, 7448.31, 4787.99, 5345.83]
    for (const [i, kg] of picked.entries())
      expect(inYear("picked", i + 1, column(8, 9, 6))).toBeCloseTo(kg, 2)
    expect(inYear("picked", 4, column(8, 9, 6))).toBe(inYear("picked", 4, column(8, 9, 6, 6)))
  })
  it("after the year asked for make no difference", () => {
    expect(inYear("reserve", 2, column(8, 9, 0))).toBe(inYear("reserve", 2, column(8, 9)))
  })
  it("may stand in a row, and end in blanks", () => {
    expect(inYear("picked", 3, [[8, 9, 6]])).toBe(inYear("picked", 3, column(8, 9, 6)))
    expect(inYear("picked", 3, column(8, 9, 6, null, null))).toBe(inYear("picked", 3, column(8, 9, 6)))
  })
  it("are rounded to whole days", () => {
    const close = (weeks: number) => inYear("picked", 1, weeks)
    expect(close(8.05)).toBe(close(8)) // 56.35 days
    expect(close(8.1)).toBe(number(ROOT_SEASON, "picked", 6000, 6400, generic, OPEN, "2026-06-20")) // 56.7
    expect(close(0.07)).toBe(0) // 0.49 days
  })
  it("of 0 mean a year that is not cut", () => {
    expect(inYear("picked", 1, 0)).toBe(0)
    expect(inYear("potential left", 1, 0)).toBe(1)
    expect(inYear("picked", 2, column(0, 8))).toBeGreaterThan(inYear("picked", 2, 8))
  })
  it("with a blank between are refused, since the years after would move", () => {
    const ask2 = (weeks: Given) => ask(CROP_IN_YEAR, "picked", 1, 6000, 6400, generic, OPEN, weeks)
    expect(ask2(column(8, null, 6))).toEqual({
      refused: "Weeks of cutting, one a year: year 2 is blank",
      code: "#VALUE!",
    })
    expect(ask2(column(null, 8))).toEqual({
      refused: "Weeks of cutting, one a year: year 1 is blank",
      code: "#VALUE!",
    })
  })
  it("that end after the model year are refused", () => {
    expect(ask(CROP_IN_YEAR, "picked", 1, 6000, 6400, generic, OPEN, 36)).toEqual({
      // 252 days from 25 April end on 1 January.
      refused: "Close 2027-01-01 must be in the model year of the opening, which ends on 2026-12-31",
      code: "#NUM!",
    })
  })
})

describe("fern lost in a year", () => {
  const twoYears = (share: number) => inYear("picked", 2, 8, column(share, 1))

  it("leaves the next crop at least 0.40 of that without the loss", () => {
    expect(twoYears(0)).toBeCloseTo(0.4 * inYear("picked", 2, 8), 9)
    // The balance itself, unfloored: an independent calculation has no crop at all after a year without green fern.
    expect(inYear("potential left", 3, 8, column(1, 1))).toBeGreaterThan(0)
    const end = (what: string) => number(ROOT_SEASON, what, 6000, 6400, generic, OPEN, "2026-06-19", 0)
    expect(number(ROOT_SEASON, "picked", end("structure"), end("reserve"), generic, OPEN, "2026-06-19")).toBe(
      0,
    )
  })
  it("takes as much as the balance says while that is more than 0.40", () => {
    // An independent calculation of 8.2 with a healthy share of 0.9 in the first year: 6511.11 in the second.
    expect(twoYears(0.9)).toBeCloseTo(6511.11, 2)
  })
  it("raises nothing but the crop", () => {
    const end = (what: string) => number(ROOT_SEASON, what, 6000, 6400, generic, OPEN, "2026-06-19", 0)
    const second = number(
      ROOT_SEASON,
      "reserve",
      end("structure"),
      end("reserve"),
      generic,
      OPEN,
      "2026-06-19",
    )
    expect(inYear("reserve", 2, 8, column(0, 1))).toBe(second)
  })
  it("is measured against the year before alone, with what was lost earlier", () => {
    // Without the loss of year 2, year 3 comes from the state that the loss of year 1 left.
    const whole = inYear("picked", 3, 8, column(0.6, 1))
    expect(inYear("picked", 3, 8, column(0.6, 0, 1))).toBeCloseTo(0.4 * whole, 9)
  })
  it("in that year changes nothing that was picked before it", () => {
    expect(inYear("picked", 1, 8, 0)).toBe(inYear("picked", 1, 8))
  })
  it("goes on with the last share", () => {
    expect(inYear("reserve", 4, 8, column(1, 0.8))).toBe(inYear("reserve", 4, 8, column(1, 0.8, 0.8, 0.8)))
    expect(inYear("reserve", 4, 8, 0.9)).toBe(inYear("reserve", 4, 8, column(0.9, 0.9, 0.9, 0.9)))
  })
})

describe("CROP.IN_YEAR in a cell", () => {
  const call = (what: string, year: string, weeks: string, rest = "", climate = EXAMPLE_CLIMATE) =>
    `=CROP.IN_YEAR(${what},${year},6000,6400,${climate},"2026-04-25",${weeks}${rest})`
  const P = '"picked"'
  const table = [
    [8, 1],
    [9, null],
    [6, null],
    [null, null],
  ]

  it("takes climate and weeks from cells, whole columns too", () => {
    const cells = generic.map((row, i) => [...row, i === 0 ? 8 : null])
    expect(
      Math.abs((cell(call(P, "15", "T!D:D", "", IN_CELLS), cells) as number) - 6890),
    ).toBeLessThanOrEqual(0.5)
    expect(cell(call(P, "3", "T!A:A"), table)).toBe(cell(call(P, "3", "{8;9;6}")))
  })
  it("gives a named date as a date", () => {
    const text = `=TEXT(${call('"lowest date"', "3", "8").slice(1)},"YYYY-MM-DD")`
    expect(cell(text)).toMatch(/^2028-07-\d\d$/)
  })
  it("takes a loss of fern with its date as one of the first year", () => {
    // The second year starts from what ROOT.SEASON leaves of the first with the same loss.
    const loss = [["2026-08-25", 0.5]]
    const first = (what: string) => eightWeeks(what, [6000, 6400], loss)
    const second = eightWeeks("picked", [first("structure"), first("reserve")])
    expect(inYear("picked", 2, 8, loss)).toBeCloseTo(second, 9)
    expect(second).toBeLessThan(inYear("picked", 2, 8))
    expect(inYear("reserve", 2, 8, loss)).toBeCloseTo(
      eightWeeks("reserve", [first("structure"), first("reserve")]),
      9,
    )
    expect(inYear("picked", 1, 8, loss)).toBe(inYear("picked", 1, 8))
  })
  it("never takes the next crop below 0.40 of what it would be without the dated loss", () => {
    expect(inYear("picked", 2, 8, [["2026-07-01", 0]]) / inYear("picked", 2, 8)).toBeCloseTo(0.4, 9)
  })
  it("reads a row of two shares as two years", () => {
    expect(inYear("picked", 2, 8, [[0.9, 1]])).toBe(inYear("picked", 2, 8, column(0.9, 1)))
  })
  it("takes whole fern for healthy shares that are blank or left out", () => {
    const whole = cell(call(P, "3", "8"))
    for (const rest of [",", ",T!C1", ",T!C1:C4", ",T!B1:B4", ",1", ",T!C1:C4,T!C1:D4"])
      expect(cell(call(P, "3", "8", rest), table)).toBe(whole)
  })
  it.each([
    [call(P, "0", "8"), "#NUM!", "Year, counted from 1 must be a whole number from 1 to 60, not 0"],
    [call(P, "61", "8"), "#NUM!", "Year, counted from 1 must be a whole number from 1 to 60, not 61"],
    [call(P, "1.5", "8"), "#NUM!", "Year, counted from 1 must be a whole number from 1 to 60, not 1.5"],
    [call(P, "T!C1", "8"), "#N/A", "Year, counted from 1: not measured yet"],
    [call(P, "1", "T!C1:C4"), "#N/A", "Weeks of cutting, one a year: not measured yet"],
    [call(P, "1", "T!C1"), "#N/A", "Weeks of cutting, one a year: not measured yet"],
    [call(P, "1", "-1"), "#NUM!", "Weeks of cutting, one a year must be from 0 to 52 weeks, not -1 weeks"],
    [call(P, "1", "53"), "#NUM!", "Weeks of cutting, one a year must be from 0 to 52 weeks, not 53 weeks"],
    [call(P, "1", '"8"'), "#VALUE!", 'Weeks of cutting, one a year must be a number, not the text "8"'],
    [
      call(P, "1", "8", ",1.1"),
      "#NUM!",
      "Healthy share of the fern, one a year must be from 0 to 1, not 1.1",
    ],
    [
      call(P, "1", "8", ",{1;-1}"),
      "#NUM!",
      "Healthy share of the fern, one a year must be from 0 to 1, not -1",
    ],
    [
      call(P, "1", "8", ',,{"To_fern",0.8}'),
      "#NUM!",
      "Crop values To_fern (0.8) and To_root (0.29) share the day's sugar: together at most 1",
    ],
  ])("refuses %s", (formula, code, reason) => {
    expect(cell(formula, table)).toEqual({code, reason})
  })
  it("refuses an unknown outcome with the list", () => {
    expect(cell(call('"crop"', "1", "8"))).toEqual({
      code: "#VALUE!",
      reason: expect.stringMatching(/^What is asked for must be one of "picked", .*, not the text "crop"$/),
    })
  })
  it("passes errors on, the leftmost first", () => {
    expect(cell(call(P, "99", "1/0", ",NA()"))).toMatchObject({code: "#DIV/0!"})
    expect(cell(call(P, "1", "T!A1:A2"), [[8], ["=NA()"]])).toMatchObject({code: "#N/A"})
  })
  it("carries a refusal of the outcome into the cell", () => {
    expect(cell(call('"full fern date"', "1", "30"))).toEqual({
      code: "#N/A",
      reason: "The fern does not fill its room that year",
    })
  })
})
