import {shown, type Held} from "./parameters"
import {isWithin, limitsInWords, withUnit, type Limits, type Unit} from "./quantity"
import {outOfRange, wrongKind, type Refusal} from "./refusal"

/** What a number that is given by name is counted in, and what it may be. */
export interface Named {
  readonly unit: Unit
  readonly limits: Limits
}

/**
 * The numbers of a range of two columns, name and number. Blank rows are skipped and a blank number, also one that
 * a formula leaves blank (""), is left out; there is no heading row. An unknown name, a name given twice and a number outside its limits are refused. `thing` is what one of them is
 * called in a sentence: "Crop value".
 */
export function readNamedNumbers(
  thing: string,
  table: Readonly<Record<string, Named>>,
  rows: readonly (readonly Held[])[],
): Record<string, number> | Refusal {
  if (rows.some((row) => row.length !== 2)) return notTwoColumns(thing)
  const numbers: Record<string, number> = {}
  const seen = new Set<string>()
  for (const [name = null, number = null] of rows) {
    const refusal = takeRow(thing, table, name, number, numbers, seen)
    if (refusal) return refusal
  }
  return numbers
}

export const notTwoColumns = (thing: string): Refusal =>
  wrongKind(`${thing}s must be a range of two columns, name and number`)

function takeRow(
  thing: string,
  table: Readonly<Record<string, Named>>,
  name: Held,
  number: Held,
  into: Record<string, number>,
  seen: Set<string>,
): Refusal | null {
  if (name === null && number === null) return null
  if (typeof name !== "string" || !Object.hasOwn(table, name))
    return wrongKind(
      name === null
        ? `${thing} ${shown(number)} has no name`
        : `There is no ${thing.toLowerCase()} named ${name}`,
    )
  if (seen.has(name)) return wrongKind(`${thing} ${name} is given twice`)
  seen.add(name)
  if (number === null || number === "") return null
  if (typeof number !== "number") return wrongKind(`${thing} ${name} must be a number, not ${shown(number)}`)
  const {unit, limits} = table[name]!
  if (!isWithin(number, limits))
    return outOfRange(
      `${thing} ${name} must be ${limitsInWords({unit, limits})}, not ${withUnit(number, unit)}`,
    )
  into[name] = number
  return null
}
