import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {pace} from "../../../functions/season/pace"
import {cell} from "../cell"

const isos = ["2026-05-04", "2026-05-11", "2026-05-18"]
const days = isos.map((iso) => dayOf(iso)!)

describe("pace", () => {
  it("is what was picked over what was planned, up to and with the day", () => {
    // 800 + 680 = 1 480 picked, 700 + 900 = 1 600 planned: 1 480 / 1 600 = 0.925. The third row is later.
    expect(pace([800, 680, 50], [700, 900, 500], days, days[1]!)).toBe(0.925)
    expect(pace([800, 680, 50], [700, 900, 500], days, days[2]! - 1)).toBe(0.925)
    expect(pace([800, 680, 50], [700, 900, 500], days, days[1]! - 1)).toBe(800 / 700)
  })
  it("weighs the sums, not the rows", () => {
    // 100/100 and 50/200 give 150/300 = 0.5; the mean of the two ratios would be 0.625.
    expect(pace([100, 50], [100, 200], days.slice(0, 2), days[1]!)).toBe(0.5)
  })
  it("is 1 where picked is as planned, in whatever order the rows stand", () => {
    expect(pace([1, 2, 3], [1, 2, 3], days.toReversed(), days[2]!)).toBe(1)
    expect(pace([50, 680, 800], [500, 900, 700], days.toReversed(), days[1]!)).toBe(0.925)
  })
  it("has no answer while nothing is picked, on record or at all", () => {
    const nothing = {refused: "Nothing picked up to 2026-05-03", code: "#N/A"}
    expect(pace([800], [700], days.slice(0, 1), days[0]! - 1)).toEqual(nothing)
    expect(pace([0, 5], [700, 900], days.slice(0, 2), days[0]!)).toMatchObject({code: "#N/A"})
  })
  it("cannot be told from a plan of nothing", () => {
    expect(pace([800, 680], [0, 0], days.slice(0, 2), days[1]!)).toEqual({
      refused: "Nothing planned up to 2026-05-11",
      code: "#DIV/0!",
    })
  })
})

describe("SEASON.PACE in a cell", () => {
  const all = '=SEASON.PACE(T!A:A,T!B:B,T!C:C,"2026-05-18")'
  it("leaves a picking that was not measured out of both sums, and counts a typed 0", () => {
    const rows = (third: number | null) => [
      [800, 700, "2026-05-04"],
      [680, 900, "2026-05-11"],
      [third, 400, "2026-05-18"],
    ]
    expect(cell(all, rows(null))).toBe(0.925)
    expect(cell(all, rows(0))).toBe(0.74) // 1 480 / 2 000
  })
  it("leaves out a picking without a plan", () => {
    expect(
      cell(all, [
        [800, 1000, "2026-05-04"],
        [680, null, "2026-05-11"],
      ]),
    ).toBe(0.8)
  })
  it("is not measured yet before the first picking is typed", () => {
    expect(
      cell(all, [
        [null, 700, "2026-05-04"],
        [null, 900, "2026-05-11"],
      ]),
    ).toEqual({
      code: "#N/A",
      reason: "Weights picked: not measured yet",
    })
  })
  it("refuses sizes that differ and weights below 0, and passes errors on", () => {
    const rows = [
      [800, 700, "2026-05-04"],
      [-1, 900, "=1/0"],
    ]
    expect(cell('=SEASON.PACE(T!A1:A1,T!B1:B2,T!C1:C1,"2026-05-18")', rows)).toMatchObject({code: "#VALUE!"})
    expect(cell('=SEASON.PACE(T!A1:A2,T!B1:B2,{"2026-05-04","2026-05-11"},"2026-05-18")', rows)).toEqual({
      code: "#NUM!",
      reason: expect.stringMatching(/^Weights picked must be .*, not -1 kg$/),
    })
    expect(cell(all, rows)).toMatchObject({code: "#DIV/0!"})
  })
})
