import {expect, it} from "vitest"
import {trim} from "../../../functions/pack/trim"
import {cell} from "../cell"

it.each([
  [25, 22, 0.12], // 3/25
  [24, 20, 1 / 6],
  [23, 18, 5 / 23],
  [22, 22, 0],
])("cut at %s cm and packed at %s cm loses %s", (cut, pack, share) =>
  expect(trim(cut, pack)).toBeCloseTo(share, 12),
)
it("refuses to pack longer than it was cut", () => {
  expect(cell("=PACK.TRIM(22,25)")).toEqual({
    code: "#NUM!",
    reason: "Packed length (25 cm) is above the cut length (22 cm)",
  })
  expect(cell("=PACK.TRIM(0,0)")).toMatchObject({code: "#NUM!"})
})
