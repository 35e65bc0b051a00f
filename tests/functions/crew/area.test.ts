import {describe, expect, it} from "vitest"
import {area} from "../../../functions/crew/area"
import {cell} from "../cell"

describe("area", () => {
  it("is what the weight allows on a heavy picking", () => {
    // 8 h × 20 kg/h = 160 kg; over 200 kg/ha = 0.8 ha
    expect(area(200, 20, 8, 1)).toBeCloseTo(0.8, 12)
  })
  it("is the walk on a light one, and with nothing standing", () => {
    expect(area(100, 20, 8, 1)).toBe(1) // 160/100 = 1.6
    expect(area(0, 20, 8, 1)).toBe(1)
    expect(area(100, 20, 8, 2)).toBeCloseTo(1.6, 12)
  })
  it("turns the published hectare of 8 hours and 160 kg/ha into 20 kg an hour", () => {
    // Rural News (New Zealand): 1 ha a person and day; 4 000 lb/ac over 28 pickings is 160 kg/ha each.
    expect(area(160, 20, 8, 1)).toBe(1)
  })
})

describe("CREW.AREA", () => {
  it("walks 1 ha where no walk is given", () => {
    expect(cell("=CREW.AREA(10,20,8)")).toBe(1)
    expect(cell("=CREW.AREA(10,20,8,T!A1)")).toBe(1)
    expect(cell("=CREW.AREA(10,20,8,0.9)")).toBe(0.9)
  })
  it.each([
    ["-1,20,8", "Crop standing on a hectare for this picking must be 0 kg/ha or more, not -1 kg/ha"],
    ["200,0,8", "Weight a person picks an hour must be above 0 kg/h, not 0 kg/h"],
    ["200,20,0", "Hours a person works a day must be above 0 and up to 24 h, not 0 h"],
    ["200,20,25", "Hours a person works a day must be above 0 and up to 24 h, not 25 h"],
    ["200,20,8,0", "Most a person can walk and cut a day must be above 0 ha/day, not 0 ha/day"],
  ])("refuses %s", (given, reason) => {
    expect(cell(`=CREW.AREA(${given})`)).toEqual({code: "#NUM!", reason})
  })
})
