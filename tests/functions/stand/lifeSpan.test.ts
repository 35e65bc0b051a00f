import {describe, expect, it} from "vitest"
import {AT_ONCE} from "../../../functions/stand/chain"
import {lifeCost} from "../../../functions/stand/lifeCost"
import {lifeSpan} from "../../../functions/stand/lifeSpan"
import {cell} from "../cell"
import {flows, inBraces} from "./testStand"

describe("lifeSpan", () => {
  // One year early costs 7.45 a year and one late 0.54; 12 years cost 55.94 and 18 cost 19.26 (lifeCost.test.ts).
  it.each([
    [0, 15, 15],
    [0.6, 15, 16],
    [7.5, 14, 17],
    [20, 14, 18],
    [56, 12, 18],
  ])("within %s a year", (within, shortest, longest) => {
    expect(lifeSpan(within, -1, flows, 0.06, AT_ONCE)).toBe(shortest)
    expect(lifeSpan(within, 1, flows, 0.06, AT_ONCE)).toBe(longest)
  })
  it("takes in every one of equal lives", () => {
    // 25 equal years are worth the same sum a year at every life.
    const equal = Array<number>(25).fill(1000.5)
    expect(lifeSpan(0, -1, equal, 0.25, AT_ONCE)).toBe(1)
    expect(lifeSpan(0, 1, equal, 0.25, AT_ONCE)).toBe(25)
  })
  it("ends where the next life costs more than the sum", () => {
    const last = lifeSpan(5, 1, flows, 0.06, AT_ONCE)
    expect(lifeCost(last, flows, 0.06, AT_ONCE)).toBeLessThanOrEqual(5)
    expect(lifeCost(last + 1, flows, 0.06, AT_ONCE)).toBeGreaterThan(5)
  })
})

it("STAND.LIFE_SPAN refuses a side that is none", () => {
  expect(cell(`=STAND.LIFE_SPAN(10,0,${inBraces(flows)},0.06)`)).toMatchObject({code: "#NUM!"})
})
