import {describe, expect, it} from "vitest"
import {mean} from "../../../functions/spear/mean"
import {cell} from "../cell"

describe("mean", () => {
  it("takes each diameter as often as it was counted", () => {
    // (8·3 + 10·9 + 12·6 + 14·2) / 20 = (24 + 90 + 72 + 28) / 20 = 214 / 20
    expect(mean([8, 10, 12, 14], [3, 9, 6, 2])).toBe(10.7)
  })
  it("counts each diameter once without counts", () => {
    expect(mean([8, 10, 12, 14], null)).toBe(11)
    expect(mean([8, 10, 12, 14], [5, 5, 5, 5])).toBe(11)
  })
  it("is the same whether a diameter is counted twice or listed twice", () => {
    expect(mean([9, 13], [2, 1])).toBe(mean([9, 9, 13], null))
  })
  it("refuses counts that add up to 0", () => {
    expect(mean([8, 10], [0, 0])).toEqual({refused: "Spears counted add up to 0", code: "#DIV/0!"})
  })
})

describe("SPEAR.MEAN", () => {
  it("leaves out a row with a blank in it, diameter and count together", () => {
    // (8·3 + 14·1) / 4 = 9.5; the second row has no count, the third no diameter.
    const rows = [
      [8, 3],
      [10, null],
      [null, 9],
      [14, 1],
    ]
    expect(cell("=SPEAR.MEAN(T!A1:A4,T!B1:B4)", rows)).toBe(9.5)
    // Without counts three diameters are left: (8 + 10 + 14) / 3.
    expect(cell("=SPEAR.MEAN(T!A1:A4)", rows)).toBeCloseTo(32 / 3, 12)
  })
  it("says that nothing is measured yet", () => {
    expect(cell("=SPEAR.MEAN(T!A1:A3)")).toEqual({code: "#N/A", reason: "Spear diameters: not measured yet"})
  })
  it.each([0, -3, 60.5])("refuses a diameter of %s mm and takes 60", (diameter) => {
    expect(cell("=SPEAR.MEAN(T!A1:A2)", [[12], [diameter]])).toEqual({
      code: "#NUM!",
      reason: `Spear diameters must be above 0 and up to 60 mm, not ${diameter} mm`,
    })
    expect(cell("=SPEAR.MEAN(T!A1:A2)", [[12], [60]])).toBe(36)
  })
  it("refuses a count below 0, text, and lists of different length", () => {
    expect(cell("=SPEAR.MEAN({8,10},{3,-1})")).toEqual({
      code: "#NUM!",
      reason: "Spears counted must be 0 or more, not -1",
    })
    expect(cell('=SPEAR.MEAN({8,"10"})')).toEqual({
      code: "#VALUE!",
      reason: 'Spear diameters must be a number, not the text "10"',
    })
    expect(cell("=SPEAR.MEAN({8,10,12},{3,1})")).toMatchObject({code: "#VALUE!"})
  })
})
