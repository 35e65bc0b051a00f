import {describe, expect, it} from "vitest"
import {breath} from "../../../functions/cooler/breath"
import {cell} from "../cell"

const BTU_TON_DAY = 1055.056 / 907.18474 / 86.4 // W a kg and 1000: W a tonne

describe("breath", () => {
  it("agrees with the source's own conversion to heat", () => {
    // Suslow, UC Davis: ml CO2 a kg and hour times 440 is BTU a ton and day; 14 to 40 ml at 0 °C, 250 to 300 at 25 °C.
    for (const [temperature, low, high] of [
      [0, 14, 40],
      [25, 250, 300],
    ] as const) {
      expect(breath(temperature, 1000, -1) / (low * 440 * BTU_TON_DAY)).toBeCloseTo(1, 2)
      expect(breath(temperature, 1000, 1) / (high * 440 * BTU_TON_DAY)).toBeCloseTo(1, 2)
    }
  })
  it("agrees with another source at its cool and warm end", () => {
    // North Carolina State University: 0.245 and 2.523 BTU a lb and hour, 158 and 1630 W a tonne.
    expect(breath(0, 1000, 0)).toBeCloseTo(0.245 * 646.1, -1)
    expect(breath(25, 1000, 0) / (2.523 * 646.1)).toBeCloseTo(1, 2)
  })
  it("is the middle of the range by 2 mg a ml and 2.96 W a mg", () => {
    expect(breath(0, 1000, 0)).toBeCloseTo(27 * 2 * 2.96, 9) // 159.84
    expect(breath(10, 500, 0)).toBeCloseTo(98.5 * 2 * 2.96 * 0.5, 9)
  })
  it("runs straight between the rows", () => {
    for (const end of [-1, 0, 1] as const)
      expect(breath(7.5, 1000, end)).toBeCloseTo((breath(5, 1000, end) + breath(10, 1000, end)) / 2, 9)
  })
})

describe("COOLER.BREATH", () => {
  it("takes the middle where no end is given", () => {
    expect(cell("=COOLER.BREATH(0,1000)")).toBeCloseTo(159.84, 9)
    expect(cell("=COOLER.BREATH(0,1000,T!A1)")).toBeCloseTo(159.84, 9)
    expect(cell("=COOLER.BREATH(0,1000,-1)")).toBeCloseTo(82.88, 9) // 28 mg
    expect(cell("=COOLER.BREATH(0,1000,1)")).toBeCloseTo(236.8, 9) // 80 mg
  })
  it.each([
    ["26,1000", "#NUM!", "Temperature of the spears must be from 0 to 25 °C, not 26 °C"],
    ["-1,1000", "#NUM!", "Temperature of the spears must be from 0 to 25 °C, not -1 °C"],
    [
      "5,1000,2",
      "#NUM!",
      "Which end of the published range must be -1 (lower), 0 (middle) or 1 (upper), not 2",
    ],
    ['5,1000,"low"', "#VALUE!", 'Which end of the published range must be a number, not the text "low"'],
  ])("refuses %s", (given, code, reason) => {
    expect(cell(`=COOLER.BREATH(${given})`)).toEqual({code, reason})
  })
})
