import {expect, it} from "vitest"
import {cell} from "../cell"
import {flows, inBraces} from "./testStand"

// Invented planting (testStand.ts), checked in two languages: see riskyWorth.test.ts for the worths.
it.each([
  [0, 15],
  [0.01, 16],
  [0.05, 17],
  [0.1, 18],
])("STAND.RISKY_LIFE at a chance of %s is %i years", (chance, life) => {
  expect(cell(`=STAND.RISKY_LIFE(${inBraces(flows)},0.06,${chance},-700)`)).toBe(life)
})
