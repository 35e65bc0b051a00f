import {describe, expect, it} from "vitest"
import {heat} from "../../../functions/cooler/heat"
import {cell} from "../cell"

describe("heat", () => {
  it("is weight by specific heat by degrees", () => {
    // 1000·3.94·22 = 86 680 kJ; over 3600 = 24.08 kWh
    expect(heat(1000, 25, 3, 3.94)).toBeCloseTo(24.0778, 4)
    // 14 200·3.94·22/3600 = 341.9044
    expect(heat(14200, 24, 2, 3.94)).toBeCloseTo(341.9044, 4)
    expect(heat(0, 24, 2, 3.94)).toBe(0)
  })
  it("takes the specific heat of the source in its own units", () => {
    // North Carolina State University: 0.94 BTU/lb·°F; 1 BTU/lb·°F is 4.1868 kJ/kg·K.
    expect(0.94 * 4.1868).toBeCloseTo(3.94, 2)
  })
})

describe("COOLER.HEAT", () => {
  it("takes 3.94 kJ/kg·K where nothing else is given", () => {
    expect(cell("=COOLER.HEAT(1000,25,3)")).toBe(cell("=COOLER.HEAT(1000,25,3,3.94)"))
    expect(cell("=COOLER.HEAT(1000,25,3,T!A1)")).toBe(cell("=COOLER.HEAT(1000,25,3,3.94)"))
  })
  it.each([
    ["1000,3,3", "There is nothing to cool from 3 °C to 3 °C"],
    ["1000,2,3", "There is nothing to cool from 2 °C to 3 °C"],
    ["1000,25,-0.7", "Temperature to reach must be from -0.6 to 60 °C, not -0.7 °C"],
    ["-1,25,3", "Weight to cool must be 0 kg or more, not -1 kg"],
    ["1,25,3,0", "Specific heat of the spears must be above 0 and up to 5 kJ/kg·K, not 0 kJ/kg·K"],
  ])("refuses %s", (given, reason) => {
    expect(cell(`=COOLER.HEAT(${given})`)).toEqual({code: "#NUM!", reason})
  })
})
