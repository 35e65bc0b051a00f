import {describe, expect, it} from "vitest"
import {AT_ONCE, placeOfMost} from "../../../functions/stand/chain"
import {riskyWorths} from "../../../functions/stand/riskyWorth"
import {worth} from "../../../functions/stand/worth"
import {cell} from "../cell"
import {flows, inBraces} from "./testStand"

const between = {clear: 250, rest: 2, restIncome: 300}

/**
 * Worth of planted ground by trying again and again what each age is worth: keep for one more year, with its chance of a loss,
 * or clear.
 */
function byTrying(chances: readonly number[], lossFlow: number, rate: number): number {
  const chance = (age: number) => chances[Math.min(age, chances.length - 1)]!
  let planted = 0
  for (let turn = 0; turn < 2000; turn++) {
    const {clear, rest, restIncome} = between
    let cleared = planted
    for (let year = 0; year < rest; year++) cleared = (restIncome + cleared) / (1 + rate)
    let worth = cleared - clear
    for (let age = flows.length - 1; age >= 0; age--) {
      const [h, cash] = [chance(age), flows[age]!]
      const keep = ((1 - h) * (cash + worth) + h * (lossFlow + cleared)) / (1 + rate)
      worth = age === 0 ? keep : Math.max(cleared - clear, keep)
    }
    planted = worth
  }
  return planted
}

describe("riskyWorths", () => {
  // Invented planting (testStand.ts) at 6 %, a loss costs 700; closed form and value iteration agreed to 1e-4.
  it.each([
    [0, 15, 9565.9072],
    [0.01, 16, 8714.6573],
    [0.02, 16, 7858.6922],
    [0.05, 17, 5233.1497],
    [0.1, 18, 826.7774],
  ])("with a chance of %s a year", (chance, life, expected) => {
    const worths = riskyWorths(flows, 0.06, [chance], -700, AT_ONCE)
    expect(placeOfMost(worths) + 1).toBe(life)
    expect(Math.max(...worths)).toBeCloseTo(expected, 3)
  })
  it("without a chance of loss is the plain chain", () => {
    expect(Math.max(...riskyWorths(flows, 0.06, [0], -700, between))).toBeCloseTo(
      worth(flows, 0.06, between, 0) as number,
      6,
    )
  })
  it.each([
    ["the same at all ages", [0.04]],
    ["rising with age", [0, 0, 0, 0.01, 0.01, 0.02, 0.02, 0.03, 0.04, 0.06, 0.08, 0.1, 0.13, 0.16, 0.2]],
    ["of youth alone", [0.1, 0.05, 0]],
  ])("with a chance %s agrees with the recursion year by year", (_, chances) => {
    expect(Math.max(...riskyWorths(flows, 0.06, chances, -700, between))).toBeCloseTo(
      byTrying(chances, -700, 0.06),
      6,
    )
  })
  it("of a chance that rises with age shortens the life that an even one lengthens", () => {
    const life = (chances: readonly number[]) =>
      placeOfMost(riskyWorths(flows, 0.06, chances, -700, AT_ONCE)) + 1
    const rising = flows.map((_, age) => Math.max(0, (age - 8) * 0.05))
    expect(life([0])).toBe(15)
    expect(life([0.05])).toBe(17)
    expect(life(rising)).toBeLessThan(15)
  })
})

describe("STAND.RISKY_WORTH and RISKY_LIFE in a cell", () => {
  it("take one chance or a list", () => {
    const once = cell(`=STAND.RISKY_WORTH(${inBraces(flows)},0.06,0.02,-700)`)
    expect(cell(`=STAND.RISKY_WORTH(${inBraces(flows)},0.06,{0.02,0.02},-700)`)).toBe(once)
    expect(cell(`=STAND.RISKY_LIFE(${inBraces(flows)},0.06,0.02,-700)`)).toBe(16)
  })
  it("refuse a chance above 1", () => {
    expect(cell(`=STAND.RISKY_WORTH(${inBraces(flows)},0.06,5,-700)`)).toMatchObject({code: "#NUM!"})
  })
})
