import {describe, expect, it} from "vitest"
import {stopPrice} from "../../../functions/season/stopPrice"
import {cell} from "../cell"

// Hand example of the close-out rule: q[k(p - c_p) - c_h - c_t] - F - mu·dr = 0, solved for p. Units cancel as
// long as they agree: here 85 units harvested, packout 0.92, and so on.
const pick = 0.38
const haul = 0.03
const pack = 0.22
const packout = 0.92
const pass = 18
const worth = 3500
const lost = 0.012
const kg = 85
const net = (p: number, reserve: number) => kg * (packout * (p - pack) - pick - haul) - pass - reserve * lost

describe("stopPrice", () => {
  it("is the price that pays the pass and the reserve it takes", () => {
    // (18 + 42) / 85 = 0.7058824; 0.41 + 0.2024 + 0.7058824 = 1.3182824; / 0.92 = 1.4329156.
    expect(stopPrice(pick, haul, pack, packout, pass, worth, lost, kg)).toBeCloseTo(1.4329156, 6)
  })
  it("for a field to be cleared leaves the reserve out", () => {
    // 18 / 85 = 0.2117647; 0.41 + 0.2024 + 0.2117647 = 0.8241647; / 0.92 = 0.8958312.
    expect(stopPrice(pick, haul, pack, packout, pass, 0, lost, kg)).toBeCloseTo(0.8958312, 6)
  })
  it("leaves nothing over at that price, and a loss below it", () => {
    expect(net(stopPrice(pick, haul, pack, packout, pass, worth, lost, kg), worth)).toBeCloseTo(0, 9)
    // At 1.20: 85 x (0.92 x 0.98 - 0.41) - 60 = 85 x 0.4916 - 60 = -18.214.
    expect(net(1.2, worth)).toBeCloseTo(-18.214, 9)
    expect(1.2).toBeLessThan(stopPrice(pick, haul, pack, packout, pass, worth, lost, kg))
  })
  it("is the cost per packed kg when a pass costs nothing by itself", () => {
    expect(stopPrice(0.5, 0, 0.25, 1, 0, 0, 0, 10)).toBe(0.75)
    expect(stopPrice(0.5, 0, 0.25, 0.5, 0, 0, 0, 10)).toBe(1.25)
  })
  it("comes down to that cost as the picking grows", () => {
    const large = stopPrice(pick, haul, pack, packout, pass, worth, lost, 1e9)
    expect(large).toBeCloseTo((pick + haul) / packout + pack, 6)
  })
})

describe("SEASON.STOP_PRICE in a cell", () => {
  const call = (place: number, value: string) =>
    `=SEASON.STOP_PRICE(${["0.38", "0.03", "0.22", "0.92", "18", "3500", "0.012", "85"].with(place, value).join(",")})`
  it.each([
    [3, "0", "Packed share of the harvested weight must be above 0 and up to 1, not 0"],
    [3, "1.1", "Packed share of the harvested weight must be above 0 and up to 1, not 1.1"],
    [7, "0", "Weight of the next picking, harvested must be above 0 kg/ha, not 0 kg/ha"],
  ])("refuses %s, %s", (place, value, reason) => {
    expect(cell(call(place, value))).toEqual({code: "#NUM!", reason})
  })
  it.each([0, 1, 2, 4, 5, 6])("refuses argument %s below 0", (place) => {
    expect(cell(call(place, "-1"))).toMatchObject({code: "#NUM!"})
  })
})
