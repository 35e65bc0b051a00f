import {describe, expect, it} from "vitest"
import {restPenalty} from "../../../functions/stand/restPenalty"
import {restWorth} from "../../../functions/stand/restWorth"
import {crop, other} from "./testStand"

const flows = {crop, other}

describe("restPenalty", () => {
  it("is the share at which planting at once is worth as much", () => {
    // Invented planting (testStand.ts) at 6 %, 3 years of rest at 300: 4.4377 %, checked in two languages.
    const share = restPenalty(3, flows, 0.06, 300, 0) as number
    expect(100 * share).toBeCloseTo(4.4377, 4)
    expect(restWorth(0, flows, [share], 0.06, 300, 0)).toBeCloseTo(restWorth(3, flows, [0], 0.06, 300, 0), 4)
  })
  it("is more for a rest that earns less", () => {
    expect(restPenalty(3, flows, 0.06, 0, 0)).toBeGreaterThan(restPenalty(3, flows, 0.06, 300, 0) as number)
  })
  it("has no answer when resting pays more than the crop", () => {
    expect(restPenalty(3, flows, 0.06, 5000, 0)).toEqual({
      refused: "3 years of rest pay even where planting at once loses no yield",
      code: "#N/A",
    })
  })
  it("is 0 for no rest", () => {
    expect(restPenalty(0, flows, 0.06, 300, 0)).toBeCloseTo(0, 9)
  })
})
