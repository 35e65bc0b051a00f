import {describe, expect, it} from "vitest"
import {margin, reserveAfter} from "../../../functions/season/jointPlan"
import {actsOf, placeAmong} from "../../../functions/stand/dynamicProgram"
import {renew, worthsBefore, type LifeYear, type Renewal} from "../../../functions/stand/renewal"
import {riskyWorths} from "../../../functions/stand/riskyWorth"
import {values, years} from "../season/testJ"
import {flows} from "./testStand"

describe("worthsBefore", () => {
  // The invented problem of testJ.ts from age 12 and reserve 0.7 on: 8 seasons, 0, 2, 4, 6, 8 or 10 weeks, or clearing for 3 000,
  // which is also what it is worth at the end. Every way tried: 2 015 539 calls, in two languages.
  const BRUTE = 4647.285084808656
  const WEEKS = [0, 2, 4, 6, 8, 10]
  const factor = (season: number) => years.factors[years.ages.indexOf(12 + season)]!

  function tryAll(season: number, reserve: number): number {
    if (season === 8) return 3000
    let most = 3000
    for (const weeks of WEEKS) {
      const worth =
        margin(factor(season), reserve, weeks, values) +
        tryAll(season + 1, reserveAfter(reserve, weeks, values)) / 1.06
      if (worth > most) most = worth
    }
    return most
  }
  it("has its reference right", () => expect(tryAll(0, 0.7)).toBeCloseTo(BRUTE, 9))

  function byNodes(nodes: number): number {
    const levels = Array.from({length: nodes}, (_, node) => node / (nodes - 1))
    const acts = actsOf(
      levels.map((reserve) =>
        WEEKS.map((weeks) => {
          const {node, share} = placeAmong(reserveAfter(reserve, weeks, values), 0, 1, nodes)
          return [
            [node, 1 - share],
            [node + 1, share],
          ] as const
        }),
      ),
    )
    const lifeYears = Array.from({length: 8}, (_, season): LifeYear => ({
      pays: Float64Array.from(
        levels.flatMap((reserve) => WEEKS.map((weeks) => margin(factor(season), reserve, weeks, values))),
      ),
      carry: 1 / 1.06,
      lost: 0,
      last: null,
    }))
    const worths = Array.from({length: 9}, () => new Float64Array(nodes))
    worthsBefore({acts, years: lifeYears, clear: 0, groundOf: () => 0}, 8, 3000, worths)
    const {node, share} = placeAmong(0.7, 0, 1, nodes)
    return (1 - share) * worths[0]![node]! + share * worths[0]![node + 1]!
  }
  it.each([
    [11, 22.678],
    [21, 2.191],
    [51, 0.886],
    [101, 0.286],
  ])("with %i nodes lies above trying every way by what straight lines add", (nodes, above) => {
    expect(Math.abs(byNodes(nodes) - BRUTE - above)).toBeLessThan(1e-3)
  })
  it.each([201, 401])("with %i nodes is the same as trying every way", (nodes) => {
    expect(Math.abs(byNodes(nodes) - BRUTE)).toBeLessThan(1e-9)
  })
})

describe("renew", () => {
  /** The planting of testStand.ts, of which nothing but its age matters: one state, one act a year. */
  const plain = (chance: number, clear: number): Renewal => ({
    acts: actsOf([[[[0, 1]]]]),
    years: flows.map((cash): LifeYear => ({
      pays: Float64Array.of(((1 - chance) * cash + chance * -700) / 1.06),
      carry: (1 - chance) / 1.06,
      lost: chance / 1.06,
      last: null,
    })),
    clear,
    groundOf: ([planted]) => planted!,
  })
  it.each([
    [0, 0, 9565.9072],
    [0, 250, 9394.5473],
    [0.05, 0, 5233.1497],
  ])(
    "is the chain without a reserve at a chance of loss of %s and clearing at %s",
    (chance, clear, worth) => {
      // The invented planting, solved in two languages.
      expect(renew(plain(chance, clear)).ground).toBeCloseTo(worth, 3)
      expect(
        Math.max(...riskyWorths(flows, 0.06, [chance], -700, {clear, rest: 0, restIncome: 0})),
      ).toBeCloseTo(worth, 3)
    },
  )
  it("settles in few rounds, and stands", () => {
    const problem = plain(0, 250)
    const {ground, worths, rounds} = renew(problem)
    expect(rounds).toBeLessThan(8)
    expect(problem.groundOf(worths[0]!, ground)).toBeCloseTo(ground, 6)
  })
  it("is never worth less than clearing", () => {
    const {ground, worths} = renew(plain(0, 250))
    for (const worth of worths.slice(1)) expect(worth[0]).toBeGreaterThanOrEqual(ground - 250 - 1e-6)
  })
  it("takes a last season that pays better than going on", () => {
    const {years: lifeYears, ...rest} = plain(0, 0)
    const pays = 3000 / 1.06
    const last = lifeYears.map((year) => ({...year, last: Float64Array.of(pays)}))
    // From year 2 on each last season brings 3 000: plant, lose 3 000, bring 3 000 and begin again (its planting year too).
    const found = renew({...rest, years: last})
    expect(found.ground).toBeCloseTo(3000 / 0.06, 3)
  })
})
