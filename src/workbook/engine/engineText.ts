import type {RawCellContent} from "hyperformula"
import {dayOf} from "../../../functions/calendar"
import {formulaIn} from "../cells"
import {contentAt, sheetNamed, type Document} from "../document"
import {hasCellInBraces, isTooIntricate, withRowsAsCells} from "../formula"

/** A row as the engine takes it: blank to the full width, so that a shorter row leaves nothing of a longer one behind. */
export function engineRow(document: Document, sheet: number, row: number): RawCellContent[] {
  return document.sheets[sheet]!.columns.map((_, col) => {
    const at = {sheet, row, col}
    const formula = formulaIn(document, at)
    if (formula !== null) return engineFormula(document, formula, sheet)
    const content = contentAt(document, at)
    // Words are marked as such, since the engine would read "007", "50%" and "12:30" as numbers.
    return typeof content === "string" && dayOf(content) === null ? `'${content}` : content
  })
}

/**
 * A formula as the engine takes it. Whole rows go in as cells: where ranges of whole rows overlap, the engine
 * (3.5.0) throws "Range does not exist" or "Value of the formula cell is not computed", on opening as on an edit.
 */
export const engineFormula = ({sheets}: Document, formula: string, sheet: number) =>
  hasCellInBraces(formula) || isTooIntricate(formula)
    ? UNREADABLE
    : withRowsAsCells(formula, (name) => {
        const own = name === null ? sheet : sheetNamed(sheets, name)
        return Math.max(0, (sheets[own]?.columns.length ?? 1) - 1)
      })

const UNREADABLE = "=("
