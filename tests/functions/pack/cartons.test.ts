import {describe, expect, it} from "vitest"
import {cartons} from "../../../functions/pack/cartons"
import {cell} from "../cell"

describe("cartons", () => {
  it("counts the last carton, full or not", () => {
    // 14 200·0.86/5 = 12 212/5 = 2442.4
    expect(cartons(14200, 5, 0.86)).toBe(2443)
    expect(cartons(5.1, 5, 1)).toBe(2)
    expect(cartons(0, 5, 1)).toBe(0)
  })
  it("adds no carton for the noise of a calculation", () => {
    // 3·1.1 kg into cartons of 1.1 kg; 3·1.1 in doubles is 3.3000000000000003.
    expect(3 * 1.1).toBeGreaterThan(3.3)
    expect(cartons(3 * 1.1, 1.1, 1)).toBe(3)
    expect(cartons(4.2, 1.4, 1)).toBe(3)
    // 1000·0.57/5 = 114; 1000·0.57 in doubles may fall beside 570.
    expect(cartons(1000, 5, 0.57)).toBe(114)
  })
})

describe("PACK.CARTONS", () => {
  it("packs all of it where no share is given", () => {
    expect(cell("=PACK.CARTONS(14200,5)")).toBe(2840)
    expect(cell("=PACK.CARTONS(14200,5,T!A1)")).toBe(2840)
  })
  it.each([
    ["14200,0", "Weight in a carton must be above 0 kg, not 0 kg"],
    ["-1,5", "Weight picked must be 0 kg or more, not -1 kg"],
    ["14200,5,86", "Share of the weight that is packed must be from 0 to 1, not 86"],
  ])("refuses %s", (given, reason) => {
    expect(cell(`=PACK.CARTONS(${given})`)).toEqual({code: "#NUM!", reason})
  })
})
