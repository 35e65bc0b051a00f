import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"
import {roundUp} from "../rounding"

/** People needed for hours of work, each working one shift, h, on each of the days; rounded up. */
export const people = (hours: number, shift: number, days: number): number => roundUp(hours / (shift * days))

export const CREW_PEOPLE = defineFunction({
  name: "CREW.PEOPLE",
  summary: "People needed for hours of work, rounded up",
  about:
    "Count only the hours worked in a shift, without breaks. Heat, knives, night work and long shifts hurt people: keep to " +
    "the hours and breaks of your local labour code.",
  parameters: {
    hours: quantity("Hours of work", "h", {min: 0}),
    shift: quantity("Hours a person works a day", "h", {above: 0, max: 24}),
    days: optional(quantity("Days to do it in", "days", {above: 0}), 1),
  },
  returns: {label: "People needed", unit: "people"},
  sources: ["identity"],
  example: {formula: "=CREW.PEOPLE(591.7,9)", gives: 66},
  calculate: ({hours, shift, days}) => people(hours, shift, days),
})
