import type {Content} from "../../../src/workbook/document"
import type {Value} from "../../../src/workbook/value"
import {Workbook} from "../../../src/workbook/workbook"
import {cellAt, documentOf, sheet} from "../../workbook/documents"

type Rows = readonly (readonly Content[])[]

/** A workbook whose sheet `T` holds `rows`, and whose first sheet holds one formula a row. */
export function opened(formulas: readonly (string | null)[], rows: Rows = []) {
  const letters = [..."ABCDEFGH"]
  const workbook = new Workbook(
    documentOf(
      sheet(
        "Formulas",
        ["Formula"],
        formulas.map((formula) => [formula]),
      ),
      sheet("T", letters, rows.length > 0 ? rows : [[null]]),
    ),
  )
  return {
    valueOf: (row = 0): Value => workbook.valueAt({sheet: 0, row, col: 0}),
    /** Enters something in a cell of sheet `T`. */
    enter: (at: string, content: Content) =>
      workbook.revise({type: "enter", cells: [{at: cellAt(`1!${at}`), content}]}),
    isDate: (row = 0) => workbook.isDateAt({sheet: 0, row, col: 0}),
  }
}

/** What a formula gives in a cell. */
export const worked = (formula: string, rows: Rows = []): Value => opened([formula], rows).valueOf()
