import {CellFault, shown, type Held} from "../parameters"
import {notYet, wrongKind, type Refusal} from "../refusal"
import {defineStandard, type Place} from "./define"
import {cells, optionally, value, type Cells} from "./parameters"

/**
 * Where the value stands that belongs to the largest of the searched values that is not above `sought`; of equal ones
 * the last. Searched is the first column, or the first row when there are more columns than rows; the value is in the
 * last column or row, or in the results. Numbers come before text; letters count the same in either case.
 */
export function lookup(sought: Held, searched: Cells, results: Cells | null): Place | Refusal | CellFault {
  if (sought === null) return notYet("What is looked for is blank")
  const [rows, cols] = [searched.length, searched[0]!.length]
  const isAcross = cols > rows
  const keys = isAcross ? searched[0]! : searched.map((row) => row[0]!)
  const fault = keys.find((key) => key instanceof CellFault)
  if (fault) return fault

  let found = -1
  for (const [i, key] of keys.entries())
    if (key !== null && compared(key, sought) <= 0 && (found < 0 || compared(key, keys[found]!) >= 0))
      found = i
  if (found < 0 || (typeof sought === "string" && typeof keys[found] === "number"))
    return notYet(`Nothing at or below ${shown(sought)} stands there`)

  if (!results)
    return isAcross ? {argument: 1, row: rows - 1, col: found} : {argument: 1, row: found, col: cols - 1}
  const [height, width] = [results.length, results[0]!.length]
  if (height > 1 && width > 1) return wrongKind("The results must be one row or one column")
  if (height * width !== keys.length)
    return wrongKind(
      `${keys.length} cells are searched and there are ${height * width} results: sizes differ`,
    )
  return width > 1 ? {argument: 2, row: 0, col: found} : {argument: 2, row: found, col: 0}
}

const collator = new Intl.Collator("en", {sensitivity: "accent"})

function compared(a: Held, b: Held): number {
  if (typeof a === "string" && typeof b === "string") return collator.compare(a, b)
  return kindOf(a) - kindOf(b) || Number(a) - Number(b)
}

const kindOf = (held: Held) => ["number", "string", "boolean"].indexOf(typeof held)

export const LOOKUP = defineStandard({
  name: "LOOKUP",
  section: "6.14.8",
  summary: "The value that belongs to the largest key at or below what is looked for",
  about:
    "The keys must be in rising order, numbers before text. They are the first column of what is searched, or the first " +
    "row when it is wider than high; without results the value comes from its last column or row. To find an exact " +
    "match use INDEX with MATCH and 0.",
  parameters: {
    sought: value("What is looked for"),
    searched: cells("Keys in rising order"),
    results: optionally(cells("Results, as many as keys"), null, "the last column or row searched"),
  },
  returns: {label: "The value found", unit: "as given"},
  refuses: ["results of another number than the keys", "a value below the first key"],
  example: {formula: "=LOOKUP(11,{8,10,12},{40,60,80})", gives: 60},
  calculate: ({sought, searched, results}) => lookup(sought, searched, results),
})
