import {describe, expect, it} from "vitest"
import {ground} from "../../../functions/stand/ground"
import {cell} from "../cell"

describe("ground", () => {
  it("puts the rest before the worth of the planted ground", () => {
    // Invented planting (testStand.ts) with clearing 250: two years of 300, 300/1.06 + 300/1.1236 = 550.02, then
    // 9 101.6311/1.1236 = 8 100.42; and 3 years without clearing.
    expect(ground(9101.6311, 0.06, 2, 300, 0)).toBeCloseTo(8650.4371, 3)
    expect(ground(9127.1327, 0.06, 3, 300, 0)).toBeCloseTo(8465.2202, 3)
  })
  it("is the worth of planted ground where nothing lies between", () => {
    expect(ground(9565.9072, 0.06, 0, 0, 0)).toBe(9565.9072)
  })
  it("never falls below the other use, nor below 0", () => {
    expect(ground(5000, 0.06, 0, 0, 200 / 0.04)).toBe(5000)
    expect(ground(4999, 0.06, 0, 0, 200 / 0.04)).toBe(5000)
    expect(ground(-2000, 0.06, 0, 0, 0)).toBe(0)
    expect(ground(-2000, 0.06, 0, 0, -500)).toBe(0)
  })
})

it("STAND.GROUND refuses a rate below 0", () => {
  expect(cell("=STAND.GROUND(9000,-0.01)")).toMatchObject({code: "#NUM!"})
})
