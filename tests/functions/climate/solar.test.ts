import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {skyRadiation} from "../../../functions/climate/skyRadiation"
import {solar} from "../../../functions/climate/solar"
import {cell} from "../cell"

const july = dayOf("2026-07-15")!

describe("solar", () => {
  // Allen, R.G., Pereira, L.S., Raes, D., Smith, M. (1998). Crop evapotranspiration. FAO Irrigation and Drainage
  // Paper 56, example 15 (as quoted elsewhere): 45°43' N, inland, July, highest 26.6 and lowest 14.8 °C.
  it("gives the 22.3 MJ/m²/day printed in example 15", () => {
    expect(Math.abs((solar(45 + 43 / 60, july, 26.6, 14.8, 0.16) as number) - 22.3)).toBeLessThanOrEqual(0.05)
  })
  it("goes with the square root of the range and with the factor", () => {
    // √(25 - 9) = 4: 4 · 0.16 = 0.64 of the radiation above the air, 4 · 0.19 = 0.76 at the coast.
    expect(solar(45, july, 25, 9, 0.16)).toBeCloseTo(0.64 * skyRadiation(45, july), 12)
    expect(solar(45, july, 25, 9, 0.19)).toBeCloseTo(0.76 * skyRadiation(45, july), 12)
  })
  it("gives 0 where high and low are the same", () => {
    expect(solar(45, july, 12, 12, 0.16)).toBe(0)
  })
  it("refuses a highest temperature below the lowest", () => {
    expect(solar(45, july, 10, 12, 0.16)).toEqual({
      refused: "Highest temperature (10 °C) is below the lowest (12 °C)",
      code: "#NUM!",
    })
  })
})

describe("CLIMATE.SOLAR", () => {
  it("takes the factor of the inland when none is given", () => {
    expect(cell('=CLIMATE.SOLAR(45,"2026-07-15",25,9)')).toBe(
      cell('=CLIMATE.SOLAR(45,"2026-07-15",25,9,0.16)'),
    )
  })
  it("says when a temperature is not there yet", () => {
    expect(cell('=CLIMATE.SOLAR(45,"2026-07-15",T!A1,9)')).toEqual({
      code: "#N/A",
      reason: "Highest air temperature of the day: not measured yet",
    })
  })
  it("refuses a factor far from those published", () => {
    expect(cell('=CLIMATE.SOLAR(45,"2026-07-15",25,9,1)')).toEqual({
      code: "#NUM!",
      reason: "Factor: 0.16 inland, 0.19 at the coast must be from 0.1 to 0.25 per √°C, not 1 per √°C",
    })
  })
})
