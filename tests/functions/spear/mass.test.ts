import {describe, expect, it} from "vitest"
import {mass} from "../../../functions/spear/mass"
import {cell} from "../cell"

// Mean spears of whole crops. Michigan Asparagus Advisory Board, tips page: 20 million lb from 500 million spears.
// The Times, London, 19 April 2017 (summary): 6 500 t from 340 million spears.
const michigan = (20e6 * 453.59237) / 500e6 // g
const unitedKingdom = 6500e6 / 340e6 // g

describe("mass", () => {
  it("puts a spear of 12 mm and 21 cm at the mean spears of two crops", () => {
    expect(michigan).toBeCloseTo(18.14, 2)
    expect(unitedKingdom).toBeCloseTo(19.12, 2)
    // 0.6·1.44·21 = 18.144, printed as 18.1
    expect(mass(12, 21, 0.6)).toBeGreaterThanOrEqual(michigan - 0.05)
    expect(mass(12, 21, 0.6)).toBeLessThanOrEqual(unitedKingdom)
  })
  it.each([
    // 0.6·(D/10)²·23
    {diameter: 8, grams: 8.832},
    {diameter: 12, grams: 19.872},
    {diameter: 20, grams: 55.2},
  ])("is $grams g at $diameter mm and 23 cm", ({diameter, grams}) => {
    expect(mass(diameter, 23, 0.6)).toBeCloseTo(grams, 9)
  })
  it("goes with the square of the diameter and with the length", () => {
    expect(mass(24, 23, 0.6)).toBeCloseTo(4 * mass(12, 23, 0.6), 9)
    expect(mass(12, 46, 0.6)).toBeCloseTo(2 * mass(12, 23, 0.6), 9)
    expect(mass(10, 1, 0.6)).toBe(0.6)
  })
})

describe("SPEAR.MASS", () => {
  it("follows Spear_shape", () => {
    expect(cell("=SPEAR.MASS(10,20,T!A1:B1)", [["Spear_shape", 0.7]])).toBeCloseTo(14, 9)
  })
  it.each([
    ["0,23", "Spear diameter must be above 0 and up to 60 mm, not 0 mm"],
    ["61,23", "Spear diameter must be above 0 and up to 60 mm, not 61 mm"],
    ["12,0", "Spear length must be above 0 and up to 100 cm, not 0 cm"],
  ])("refuses %s", (given, reason) => {
    expect(cell(`=SPEAR.MASS(${given})`)).toEqual({code: "#NUM!", reason})
  })
})
