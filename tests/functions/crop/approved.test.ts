import {describe, expect, it} from "vitest"
import {approved} from "../../../functions/crop/approved"
import {cell} from "../cell"

const SHARES = [0.65, 0.8, 0.9, 1]
const record = [4800, 4200, 3900, 4500]

describe("approved", () => {
  // 7 CFR 400.52: 65 % of the transitional yield with no record, 80 % with one year, 90 % with two (100 % with three from
  // memory); the mean of at least four. T = 4 000, worked out by hand.
  it.each([
    [0, 2600], // 0.65·4000
    [1, 3600], // (4800 + 3·3200)/4
    [2, 4050], // (9000 + 2·3600)/4
    [3, 4225], // (12 900 + 4000)/4
    [4, 4350], // 17 400/4
  ])("with %s years on record is %s", (years, expected) => {
    expect(approved(4000, record.slice(0, years), SHARES)).toBeCloseTo(expected, 9)
  })
  it("lets the transitional yield go once there are four years", () => {
    expect(approved(9e9, record, SHARES)).toBe(4350)
    expect(approved(0, [...record, 5350], SHARES)).toBe(4550)
  })
  it("refuses more than ten years, and shares that are not four", () => {
    expect(
      approved(
        4000,
        Array.from({length: 11}, () => 1),
        SHARES,
      ),
    ).toEqual({
      refused: "11 years on record: give the latest 10 in a row at most",
      code: "#NUM!",
    })
    expect(approved(4000, record, [1])).toEqual({
      refused: "1 shares are given: there must be 4, for 0, 1, 2 and 3 years on record",
      code: "#NUM!",
    })
  })
})

describe("CROP.APPROVED", () => {
  const table = [[4800], [null], [4200], [null]]
  it("leaves blanks out, and takes a blank record as none", () => {
    expect(cell("=CROP.APPROVED(4000,T!A1:A4)", table)).toBeCloseTo(4050, 9)
    expect(cell("=CROP.APPROVED(4000,T!B1:B4)", table)).toBeCloseTo(2600, 9)
    expect(cell("=CROP.APPROVED(4000)")).toBeCloseTo(2600, 9)
  })
  it("takes other shares", () => expect(cell("=CROP.APPROVED(4000,{4800},{1,1,1,1})")).toBeCloseTo(4200, 9))
})
