import {describe, expect, it} from "vitest"
import {alive} from "../../../functions/stand/alive"
import {cell} from "../cell"

describe("alive", () => {
  it("divides the crowns found by the crowns set", () => {
    // 50 m at 0.33 m: 151.52 set; 128·0.33/50 = 0.8448
    expect(alive(128, 50, 0.33)).toBeCloseTo(0.8448, 9)
    expect(alive(0, 50, 0.33)).toBe(0)
  })
  it("gives what was counted up to 1.2, also where doubles go astray", () => {
    expect(alive(110, 20, 0.2)).toBeCloseTo(1.1, 9)
    // 8·0.45/3 = 3.6/3 = 1.2, but doubles put it a hair above.
    expect(8 / (3 / 0.45)).toBeGreaterThan(1.2)
    expect(alive(8, 3, 0.45)).toBeCloseTo(1.2, 9)
  })
  it("refuses more than 1.2 times the crowns set", () => {
    expect(alive(128, 50, 0.5)).toEqual({
      refused: "More than planted: 128 crowns found where 100.0 were set",
      code: "#NUM!",
    })
    expect(alive(121, 20, 0.2)).toMatchObject({code: "#NUM!"})
  })
})

describe("STAND.ALIVE", () => {
  it.each([
    ["-1,50,0.33", "Crowns found alive must be 0 or more, not -1"],
    ["128,0,0.33", "Length of row counted must be above 0 m, not 0 m"],
    ["128,50,0", "Gap between plants in the row must be above 0 and up to 10 m, not 0 m"],
  ])("refuses %s", (given, reason) => {
    expect(cell(`=STAND.ALIVE(${given})`)).toEqual({code: "#NUM!", reason})
  })
  it("says that a count is not there yet, and takes a typed 0 as 0", () => {
    expect(cell("=STAND.ALIVE(T!A1,50,0.33)")).toEqual({
      code: "#N/A",
      reason: "Crowns found alive: not measured yet",
    })
    expect(cell("=STAND.ALIVE(T!A1,50,0.33)", [[0]])).toBe(0)
  })
})
