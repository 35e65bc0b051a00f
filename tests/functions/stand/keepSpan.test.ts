import {expect, it} from "vitest"
import {keepSpan} from "../../../functions/stand/keepSpan"
import {cell} from "../cell"

// Worth of keeping 0 to 4 years (keepWorth.test.ts): 9 565.91 9 684.82 9 636.80 9 440.37 9 112.48.
it.each([
  [0, 1, 1],
  [50, 1, 2],
  [120, 0, 2],
  [250, 0, 3],
  [600, 0, 4],
])("within %s of the best it reaches from %s to %s years", (within, fewest, most) => {
  const cash = [700, 520, 340, 160]
  expect(keepSpan(within, -1, cash, 9565.9072, 0.06, 0)).toBe(fewest)
  expect(keepSpan(within, 1, cash, 9565.9072, 0.06, 0)).toBe(most)
})

it("STAND.KEEP_SPAN refuses a sum below 0", () => {
  expect(cell("=STAND.KEEP_SPAN(-1,1,{700,520},9000,0.06)")).toMatchObject({code: "#NUM!"})
})
