import {describe, expect, it} from "vitest"
import {AT_ONCE} from "../../../functions/stand/chain"
import {cultivar} from "../../../functions/stand/cultivar"
import {keepYears} from "../../../functions/stand/keepYears"
import {worth} from "../../../functions/stand/worth"
import {cell} from "../cell"
import {flows, stand} from "./testStand"

const better = stand(1, 1.15)
const old = flows.slice(13)

describe("cultivar", () => {
  it("that can be had today clears the old field after age 14 in place of 15", () => {
    // Invented planting (testStand.ts) at 6 %, successor with 15 % more yield: ground 13 286.4086, checked in two languages.
    const found = cultivar(old, flows, better, 0, 0.06, AT_ONCE)
    expect(found).toMatchObject({
      "years to keep": 1,
      plant: "the better one",
      "years to planting": 1,
      life: 15,
    })
    expect(found.worth).toBeCloseTo((920 + 13286.4086) / 1.06, 3)
  })
  it("that is no better changes nothing", () => {
    for (const release of [0, 3, 30]) {
      const found = cultivar(old, flows, flows, release, 0.06, AT_ONCE)
      expect(found["years to keep"]).toBe(keepYears(old, worth(flows, 0.06, AT_ONCE, 0) as number, 0.06, 0))
      // Kept 2 years, then the ground: (920 + 740/1.06 + 9 565.9072/1.06)/1.06.
      expect(found.worth).toBeCloseTo((920 + (740 + 9565.9072) / 1.06) / 1.06, 3)
    }
  })
  it("that is far off is not waited for", () => {
    const found = cultivar(old, flows, better, 60, 0.06, AT_ONCE)
    expect(found).toMatchObject({plant: "today's", "years to keep": 2, "years to planting": 2})
    expect(found.worth).toBeGreaterThan((920 + (740 + 9565.9072) / 1.06) / 1.06)
  })
  it("that comes soon is waited for with the old field", () => {
    expect(cultivar(old, flows, better, 3, 0.06, AT_ONCE)).toMatchObject({
      plant: "the better one",
      "years to keep": 3,
    })
  })
  it("is waited for on bare ground when the old field and today's planting lose", () => {
    // Cleared now, two years of rest income 10, then the better one: 10/1.1 + 10/1.1² + ground/1.1².
    const [bad, good] = [
      [-300, 90],
      [-300, 260, 300],
    ]
    const between = {clear: 0, rest: 0, restIncome: 10}
    const found = cultivar([-50, -60], bad, good, 2, 0.1, between)
    expect(found).toMatchObject({plant: "the better one", "years to keep": 0, "years to planting": 2})
    const ground = worth(good, 0.1, between, 0) as number
    expect(found.worth).toBeCloseTo(10 / 1.1 + (10 + ground) / 1.21, 9)
  })
  it("is worth the less the later it comes", () => {
    const worths = Array.from({length: 40}, (_, release) =>
      cultivar(old, flows, better, release, 0.06, AT_ONCE),
    ).map((found) => found.worth)
    for (let i = 1; i < worths.length; i++) expect(worths[i]).toBeLessThanOrEqual(worths[i - 1]! + 1e-9)
  })
  it("agrees with every way of going on, tried one by one", () => {
    const [today, later, rate] = [[-300, 120, 260, 240, 90], [-300, 160, 300, 260], 0.1]
    for (const keep of [
      [150, 40],
      [-80, -90],
    ])
      for (const between of [AT_ONCE, {clear: 40, rest: 1, restIncome: 15}])
        for (const release of [0, 1, 2, 4]) {
          const forEver = Math.max(
            worth(later, rate, between, 0) as number,
            worth(today, rate, between, 0) as number,
          )
          const {clear, rest, restIncome} = between
          const bare = (at: number, rested: number): number => {
            const wait = () => (restIncome + bare(at + 1, rested + 1)) / (1 + rate)
            if (rested < rest) return wait()
            if (at >= release) return forEver
            return Math.max(wait(), grown(today, 1, at, today[0]!))
          }
          /** After the year that brings `cash` a planting of that list is `age` years old. */
          const grown = (list: readonly number[], age: number, at: number, cash: number): number =>
            (cash + standing(list, age, at + 1)) / (1 + rate)
          const standing = (list: readonly number[], age: number, at: number): number => {
            const off = bare(at, 0) - clear
            return age < list.length ? Math.max(off, grown(list, age + 1, at, list[age]!)) : off
          }
          expect(cultivar(keep, today, later, release, rate, between).worth).toBeCloseTo(
            standing(keep, 0, 0),
            9,
          )
        }
  })
})

it("STAND.CULTIVAR names what to plant", () => {
  const call = (what: string, release: number) =>
    cell(`=STAND.CULTIVAR("${what}",{120,100},{-300,120,260,240,90},{-300,200,400,300},${release},0.1)`)
  expect(call("plant", 0)).toBe("the better one")
  expect(call("plant", 40)).toBe("today's")
  expect(call("life", -1)).toMatchObject({code: "#NUM!"})
})
