import {DetailedCellError, HyperFormula, type RawCellContent} from "hyperformula"
import {registerCatalogue} from "../../functions/plugin"

registerCatalogue()

/** An error as the planner sees it: its code and its sentence. */
export interface Fault {
  code: string
  reason: string
}

/** Works out one formula in an engine of its own; `cells` fills a sheet named `T` that it may refer to. */
export function cell(
  formula: string,
  cells: RawCellContent[][] = [],
): number | string | boolean | null | Fault {
  const engine = HyperFormula.buildFromSheets(
    {Formula: [[formula]], T: cells},
    {licenseKey: "gpl-v3", useArrayArithmetic: true, dateFormats: ["YYYY-MM-DD"], precisionRounding: 14},
  )
  const value = engine.getCellValue({sheet: 0, row: 0, col: 0})
  engine.destroy()
  return value instanceof DetailedCellError ? {code: value.value, reason: value.message} : value
}
