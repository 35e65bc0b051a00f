import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {healthAlong, healthyFern} from "../../../functions/fern/healthy"
import {cell} from "../cell"

const [AUGUST, SEPTEMBER] = [dayOf("2026-08-01")!, dayOf("2026-09-01")!]

describe("healthyFern", () => {
  it("takes one share for the whole fern", () => {
    for (const share of [0, 0.5, 1]) expect(healthyFern.read(share)).toEqual([{from: -Infinity, share}])
    expect(healthyFern.read([[0.5]])).toEqual([{from: -Infinity, share: 0.5}])
  })
  it("takes rows of day and share, past blank ones", () => {
    expect(
      healthyFern.read([
        [null, null],
        ["2026-08-01", 0.8],
        [null, null],
        [SEPTEMBER, 0],
      ]),
    ).toEqual([
      {from: AUGUST, share: 0.8},
      {from: SEPTEMBER, share: 0},
    ])
  })
  it("is whole where nothing is given, or rows of nothing", () => {
    expect(healthyFern.absent).toEqual({value: [], words: "1"})
    expect(healthyFern.read([[null, null]])).toEqual([])
  })
  it("may be more again later, since fern grows back", () => {
    expect(
      healthyFern.read([
        ["2026-08-01", 0.5],
        ["2026-09-01", 0.9],
      ]),
    ).toHaveLength(2)
  })
  it.each([
    ["2026-09-01", "2026-08-01", "2026-08-01 must come after 2026-09-01"],
    ["2026-08-01", "2026-08-01", "2026-08-01 must come after 2026-08-01"],
  ])("refuses %s before %s", (first, second, says) => {
    expect(
      healthyFern.read([
        [first, 0.8],
        [null, null],
        [second, 0.5],
      ]),
    ).toEqual({
      refused: `Healthy share of the fern, day ${says}, the day before it in the list`,
      code: "#VALUE!",
    })
  })
  it.each([
    [1.01, "#NUM!", "Healthy share of the fern must be from 0 to 1, not 1.01"],
    [-0.1, "#NUM!", "Healthy share of the fern must be from 0 to 1, not -0.1"],
    ["0.5", "#VALUE!", 'Healthy share of the fern must be a number, not the text "0.5"'],
    [true, "#VALUE!", "Healthy share of the fern must be a number, not TRUE"],
  ])("refuses a share of %s, alone and in a row", (share, code, refused) => {
    expect(healthyFern.read(share)).toEqual({refused, code})
    expect(healthyFern.read([["2026-08-01", share]])).toEqual({refused, code})
  })
  it("refuses a row that is half blank", () => {
    expect(healthyFern.read([["2026-08-01", null]])).toEqual({
      refused: "Healthy share of the fern from 2026-08-01: not measured yet",
      code: "#N/A",
    })
    expect(healthyFern.read([[null, 0.5]])).toEqual({
      refused: "Healthy share of the fern, day: no date yet",
      code: "#N/A",
    })
  })
  it("refuses a day that is none, and a range of another shape", () => {
    expect(healthyFern.read([["August", 0.5]])).toEqual({
      refused: 'Healthy share of the fern, day must be a date such as 2026-04-25, not the text "August"',
      code: "#VALUE!",
    })
    for (const rows of [[[0.5], [0.6]], [["2026-08-01", 0.5, 1]]])
      expect(healthyFern.read(rows)).toEqual({
        refused: "Healthy share of the fern must be one share or a range of two columns, date and share",
        code: "#VALUE!",
      })
  })
})

describe("healthAlong", () => {
  const year = {first: dayOf("2026-01-01")!, days: 365}
  const steps = [
    {from: AUGUST, share: 0.8},
    {from: SEPTEMBER, share: 0.25},
  ]
  it("is whole before the first day, and a share holds until the next day of the list", () => {
    const along = healthAlong(steps, year)
    expect(along).toHaveLength(365)
    // 1 August is day 213, 1 September day 244, counted from 1.
    expect([along[0], along[211], along[212], along[242], along[243], along[364]]).toEqual([
      1, 1, 0.8, 0.8, 0.25, 0.25,
    ])
  })
  it("is the same all year for one share, and 1 for none", () => {
    expect(new Set(healthAlong([{from: -Infinity, share: 0.4}], year))).toEqual(new Set([0.4]))
    expect(new Set(healthAlong([], year))).toEqual(new Set([1]))
  })
  it("has the last share of a list that ends before the year, and is whole before one that begins after it", () => {
    const before = healthAlong(steps, {first: dayOf("2027-01-01")!, days: 365})
    expect(new Set(before)).toEqual(new Set([0.25]))
    expect(new Set(healthAlong(steps, {first: dayOf("2025-01-01")!, days: 365}))).toEqual(new Set([1]))
  })
  it("changes with the first and on the last day of a leap year", () => {
    const leap = {first: dayOf("2028-01-01")!, days: 366}
    expect(healthAlong([{from: leap.first, share: 0.5}], leap)[0]).toBe(0.5)
    const last = healthAlong([{from: dayOf("2028-12-31")!, share: 0.5}], leap)
    expect([last[364], last[365]]).toEqual([1, 0.5])
  })
})

describe("a healthy share in a cell", () => {
  const MONTHS =
    "{0,3,4;1,3,7;4,4,11;9,7,15;14,11,19;18,14,20;19,16,20;18,17,17;15,16,13;11,13,8;6,9,5;2,6,4}"
  const call = (healthy: string) =>
    `=ROOT.SEASON("reserve",6000,6400,${MONTHS},"2026-04-25","2026-06-19",${healthy})`
  const table = [
    ["2026-08-01", 0.5],
    [null, null],
    ["2026-09-01", 0.5],
  ]
  it("is one number, or a table with rows left blank for later, whole columns too", () => {
    const lost = cell(call("T!A1:B3"), table)
    expect(lost).toBe(cell(call("T!A:B"), table))
    expect(lost).toBe(cell(call("T!A1:B1"), table)) // the second day changes nothing
    expect(lost).toBeLessThan(cell(call("1")) as number)
    expect(cell(call("0.5"))).toBeLessThan(lost as number)
  })
  it("is whole while its cells are blank", () => {
    const whole = cell(call("1"))
    for (const blank of ["", "T!D1", "T!D1:E9", "T!D:E"]) expect(cell(call(blank), table)).toBe(whole)
  })
  it("passes an error in the table on", () => {
    expect(cell(call("T!A1:B1"), [["2026-08-01", "=1/0"]])).toMatchObject({code: "#DIV/0!"})
  })
})
