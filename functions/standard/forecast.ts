import {defineStandard} from "./define"
import {isLine, lineOf} from "./line"
import {cells, number} from "./parameters"

export const FORECAST = defineStandard({
  name: "FORECAST",
  section: "6.18.28",
  summary: "The y at one x on the straight line through points",
  about:
    "The line of least squares. A pair counts only when both its cells hold a number. Beyond the known x it is no more " +
    "than the line drawn on.",
  parameters: {value: number("The x to tell y for"), y: cells("Known y"), x: cells("Known x")},
  returns: {label: "y on the line", unit: "number"},
  refuses: ["ranges of different size", "x that are all equal"],
  example: {formula: "=FORECAST(4,{5,7,9},{1,2,3})", gives: 11},
  calculate: ({value, y, x}) => {
    const line = lineOf(y, x)
    return isLine(line) ? line.intercept + line.slope * value : line
  },
})
