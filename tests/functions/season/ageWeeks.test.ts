import {describe, expect, it} from "vitest"
import {ageWeeks} from "../../../functions/season/ageWeeks"
import {cell} from "../cell"

// The planner's default by planting material, formed from 25 published schedules: crowns 0, 2, 4, 6, 8 weeks
// at ages 0 to 4, seedling transplants 0, 0, 2, 4, 6, 8 at ages 0 to 5. Single schedules inside it: Univ. of
// Minnesota Extension, "Growing asparagus in home gardens": crowns, 6-8 weeks from age 3 on; Tulsa Master
// Gardeners, Tulsa World: crowns, 2-3 weeks at age 1, 4-6 at age 2.
const crowns = {ages: [0, 1, 2, 3, 4], weeks: [0, 2, 4, 6, 8]}
const transplants = {ages: [0, 1, 2, 3, 4, 5], weeks: [0, 0, 2, 4, 6, 8]}

describe("ageWeeks", () => {
  it("gives the weeks of the row with that age", () => {
    expect(ageWeeks(3, crowns.ages, crowns.weeks)).toBe(6)
    expect(ageWeeks(2, transplants.ages, transplants.weeks)).toBe(2)
    for (const [row, age] of crowns.ages.entries()) {
      expect(ageWeeks(age, crowns.ages, crowns.weeks)).toBe(crowns.weeks[row])
    }
  })
  it("keeps a row's weeks until the next row begins, and the last row's for good", () => {
    expect(ageWeeks(2.9, crowns.ages, crowns.weeks)).toBe(4)
    expect(ageWeeks(5, [2, 6], [3, 8])).toBe(3)
    expect(ageWeeks(14, transplants.ages, transplants.weeks)).toBe(8)
  })
  it("gives 0 to a planting younger than the table", () => {
    expect(ageWeeks(1, [2, 3], [4, 6])).toBe(0)
    expect(ageWeeks(-1, crowns.ages, crowns.weeks)).toBe(0)
  })
  it.each([
    [[0, 2, 1], "1 comes after 2"],
    [[0, 1, 1], "1 comes after 1"],
  ])("refuses ages %o, which do not rise", (ages, says) => {
    expect(ageWeeks(0, ages, [0, 2, 4])).toEqual({
      refused: `Ages of the table (planting year = 0) must rise from row to row: ${says}`,
      code: "#VALUE!",
    })
  })
})

describe("SEASON.AGE_WEEKS in a cell", () => {
  const table = [
    [0, 0, "note"],
    [1, 2, ""],
    [2, 4, ""],
    [null, null, "blank rows follow"],
    [null, null, "the end"],
  ]
  it("reads whole columns with blank rows at the end", () => {
    expect(cell("=SEASON.AGE_WEEKS(9,T!A:A,T!B:B)", table)).toBe(4)
    expect(cell("=SEASON.AGE_WEEKS(1,T!A:A,T!B:B)", table)).toBe(2)
  })
  it("refuses columns of different length and weeks that a year does not have", () => {
    expect(cell("=SEASON.AGE_WEEKS(1,T!A1:A3,T!B1:B2)", table)).toEqual({
      code: "#VALUE!",
      reason:
        "Ages of the table (planting year = 0) has 3 cells and Weeks allowed from that age on has 2: sizes differ",
    })
    expect(cell("=SEASON.AGE_WEEKS(1,{0,1},{0,53})")).toEqual({
      code: "#NUM!",
      reason: "Weeks allowed from that age on must be from 0 to 52 weeks, not 53 weeks",
    })
  })
  it("needs an age", () =>
    expect(cell("=SEASON.AGE_WEEKS(T!D1,T!A:A,T!B:B)", table)).toMatchObject({code: "#N/A"}))
})
