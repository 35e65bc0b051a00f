import {describe, expect, it} from "vitest"
import type {Effects} from "../../../src/studies/effects"
import type {Difference} from "../../../src/workbook/compare"
import {movedBy, movedSentence, movedTitle} from "../../../src/views/pictures/movedBy"

const at = (row: number) => ({sheet: 0, row, col: 1})
const change = (row: number): Difference => ({
  now: at(row),
  was: at(row),
  before: 1,
  after: 2,
  isFormula: false,
})
const found = (before: number | string, after: number, ...by: (number | null)[]): Effects => ({
  moved: [{at: at(9), isDate: false, cover: null, before, after}],
  effects: by.map((one, i) => ({difference: change(i), by: [one]})),
})
const isSeen = (by: number) => Math.abs(by) >= 0.05
const bar = (name: string, by: number) => ({name, was: "3", is: "4", by, text: `${by} d`})
const result = {name: "Close of Long Acre", was: "10 Jun", is: "6 Jun"}

describe("what moved a result", () => {
  it("sorts the changes by how far each moves it, and leads with the others to what it is now", () => {
    const {changes, others} = movedBy(found(20, 12, -2, 1, -6, 0.01, null), 0, isSeen)!
    expect(changes.map(({difference, by}) => [difference.now!.row, by])).toEqual([
      [2, -6],
      [0, -2],
      [1, 1],
    ])
    expect(20 + changes.reduce((sum, {by}) => sum + by, 0) + others).toBeCloseTo(12, 9)
  })
  it("has no others where the bars lead all the way, or all but what is not seen", () => {
    expect(movedBy(found(20, 14.01, -6), 0, isSeen)!.others).toBe(0)
  })
  it("names seven, and keeps the rest as others", () => {
    const {changes, others} = movedBy(found(0, 45, 9, 8, 7, 6, 5, 4, 3, 2, 1), 0, isSeen)!
    expect(changes.map(({by}) => by)).toEqual([9, 8, 7, 6, 5, 4, 3])
    expect(others).toBeCloseTo(3, 9)
  })
  it("draws nothing for a result that was a word", () =>
    expect(movedBy(found("not cut", 3, 1), 0, isSeen)).toBeNull())

  it.each([
    [[bar("Price of 1", -4)], null, ", by price of 1"],
    [[bar("Price of 1", -3), bar("Area", -1)], null, ", most by price of 1"],
    // The largest change went the other way, so it is not why the close is earlier.
    [[bar("Price of 1", 5), bar("Area", -4), bar("Age", -5)], null, ", most by age"],
    [[bar("Price of 1", -1)], {by: -3, text: "-3 d"}, ""],
    [[], {by: -4, text: "-4 d"}, ""],
  ])("names what leads the way, and nothing where others do: %#", (changes, others, why) =>
    expect(movedTitle(result, changes, others)).toBe(`Close of Long Acre: 10 Jun to 6 Jun${why}`),
  )
  it("says every bar with its sign", () => {
    expect(movedSentence([bar("Price of 1", -6), bar("Area", 1)], {by: 1, text: "1 d"})).toBe(
      "Price of 1 -6 d; Area 1 d; others 1 d.",
    )
    expect(movedSentence([], null)).toBe("No change alone moves it, nor do they together.")
  })
})
