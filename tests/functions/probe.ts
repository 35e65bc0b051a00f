import {answer, type FormulaFunction} from "../../functions/define"
import {CellFault, measured, quantity, type Given, type Parameter} from "../../functions/parameters"
import {isRefusal} from "../../functions/refusal"
import {SPEAR_HEAT} from "../../functions/spear/heat"

export const weight = quantity("Weight", "kg", {min: 0, max: 100})
export const weights = measured("Weights", "kg", {min: 0, max: 100})
export const NA = new CellFault("#N/A", "an error of the engine")
export const DIV = new CellFault("#DIV/0!", "another error of the engine")

/** A column of cells. */
export const column = (...held: (number | string | boolean | null | CellFault)[]): Given =>
  held.map((one) => [one])

/** What `calculate` of a function with these parameters is given, or what stands in the cell instead. */
export function read(
  parameters: Record<string, Parameter<any>>,
  given: readonly Given[],
  together: readonly string[] = [],
) {
  let seen: unknown = "not calculated"
  const definition = {
    ...SPEAR_HEAT,
    name: "SPEAR.PROBE",
    parameters,
    together,
    calculate: (read: unknown) => {
      seen = read
      return 0
    },
  } as FormulaFunction
  const result = answer(definition, given)
  return isRefusal(result) || result instanceof CellFault ? result : seen
}
