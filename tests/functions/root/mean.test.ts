import {describe, expect, it} from "vitest"
import {mean} from "../../../functions/root/mean"
import {cell} from "../cell"

// Ten made-up dormant samples, mg/g. They add up to 4089.
const samples = [412, 388, 455, 430, 367, 441, 402, 398, 420, 376]

describe("mean", () => {
  it("is 4089/10", () => expect(mean(samples, null)).toBeCloseTo(408.9, 10))

  it("with equal weights is the plain mean, whatever the weight", () => {
    expect(
      mean(
        samples,
        samples.map(() => 3),
      ),
    ).toBeCloseTo(408.9, 10)
  })
  it("with whole weights is the plain mean of each reading as often", () => {
    expect(mean([380, 420], [3, 1])).toBe(390) // (380 + 380 + 380 + 420)/4
  })
  it("does not look at a reading of weight 0", () => expect(mean([380, 9999], [1, 0])).toBe(380))

  it("refuses weights that add up to 0", () => {
    expect(mean([380, 420], [0, 0])).toEqual({refused: "Weights add up to 0", code: "#DIV/0!"})
  })
})

describe("ROOT.MEAN in a cell", () => {
  const column = samples.map((sample) => [sample])
  it("leaves out blanks, and takes a typed 0", () => {
    expect(cell("=ROOT.MEAN(T!A1:A12)", [[null], ...column, [null]])).toBeCloseTo(408.9, 10)
    expect(cell("=ROOT.MEAN(T!A1:A3)", [[300], [0], [null]])).toBe(150)
  })
  it("leaves out a row whose reading or weight is blank", () => {
    const rows = [
      [380, 3],
      [420, 1],
      [500, null],
      [null, 7],
    ]
    expect(cell("=ROOT.MEAN(T!A1:A4,T!B1:B4)", rows)).toBe(390)
  })
  it("is not measured yet when there is nothing", () => {
    expect(cell("=ROOT.MEAN(T!A1:A3)")).toEqual({code: "#N/A", reason: "Readings: not measured yet"})
  })
  it("refuses sizes that differ, weights that add up to 0, text and what is below 0", () => {
    expect(cell("=ROOT.MEAN({380,420},{1,2,3})")).toEqual({
      code: "#VALUE!",
      reason: "Readings has 2 cells and Weights has 3: sizes differ",
    })
    expect(cell("=ROOT.MEAN({380,420},{0,0})")).toEqual({code: "#DIV/0!", reason: "Weights add up to 0"})
    expect(cell('=ROOT.MEAN({380,"420"})')).toMatchObject({code: "#VALUE!"})
    expect(cell("=ROOT.MEAN({380,-1})")).toMatchObject({code: "#NUM!"})
    expect(cell("=ROOT.MEAN({380,420},{1,-1})")).toMatchObject({code: "#NUM!"})
  })
})
