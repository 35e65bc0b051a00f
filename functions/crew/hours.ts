import {defineFunction} from "../define"
import {quantity} from "../parameters"

/** Picking hours for a weight, kg, at a rate, kg an hour and person. */
export const hours = (weight: number, rate: number): number => weight / rate

export const CREW_HOURS = defineFunction({
  name: "CREW.HOURS",
  summary: "Hours of picking for a weight at a rate per hour",
  about:
    "The rate is your own record of kg an hour and person, walking included. It falls when spears are few, in the cold and " +
    "with new people.",
  parameters: {
    weight: quantity("Weight to pick", "kg", {min: 0}),
    rate: quantity("Weight a person picks an hour", "kg/h", {above: 0}),
  },
  returns: {label: "Picking hours", unit: "h"},
  sources: ["identity"],
  example: {formula: "=CREW.HOURS(14200,24)", gives: 591.7},
  calculate: ({weight, rate}) => hours(weight, rate),
})
