import {describe, expect, it} from "vitest"
import {LAST_DAY, dayOf, isoOf} from "../../../functions/calendar"
import {isRefusal} from "../../../functions/refusal"
import {dateAt} from "../../../functions/root/dateAt"
import {cell} from "../cell"

const from = dayOf("2026-04-20")!
const iso = (...given: Parameters<typeof dateAt>) => {
  const day = dateAt(...given)
  return isRefusal(day) ? day : isoOf(day)
}

describe("dateAt", () => {
  it("is 3 June for 800 kg/ha at 18 a day from 20 April", () => {
    // 800/18 = 44.4: 44 whole days, 10 to the end of April, 31 of May and 3 of June.
    expect(iso(from, 2000, 18, 1200)).toBe("2026-06-03")
  })
  it("respects the floor on that day and not on the next", () => {
    for (const draw of [0.7, 13, 18, 29.3, 805])
      for (const floor of [0, 1200, 1999.5]) {
        const days = (dateAt(from, 2000, draw, floor) as number) - from
        expect(2000 - draw * days).toBeGreaterThanOrEqual(floor)
        expect(2000 - draw * (days + 1)).toBeLessThan(floor)
      }
  })
  it("counts a day on which the store is just at the floor, whatever rounding leaves", () => {
    expect(iso(from, 2000, 20, 1200)).toBe("2026-05-30") // 40 days
    expect(dateAt(from, 0.3, 0.1, 0)).toBe(from + 3) // 0.3/0.1 comes out as 2.9999999999999996
    expect(dateAt(from, 1200, 20, 1200)).toBe(from)
  })
  it("refuses a start below the floor", () => {
    expect(dateAt(from, 1100, 18, 1200)).toEqual({
      refused: "Store at the start (1100 kg/ha) is below your floor (1200 kg/ha) already",
      code: "#NUM!",
    })
  })
  it.each([0, -3])("never comes at a draw of %s", (draw) => {
    expect(dateAt(from, 2000, draw, 1200)).toEqual({
      refused: `Never: a draw of ${draw} kg/ha/day does not bring the store down`,
      code: "#N/A",
    })
  })
  it("never comes beyond the calendar", () => {
    const never = {refused: "Never: not before 9999-12-31, the last day of the calendar", code: "#N/A"}
    expect(dateAt(from, 2000, 1e-9, 1200)).toEqual(never)
    expect(dateAt(from, 2000, 1e-320, 1200)).toEqual(never)
    const days = LAST_DAY - from
    expect(dateAt(from, days, 1, 0)).toBe(LAST_DAY)
    expect(dateAt(from, days + 1, 1, 0)).toEqual(never)
  })
})

describe("ROOT.DATE_AT in a cell", () => {
  it("takes a date cell and gives a date", () => {
    expect(cell("=ROOT.DATE_AT(T!A1,2000,18,1200)", [["2026-04-20"]])).toBe(dayOf("2026-06-03"))
    expect(cell('=TEXT(ROOT.DATE_AT("2026-04-20",2000,18,1200),"YYYY-MM-DD")')).toBe("2026-06-03")
  })
  it("carries refusals into the cell", () => {
    expect(cell('=ROOT.DATE_AT("2026-04-20",1100,18,1200)')).toMatchObject({code: "#NUM!"})
    expect(cell('=ROOT.DATE_AT("2026-04-20",2000,0,1200)')).toMatchObject({code: "#N/A"})
    expect(cell('=ROOT.DATE_AT("20 April",2000,18,1200)')).toMatchObject({code: "#VALUE!"})
    expect(cell('=ROOT.DATE_AT("2026-04-20",2000,18,T!A1)')).toEqual({
      code: "#N/A",
      reason: "Your floor: not measured yet",
    })
  })
})
