import {defineStandard} from "./define"
import {countedLike, isLine, lineOf} from "./line"
import {cells, logical, number, optionally} from "./parameters"

export const TREND = defineStandard({
  name: "TREND",
  section: "6.18.79",
  summary: "The y at one new x on the straight line through points",
  about:
    "The standard gives as many values as there are new x; this gives one, so it takes one new x, and one column of " +
    "known x. With known x left out they are 1, 2, 3 and so on.",
  parameters: {
    y: cells("Known y"),
    x: optionally(cells("Known x"), null, "1, 2, 3, …"),
    value: number("The new x"),
    free: optionally(logical("Whether the line may miss the origin"), true, "TRUE"),
  },
  returns: {label: "y on the line", unit: "number"},
  refuses: ["ranges of different size", "x that are all equal"],
  example: {formula: "=TREND({5,7,9},{1,2,3},4)", gives: 11},
  calculate: ({y, x, value, free}) => {
    const line = lineOf(y, x ?? countedLike(y), !free)
    return isLine(line) ? line.intercept + line.slope * value : line
  },
})
