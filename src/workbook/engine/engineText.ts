import type {RawCellContent} from "hyperformula"
import {dayOf} from "../../../functions/calendar"
import {COLUMN_FORMULA, isFormula, sheetNamed, type Document} from "../document"
import {hasCellInBraces, holding, isTooIntricate, movedDown, withRowsAsCells} from "../formula"

/** A row as the engine takes it: blank to the full width, so that a shorter row leaves nothing of a longer one behind. */
export function engineRow(document: Document, sheet: number, row: number): RawCellContent[] {
  const {columns, rows} = document.sheets[sheet]!
  return columns.map(({formula}, col) => {
    const content = rows[row]?.[col] ?? null
    if (content === COLUMN_FORMULA && formula !== undefined)
      return isUnreadable(formula) ? UNREADABLE : rowsAsCells(document, movedDown(formula, row), sheet)
    if (isFormula(content)) return engineFormula(document, content, sheet)
    // Words are marked as such, since the engine would read "007", "50%" and "12:30" as numbers.
    return typeof content === "string" && dayOf(content) === null ? `'${content}` : content
  })
}

/** A formula as the engine takes it. */
export const engineFormula = (document: Document, formula: string, sheet: number) =>
  isUnreadable(formula) ? UNREADABLE : rowsAsCells(document, formula, sheet)

const isUnreadable = holding((formula) => hasCellInBraces(formula) || isTooIntricate(formula))

/**
 * Whole rows go in as cells: where ranges of whole rows overlap, the engine (3.5.0) throws "Range does not exist" or "Value of
 * the formula cell is not computed", on opening as on an edit.
 */
const rowsAsCells = ({sheets}: Document, formula: string, sheet: number) =>
  withRowsAsCells(formula, (name) => {
    const own = name === null ? sheet : sheetNamed(sheets, name)
    return Math.max(0, (sheets[own]?.columns.length ?? 1) - 1)
  })

const UNREADABLE = "=("
