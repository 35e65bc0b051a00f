import {describe, expect, it} from "vitest"
import {AT_ONCE} from "../../../functions/stand/chain"
import {life} from "../../../functions/stand/life"
import {cell} from "../cell"
import {flows, inBraces, stand} from "./testStand"

const planting = inBraces(flows)

describe("life", () => {
  // Invented planting (testStand.ts), its best lives checked in two languages.
  it.each([
    ["at 6 %", 0.06, AT_ONCE, 15],
    ["at 3 %", 0.03, AT_ONCE, 15],
    ["at 10 %", 0.1, AT_ONCE, 16],
    ["without interest", 0, AT_ONCE, 14],
    ["with clearing", 0.06, {clear: 250, rest: 0, restIncome: 0}, 16],
    ["with clearing and rest", 0.06, {clear: 250, rest: 2, restIncome: 300}, 16],
    ["with rest", 0.06, {clear: 0, rest: 3, restIncome: 300}, 16],
  ])("is best %s", (_, rate, between, years) => {
    expect(life(flows, rate, between, 0)).toBe(years)
  })
  it("is longer for a planting on ground that costs yield, and the same for a better one", () => {
    expect(life(stand(1, 0.85), 0.06, AT_ONCE, 0)).toBe(16)
    expect(life(stand(1, 1.15), 0.06, AT_ONCE, 0)).toBe(15)
  })
  it.each([0.01, 0.02])("is best at 15 with growth of %s", (growth) => {
    expect(life(flows, 0.06, AT_ONCE, growth)).toBe(15)
  })
  it("is not the life with the largest sum of one planting, the standard mistake", () => {
    // The sum grows for as long as cash is above 0: the single planting would be kept for all 18 years.
    expect(life([-100, 60, 60, 1], 0.1, AT_ONCE, 0)).toBe(3)
  })
  it("is the shortest of equals", () => {
    // Every life of 25 equal years is worth the same sum a year: 1 000.50.
    expect(life(Array(25).fill(1000.5), 0.25, AT_ONCE, 0)).toBe(1)
  })
  it("finds the cheapest machine when costs are given as cash below 0", () => {
    // Newnan, Eschenbach and Lavelle, example 13-4: least annual equivalent at year 5.
    const costs = [17750, 15200, 13950, 14350, 14900, 15600, 16950]
    expect(
      life(
        costs.map((cost) => -cost),
        0.15,
        AT_ONCE,
        0,
      ),
    ).toBe(5)
  })
})

describe("STAND.LIFE in a cell", () => {
  it("takes clearing and rest after the rate", () => {
    expect(cell(`=STAND.LIFE(${planting},0.06,250,2,300)`)).toBe(16)
  })
  it("refuses growth that is not below the rate", () => {
    expect(cell(`=STAND.LIFE(${planting},0.02,0,0,0,0.02)`)).toEqual({
      code: "#NUM!",
      reason: "Rate a year (0.02) must lie above the growth of net cash (0.02), or the worth is endless",
    })
  })
  it("refuses a clearing cost below 0 and part of a year of rest", () => {
    expect(cell(`=STAND.LIFE(${planting},0.06,-1)`)).toMatchObject({code: "#NUM!"})
    expect(cell(`=STAND.LIFE(${planting},0.06,0,1.5)`)).toMatchObject({code: "#NUM!"})
  })
})
