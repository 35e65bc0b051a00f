import {describe, expect, it} from "vitest"
import {weekShare} from "../../../functions/season/weekShare"
import {cell} from "../cell"

const table = [6, 11, 15, 17, 16, 14, 12, 9] // %, sum 100

describe("weekShare", () => {
  it("is the table itself for a season of its length", () => {
    for (const [row, share] of table.entries())
      expect(weekShare(row + 1, 8, table)).toBeCloseTo(share / 100, 12)
  })
  it("joins two rows to a week in a season half as long, and parts a row in one twice as long", () => {
    expect(weekShare(2, 4, table)).toBeCloseTo(0.32, 12) // 15 + 17
    expect(weekShare(16, 16, table)).toBeCloseTo(0.045, 12)
  })
  it.each([0.5, 3, 6.5, 8, 11])("adds up to the whole over %s weeks", (weeks) => {
    const all = Array.from({length: 14}, (_, week) => weekShare(week, weeks, table) as number)
    expect(all.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
    expect(all[0]).toBe(0)
    expect(all.at(-1)).toBe(0)
  })
  it("refuses shares that add up to 0", () =>
    expect(weekShare(1, 8, [0, 0])).toEqual({refused: "Shares of the table add up to 0", code: "#DIV/0!"}))
})

it("SEASON.WEEK_SHARE refuses a season without weeks and half a week's number", () => {
  expect(cell("=SEASON.WEEK_SHARE(1,0,{1,2})")).toMatchObject({code: "#NUM!"})
  expect(cell("=SEASON.WEEK_SHARE(1.5,8,{1,2})")).toMatchObject({code: "#NUM!"})
})
