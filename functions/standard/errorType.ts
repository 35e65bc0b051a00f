import {CellFault, shown, type Held} from "../parameters"
import {wrongKind, type Refusal} from "../refusal"
import {defineStandard} from "./define"
import {valueOrError} from "./parameters"

/** Numbers of the errors: OpenFormula, table 4. */
const NUMBERS: Readonly<Record<string, number>> = {
  "#NULL!": 1,
  "#DIV/0!": 2,
  "#VALUE!": 3,
  "#REF!": 4,
  "#NAME?": 5,
  "#NUM!": 6,
  "#N/A": 7,
}

/** The number of an error. What is no error is refused, and so are errors the standard has no number for. */
export function errorType(held: Held): number | Refusal {
  if (!(held instanceof CellFault)) return wrongKind(`${held === null ? "A blank" : shown(held)} is no error`)
  return NUMBERS[held.code] ?? wrongKind("The standard has no number for this error")
}

export const ERROR_TYPE = defineStandard({
  name: "ERROR.TYPE",
  section: "6.13.11",
  summary: "The number of an error, such as 7 for #N/A",
  about: "1 #NULL!, 2 #DIV/0!, 3 #VALUE!, 4 #REF!, 5 #NAME?, 6 #NUM!, 7 #N/A.",
  parameters: {error: valueOrError("The error")},
  returns: {label: "Number of the error", unit: "number"},
  refuses: ["a value that is no error"],
  example: {formula: "=ERROR.TYPE(NA())", gives: 7},
  calculate: ({error}) => errorType(error),
})
