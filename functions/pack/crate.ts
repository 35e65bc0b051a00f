import {defineFunction} from "../define"
import {quantity} from "../parameters"

const LITRE = 1000 // cm³

/** Inside of a crate that narrows from bottom to top along one side, litre; all lengths in cm. */
export const crate = (length: number, height: number, bottom: number, top: number): number =>
  (length * height * (bottom + top)) / 2 / LITRE

export const PACK_CRATE = defineFunction({
  name: "PACK.CRATE",
  summary: "Inside volume of a crate that narrows to the top",
  about:
    "The base is wide for the thicker butts, the narrow top holds the bunches tight. A straight box has the same width at " +
    "bottom and top. The weight a crate takes is by your own scale.",
  parameters: {
    length: quantity("Inside length", "cm", {above: 0, max: 500}),
    height: quantity("Inside height", "cm", {above: 0, max: 500}),
    bottom: quantity("Inside width at the bottom", "cm", {above: 0, max: 500}),
    top: quantity("Inside width at the top", "cm", {above: 0, max: 500}),
  },
  returns: {label: "Inside volume", unit: "litre"},
  sources: ["identity", "hexamer1901"],
  example: {formula: "=PACK.CRATE(60.96,30.48,48.26,36.83)", gives: 79.05},
  calculate: ({length, height, bottom, top}) => crate(length, height, bottom, top),
})
