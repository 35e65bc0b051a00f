import {describe, expect, it} from "vitest"
import {dayOf, isoOf} from "../../../functions/calendar"
import type {Given} from "../../../functions/parameters"
import {ROOT_SEASON} from "../../../functions/root/season"
import {SPEAR_EXPECTED_DATE} from "../../../functions/spear/expectedDate"
import {ask, generic, number} from "../root/generic"

const OPEN = "2026-04-25"
const [FIRST, SECOND] = ["2026-05-04", "2026-05-11"]
const expected = (dates: readonly string[], diameters: readonly number[], limit: number, ...rest: Given[]) =>
  ask(SPEAR_EXPECTED_DATE, [dates], [diameters], limit, 6000, 6400, generic, OPEN, ...rest)
/** Share of the season's spears cut by the end of a day, by the balance asked for a close on that day. */
const used = (close: string | number) =>
  1 - number(ROOT_SEASON, "potential left", 6000, 6400, generic, OPEN, close)
/** physiology 5: D(u) = D0·(1 - 0.35·u). */
const thinned = (close: string | number) => 1 - 0.35 * used(close)

describe("SPEAR.EXPECTED_DATE", () => {
  it("draws one mean on by the share of the season's spears that are used up", () => {
    for (const limit of [12.5, 11, 10]) {
      const last = expected([FIRST], [13.1], limit) as number
      expect((13.1 / thinned(FIRST)) * thinned(last)).toBeGreaterThanOrEqual(limit)
      expect((13.1 / thinned(FIRST)) * thinned(last + 1)).toBeLessThan(limit)
    }
  })
  it("takes the mean of what two measurements make the first spears", () => {
    const first = (13.1 / thinned(FIRST) + 12 / thinned(SECOND)) / 2
    const last = expected([FIRST, SECOND], [13.1, 12], 10.5) as number
    expect(first * thinned(last)).toBeGreaterThanOrEqual(10.5)
    expect(first * thinned(last + 1)).toBeLessThan(10.5)
  })
  it("takes one before the opening for the first spears", () =>
    expect(expected(["2026-04-20"], [12 / thinned(SECOND)], 12)).toBe(dayOf(SECOND)))
  it("is the day before the opening where the first spears are thinner", () =>
    expect(isoOf(expected([FIRST], [9], 9.5) as number)).toBe("2026-04-24"))
  it("comes sooner where spears thin more, and never where they do not", () => {
    const thin = (share: number) => expected([FIRST], [13.1], 11, null, [["Spear_thinning", share]])
    expect(thin(0.6)).toBeLessThan(thin(0.35) as number)
    expect(thin(0)).toEqual({
      refused: "Not thinning enough: the season's last spears are still above 11 mm",
      code: "#N/A",
    })
    // Not even all spears of the season thin by more than 35 %.
    expect(expected([FIRST], [13.1], 8)).toMatchObject({code: "#N/A"})
  })
  it("refuses a measurement after the fern's end", () =>
    expect(expected(["2026-11-01"], [12], 9.5)).toEqual({
      refused: "Measured on 2026-11-01, after the fern's end of the season opened on 2026-04-25",
      code: "#NUM!",
    }))
  it("leaves out a row with a blank in it, and says that nothing is measured yet", () => {
    expect(ask(SPEAR_EXPECTED_DATE, [[FIRST, SECOND]], [[13.1, null]], 11, 6000, 6400, generic, OPEN)).toBe(
      expected([FIRST], [13.1], 11),
    )
    expect(ask(SPEAR_EXPECTED_DATE, [[FIRST]], [[null]], 11, 6000, 6400, generic, OPEN)).toMatchObject({
      code: "#N/A",
    })
  })
  it("knows no spears where the store is too low for any", () =>
    expect(ask(SPEAR_EXPECTED_DATE, [[FIRST]], [[12]], 9.5, 6000, 300, generic, OPEN)).toMatchObject({
      code: "#N/A",
    }))
  it("ends within the season", () => expect(expected([FIRST], [13.1], 10)).toBeLessThan(dayOf("2026-10-15")!))
})
