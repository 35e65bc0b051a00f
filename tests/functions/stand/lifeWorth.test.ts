import {describe, expect, it} from "vitest"
import {AT_ONCE, perYearOfOne, worthsOfFirst} from "../../../functions/stand/chain"
import {lifeWorth} from "../../../functions/stand/lifeWorth"
import {perYear} from "../../../functions/stand/perYear"
import {cell} from "../cell"
import {flows, inBraces, stand} from "./testStand"

describe("lifeWorth", () => {
  // Invented planting (testStand.ts) at 6 %: worth of one planting, and of a year of the chain; checked in two languages.
  it.each([
    [7, -142.3, -25.49],
    [8, 971.35, 156.42],
    [10, 2937.74, 399.14],
    [11, 3706.85, 470.0],
    [12, 4342.97, 518.02],
    [13, 4858.7, 548.84],
    [14, 5265.61, 566.5],
    [15, 5574.39, 573.9544],
    [16, 5794.83, 573.41],
    [18, 6006.02, 554.69],
  ])("of %i years", (life, single, yearly) => {
    expect(Math.abs(worthsOfFirst(flows, 0.06)[life]! - single)).toBeLessThan(0.0051)
    expect(Math.abs((lifeWorth(life, flows, 0.06, AT_ONCE) as number) - yearly)).toBeLessThan(0.0051)
  })
  it.each([
    ["at 3 %", flows, 0.03, AT_ONCE, 15, 680.8137],
    ["at 10 %", flows, 0.1, AT_ONCE, 16, 426.9991],
    ["without interest, 10 950 in 14 years", flows, 0, AT_ONCE, 14, 10950 / 14],
    ["with clearing", flows, 0.06, {clear: 250, rest: 0, restIncome: 0}, 16, 563.6728],
    ["with clearing and rest", flows, 0.06, {clear: 250, rest: 2, restIncome: 300}, 16, 546.0979],
    ["with rest", flows, 0.06, {clear: 0, rest: 3, restIncome: 300}, 16, 547.628],
    ["at 85 % of the yield", stand(1, 0.85), 0.06, AT_ONCE, 16, 351.5141],
    ["at 115 % of the yield", stand(1, 1.15), 0.06, AT_ONCE, 15, 797.1845],
  ])("is right %s", (_, cash, rate, between, life, yearly) => {
    expect(lifeWorth(life, cash, rate, between)).toBeCloseTo(yearly, 3)
  })
  it("is the yearly worth of one planting while nothing lies between two", () => {
    expect(lifeWorth(11, flows, 0.06, AT_ONCE)).toBeCloseTo(perYear(flows.slice(0, 11), 0.06), 9)
  })
  it("spreads a sum today by the capital recovery factor, the plain share without interest", () => {
    expect(perYearOfOne(0, 8)).toBe(0.125)
    expect(perYearOfOne(1e-9, 8)).toBeCloseTo(0.125, 8)
  })
})

describe("STAND.LIFE_WORTH in a cell", () => {
  it("refuses a life beyond the years of cash, and one of 0", () => {
    expect(cell(`=STAND.LIFE_WORTH(19,${inBraces(flows)},0.06)`)).toEqual({
      code: "#NUM!",
      reason: "Life (19 years) is longer than the 18 years of net cash",
    })
    expect(cell(`=STAND.LIFE_WORTH(0,${inBraces(flows)},0.06)`)).toMatchObject({code: "#NUM!"})
  })
})
