import {describe, expect, it} from "vitest"
import {dayWorth} from "../../../functions/season/dayWorth"
import {stopPrice} from "../../../functions/season/stopPrice"
import {cell} from "../cell"

describe("dayWorth", () => {
  it("falls from +42.00 to -17.50 when the price falls from 2.60 to 1.90", () => {
    // 85 x (2.60 - 0.95 - 0.45) - 60 = 85 x 1.20 - 60 = 42; 85 x 0.50 - 60 = -17.50.
    expect(dayWorth(85, 2.6, 0.95, 0.45, 60)).toBeCloseTo(42, 9)
    expect(dayWorth(85, 1.9, 0.95, 0.45, 60)).toBeCloseTo(-17.5, 9)
  })
  it("with nothing to cut loses next year's cost", () => expect(dayWorth(0, 2.6, 0.95, 0.45, 60)).toBe(-60))

  it("is 0 at the price at which to stop, told per packed kg", () => {
    // Economics of one picking: 85 kg harvested, packout 0.92, picking 0.38 and hauling 0.03 per harvested kg,
    // packing 0.22, the pass 18 and the reserve 3 500 x 0.012 = 42 money a hectare.
    const price = stopPrice(0.38, 0.03, 0.22, 0.92, 18, 3500, 0.012, 85)
    expect(dayWorth(85 * 0.92, price, (0.38 + 0.03) / 0.92, 0.22, 18 + 42)).toBeCloseTo(0, 9)
  })
})

describe("SEASON.DAY_WORTH in a cell", () => {
  it("may be below 0", () => expect(cell("=SEASON.DAY_WORTH(85,1.9,0.95,0.45,60)")).toBeCloseTo(-17.5, 9))

  it.each([0, 1, 2, 3, 4])("refuses argument %s below 0", (place) => {
    const given = ["85", "1.9", "0.95", "0.45", "60"].with(place, "-1")
    expect(cell(`=SEASON.DAY_WORTH(${given.join(",")})`)).toMatchObject({code: "#NUM!"})
  })
  it("waits for a price that is blank", () => {
    expect(cell("=SEASON.DAY_WORTH(85,T!A1,0.95,0.45,60)")).toEqual({
      code: "#N/A",
      reason: "Price of packed spears: not measured yet",
    })
  })
})
