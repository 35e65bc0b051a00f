import {describe, expect, it} from "vitest"
import {cutters} from "../../../functions/crew/cutters"
import {cell} from "../cell"

describe("cutters", () => {
  it("counts people by the weight on a heavy picking, by the walk on a light one", () => {
    expect(cutters(6.4, 200, 20, 8, 1)).toBe(8) // 0.8 ha each
    expect(cutters(6.5, 200, 20, 8, 1)).toBe(9) // 8.1
    expect(cutters(6.4, 50, 20, 8, 1)).toBe(7) // 1 ha each
    expect(cutters(0, 200, 20, 8, 1)).toBe(0)
  })
  it("comes to the published crew of a Washington farm at its peak", () => {
    // Grower's report from Pasco, Washington: 150 cutters for 325 acres (131.5 ha), 0.877 ha each.
    const hectares = 325 * 0.404686
    expect(cutters(hectares, 160, 20, 8, hectares / 150)).toBe(150)
  })
})

it("CREW.CUTTERS adds nobody for the noise of a division, and refuses ground below 0", () => {
  expect(cell("=CREW.CUTTERS(2.1,300,20,10.5)")).toBe(3) // 210/300 = 0.7 ha each
  expect(cell("=CREW.CUTTERS(-1,300,20,10.5)")).toEqual({
    code: "#NUM!",
    reason: "Ground to cut that day must be 0 ha or more, not -1 ha",
  })
})
