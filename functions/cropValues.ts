import type {CropValue} from "./cropValue"
import {fernValues} from "./fern/values"
import {readOnce} from "./memo"
import {notTwoColumns, readNamedNumbers} from "./namedNumbers"
import {isRange, type Held, type Parameter} from "./parameters"
import {isRefusal} from "./refusal"
import {rootValues} from "./root/values"
import {spearValues} from "./spear/values"

/** Every crop value by the name it has on the sheet `Crop values`. Defaults for a green crop. */
export const cropValues = {...spearValues, ...rootValues, ...fernValues} as const satisfies Record<
  string,
  CropValue
>

export type CropValueName = keyof typeof cropValues

/** What one of them is called in a sentence. */
const THING = "Crop value"

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
    const replaced = readNamedNumbers(THING, cropValues, rows)
    return isRefusal(replaced) ? replaced : {...defaults, ...replaced}
  })
  return {
    label: "Crop values",
    unit: "names and numbers",
    takes: "a range of two columns, name and number",
    isRange: true,
    absent: {value: defaults, words: "the defaults"},
    names,
    read: (given) => (isRange(given) ? withDefaults(given) : notTwoColumns(THING)),
  }
}
