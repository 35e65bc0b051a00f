import {describe, expect, it} from "vitest"
import {hours} from "../../../functions/crew/hours"
import {cell} from "../cell"

describe("hours", () => {
  it("divides the weight by the rate", () => {
    // 24·591 = 14 184, and 16 kg more at 24 kg/h are 2/3 h
    expect(hours(14200, 24)).toBeCloseTo(591 + 2 / 3, 9)
    // One hectare with 160 kg, picked by one person in 8 h, is 20 kg/h; and back.
    expect(hours(160, 20)).toBe(8)
    expect(hours(0, 24)).toBe(0)
  })
})

describe("CREW.HOURS", () => {
  it.each([
    ["14200,0", "Weight a person picks an hour must be above 0 kg/h, not 0 kg/h"],
    ["-1,24", "Weight to pick must be 0 kg or more, not -1 kg"],
  ])("refuses %s", (given, reason) => {
    expect(cell(`=CREW.HOURS(${given})`)).toEqual({code: "#NUM!", reason})
  })
})
