import {describe, expect, it} from "vitest"
import {disasterMean} from "../../../functions/crop/disasterMean"
import {cell} from "../cell"

// 7 CFR 761.104: a farm's own last three years, the county's yield in place of a year hit by a disaster.
describe("disasterMean", () => {
  it("is the plain mean where no year is marked", () => {
    expect(disasterMean([4200, 2400, 4500], ["", "", ""], 3600)).toBe(3700)
  })
  it("takes the stand-in for each marked year", () => {
    expect(disasterMean([4200, 2400, 4500], ["", "hail", ""], 3600)).toBe(4100)
    expect(disasterMean([4200, 2400, 4500], ["frost", "hail", ""], 3600)).toBe(3900)
  })
  it("without one leaves out the lowest where two are marked", () => {
    expect(disasterMean([4200, 2400, 4500], ["frost", "hail", ""], null)).toBe(4350)
  })
  it("without one has no rule for a single marked year", () => {
    expect(disasterMean([4200, 2400, 4500], ["", "hail", ""], null)).toEqual({
      refused: "1 year is marked: give the county or state yield that stands in for it",
      code: "#N/A",
    })
  })
})

it("CROP.DISASTER_MEAN keeps marks with their years when a yield is blank", () => {
  const table = [
    [4200, null],
    [null, "hail"],
    [2400, "hail"],
    [4500, null],
  ]
  expect(cell("=CROP.DISASTER_MEAN(T!A1:A4,T!B1:B4,3600)", table)).toBe(4100)
  expect(cell("=CROP.DISASTER_MEAN(T!A1:A4,T!B1:B4)", table)).toMatchObject({code: "#N/A"})
  expect(cell("=CROP.DISASTER_MEAN(T!A1:A4,T!B1:B3,3600)", table)).toMatchObject({code: "#VALUE!"})
})
