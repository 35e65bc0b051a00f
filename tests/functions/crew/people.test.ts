import {describe, expect, it} from "vitest"
import {people} from "../../../functions/crew/people"
import {cell} from "../cell"

describe("people", () => {
  it("rounds up to whole people", () => {
    // 591.7/9 = 65.74
    expect(people(591.7, 9, 1)).toBe(66)
    // 591.7/18 = 32.87
    expect(people(591.7, 9, 2)).toBe(33)
    expect(people(0, 9, 1)).toBe(0)
  })
  it("adds nobody for the noise of a division", () => {
    // 3·0.7 h over 0.7 h is 3 people, but 2.1/0.7 in doubles is 3.0000000000000004.
    expect(2.1 / 0.7).toBeGreaterThan(3)
    expect(people(2.1, 0.7, 1)).toBe(3)
    expect(people(594, 9, 1)).toBe(66)
    expect(people(594.1, 9, 1)).toBe(67)
  })
})

describe("CREW.PEOPLE", () => {
  it("takes the hours from CREW.HOURS, in one day where no days are given", () => {
    expect(cell("=CREW.PEOPLE(CREW.HOURS(14200,24),9)")).toBe(66)
    expect(cell("=CREW.PEOPLE(CREW.HOURS(14200,24),9,T!A1)")).toBe(66)
  })
  it.each([
    ["591.7,0", "Hours a person works a day must be above 0 and up to 24 h, not 0 h"],
    ["591.7,25", "Hours a person works a day must be above 0 and up to 24 h, not 25 h"],
    ["591.7,9,0", "Days to do it in must be above 0 days, not 0 days"],
    ["-1,9", "Hours of work must be 0 h or more, not -1 h"],
  ])("refuses %s", (given, reason) => {
    expect(cell(`=CREW.PEOPLE(${given})`)).toEqual({code: "#NUM!", reason})
  })
})
