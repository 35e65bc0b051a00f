import {describe, expect, it} from "vitest"
import {EXAMPLE_CLIMATE} from "../../../functions/climate/climate"
import {dayOf} from "../../../functions/calendar"
import {ROOT_ON} from "../../../functions/root/on"
import {SEASON_CROP_ON} from "../../../functions/season/cropOn"
import {cell} from "../cell"
import {ask, generic, number} from "../root/generic"

const OPEN = dayOf("2026-04-25")!
const CLOSE = dayOf("2026-06-19")!
type Season = [open: unknown, close: unknown, crop: unknown, structure: unknown, reserve: unknown]
const onDay = (day: number, ...seasons: Season[]) => {
  const column = (i: number) => seasons.map((season) => [season[i]]) as never
  return number(SEASON_CROP_ON, day, column(0), column(1), column(2), column(3), column(4), generic)
}
const season: Season = [OPEN, CLOSE, 10_000, 6000, 6400]
const days = Array.from({length: CLOSE - OPEN + 1}, (_, i) => OPEN + i)

describe("the crop of a day", () => {
  it("adds up to the crop of the season", () =>
    expect(days.reduce((sum, day) => sum + onDay(day, season), 0)).toBeCloseTo(10_000, 6))

  it("is cut as the daily balance cuts it", () => {
    const picked = (day: number) => number(ROOT_ON, "picked", day, 6000, 6400, generic, OPEN, CLOSE)
    const share = (picked(OPEN + 20) - picked(OPEN + 19)) / picked(CLOSE)
    expect(onDay(OPEN + 20, season)).toBeCloseTo(10_000 * share, 9)
    // The worked example cuts 866 of 6363 kg in its fifth week (physiology 8.4, printed to whole kg).
    const week = days.slice(28, 35).reduce((sum, day) => sum + onDay(day, season), 0)
    expect(Math.abs(week - (10_000 * 866) / 6363)).toBeLessThan((10_000 * 1) / 6363)
  })

  it("is even where the crowns are not known, and nothing outside the season", () => {
    const even: Season = [OPEN, OPEN + 9, 1000, null, null]
    const kg = [OPEN - 1, OPEN, OPEN + 9, OPEN + 10].map((day) => onDay(day, even))
    expect(kg.map((one) => Number(one.toFixed(9)))).toEqual([0, 100, 100, 0])
  })

  it("is that of all plantings; one that is not cut, or not known, spoils no other", () => {
    const others: Season[] = [
      ["2026-04-28", "not cut", 0, 2000, 2000],
      [null, null, null, null, null],
    ]
    expect(onDay(OPEN + 5, season, ...others)).toBe(onDay(OPEN + 5, season))
    expect(onDay(OPEN + 5, season, season)).toBeCloseTo(2 * onDay(OPEN + 5, season), 9)
  })
})

it("refuses ranges of different sizes", () =>
  expect(ask(SEASON_CROP_ON, OPEN, [[OPEN], [OPEN]], [[CLOSE]], [[1]], [[1]], [[1]], generic)).toMatchObject({
    refused: "The ranges of the plantings have 2, 1, 1, 1, 1 cells: sizes differ",
  }))

it("takes an error in a row for a row that takes no part", () =>
  expect(
    cell(`=SEASON.CROP_ON("2026-05-04",T!A1:A2,T!B1:B2,T!C1:C2,T!D1:D2,T!D1:D2,${EXAMPLE_CLIMATE})`, [
      ["2026-05-01", "2026-05-10", 1000, "=NA()"],
      ["2026-05-01", "=1/0", 1000, "=NA()"],
    ]),
  ).toBe(100))
