import {describe, expect, it} from "vitest"
import {AT_ONCE} from "../../../functions/stand/chain"
import {lifeCost} from "../../../functions/stand/lifeCost"
import {cell} from "../cell"
import {flows, inBraces} from "./testStand"

describe("lifeCost", () => {
  // Invented planting (testStand.ts) at 6 %: against the best life, 15 years; checked in two languages.
  it.each([
    [10, 174.81],
    [12, 55.94],
    [14, 7.45],
    [15, 0],
    [16, 0.54],
    [18, 19.26],
  ])("of %i years", (life, cost) => {
    expect(Math.abs((lifeCost(life, flows, 0.06, AT_ONCE) as number) - cost)).toBeLessThan(0.0051)
  })
})

it("STAND.LIFE_COST refuses a life beyond the years of cash", () => {
  expect(cell(`=STAND.LIFE_COST(19,${inBraces(flows)},0.06)`)).toMatchObject({code: "#NUM!"})
})
