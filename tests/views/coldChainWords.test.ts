import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {loadsWords, storeWords} from "../../src/views/coldChainWords"
import type {ColdChain} from "../../src/workbook/coldChain"

const none: ColdChain = {loads: 0, late: [], lost: 0, worth: 0, store: null}
const late = {planting: "Sand Piece", day: dayOf("2026-05-21")!, wait: 4.5, at: {sheet: 0, row: 0, col: 3}}

describe("words on the cold chain", () => {
  it("says what is not known", () => {
    expect(loadsWords(none, {})).toMatch("not known")
    expect(storeWords(none, {})).toMatch("Hold_days")
  })

  it("names the loads that waited too long, and what the sun took", () => {
    expect(loadsWords({...none, loads: 6, late: [late], lost: 30.4, worth: 71.6}, {currency: "€"})).toBe(
      "1 of 6 loads logged waited too long for the cold: Sand Piece 21 May 4.5 h. The sun took 30 kg, worth 72 €.",
    )
    expect(loadsWords({...none, loads: 1}, {})).toBe(
      "The one load logged did not wait too long for the cold.",
    )
    expect(loadsWords({...none, loads: 3}, {})).toBe("None of 3 loads logged waited too long for the cold.")
  })

  it("says how long the store keeps it, how full it is, and what is wrong", () => {
    const store = {
      days: 4,
      temperature: 2,
      keeps: 16.4,
      fullest: {day: dayOf("2026-05-28")!, kg: 9140, breathing: 0.87},
      warns: "held longer than it should be",
    }
    expect(storeWords({...none, store}, {decimal: ","})).toBe(
      "Packed crop stays 4 days at 2 °C, where it keeps about 16. Fullest on 28 May: 9,1 t, breathing 0,9 kW, " +
        "which the load does not count. It is held longer than it should be.",
    )
    expect(storeWords({...none, store: {...store, fullest: null, warns: ""}}, {measures: "US"})).toBe(
      "Packed crop stays 4 days at 36 °F, where it keeps about 16.",
    )
  })
})
