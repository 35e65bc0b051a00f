import {describe, expect, it} from "vitest"
import {AT_ONCE, chainWorths} from "../../../functions/stand/chain"
import {lifeWorth} from "../../../functions/stand/lifeWorth"
import {worth} from "../../../functions/stand/worth"
import {cell} from "../cell"
import {flows, inBraces, stand} from "./testStand"

describe("worth", () => {
  // Invented planting (testStand.ts), checked in two languages.
  it.each([
    ["at 6 %", flows, 0.06, AT_ONCE, 0, 9565.9072],
    ["at 3 %", flows, 0.03, AT_ONCE, 0, 22693.7892],
    ["at 10 %", flows, 0.1, AT_ONCE, 0, 4269.9911],
    ["with growth of 1 %", flows, 0.06, AT_ONCE, 0.01, 10812.1256],
    ["with growth of 2 %", flows, 0.06, AT_ONCE, 0.02, 12714.833],
    ["with clearing", flows, 0.06, {clear: 250, rest: 0, restIncome: 0}, 0, 9394.5473],
    ["with clearing and rest", flows, 0.06, {clear: 250, rest: 2, restIncome: 300}, 0, 9101.6311],
    ["with rest", flows, 0.06, {clear: 0, rest: 3, restIncome: 300}, 0, 9127.1327],
    ["at 85 % of the yield", stand(1, 0.85), 0.06, AT_ONCE, 0, 5858.5688],
    ["at 115 % of the yield", stand(1, 1.15), 0.06, AT_ONCE, 0, 13286.4086],
  ])("is right %s", (_, cash, rate, between, growth, expected) => {
    expect(worth(cash, rate, between, growth)).toBeCloseTo(expected, 3)
  })
  it("is the best yearly worth for ever", () => {
    // A level sum for ever is worth the sum over the rate.
    const yearly = lifeWorth(15, flows, 0.06, AT_ONCE) as number
    expect(worth(flows, 0.06, AT_ONCE, 0)).toBeCloseTo(yearly / 0.06, 6)
  })
  it("agrees with a table of forest rotations", () => {
    // Course worksheet AEC 3233, rotation table: net price 3.00 a cubic foot, planting 1 200 at once (1 236 at the end of year 1),
    // 3 %, volume 390 to 8 750 in 2 to 10 years.
    const volumes = [390, 1520, 3330, 5760, 8750]
    const chains = [-1692.61, 25571.03, 44097.07, 59076.62, 71637.47]
    const singles = [-97.16, 2851.5, 7166.47, 12440.99, 18332.47]
    for (const [i, volume] of volumes.entries()) {
      const years = 2 * (i + 1)
      const cash = Array.from({length: years}, (_, year) => (year === years - 1 ? 3 * volume : 0))
      cash[0]! -= 1200 * 1.03
      expect(Math.abs(chainWorths(cash, 0.03, AT_ONCE)[years - 1]! - chains[i]!)).toBeLessThan(0.0051)
      const single = 3 * volume * 1.03 ** -years - 1200
      expect(Math.abs(single - singles[i]!)).toBeLessThan(0.0051)
      expect(chainWorths(cash, 0.03, AT_ONCE)[years - 1]! * (1 - 1.03 ** -years)).toBeCloseTo(single, 6)
    }
  })
})

describe("STAND.WORTH in a cell", () => {
  it("refuses a rate of 0, at which a chain without end has no worth", () => {
    expect(cell(`=STAND.WORTH(${inBraces(flows)},0)`)).toEqual({
      code: "#NUM!",
      reason: "Rate a year must be above 0 and up to 1, not 0",
    })
  })
  it("refuses growth above the rate", () => {
    expect(cell(`=STAND.WORTH(${inBraces(flows)},0.06,0,0,0,0.07)`)).toMatchObject({code: "#NUM!"})
  })
})
