import {describe, expect, it} from "vitest"
import {weigh} from "../../../functions/root/weigh"
import {cell} from "../cell"

describe("weigh", () => {
  it("gives each its weight by one over the squared error", () => {
    // (430/40² + 400/10²)/(1/40² + 1/10²) = (0.26875 + 4)/0.010625 = 401.7647.
    expect(weigh(430, 40, 400, 10)).toBeCloseTo(4.26875 / 0.010625, 9)
    expect(weigh(430, 40, 400, 20)).toBeCloseTo(406, 9) // 4 to 1: (430 + 4·400)/5
  })
  it("lies in the middle of two that are equally sure", () => {
    for (const error of [1e-200, 0.1, 25, 1e200]) expect(weigh(430, error, 400, error)).toBe(415)
  })
  it("lies between the two, nearer to the surer one, and is the same in either order", () => {
    for (const [one, other] of [
      [40, 10],
      [3, 17],
      [1e-200, 1e200],
    ] as const) {
      const value = weigh(430, one, 400, other) as number
      expect(value).toBeGreaterThanOrEqual(400)
      expect(value).toBeLessThanOrEqual(430)
      expect(value < 415).toBe(other < one)
      expect(weigh(400, other, 430, one)).toBeCloseTo(value, 9)
    }
  })
  it("depends on the ratio of the errors alone", () => {
    expect(weigh(430, 120, 400, 30)).toBeCloseTo(weigh(430, 40, 400, 10) as number, 9)
  })
  it("is the one that is certain", () => {
    expect(weigh(430, 0, 400, 10)).toBe(430)
    expect(weigh(430, 40, 400, 0)).toBe(400)
    expect(weigh(430, 0, 430, 0)).toBe(430)
  })
  it("refuses two that are certain and differ", () => {
    expect(weigh(430, 0, 400, 0)).toEqual({
      refused: "430 and 400 mg/g are both given as certain, and differ",
      code: "#NUM!",
    })
  })
})

describe("ROOT.WEIGH in a cell", () => {
  it("calculates", () => expect(cell("=ROOT.WEIGH(430,40,400,20)")).toBeCloseTo(406, 9))
  it.each([
    [
      "=ROOT.WEIGH(1000,40,400,10)",
      "#NUM!",
      "Sugar by the balance must be 0 or more and below 1000 mg/g, not 1000 mg/g",
    ],
    [
      "=ROOT.WEIGH(430,-1,400,10)",
      "#NUM!",
      "Standard error of the balance must be 0 mg/g or more, not -1 mg/g",
    ],
    [
      "=ROOT.WEIGH(430,40,-1,10)",
      "#NUM!",
      "Sugar by the sample must be 0 or more and below 1000 mg/g, not -1 mg/g",
    ],
    ["=ROOT.WEIGH(430,40,400,T!A1)", "#N/A", "Standard error of the sample: not measured yet"],
    ["=ROOT.WEIGH(430,40,T!A1,10)", "#N/A", "Sugar by the sample: not measured yet"],
    ['=ROOT.WEIGH("430",40,400,10)', "#VALUE!", 'Sugar by the balance must be a number, not the text "430"'],
    ["=ROOT.WEIGH(430,0,400,0)", "#NUM!", "430 and 400 mg/g are both given as certain, and differ"],
  ])("refuses %s", (formula, code, reason) => {
    expect(cell(formula)).toEqual({code, reason})
  })
  it("passes errors on, the leftmost first", () => {
    expect(cell("=ROOT.WEIGH(2000,1/0,NA(),10)")).toMatchObject({code: "#DIV/0!"})
  })
})
