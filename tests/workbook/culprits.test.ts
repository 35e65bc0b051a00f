import {expect, it} from "vitest"
import {culpritsOf} from "../../src/workbook/culprits"
import {isFault} from "../../src/workbook/value"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, documentOf, sheet} from "./documents"

/** The cells by which the formula in C1 fails, where A1 holds `a`, A2 `b` and B1 5. */
function culprits(formula: string, a: string | number | null, b: string | number | null) {
  const workbook = new Workbook(
    documentOf(
      sheet(
        "Plan",
        ["Crop", "Area", "Yield"],
        [
          [a, 5, formula],
          [b, null, null],
        ],
      ),
    ),
  )
  const value = workbook.valueAt(cellAt("C1"))
  if (!isFault(value)) throw new Error(`${formula} gives ${String(value)}`)
  return culpritsOf(workbook, cellAt("C1"), value).map(({text}) => text)
}

it.each([
  ["=B1/A1", 0, null, ["A1"]],
  ["=B1/A2", 0, null, ["A2"]],
  ["=B1 / A1 + B1/A2", 2, null, ["A2"]],
  ["=A1/B2", 0, 1, ["B2"]], // a zero above the line is no fault
  ["=B1/(A1-A1)", 3, null, []],
  ["=B1/SUM(A1:A2)", null, null, []],
  ["=A1*2", "9,8", null, ["A1"]],
  ["=A1+A2", "12", "none", ["A2"]], // text that reads as a number counts as it
  ["=SQRT(A1)", -1, null, []],
])("%s, with %j above %j, fails by %j", (formula, a, b, expected) =>
  expect(culprits(formula, a, b)).toEqual(expected),
)
