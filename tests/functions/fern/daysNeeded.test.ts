import {describe, expect, it} from "vitest"
import {daysNeeded} from "../../../functions/fern/daysNeeded"
import {refill} from "../../../functions/fern/refill"
import {cell} from "../cell"

describe("daysNeeded", () => {
  it("fills the room after the lag, rounded up", () => {
    // 1100/14 = 78.57; 78.57 + 28 = 106.57
    expect(daysNeeded(1100, 14, 28)).toBe(107)
    expect(daysNeeded(1100, 14, 0)).toBe(79)
  })
  it("rounds the sum, so that two parts of a day make no second day", () => {
    // 78.57 + 0.4 = 78.97
    expect(daysNeeded(1100, 14, 0.4)).toBe(79)
  })
  it("does not round up the noise of a division", () => {
    // 4.2/1.4 is 3, but doubles give 3.0000000000000004; 2.1/0.7 the same.
    expect(4.2 / 1.4).toBeGreaterThan(3)
    expect(daysNeeded(4.2, 1.4, 0)).toBe(3)
    expect(daysNeeded(1120, 14, 28)).toBe(108)
  })
  it("needs no day without room, whatever the lag", () => {
    expect([daysNeeded(0, 14, 28), daysNeeded(-50, 14, 28)]).toEqual([0, 0])
  })
  it("is the fewest days that FERN.REFILL takes to fill the room", () => {
    for (const room of [13, 14, 15, 700, 1100]) {
      const days = daysNeeded(room, 14, 0)
      expect(refill(days, 14, room)).toBe(room)
      expect(refill(days - 1, 14, room)).toBeLessThan(room)
    }
  })
})

describe("FERN.DAYS_NEEDED", () => {
  it("takes a blank lag as 0", () => {
    expect(cell("=FERN.DAYS_NEEDED(1100,14,T!A1)")).toBe(79)
    expect(cell("=FERN.DAYS_NEEDED(1100,14)")).toBe(79)
  })
  it.each([
    ["1100,0", "Sugar put back a day must be above 0 kg/ha/day, not 0 kg/ha/day"],
    ["0,0", "Sugar put back a day must be above 0 kg/ha/day, not 0 kg/ha/day"],
    ["1100,14,-1", "Days until the fern puts sugar back must be 0 days or more, not -1 days"],
  ])("refuses %s", (given, reason) => {
    expect(cell(`=FERN.DAYS_NEEDED(${given})`)).toEqual({code: "#NUM!", reason})
  })
})
