import {COLUMN_FORMULA, contentAt, isFormula, type CellAddress, type Document} from "./document"
import {cellText, movedDown, piecesDown, piecesOf, sheetText, type Pieces} from "./formula"

/** The formula in a cell, that of its column included, or null. */
export function formulaIn(document: Document, at: CellAddress): string | null {
  const content = contentAt(document, at)
  if (!isFormula(content)) return null
  const {formula} = document.sheets[at.sheet]!.columns[at.col]!
  return content === COLUMN_FORMULA && formula !== undefined ? movedDown(formula, at.row) : content
}

/** The formula in a cell taken apart, that of its column moved down to the row; null where there is none. */
export function piecesIn(document: Document, at: CellAddress): Pieces | null {
  const content = contentAt(document, at)
  if (!isFormula(content)) return null
  const {formula} = document.sheets[at.sheet]!.columns[at.col]!
  return content === COLUMN_FORMULA && formula !== undefined
    ? piecesDown(piecesOf(formula), at.row)
    : piecesOf(content)
}

/** A cell's address in words a formula could use: "F2", or "'Root samples'!D3" from another sheet. */
export const addressText = ({sheets}: Document, {sheet, row, col}: CellAddress, from?: number) =>
  (sheet === from || !sheets[sheet] ? "" : `${sheetText(sheets[sheet].name)}!`) + cellText(row, col)
