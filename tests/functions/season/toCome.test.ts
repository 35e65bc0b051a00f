import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {toCome} from "../../../functions/season/toCome"
import {cell} from "../cell"

const isos = ["2026-05-04", "2026-05-11", "2026-05-18"]
const days = isos.map((iso) => dayOf(iso)!)
const planned = [700, 900, 1000]

describe("toCome", () => {
  it("is what is planned after the day, times the pace", () => {
    // 900 + 1 000 = 1 900; 1 900 x 0.925 = 1 757.5.
    expect(toCome(planned, days, days[0]!, 1)).toBe(1900)
    expect(toCome(planned, days, days[0]!, 0.925)).toBeCloseTo(1757.5, 9)
  })
  it("leaves out the day itself, and is the whole plan before its first day", () => {
    expect(toCome(planned, days, days[1]!, 1)).toBe(1000)
    expect(toCome(planned, days, days[1]! - 1, 1)).toBe(1900)
    expect(toCome(planned, days, days[0]! - 1, 1)).toBe(2600)
    expect(toCome(planned.toReversed(), days.toReversed(), days[1]!, 1)).toBe(1000)
  })
  it("is 0 when the plan has ended, and at a pace of 0", () => {
    expect(toCome(planned, days, days[2]!, 1)).toBe(0)
    expect(toCome(planned, days, days[0]!, 0)).toBe(0)
  })
  it("with what is past makes up the plan", () => {
    for (const day of days) {
      const past = planned.reduce((total, kg, row) => (days[row]! <= day ? total + kg : total), 0)
      expect(past + toCome(planned, days, day, 1)).toBe(2600)
    }
  })
})

describe("SEASON.TO_COME in a cell", () => {
  const rows: (number | string | null)[][] = isos.map((iso, row) => [planned[row]!, iso])
  it("takes a pace of 1 when it is left out or blank", () => {
    expect(cell('=SEASON.TO_COME(T!A:A,T!B:B,"2026-05-04")', rows)).toBe(1900)
    expect(cell('=SEASON.TO_COME(T!A:A,T!B:B,"2026-05-04",T!D9)', rows)).toBe(1900)
    expect(cell('=SEASON.TO_COME(T!A:A,T!B:B,"2026-05-04",0)', rows)).toBe(0)
  })
  it("leaves out days without a plan", () => {
    expect(cell('=SEASON.TO_COME(T!A:A,T!B:B,"2026-05-04")', rows.with(2, [null, "2026-05-18"]))).toBe(900)
  })
  it("refuses a pace below 0 and passes on a pace that cannot be told", () => {
    expect(cell('=SEASON.TO_COME(T!A:A,T!B:B,"2026-05-04",-0.1)', rows)).toEqual({
      code: "#NUM!",
      reason: expect.stringMatching(/^Picked over planned so far must be .*, not -0.1$/),
    })
    expect(
      cell('=SEASON.TO_COME(T!A:A,T!B:B,"2026-05-04",SEASON.PACE(0,700,"2026-05-04","2026-05-04"))', rows),
    ).toEqual({
      code: "#N/A",
      reason: "Nothing picked up to 2026-05-04",
    })
  })
})
