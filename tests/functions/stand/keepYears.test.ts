import {describe, expect, it} from "vitest"
import {placeOfMost} from "../../../functions/stand/chain"
import {keepYears} from "../../../functions/stand/keepYears"
import {perYear} from "../../../functions/stand/perYear"
import {cell} from "../cell"
import {flows} from "./testStand"

const GROUND = 9565.9072
const setback = [-200, 900, 1300, 1300, 1100, 900, 700, 500]

describe("keepYears", () => {
  it("keeps a field past its best for one year more", () => {
    expect(keepYears([700, 520, 340, 160], GROUND, 0.06, 0)).toBe(1)
  })
  it("keeps a field through a setback, for which one year alone would clear it", () => {
    expect(keepYears(setback, GROUND, 0.06, 0)).toBe(7)
    expect(setback[0]).toBeLessThan(0.06 * GROUND)
  })
  it("is not the number of years with the largest annuity", () => {
    // Of the setback field: the annuity of keeping is largest at 6 years, 852.09, and 7 years are worth more.
    const annuities = setback.map((_, i) => perYear(setback.slice(0, i + 1), 0.06))
    expect(placeOfMost(annuities) + 1).toBe(6)
    expect(annuities[5]).toBeCloseTo(852.09, 2)
  })
  it("keeps the planting of its own kind for its best life", () => {
    // Best lives of testStand.ts: 15 years; 16 with clearing 250, rest 2 and income 300 (ground 8 650.4371).
    expect(13 + keepYears(flows.slice(13), GROUND, 0.06, 0)).toBe(15)
    expect(13 + keepYears(flows.slice(13), 8650.4371, 0.06, 250)).toBe(16)
  })
  it("clears a year sooner for a better cultivar", () => {
    // Successor with 15 % more yield, ground worth 13 286.4086: 920 is above 797.18, 740 below it.
    expect(13 + keepYears(flows.slice(13), 13286.4086, 0.06, 0)).toBe(14)
  })
  it("is the fewest of equals", () => {
    expect(keepYears([0, 0], GROUND, 0, 0)).toBe(0)
    // Years that bring the interest on the ground, 0.07 x 14 300 = 1 001, gain nothing and lose nothing.
    expect(keepYears(Array(12).fill(1001), 14300, 0.07, 0)).toBe(0)
  })
  it("is 0 when clearing now is best", () => {
    expect(keepYears([100, 50], GROUND, 0.06, 0)).toBe(0)
  })
})

it("STAND.KEEP_YEARS refuses a year left blank between others", () => {
  expect(cell("=STAND.KEEP_YEARS(T!A1:A3,9000,0.06)", [[700], [null], [340]])).toMatchObject({
    code: "#VALUE!",
  })
})
