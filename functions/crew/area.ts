import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"

/** The arguments of a day's cutting, shared with CREW.CUTTERS. */
export const cutting = {
  kg_ha: quantity("Crop standing on a hectare for this picking", "kg/ha", {min: 0}),
  rate: quantity("Weight a person picks an hour", "kg/h", {above: 0}),
  shift: quantity("Hours a person works a day", "h", {above: 0, max: 24}),
  walk: optional(quantity("Most a person can walk and cut a day", "ha/day", {above: 0}), 1),
}

/**
 * Ground that one person cuts in a day, ha: what the weight allows in the shift, and never more than `walk`.
 * `kgHa` is what stands for this picking, kg/ha; with nothing standing the walk alone sets it.
 */
export const area = (kgHa: number, rate: number, shift: number, walk: number): number =>
  Math.min(walk, (shift * rate) / kgHa)

export const aboutCutting =
  "The walk of 1 ha a day is a published round figure for hand-cut green asparagus; 0.8 to 1.1 ha is the range found. The " +
  "rate of picking is your own record. Heat, knives, night work and long shifts hurt people: keep to the hours and breaks of " +
  "your local labour code."

export const CREW_AREA = defineFunction({
  name: "CREW.AREA",
  summary: "Ground that one person cuts in a day: by walking or by weight, the smaller",
  about: aboutCutting,
  parameters: cutting,
  returns: {label: "Ground a person cuts a day", unit: "ha/day"},
  sources: ["planning", "ruralNews"],
  example: {formula: "=CREW.AREA(200,20,8)", gives: 0.8},
  calculate: ({kg_ha, rate, shift, walk}) => area(kg_ha, rate, shift, walk),
})
