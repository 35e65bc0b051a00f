import {notYet, type Refusal} from "../refusal"
import {defineStandard} from "./define"
import {number, numbers, optionally} from "./parameters"

/** The place of a number among others, counted from 1: the largest first, or the smallest. Equal numbers share the first place. */
export function rank(value: number, data: readonly number[], ascending: boolean): number | Refusal {
  if (!data.includes(value)) return notYet(`${value} is not among the numbers`)
  return 1 + data.filter((one) => (ascending ? one < value : one > value)).length
}

export const RANK = defineStandard({
  name: "RANK",
  section: "6.18.65",
  summary: "The place of a number among others, the largest first",
  about: "Equal numbers share a place, and the places after them are left out.",
  parameters: {
    value: number("The number"),
    data: numbers("The numbers it is among"),
    order: optionally(number("Order: 0 the largest first, else the smallest first"), 0),
  },
  returns: {label: "Place, counted from 1", unit: "count"},
  refuses: ["a number that is not among the others"],
  example: {formula: "=RANK(20,{10,20,30,30})", gives: 3},
  calculate: ({value, data, order}) => rank(value, data, order !== 0),
})
