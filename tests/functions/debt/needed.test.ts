import {describe, expect, it} from "vitest"
import {priceNeeded} from "../../../functions/debt/priceNeeded"
import {weightNeeded} from "../../../functions/debt/weightNeeded"
import {cell} from "../cell"

// An invented farm of 60 acres and 4 500 lb an acre at 0.95: harvest 0.60 a lb, other cash 700 an acre, 28 475.50 due,
// taxes 4 000. The rules do not mind which units, as long as all agree.
const weight = 60 * 4500
const cash = 60 * 700
const [perLb, price, due, taxes] = [0.6, 0.95, 28475.5, 4000]

describe("the price needed", () => {
  it.each([
    ["cash costs", cash, 0, 1, 0.755556], // (42 000 + 162 000)/270 000
    ["debt service", cash + taxes, due, 1, 0.875835], // + 32 475.50
    ["a cover of 1.25", cash + taxes, due, 1.25, 0.902201], // + 39 594.375: 243 594.375/270 000
  ])("for %s", (_, costs, due, cover, expected) => {
    expect(priceNeeded(costs, perLb, weight, due, cover, 1)).toBeCloseTo(expected, 6)
  })
  it("rises as less of the harvest is sold", () => {
    expect(priceNeeded(cash, perLb, weight, 0, 1, 0.8)).toBeCloseTo(204000 / 270000 / 0.8, 12)
  })
})

describe("the weight needed", () => {
  it.each([
    ["cash costs", cash, 0, 2000], // 42 000/0.35/60
    ["debt service", cash + taxes, due, 3546.45], // 74 475.50/0.35/60
  ])("for %s", (_, costs, due, expected) => {
    expect((weightNeeded(costs, price, perLb, due, 1, 1) as number) / 60).toBeCloseTo(expected, 2)
  })
  it("is the weight at which the price needed is the price", () => {
    const kg = weightNeeded(46000, 1.3, 0.7, 20000, 1.2, 0.85) as number
    expect(priceNeeded(46000, 0.7, kg, 20000, 1.2, 0.85)).toBeCloseTo(1.3, 12)
  })
  it("is refused where a kg brings no more than it costs", () => {
    expect(0.8 * 0.75).toBeGreaterThan(0.6) // by the noise of the product alone
    expect(weightNeeded(42000, 0.8, 0.6, 0, 1, 0.75)).toMatchObject({
      refused: "A harvested kg brings 0.6 and costs 0.6: no weight pays the rest",
    })
    expect(cell("=DEBT.WEIGHT_NEEDED(42000,0.5,0.6)")).toEqual({
      code: "#NUM!",
      reason: "A harvested kg brings 0.5 and costs 0.6: no weight pays the rest",
    })
  })
})

it("DEBT.PRICE_NEEDED takes no debt, a cover of 1 and all of the harvest where nothing is given", () => {
  expect(cell("=DEBT.PRICE_NEEDED(42000,0.6,270000)")).toBeCloseTo(0.755556, 6)
  expect(cell("=DEBT.PRICE_NEEDED(42000,0.6,270000,T!A1,T!A1,T!A1)")).toBeCloseTo(0.755556, 6)
  expect(cell("=DEBT.PRICE_NEEDED(42000,0.6,0)")).toEqual({
    code: "#DIV/0!",
    reason: "No weight is harvested: no price can pay the costs",
  })
})
