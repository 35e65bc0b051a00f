import type {CropValue} from "./cropValue"
import {fernValues} from "./fern/values"
import {readOnce} from "./memo"
import {isRange, shown, type Held, type Parameter} from "./parameters"
import {isWithin, limitsInWords, withUnit} from "./quantity"
import {isRefusal, outOfRange, wrongKind, type Refusal} from "./refusal"
import {rootValues} from "./root/values"
import {spearValues} from "./spear/values"

/** Every crop value by the name it has on the sheet `Crop values`. Defaults for a green crop. */
export const cropValues = {...spearValues, ...rootValues, ...fernValues} as const satisfies Record<
  string,
  CropValue
>

export type CropValueName = keyof typeof cropValues

/**
 * The optional last argument `[values]` of a model function: a range of two columns, name and number, that
 * replaces defaults by name. Blank rows are skipped and a blank number means the default; there is no heading
 * row. An unknown name, a name given twice and a number outside its range are refused.
 */
export function valuesOf<const N extends CropValueName>(
  ...names: readonly N[]
): Parameter<Readonly<Record<N, number>>> {
  const defaults = Object.fromEntries(names.map((name) => [name, cropValues[name].value])) as Record<
    N,
    number
  >
  const withDefaults = readOnce((rows: readonly (readonly Held[])[]) => {
    const replaced = readValues(rows)
    return isRefusal(replaced) ? replaced : {...defaults, ...replaced}
  })
  return {
    label: "Crop values",
    unit: "names and numbers",
    takes: "a range of two columns, name and number",
    isRange: true,
    absent: {value: defaults, words: "the defaults"},
    names,
    read: (given) => (isRange(given) ? withDefaults(given) : wrongShape()),
  }
}

const wrongShape = () => wrongKind("Crop values must be a range of two columns, name and number")

function readValues(rows: readonly (readonly Held[])[]): Record<string, number> | Refusal {
  if (rows.some((row) => row.length !== 2)) return wrongShape()
  const replaced: Record<string, number> = {}
  const seen = new Set<string>()
  for (const [name = null, number = null] of rows) {
    const refusal = takeRow(name, number, replaced, seen)
    if (refusal) return refusal
  }
  return replaced
}

function takeRow(name: Held, number: Held, into: Record<string, number>, seen: Set<string>): Refusal | null {
  if (name === null && number === null) return null
  if (typeof name !== "string" || !Object.hasOwn(cropValues, name))
    return wrongKind(
      name === null ? `Crop value ${shown(number)} has no name` : `There is no crop value named ${name}`,
    )
  if (seen.has(name)) return wrongKind(`Crop value ${name} is given twice`)
  seen.add(name)
  if (number === null) return null
  if (typeof number !== "number")
    return wrongKind(`Crop value ${name} must be a number, not ${shown(number)}`)
  const {unit, limits} = cropValues[name as CropValueName] as CropValue
  if (!isWithin(number, limits))
    return outOfRange(
      `Crop value ${name} must be ${limitsInWords({unit, limits})}, not ${withUnit(number, unit)}`,
    )
  into[name] = number
  return null
}
