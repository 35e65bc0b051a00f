import {describe, expect, it} from "vitest"
import {reading} from "../../../functions/root/reading"
import {sugarFromSap} from "../../../functions/root/sugarFromSap"
import {cell} from "../cell"

// Worked by hand with u = 0.08, s0 = 4, k = 0.9. For 400 mg/g: (400·0.08 + 10·0.9·0.92·4)/(0.92·(9 - 4))
// = (32 + 33.12)/4.6 = 14.157.
const byHand = [
  {sugar: 300, brix: 10.35},
  {sugar: 400, brix: 14.16},
  {sugar: 500, brix: 19.87},
]

describe("reading", () => {
  it.each(byHand)("gives $brix °Brix for $sugar mg/g", ({sugar, brix}) => {
    expect(Math.abs((reading(sugar, 0.08, 4, 0.9) as number) - brix)).toBeLessThanOrEqual(0.005)
  })
  it("undoes sugarFromSap, whatever the root is made of", () => {
    for (const brix of [4.5, 8, 15, 24, 50])
      for (const [insoluble, other, share] of [
        [0.08, 4, 0.9],
        [0.12, 0, 1],
        [0.01, 3.2, 0.75],
      ] as const)
        expect(reading(sugarFromSap(brix, insoluble, other, share), insoluble, other, share)).toBeCloseTo(
          brix,
          9,
        )
  })
  it("is the reading of the other matter when there is no sugar", () => {
    expect(reading(0, 0.08, 4, 0.9)).toBeCloseTo(4, 12)
  })
  it.each([
    [899, 0.08, 4, 0.9], // would need sap of more than 100 °Brix
    [900, 0.08, 4, 0.9], // no sap at all: 10·k - c/100 is 0
    [950, 0.08, 4, 0.9], // beyond that the formula would turn negative
    [400, 1, 4, 0.9], // a root without sap
    [0, 0.08, 4, 0], // sap without sugar
  ])("refuses %s mg/g with insoluble %s, other %s, share %s", (sugar, insoluble, other, share) => {
    expect(reading(sugar, insoluble, other, share)).toEqual({
      refused: `No sap gives ${sugar} mg/g with such a root`,
      code: "#NUM!",
    })
  })
})

describe("ROOT.READING in a cell", () => {
  it("undoes ROOT.SUGAR_FROM_SAP", () => {
    expect(cell("=ROOT.READING(ROOT.SUGAR_FROM_SAP(18.5))")).toBeCloseTo(18.5, 9)
  })
  it("refuses a root that is all sugar", () => {
    expect(cell("=ROOT.READING(1000)")).toEqual({
      code: "#NUM!",
      reason: "Sugar in the root must be 0 or more and below 1000 mg/g, not 1000 mg/g",
    })
  })
})
