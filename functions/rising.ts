import {wrongKind, type Refusal} from "./refusal"

/** Refuses a column of a table that does not rise from every row to the next; `null` when it rises. */
export function notRising(label: string, column: readonly number[]): Refusal | null {
  const row = column.findIndex((value, i) => i > 0 && value <= column[i - 1]!)
  return row < 0
    ? null
    : wrongKind(`${label} must rise from row to row: ${column[row]} comes after ${column[row - 1]}`)
}
