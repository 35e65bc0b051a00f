import {defineFunction} from "../define"
import {quantity} from "../parameters"

/** Weight an hour of picking must bring to pay for itself, kg/h: wage an hour over what a kg leaves for picking. */
export const breakRate = (wage: number, left: number): number => wage / left

export const CREW_BREAK_RATE = defineFunction({
  name: "CREW.BREAK_RATE",
  summary: "Weight an hour of picking must bring to pay for itself",
  about:
    "The wage is the whole cost of an hour: with insurance, housing and transport where you pay them. What is left is the " +
    "price of a picked kg less hauling, packing and selling. Below this rate a picking costs more than it brings; that is " +
    "no reason to pay less than the legal minimum.",
  parameters: {
    wage: quantity("Cost of an hour of picking", "money/h", {min: 0}),
    left: quantity("Left of the price for picking", "money/kg", {above: 0}),
  },
  returns: {label: "Rate that pays for itself", unit: "kg/h"},
  refuses: ["nothing left of the price for picking"],
  sources: ["identity"],
  example: {formula: "=CREW.BREAK_RATE(15.20,1.45)", gives: 10.5},
  calculate: ({wage, left}) => breakRate(wage, left),
})
