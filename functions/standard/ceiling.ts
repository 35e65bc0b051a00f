import {defineStandard} from "./define"
import {number, optionally} from "./parameters"
import {toMultiple} from "./toMultiple"

export const CEILING = defineStandard({
  name: "CEILING",
  section: "6.17.1",
  summary: "The nearest multiple at or above a number",
  about: "Rounds towards plus infinity; with a way other than 0, away from 0.",
  parameters: {
    number: number("The number"),
    multiple: optionally(number("What it is to be a multiple of"), 1),
    way: optionally(number("Way: 0 upwards, else away from 0"), 0),
  },
  returns: {label: "Multiple", unit: "number"},
  refuses: ["a multiple below 0 for a number above 0"],
  example: {formula: "=CEILING(-2.5,-1)", gives: -2},
  calculate: ({number: given, multiple, way}) => toMultiple(given, multiple, "up", way !== 0),
})
