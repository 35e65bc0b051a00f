import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {sunPath} from "../../../functions/climate/sunPath"

describe("sunPath", () => {
  // Allen, R.G., Pereira, L.S., Raes, D., Smith, M. (1998). Crop evapotranspiration. FAO Irrigation and Drainage
  // Paper 56, example 8 (as quoted elsewhere): 20° S, 3 September, day 246: φ -0.35, dr 0.985, δ 0.120, ωs 1.527.
  it("gives the angles printed in example 8", () => {
    const {latitude, nearness, declination, sunset} = sunPath(-20, dayOf("2026-09-03")!)
    expect(Math.abs(latitude - -0.35)).toBeLessThanOrEqual(0.005)
    expect(Math.abs(nearness - 0.985)).toBeLessThanOrEqual(0.0005)
    expect(Math.abs(declination - 0.12)).toBeLessThanOrEqual(0.0005)
    expect(Math.abs(sunset - 1.527)).toBeLessThanOrEqual(0.0005)
  })
  it("counts days of the year, so a leap day comes in between", () => {
    expect(sunPath(50, dayOf("2028-09-02")!)).toEqual(sunPath(50, dayOf("2026-09-03")!))
  })
  it("holds the hour angle of sunset where the sun does not set or does not rise", () => {
    expect(sunPath(70, dayOf("2026-06-21")!).sunset).toBe(Math.PI)
    expect(sunPath(70, dayOf("2026-12-21")!).sunset).toBe(0)
    expect(sunPath(-90, dayOf("2026-06-21")!).sunset).toBe(0)
    expect(sunPath(-90, dayOf("2026-12-21")!).sunset).toBe(Math.PI)
  })
})
