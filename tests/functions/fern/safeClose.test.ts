import {describe, expect, it} from "vitest"
import {EXAMPLE_CLIMATE} from "../../../functions/climate/climate"
import {dayOf, isoOf} from "../../../functions/calendar"
import {FERN_SAFE_CLOSE} from "../../../functions/fern/safeClose"
import type {Given} from "../../../functions/parameters"
import {isRefusal} from "../../../functions/refusal"
import {ROOT_SEASON} from "../../../functions/root/season"
import {cell} from "../cell"
import {IN_CELLS, ask, day, generic} from "../root/generic"

const OPEN = "2026-04-25"
const FERN_END = dayOf("2026-10-15")! // day 288
// The steady state of eight weeks (physiology 8.4): S 6117, C 7195 kg/ha.
const safeClose = (...rest: Given[]) => day(FERN_SAFE_CLOSE, 6117, 7195, generic, OPEN, ...rest)
const refill = (close: number, ...rest: Given[]) =>
  ask(ROOT_SEASON, "refill date", 6117, 7195, generic, OPEN, close, ...rest)

describe("FERN.SAFE_CLOSE", () => {
  it("allows ten weeks with 14 days in hand, not eleven, and nine with 30 (physiology 9, check 38)", () => {
    // Ten weeks from 25 April close on 3 July, nine on 26 June.
    expect(safeClose(14)).toBe("2026-07-03")
    expect(safeClose(30)).toBe("2026-06-26")
  })
  it("takes 30 days where none are given", () => {
    expect(safeClose()).toBe(safeClose(30))
    expect(safeClose(null)).toBe(safeClose(30))
  })
  it("refills in time from its close, and not from the day after", () => {
    for (const margin of [0, 1, 7, 21, 45, 60]) {
      const close = dayOf(safeClose(margin))!
      expect(refill(close)).toBeLessThanOrEqual(FERN_END - margin)
      const later = refill(close + 1)
      // With no day in hand the day after may not refill at all.
      if (isRefusal(later)) expect(later.code).toBe("#N/A")
      else expect(later).toBeGreaterThan(FERN_END - margin)
    }
  })
  it("may be the day before the opening: only a year without cutting refills in time", () => {
    // Line K: uncut, the store is full again on day 179, 109 days before day 288.
    expect(safeClose(109)).toBe("2026-04-24")
    expect(ask(FERN_SAFE_CLOSE, 6117, 7195, generic, OPEN, 110)).toEqual({
      refused:
        "Never: even without cutting the store is not full again 110 days before the fern ends on 2026-10-15",
      code: "#N/A",
    })
  })
  it("comes earlier when fern is lost, and when the fern ends earlier", () => {
    expect(safeClose(30, [["2026-07-15", 0.5]]) < safeClose(30)).toBe(true)
    expect(safeClose(30, null, [["Fern_end", 270]]) < safeClose(30)).toBe(true)
  })
  it("is never where there is no healthy fern, and where the store is empty", () => {
    const never = {refused: expect.stringMatching(/^Never: /), code: "#N/A"}
    expect(ask(FERN_SAFE_CLOSE, 6117, 7195, generic, OPEN, 30, 0)).toEqual(never)
    expect(ask(FERN_SAFE_CLOSE, 6117, 0, generic, OPEN, 0)).toEqual(never)
  })
  it("is never for an opening after the fern's end", () => {
    expect(ask(FERN_SAFE_CLOSE, 6117, 7195, generic, "2026-11-01", 0)).toMatchObject({code: "#N/A"})
  })
  it("in a model year from July is the same moved by half a year", () => {
    const south = generic.map((_, i) => generic[(i + 365 - 181) % 365]!)
    const july: Given = [["Year_start", 7]]
    const moved = dayOf("2026-07-01")! - dayOf("2026-01-01")!
    expect(day(FERN_SAFE_CLOSE, 6117, 7195, south, "2026-10-23", 14, null, july)).toBe(
      isoOf(dayOf("2026-07-03")! + moved),
    )
  })
})

describe("FERN.SAFE_CLOSE in a cell", () => {
  const call = (rest = "", climate = EXAMPLE_CLIMATE) =>
    `=FERN.SAFE_CLOSE(6117,7195,${climate},"2026-04-25"${rest})`

  it("gives a date", () => {
    expect(cell(`=TEXT(${call(",14", IN_CELLS).slice(1)},"YYYY-MM-DD")`, generic)).toBe("2026-07-03")
  })
  it("takes defaults for what is blank, and 0 as 0", () => {
    expect(cell(call(",T!A1,T!A1:B2,T!A1:B2"))).toBe(cell(call()))
    expect(cell(call(",0"))).toBeGreaterThan(cell(call()) as number)
  })
  it.each([
    [
      call(",-1"),
      "#NUM!",
      "Days in hand before the fern's end must be a whole number from 0 to 366 days, not -1 days",
    ],
    [
      call(",2.5"),
      "#NUM!",
      "Days in hand before the fern's end must be a whole number from 0 to 366 days, not 2.5 days",
    ],
    [call(',"14"'), "#VALUE!", 'Days in hand before the fern\'s end must be a number, not the text "14"'],
    [call(",T!A1:A2"), "#VALUE!", "Days in hand before the fern's end takes one value, not a range"],
    [call(",30,-0.1"), "#NUM!", "Healthy share of the fern must be from 0 to 1, not -0.1"],
    [call(',30,1,{"Leaf_warm",30}'), "#NUM!", "Crop value Leaf_warm (30) must be below Leaf_hot (28)"],
  ])("refuses %s", (formula, code, reason) => {
    expect(cell(formula)).toEqual({code, reason})
  })
  it("passes errors on, the leftmost first", () => {
    expect(cell(call(",-1,NA(),1/0"))).toMatchObject({code: "#N/A"})
    expect(cell(call(",1/0,NA()"))).toMatchObject({code: "#DIV/0!"})
  })
})
