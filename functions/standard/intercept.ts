import {defineStandard} from "./define"
import {isLine, lineOf} from "./line"
import {cells} from "./parameters"

export const INTERCEPT = defineStandard({
  name: "INTERCEPT",
  section: "6.18.38",
  summary: "Where the straight line through points meets x = 0",
  about: "The line of least squares. A pair counts only when both its cells hold a number.",
  parameters: {y: cells("Known y"), x: cells("Known x")},
  returns: {label: "y where x is 0", unit: "number"},
  refuses: ["ranges of different size", "x that are all equal"],
  example: {formula: "=INTERCEPT({5,7,9},{1,2,3})", gives: 3},
  calculate: ({y, x}) => {
    const line = lineOf(y, x)
    return isLine(line) ? line.intercept : line
  },
})
