import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import type {Move, MovesApart, Needs} from "../../src/studies/movesApart"
import {apartWords, moveWords} from "../../src/views/MovesApart"

const day = (iso: string) => dayOf(iso)!
const planned: Needs = {
  short: 3,
  shortOn: day("2026-05-26"),
  over: 1.3,
  overOn: day("2026-06-07"),
  crop: 97_000,
}
const closes: Move = {
  planting: "Long Acre",
  what: "close",
  was: day("2026-06-10"),
  to: day("2026-05-25"),
  at: {sheet: 0, row: 1, col: 5},
  short: 0,
  shortOn: null,
  over: 0,
  overOn: null,
  crop: 87_900,
}
const found: MovesApart = {
  day: day("2026-05-26"),
  together: [
    {planting: "Well Field", kg: 1600},
    {planting: "Long Acre", kg: 936},
  ],
  asPlanned: planned,
  moves: [closes],
}

describe("words on moving plantings apart", () => {
  it("says who meets, and what the best move leaves and costs", () => {
    expect(apartWords(found, {})).toBe(
      "On 26 May, the worst day to come, Well Field (1.6 t) and Long Acre (936 kg) are picked together. " +
        "If Long Acre closes 25 May, not 10 Jun, the worst day lacks no cutters instead of 3, at 9.1 t less crop.",
    )
    expect(moveWords({...closes, what: "open"})).toBe("Long Acre opens 25 May, not 10 Jun")
  })

  it("speaks of cold where no cutter is missing, and of a crop that stays", () => {
    const cold = {...found, asPlanned: {...planned, short: 0}, moves: [{...closes, over: 0.4, crop: 97_000}]}
    expect(apartWords(cold, {decimal: ","})).toMatch(/the worst day is 0,4 kW over instead of 1,3\.$/)
  })

  it("says where no move helps, and where nothing is short", () => {
    expect(apartWords({...found, moves: [{...closes, ...planned}]}, {})).toMatch("No move of one date")
    expect(apartWords({...found, together: found.together.slice(1), moves: []}, {})).toMatch(
      "Long Acre (936 kg) is picked alone. No move",
    )
    expect(apartWords(null, {})).toMatch("nothing to move apart")
    expect(apartWords(undefined, {})).toBe("")
    const unknown = "Whether people are enough is not known yet."
    expect(apartWords(null, {}, unknown)).toBe(unknown)
  })
})
