import {columnWith, sheetWith, withSheet, type Document, type Part} from "./document"
import {blankRow} from "./rows"

/**
 * Some sheets hold a number of rows for each row of another one, such as the ten years of a stand. Where an edit changed that
 * one, the rows that are missing here come at the end, so that no total leaves them out. None are taken away.
 */
export const withRowsForEach = (before: Document, after: Document): Document =>
  after.sheets.reduce((next, {columns, rows, rowsFor}, index) => {
    const counted = rowsFor ? sheetWith(after, rowsFor.each) : -1
    if (!rowsFor || counted < 0 || after.sheets[counted] === before.sheets[counted]) return next
    const missing = rowsFor.count * lastFilled(after, counted, rowsFor.each) - rows.length
    if (missing <= 0) return next
    const added = Array.from({length: missing}, () => blankRow(columns))
    return withSheet(next, index, {rows: [...rows, ...added]})
  }, after)

/** The number of the last row of a sheet that holds something in the column of a part; 0 without one. */
const lastFilled = (document: Document, sheet: number, part: Part) => {
  const col = columnWith(document, sheet, part)
  return document.sheets[sheet]!.rows.findLastIndex((row) => (row[col] ?? null) !== null) + 1
}
