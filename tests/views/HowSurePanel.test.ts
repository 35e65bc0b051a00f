import {expect, it} from "vitest"
import {lowestWords} from "../../src/views/HowSurePanel"

const kg = (mass: number) => String(mass)
const lowest = [1107, 1380, 1610, 1850, 2213] as const

it.each([
  [0.492, "in 49 of 100 less than your floor"],
  [0.012, "in 1 of 100 less than your floor"],
  // Ten thousand draws of which none is below, or all are, are no certainty.
  [0.004, "in under 1 of 100 less than your floor"],
  [0, "in under 1 of 100 less than your floor"],
  [1, "in over 99 of 100 less than your floor"],
])("says of %d of the draws under the floor that it is %s", (underFloor, said) => {
  expect(lowestWords({lowest, underFloor}, kg, "kg/ha")).toBe(
    `At its lowest 1107 to 2213 kg/ha are left in 8 draws of 10; ${said}.`,
  )
})

it("leaves out the floor where there is none", () => {
  expect(lowestWords({lowest, underFloor: null}, kg, "lb/ac")).toBe(
    "At its lowest 1107 to 2213 lb/ac are left in 8 draws of 10.",
  )
})
