import {describe, expect, it} from "vitest"
import {refill} from "../../../functions/fern/refill"
import {cell} from "../cell"

describe("refill", () => {
  it("is days times rate while there is room", () => {
    expect(refill(70, 14, 1100)).toBe(980)
  })
  it("stops at the room left", () => {
    // 95·14 = 1330, more than 1100
    expect(refill(95, 14, 1100)).toBe(1100)
    expect(refill(95, 14, 1330)).toBe(1330)
  })
  it("is 0 without days, without rate and without room", () => {
    expect([refill(0, 14, 1100), refill(95, 0, 1100), refill(95, 14, 0)]).toEqual([0, 0, 0])
  })
})

describe("FERN.REFILL", () => {
  it.each([
    ["-1,14,1100", "Days of full fern must be 0 days or more, not -1 days"],
    ["95,-1,1100", "Sugar put back a day must be 0 kg/ha/day or more, not -1 kg/ha/day"],
    ["95,14,-1", "Room left in the store must be 0 kg/ha or more, not -1 kg/ha"],
  ])("refuses %s", (given, reason) => {
    expect(cell(`=FERN.REFILL(${given})`)).toEqual({code: "#NUM!", reason})
  })
  it("says which argument is blank", () => {
    expect(cell("=FERN.REFILL(95,14,T!A1)")).toEqual({
      code: "#N/A",
      reason: "Room left in the store: not measured yet",
    })
  })
})
