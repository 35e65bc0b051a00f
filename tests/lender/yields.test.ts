import {describe, expect, it} from "vitest"
import type {CellAddress, Content} from "../../src/workbook/document"
import {openFarm} from "./farm"

describe("the yields (LE2)", () => {
  it("stand beside the three-year record with the gap and the reason, or that there is none", () => {
    const {at, rowOf, of, enter} = openFarm()
    const row = rowOf("Yield evidence", "Sand Piece")
    const records = [4150, 3820, 4460].map((kg, i): [CellAddress, Content] => [
      at("Records", rowOf("Records", "Sand Piece") + i, "Saleable crop"),
      kg,
    ])
    enter(...records, [at("Yield evidence", row, "Projection"), 4900])
    expect(of("Yield evidence", row, "Three-year mean")).toBeCloseTo(4143.33, 2)
    expect(of("Yield evidence", row, "Gap")).toBeCloseTo(0.1826, 4) // 4 900/4 143.33
    expect(of("Yield evidence", row, "Reason to read")).toMatch(/^closes ten days early/)
    enter([at("Yield evidence", row, "Reason given"), null])
    expect(of("Yield evidence", row, "Reason to read")).toBe("no reason given")
    expect(of("Checks", rowOf("Checks", "Projections above the record without a reason"), "Found")).toBe(1)
  })

  it("let the county's yield stand in for a year marked as a disaster", () => {
    const {at, rowOf, of, enter, named} = openFarm()
    const first = rowOf("Records", "Sand Piece")
    // 7 CFR 761.104, the case of the function: 4 200, 2 400 (hail), 4 500 and a county yield of 3 600 give 4 100.
    enter(
      ...[4200, 2400, 4500].map((kg, i): [CellAddress, Content] => [
        at("Records", first + i, "Saleable crop"),
        kg,
      ]),
      [at("Records", first + 1, "Disaster"), "hail"],
    )
    named("County_yield", 3600)
    const row = rowOf("Yield evidence", "Sand Piece")
    expect(of("Yield evidence", row, "With disaster years")).toBe(4100)
    expect(of("Yield evidence", row, "Three-year mean")).toBe(3700)
    // Three years and 100 % of the county's for the fourth: (4 200 + 2 400 + 4 500 + 3 600)/4.
    expect(of("Yield evidence", row, "By the insurer's rule")).toBe(3675)
  })

  it("put each recorded year to this year's age", () => {
    const {at, rowOf, of, enter} = openFarm()
    const row = rowOf("Yield evidence", "Well Field")
    // Ages 2, 3, 4 with .15, .5, .8 to age 5 with .95: (620/.15 + 2 480/.5 + 4 350/.8)/3·.95.
    expect(of("Yield evidence", row, "Record as if this old")).toBeCloseTo(
      ((620 / 0.15 + 2480 / 0.5 + 4350 / 0.8) / 3) * 0.95,
      6,
    )
    // Planted 2022, a year later, the first record is of age 1, of which the age factors say nothing: age 4 with .8 by the others.
    enter([at("Plantings", rowOf("Plantings", "Well Field"), "Planted"), "2022-04-20"])
    expect(of("Yield evidence", row, "Record as if this old")).toBeCloseTo(
      ((2480 / 0.15 + 4350 / 0.5) / 2) * 0.8,
      6,
    )
  })
})
