import {describe, expect, it} from "vitest"
import {atAge} from "../../../functions/crop/atAge"
import {cell} from "../cell"

// Brock, D.E. (2012). High density planting of asparagus. Acta Horticulturae 950, 33-35: first trial, crates of
// 30 lb per acre in harvest years 1 to 6; in kg/ha by 30 x 0.45359237 / 0.40468564 (2 522 to 10 121 to 6 221).
const crates = [75, 301, 275, 249, 225, 185]
const brock = crates.map((perAcre) => (perAcre * 30 * 0.45359237) / 0.40468564)
const ages = [1, 2, 3, 4, 5, 6]

describe("atAge", () => {
  it("gives a published curve back at its own rows", () => {
    expect(ages.map((age) => atAge(age, ages, brock))).toEqual(brock)
    expect(Math.round(atAge(2, ages, brock) as number)).toBe(10121)
  })
  it("runs straight between two rows", () => {
    // Age 5 is half way from 4 (2 400) to 6 (4 800): 3 600. Age 3.5 is half way from 900 to 2 400: 1 650.
    expect(atAge(5, [3, 4, 6], [900, 2400, 4800])).toBe(3600)
    expect(atAge(3.5, [3, 4, 6], [900, 2400, 4800])).toBe(1650)
    // A quarter of the way down from 4 800 to 4 000.
    expect(atAge(7, [6, 10], [4800, 4000])).toBe(4600)
  })
  it("is not changed by a row that lies on the line", () => {
    for (const age of [4, 4.4, 5, 5.9, 6])
      expect(atAge(age, [3, 4, 5, 6], [900, 2400, 3600, 4800])).toBeCloseTo(
        atAge(age, [3, 4, 6], [900, 2400, 4800]) as number,
        9,
      )
  })
  it("knows the age of a table of one row and no other", () => {
    expect(atAge(4, [4], [2400])).toBe(2400)
    expect(atAge(4.1, [4], [2400])).toMatchObject({code: "#N/A"})
  })
  it.each([2, 2.99, 6.01, 7])("has no yield for age %s outside the table", (age) => {
    expect(atAge(age, [3, 4, 6], [900, 2400, 4800])).toEqual({
      refused: `Age ${age} is outside the table, which runs from 3 to 6 years`,
      code: "#N/A",
    })
  })
  it.each([
    [[3, 6, 4], "4 comes after 6"],
    [[3, 4, 4], "4 comes after 4"],
  ])("refuses ages %o, which do not rise", (ages, says) => {
    expect(atAge(3, ages, [900, 2400, 4800])).toEqual({
      refused: `Ages of the table (planting year = 0) must rise from row to row: ${says}`,
      code: "#VALUE!",
    })
  })
})

describe("CROP.AT_AGE in a cell", () => {
  it("reads whole columns and passes over a row that lacks its yield", () => {
    const table = [
      [3, 900, "note"],
      [4, null, "no record"],
      [5, 1500, ""],
      [null, null, "blank rows"],
      [null, null, "end"],
    ]
    expect(cell("=CROP.AT_AGE(4,T!A:A,T!B:B)", table)).toBe(1200)
  })
  it("passes on an error in the table and refuses sizes that differ", () => {
    expect(
      cell("=CROP.AT_AGE(4,T!A1:A2,T!B1:B2)", [
        [3, 900],
        [5, "=1/0"],
      ]),
    ).toMatchObject({code: "#DIV/0!"})
    expect(cell("=CROP.AT_AGE(4,{3,4,5},{900,1200})")).toMatchObject({code: "#VALUE!"})
  })
})
