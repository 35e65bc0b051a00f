import {describe, expect, it} from "vitest"
import {readTally} from "../../../functions/spear/tally"
import {cell} from "../cell"

describe("readTally", () => {
  it("reads a slip: diameters with how many had them, from the thinnest", () => {
    expect(readTally("10×9 8×3")).toEqual({diameters: [8, 10], counts: [3, 9]})
  })
  it("takes what keyboards have for ×, and what people put between", () => {
    const read = readTally("8×3 9.5×12")
    for (const text of ["8x3 9.5x12", "8X3  9.5*12", "8 x 3; 9.5 x 12", "8×3, 9,5×12", "8×3;9,5×12"])
      expect(readTally(text), text).toEqual(read)
  })
  it("takes a list of spears, each once", () => {
    expect(readTally("8 10 8 9")).toEqual({diameters: [8, 9, 10], counts: [2, 1, 1]})
  })
  it("takes fractions for inches", () => {
    // An inch is 25.4 mm: 6/16 is 9.525 mm, and 3/8 the same.
    expect(readTally("6/16×2 3/8×1 8/16×5")).toEqual({diameters: [9.525, 12.7], counts: [3, 5]})
  })
  it.each(["thin", "8×", "×3", "8×2.5", "-8×3", "8×3×2", "8:3"])("refuses %s", (text) => {
    expect(readTally(text)).toMatchObject({code: "#VALUE!", refused: expect.stringContaining(`“${text}”`)})
  })
  it.each(["0×3", "61×1", "5/0×1", "0/16×1"])("refuses %s, which no spear has", (text) => {
    expect(readTally(text)).toEqual({
      code: "#NUM!",
      refused: `Diameters must be above 0 and up to 60 mm, not those of “${text}”`,
    })
  })
})

describe("SPEAR.TALLY", () => {
  it("gives the mean, the number and the share that is thinner than a limit", () => {
    // 3·8 + 9·10 + 6·12 + 2·14 = 214 mm over 20 spears; the 3 of 8 mm are under 9.5, none more under 10.
    const text = '"8×3 10×9 12×6 14×2"'
    expect(cell(`=SPEAR.TALLY("mean",${text})`)).toBeCloseTo(10.7, 12)
    expect(cell(`=SPEAR.TALLY("spears",${text})`)).toBe(20)
    expect(cell(`=SPEAR.TALLY("share under",${text},9.5)`)).toBe(0.15)
    expect(cell(`=SPEAR.TALLY("share under",${text},10)`)).toBe(0.15)
  })
  it("takes one spear that was typed as a number", () => {
    expect(cell('=SPEAR.TALLY("mean",9)')).toBe(9)
  })
  it("says what is missing", () => {
    expect(cell('=SPEAR.TALLY("mean",T!A1)', [[null, 1]])).toEqual({
      code: "#N/A",
      reason: "Spears counted by diameter: not counted yet",
    })
    expect(cell('=SPEAR.TALLY("share under","8×3")')).toEqual({
      code: "#N/A",
      reason: "Diameter limit: none is set",
    })
    expect(cell('=SPEAR.TALLY("mean","8×0")')).toEqual({
      code: "#DIV/0!",
      reason: "Spears counted add up to 0",
    })
    expect(cell('=SPEAR.TALLY("mean",T!A1:B1)', [["8×3", "9×1"]])).toEqual({
      code: "#VALUE!",
      reason: "Spears counted by diameter takes one value, not a range",
    })
  })
})
