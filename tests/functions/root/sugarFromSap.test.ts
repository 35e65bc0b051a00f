import {describe, expect, it} from "vitest"
import {sugarFromSap} from "../../../functions/root/sugarFromSap"
import {cell} from "../cell"

// Worked by hand from the mass balance for a gram of fresh root, u = 0.08, s0 = 4, k = 0.9. At 15 °Brix:
// sugar 0.9·0.92·(15 - 4)/100 = 0.09108 g, dry matter 0.08 + 0.92·0.15 = 0.218 g, so 417.8 mg per g.
const byHand = [
  {reading: 6, sugar: 122.5, dry: 0.135},
  {reading: 8, sugar: 215.6, dry: 0.154},
  {reading: 10, sugar: 288.8, dry: 0.172},
  {reading: 12, sugar: 347.9, dry: 0.19},
  {reading: 15, sugar: 417.8, dry: 0.218},
  {reading: 18, sugar: 472.0, dry: 0.246},
  {reading: 20, sugar: 501.8, dry: 0.264},
  {reading: 22, sugar: 527.8, dry: 0.282},
  {reading: 24, sugar: 550.5, dry: 0.301},
]
const otherMakeUp = [
  {reading: 10, insoluble: 0.06, sugar: 330},
  {reading: 10, insoluble: 0.12, sugar: 228},
  {reading: 15, insoluble: 0.06, sugar: 463},
  {reading: 15, insoluble: 0.12, sugar: 346},
  {reading: 20, insoluble: 0.06, sugar: 546},
  {reading: 20, insoluble: 0.12, sugar: 428},
  {reading: 24, insoluble: 0.06, sugar: 592},
  {reading: 24, insoluble: 0.12, sugar: 478},
]

describe("sugarFromSap", () => {
  it.each(byHand)("gives $sugar mg/g at $reading °Brix", ({reading, sugar}) => {
    expect(Math.abs(sugarFromSap(reading, 0.08, 4, 0.9) - sugar)).toBeLessThanOrEqual(0.05)
  })
  it.each(otherMakeUp)(
    "gives $sugar mg/g at $reading °Brix with $insoluble that does not dissolve",
    ({reading, insoluble, sugar}) => {
      expect(Math.abs(sugarFromSap(reading, insoluble, 4, 0.9) - sugar)).toBeLessThanOrEqual(0.5)
    },
  )
  it("gives the sugar of the sap when it is spread over the dry matter", () => {
    // Sugar per g fresh root is that per g dry root times the dry share, which the hand table lists to 3 decimals.
    for (const {reading, dry} of byHand) {
      const sugarOfFresh = (0.9 * 0.92 * (reading - 4)) / 100
      const gained = (sugarFromSap(reading, 0.08, 4, 0.9) / 1000) * dry
      expect(Math.abs(gained / sugarOfFresh - 1)).toBeLessThanOrEqual(0.0005 / dry)
    }
  })
  it("finds no sugar where the reading is other matter only", () => {
    expect([0, 2, 4].map((reading) => sugarFromSap(reading, 0.08, 4, 0.9))).toEqual([0, 0, 0])
    expect(sugarFromSap(4.01, 0.08, 4, 0.9)).toBeGreaterThan(0)
    expect(sugarFromSap(0, 0, 0, 0.9)).toBe(0)
  })
  it("stays within the root at every limit of its arguments", () => {
    expect(sugarFromSap(50, 0, 0, 1)).toBeCloseTo(1000, 9)
    expect(sugarFromSap(50, 1, 0, 1)).toBe(0)
    expect(sugarFromSap(50, 0.08, 4, 0)).toBe(0)
  })
})

describe("ROOT.SUGAR_FROM_SAP in a cell", () => {
  it("takes what a root is made of as you say, blank as the default", () => {
    // 0.8·0.9·(15 - 5)/100 = 0.072 g sugar in 0.1 + 0.9·0.15 = 0.235 g dry matter: 306.4 mg/g.
    expect(cell("=ROOT.SUGAR_FROM_SAP(15,0.1,5,0.8)")).toBeCloseTo(72 / 0.235, 9)
    expect(cell("=ROOT.SUGAR_FROM_SAP(15,T!A1,T!A2,T!A3)")).toBe(cell("=ROOT.SUGAR_FROM_SAP(15,0.08,4,0.9)"))
  })
  it("refuses shares outside 0 to 1 and readings outside 0 to 50 °Brix", () => {
    expect(cell("=ROOT.SUGAR_FROM_SAP(15,8)")).toEqual({
      code: "#NUM!",
      reason:
        "Share of the fresh root that does not dissolve (0.06 to 0.12 is likely) must be from 0 to 1, not 8",
    })
    expect(cell("=ROOT.SUGAR_FROM_SAP(15,0.08,4,1.1)")).toMatchObject({code: "#NUM!"})
    expect(cell("=ROOT.SUGAR_FROM_SAP(51)")).toMatchObject({code: "#NUM!"})
    expect(cell('=ROOT.SUGAR_FROM_SAP("15")')).toMatchObject({code: "#VALUE!"})
  })
})
