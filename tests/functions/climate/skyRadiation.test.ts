import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {skyRadiation} from "../../../functions/climate/skyRadiation"

const day = (iso: string) => dayOf(iso)!

describe("skyRadiation", () => {
  // Allen, R.G., Pereira, L.S., Raes, D., Smith, M. (1998). Crop evapotranspiration. FAO Irrigation and Drainage
  // Paper 56, example 8 (as quoted elsewhere): 20° S, 3 September.
  it("gives the 32.2 MJ/m²/day printed in example 8", () => {
    expect(Math.abs(skyRadiation(-20, day("2026-09-03")) - 32.2)).toBeLessThanOrEqual(0.05)
  })
  it("gives at the pole in summer a sun that circles at the height of its declination", () => {
    // 21 June is day 172: 2π·172/365 = 2.960864; δ = 0.409·sin(1.570864) = 0.409, sin δ = 0.397693;
    // dr = 1 + 0.033·cos(2.960864) = 0.967538. 24·60 min · 0.082 · 0.967538 · 0.397693 = 45.4352.
    expect(skyRadiation(90, day("2026-06-21"))).toBeCloseTo(45.4352, 3)
  })
  it("gives nothing where the sun does not rise", () => {
    expect(skyRadiation(80, day("2026-12-21"))).toBe(0)
    expect(skyRadiation(-80, day("2026-06-21"))).toBe(0)
  })
  it("gives the south more in its summer than the north in its own, since the earth is nearer to the sun", () => {
    expect(skyRadiation(-40, day("2026-12-21"))).toBeGreaterThan(skyRadiation(40, day("2026-06-21")))
  })
})
