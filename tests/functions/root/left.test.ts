import {describe, expect, it} from "vitest"
import {left} from "../../../functions/root/left"
import {cell} from "../cell"

describe("left", () => {
  it("leaves 1 370 of 2 000 kg/ha after 35 draws of 18", () => {
    expect(left(2000, Array(35).fill(18), null)).toBe(1370) // 35·18 = 630
  })
  it("adds what is gained", () => expect(left(2000, [800, 700], [90, 10])).toBe(600))

  it("may come to nothing, whatever rounding leaves", () => {
    expect(left(100, [40, 60], null)).toBe(0)
    expect(left(0.3, [0.1, 0.1, 0.1], null)).toBe(0) // the three add up to 0.30000000000000004
  })
  it("refuses draws of more than is there", () => {
    expect(left(500, [300, 300.25], [50])).toEqual({
      refused: "Draws of 600.3 kg/ha are more than the 550.0 kg/ha there",
      code: "#NUM!",
    })
  })
})

describe("ROOT.LEFT in a cell", () => {
  const draws = Array.from({length: 35}, () => [18])
  it("leaves out days that are blank", () => {
    expect(cell("=ROOT.LEFT(2000,T!A1:A60)", [[null], ...draws])).toBe(1370)
  })
  it("takes gains of another length, and none at all when they are blank", () => {
    expect(cell("=ROOT.LEFT(2000,T!A1:A35,{10,20})", draws)).toBe(1400)
    expect(cell("=ROOT.LEFT(2000,T!A1:A35,T!B1:B9)", draws)).toBe(1370)
  })
  it("is not measured yet when no draw is there", () => {
    expect(cell("=ROOT.LEFT(2000,T!A1:A5)")).toEqual({code: "#N/A", reason: "Draws: not measured yet"})
  })
  it("refuses a draw below 0 and a store that does not last", () => {
    expect(cell("=ROOT.LEFT(2000,{18,-18})")).toEqual({
      code: "#NUM!",
      reason: "Draws must be 0 kg/ha or more, not -18 kg/ha",
    })
    expect(cell("=ROOT.LEFT(10,{18,18})")).toMatchObject({code: "#NUM!"})
  })
})
