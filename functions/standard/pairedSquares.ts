import type {StandardFunction} from "./define"
import {defineStandard} from "./define"
import {pairsIn} from "./line"
import {cells} from "./parameters"

const summed = (
  name: string,
  section: string,
  summary: string,
  gives: number,
  term: (x: number, y: number) => number,
): StandardFunction =>
  defineStandard({
    name,
    section,
    summary,
    about: "A pair counts only when both its cells hold a number.",
    parameters: {x: cells("The x"), y: cells("The y")},
    returns: {label: "Sum", unit: "number"},
    refuses: ["ranges of different size"],
    example: {formula: `=${name}({3,4},{1,2})`, gives},
    calculate: ({x, y}) => {
      const pairs = pairsIn(y, x)
      return "y" in pairs ? pairs.x.reduce((sum, one, i) => sum + term(one, pairs.y[i]!), 0) : pairs
    },
  })

export const SUMX2MY2 = summed(
  "SUMX2MY2",
  "6.16.66",
  "Sum of x² - y² over pairs",
  20,
  (x, y) => x * x - y * y,
)
export const SUMX2PY2 = summed(
  "SUMX2PY2",
  "6.16.67",
  "Sum of x² + y² over pairs",
  30,
  (x, y) => x * x + y * y,
)
export const SUMXMY2 = summed("SUMXMY2", "6.16.68", "Sum of (x - y)² over pairs", 8, (x, y) => (x - y) ** 2)
