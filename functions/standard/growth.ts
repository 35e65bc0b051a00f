import {outOfRange} from "../refusal"
import {defineStandard} from "./define"
import {countedLike, isLine, lineThrough, pairsIn} from "./line"
import {cells, logical, number, optionally} from "./parameters"

export const GROWTH = defineStandard({
  name: "GROWTH",
  section: "6.18.35",
  summary: "The y at one new x on the curve of steady growth through points",
  about:
    "The curve y = b · mˣ whose logarithm is the line of least squares. The standard gives as many values as there are " +
    "new x; this gives one. With known x left out they are 1, 2, 3 and so on.",
  parameters: {
    y: cells("Known y"),
    x: optionally(cells("Known x"), null, "1, 2, 3, …"),
    value: number("The new x"),
    free: optionally(logical("Whether b may differ from 1"), true, "TRUE"),
  },
  returns: {label: "y on the curve", unit: "number"},
  refuses: ["ranges of different size", "x that are all equal", "a y of 0 or less"],
  example: {formula: "=GROWTH({3,6,12},{1,2,3},4)", gives: 24},
  calculate: ({y, x, value, free}) => {
    const pairs = pairsIn(y, x ?? countedLike(y))
    if (!("y" in pairs)) return pairs
    const low = pairs.y.find((one) => one <= 0)
    if (low !== undefined) return outOfRange(`Known y must be above 0, not ${low}`)
    const line = lineThrough({y: pairs.y.map(Math.log), x: pairs.x}, !free)
    return isLine(line) ? Math.exp(line.intercept + line.slope * value) : line
  },
})
