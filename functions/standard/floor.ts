import {defineStandard} from "./define"
import {number, optionally} from "./parameters"
import {toMultiple} from "./toMultiple"

export const FLOOR = defineStandard({
  name: "FLOOR",
  section: "6.17.3",
  summary: "The nearest multiple at or below a number",
  about: "Rounds towards minus infinity; with a way other than 0, towards 0.",
  parameters: {
    number: number("The number"),
    multiple: optionally(number("What it is to be a multiple of"), 1),
    way: optionally(number("Way: 0 downwards, else towards 0"), 0),
  },
  returns: {label: "Multiple", unit: "number"},
  refuses: ["a multiple below 0 for a number above 0"],
  example: {formula: "=FLOOR(-2.5,-1)", gives: -3},
  calculate: ({number: given, multiple, way}) => toMultiple(given, multiple, "down", way !== 0),
})
