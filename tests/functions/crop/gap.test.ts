import {describe, expect, it} from "vitest"
import {gap} from "../../../functions/crop/gap"
import {cell} from "../cell"

describe("gap", () => {
  it("is the projection over the record, less 1", () => {
    // 4 900 / 4 143 = 1.18272: 18 % above, to the two digits printed.
    expect(Math.round((gap(4900, 4143) as number) * 100)).toBe(18)
    expect(gap(5000, 4000)).toBe(0.25)
    expect(gap(3000, 4000)).toBe(-0.25)
  })
  it("is 0 for a projection that equals the record, and -1 for no crop", () => {
    expect(gap(4143, 4143)).toBe(0)
    expect(gap(0, 4143)).toBe(-1)
  })
  it("gives the projection back from the record", () => {
    expect(4143 * (1 + (gap(4900, 4143) as number))).toBeCloseTo(4900, 9)
  })
  it.each([0, -5])("has nothing to compare with at a record of %s", (record) => {
    expect(gap(4900, record)).toEqual({
      refused: `Yield on record must be above 0 kg/ha, not ${record} kg/ha`,
      code: "#DIV/0!",
    })
  })
})

describe("CROP.GAP in a cell", () => {
  it("tells a record of 0 from one that is not there", () => {
    expect(cell("=CROP.GAP(4900,T!A1)", [[0]])).toMatchObject({code: "#DIV/0!"})
    expect(cell("=CROP.GAP(4900,T!A1)")).toEqual({code: "#N/A", reason: "Yield on record: not measured yet"})
  })
})
