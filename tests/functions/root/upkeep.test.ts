import {describe, expect, it} from "vitest"
import {upkeep} from "../../../functions/root/upkeep"
import {cell} from "../cell"

const defaults = {Upkeep_rate: 0.0022, Upkeep_q10: 2}

describe("upkeep", () => {
  it("is 7.074 kg/ha a day for 6 000 kg/ha at 11 °C", () => {
    // 0.0022·6000 = 13.2 at 20 °C; 9 °C less is 2^-0.9 = 0.53589 of it.
    expect(Math.abs(upkeep(6000, 11, 1, defaults) - 13.2 * 0.53589)).toBeLessThanOrEqual(0.0001)
  })
  it("is the rate itself at 20 °C, and doubles with 10 °C more", () => {
    expect(upkeep(6000, 20, 1, defaults)).toBeCloseTo(13.2, 12)
    expect(upkeep(6000, 30, 1, defaults)).toBeCloseTo(26.4, 12)
    expect(upkeep(6000, 10, 1, {...defaults, Upkeep_q10: 3})).toBeCloseTo(4.4, 12)
  })
  it("costs a third of the store and more in a mild winter, as published", () => {
    // Pressman, E., Schaffer, A.A., Compton, D., Zamski, E. (1993). Scientia Horticulturae 53, 149-155, abstract: more
    // than 30 % of the fructan was lost from August to February in Israel. The rate was set to this, so it is no proof.
    // 180 days from 16 August of a soil that swings 5.25 °C about 19 °C (assumed), coldest on day 40; store = root.
    let lost = 0
    for (let day = 228; day < 228 + 180; day++)
      lost += upkeep(6000, 19 - 5.25 * Math.cos((2 * Math.PI * (day - 40)) / 365), 1, defaults)
    expect(lost / 6000).toBeGreaterThan(0.3)
    expect(Math.abs(lost / 6000 - 0.376)).toBeLessThanOrEqual(0.01)
  })
  it("adds up over days and root", () => {
    expect(upkeep(6000, 11, 56, defaults)).toBeCloseTo(2 * upkeep(6000, 11, 28, defaults), 9)
    expect(upkeep(6000, 11, 56, defaults)).toBeCloseTo(2 * upkeep(3000, 11, 56, defaults), 9)
    expect(upkeep(6000, 11, 0, defaults)).toBe(0)
  })
})

describe("ROOT.UPKEEP in a cell", () => {
  it("follows the crop values given", () => {
    const values = [
      ["Upkeep_rate", 0.004],
      ["Upkeep_q10", 1],
    ]
    expect(cell("=ROOT.UPKEEP(6000,11,1,T!A1:B2)", values)).toBeCloseTo(24, 9) // 0.004·6000
  })
  it("refuses a soil no crown lives in and days below 0", () => {
    expect(cell("=ROOT.UPKEEP(6000,51,1)")).toEqual({
      code: "#NUM!",
      reason: "Mean soil temperature at crown depth must be from -20 to 50 °C, not 51 °C",
    })
    expect(cell("=ROOT.UPKEEP(6000,11,-1)")).toEqual({
      code: "#NUM!",
      reason: "Days must be 0 days or more, not -1 days",
    })
  })
})
