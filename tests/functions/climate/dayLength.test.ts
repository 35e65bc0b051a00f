import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {dayLength} from "../../../functions/climate/dayLength"
import {cell} from "../cell"

const day = (iso: string) => dayOf(iso)!

describe("dayLength", () => {
  // Allen, R.G., Pereira, L.S., Raes, D., Smith, M. (1998). Crop evapotranspiration. FAO Irrigation and Drainage
  // Paper 56, example 9 (as quoted elsewhere): 20° S, 3 September.
  it("gives the 11.7 h printed in example 9", () => {
    expect(Math.abs(dayLength(-20, day("2026-09-03")) - 11.7)).toBeLessThanOrEqual(0.05)
  })
  it("gives half a day at the equator all the year", () => {
    for (const iso of ["2026-01-01", "2026-06-21", "2026-09-23"])
      expect(dayLength(0, day(iso))).toBeCloseTo(12, 12)
  })
  it("gives north and south a whole day together", () => {
    for (const iso of ["2026-02-10", "2026-06-21", "2028-12-31"])
      expect(dayLength(52, day(iso)) + dayLength(-52, day(iso))).toBeCloseTo(24, 12)
  })
  it("is longest in June in the north", () => {
    expect(dayLength(45, day("2026-06-21"))).toBeGreaterThan(dayLength(45, day("2026-05-21")))
    expect(dayLength(45, day("2026-06-21"))).toBeGreaterThan(dayLength(45, day("2026-07-21")))
  })
  it("gives 24 h where the sun does not set and 0 h where it does not rise", () => {
    expect(dayLength(70, day("2026-06-21"))).toBe(24)
    expect(dayLength(-70, day("2026-06-21"))).toBe(0)
    expect(dayLength(90, day("2026-12-21"))).toBe(0)
  })
})

describe("CLIMATE.DAY_LENGTH", () => {
  it("refuses a latitude beyond the poles", () => {
    expect(cell('=CLIMATE.DAY_LENGTH(95,"2026-09-03")')).toEqual({
      code: "#NUM!",
      reason: "Latitude (south negative) must be from -90 to 90 °, not 95 °",
    })
  })
})
