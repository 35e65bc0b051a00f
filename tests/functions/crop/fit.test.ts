import {describe, expect, it} from "vitest"
import {fit} from "../../../functions/crop/fit"
import {cell} from "../cell"

describe("fit", () => {
  it.each([
    // 1 + n/(n + k)·(sum of records / sum of model - 1)
    [[4000, 5000], [5000, 5000], 2, 0.95], // 1 + 2/4·(0.9 - 1)
    [[4000, 5000, 6000], [5000, 5000, 5000], 2, 1], // ratio 1
    [[6000, 6000, 6000], [5000, 5000, 5000], 2, 1.12], // 1 + 3/5·0.2
    [[2500], [5000], 2, 5 / 6], // 1 + 1/3·(-0.5)
    [[2500], [5000], 1, 0.75], // 1 + 1/2·(-0.5)
    [[0, 0], [5000, 5000], 2, 0.5], // 1 + 2/4·(-1)
  ])("of %o to %o at k = %s is %s", (records, modelled, k, factor) => {
    expect(fit(records, modelled, k)).toBeCloseTo(factor, 12)
  })
  it("weighs a large year more than a small one", () => {
    // 1 + 2/4·((1000 + 9000)/(2000 + 9000) - 1), not the mean of the ratios 0.5 and 1.
    expect(fit([1000, 9000], [2000, 9000], 2)).toBeCloseTo(1 + 0.5 * (10 / 11 - 1), 12)
  })
  it("comes to the ratio itself with many years, and stays at 1 while k is large", () => {
    const years = (n: number, kg: number) => Array.from({length: n}, () => kg)
    expect(fit(years(1e5, 4000), years(1e5, 5000), 2)).toBeCloseTo(0.8, 4)
    expect(fit([4000], [5000], 1e9)).toBeCloseTo(1, 8)
    expect(fit([4000], [5000], 1e-9)).toBeCloseTo(0.8, 8)
  })
  it("counts a modelled year of 0 among others, and refuses a model of 0 in all", () => {
    expect(fit([1000, 4000], [0, 5000], 2)).toBeCloseTo(1, 12)
    expect(fit([1000, 4000], [0, 0], 2)).toEqual({
      refused: "The modelled crop is 0 in all years: there is no ratio to it",
      code: "#DIV/0!",
    })
  })
})

describe("CROP.FIT in a cell", () => {
  const table = [
    [4000, 5000, null],
    [null, 5200, null],
    [5000, 5000, null],
    [6100, null, null],
  ]
  it("leaves out the years of which the record or the model is blank", () => {
    expect(cell("=CROP.FIT(T!A1:A4,T!B1:B4)", table)).toBeCloseTo(0.95, 12)
    expect(cell("=CROP.FIT(T!A:A,T!B:B)", table)).toBeCloseTo(0.95, 12)
  })
  it("counts two years half where k is blank or left out", () => {
    expect(cell("=CROP.FIT(T!A1:A4,T!B1:B4,T!C1)", table)).toBeCloseTo(0.95, 12)
    expect(cell("=CROP.FIT(T!A1:A4,T!B1:B4,6)", table)).toBeCloseTo(0.975, 12) // 2/8
  })
  it("takes a single year from a cell", () => {
    expect(cell("=CROP.FIT(2500,5000)")).toBeCloseTo(5 / 6, 12)
  })
  it.each([
    ["=CROP.FIT(T!C1:C4,T!B1:B4)", "#N/A", "Recorded crop: not measured yet"],
    ["=CROP.FIT(T!A1:A4,T!C1:C4)", "#N/A", "Modelled crop of the same years: not measured yet"],
    [
      "=CROP.FIT(T!A1:A3,T!B1:B4)",
      "#VALUE!",
      "Recorded crop has 3 cells and Modelled crop of the same years has 4: sizes differ",
    ],
    ["=CROP.FIT({-1;2},{3;4})", "#NUM!", "Recorded crop must be 0 kg/ha or more, not -1 kg/ha"],
    [
      "=CROP.FIT({1;2},{3;-4})",
      "#NUM!",
      "Modelled crop of the same years must be 0 kg/ha or more, not -4 kg/ha",
    ],
    [
      "=CROP.FIT({1;2},{3;4},0)",
      "#NUM!",
      "Years at which the record counts half must be above 0 years, not 0 years",
    ],
    ['=CROP.FIT({"a";2},{3;4})', "#VALUE!", 'Recorded crop must be a number, not the text "a"'],
    ["=CROP.FIT({1;2},{0;0})", "#DIV/0!", "The modelled crop is 0 in all years: there is no ratio to it"],
  ])("refuses %s", (formula, code, reason) => {
    expect(cell(formula, table)).toEqual({code, reason})
  })
  it("passes errors on, the leftmost first", () => {
    const broken = [
      ["=1/0", 3],
      [2, "=NA()"],
    ]
    expect(cell("=CROP.FIT(T!A1:A2,T!B1:B2)", broken)).toMatchObject({code: "#DIV/0!"})
    expect(cell("=CROP.FIT(T!B1:B2,T!A1:A2)", broken)).toMatchObject({code: "#N/A"})
  })
})
