import {describe, expect, it} from "vitest"
import {restWorth} from "../../../functions/stand/restWorth"
import {cell} from "../cell"
import {crop, inBraces, other} from "./testStand"

describe("restWorth", () => {
  it("weighs a penalty against a rest", () => {
    // Invented planting (testStand.ts) at 6 %, checked in two languages: 15 % lost in every planting at once, or 3 years at 300.
    const at = (rest: number) => restWorth(rest, {crop, other}, [0.15, 0.1, 0.05, 0], 0.06, 300, 0)
    expect(at(0)).toBeCloseTo(5858.5688, 3)
    expect(at(3)).toBeCloseTo(8465.2202, 3)
    expect(at(3) - at(0)).toBeCloseTo(2606.65, 2)
  })
  it("without a penalty is best without a rest", () => {
    expect(restWorth(0, {crop, other}, [0], 0.06, 0, 0)).toBeCloseTo(9565.9072, 3)
  })
  it("keeps the last penalty for longer rests", () => {
    const of = (penalties: number[]) => restWorth(4, {crop, other}, penalties, 0.06, 300, 0)
    expect(of([0.15, 0.02])).toBe(of([0.15, 0.02, 0.02, 0.02, 0.02]))
  })
})

it("STAND.REST_WORTH refuses lists that differ and a penalty above 1", () => {
  expect(cell("=STAND.REST_WORTH(1,{0,100},{-50,-10,-10},0.06,0.1)")).toEqual({
    code: "#VALUE!",
    reason: "Net cash of the crop is given for 2 years and other cash for 3: sizes differ",
  })
  expect(cell(`=STAND.REST_WORTH(1,${inBraces(crop)},${inBraces(other)},0.06,15)`)).toMatchObject({
    code: "#NUM!",
  })
})
