import {keptInView, withSheet, type Column, type Document, type Sheet} from "./document"
import {extrasShifted} from "./extras"
import {pointingAt, withReferences} from "./references"
import {putIn, shifted, takenOut, type Shift} from "./shift"

/** The document with `count` new columns before column `before` of a sheet; every formula still points at what it did. */
export function withColumnsInserted(
  document: Document,
  sheet: number,
  before: number,
  count: number,
): Document {
  const moved = withColumnsShifted(document, sheet, putIn(before, count))
  const {columns, rows} = moved.sheets[sheet]!
  const blanks = Array.from({length: count}, () => null)
  return withSheet(moved, sheet, {
    columns: columns.toSpliced(before, 0, ...newColumns(columns, count)),
    // A row that ends before the new columns goes on ending there.
    rows: rows.map((row) => (row.length > before ? row.toSpliced(before, 0, ...blanks) : row)),
    ...extrasShifted(moved.sheets[sheet]!, "col", putIn(before, count)),
    ...(before < keptInView(moved.sheets[sheet]!) ? {keeps: keptInView(moved.sheets[sheet]!) + count} : {}),
  })
}

/** The document without `count` columns from `first`; formulas that pointed only at them say #REF!. */
export function withColumnsRemoved(
  document: Document,
  sheet: number,
  first: number,
  count: number,
): Document {
  const moved = withColumnsShifted(document, sheet, takenOut(first, count))
  const {columns, rows, keeps} = moved.sheets[sheet]!
  return withSheet(moved, sheet, {
    columns: columns.toSpliced(first, count),
    rows: rows.map((row) => (row.length > first ? row.toSpliced(first, count) : row)),
    ...extrasShifted(moved.sheets[sheet]!, "col", takenOut(first, count)),
    ...(keeps === undefined ? {} : {keeps: keeps - Math.max(0, Math.min(count, keeps - first))}),
  })
}

/** Typed columns beside others, each with a heading that no other has: "New column", "New column 2". */
export function newColumns(beside: readonly Column[], count: number): Column[] {
  const taken = new Set(beside.map(({heading}) => heading.toLowerCase()))
  const columns: Column[] = []
  for (let n = 1; columns.length < count; n++) {
    const heading = n === 1 ? "New column" : `New column ${n}`
    if (!taken.has(heading.toLowerCase())) columns.push({heading, kind: "typed"})
  }
  return columns
}

/** Why columns cannot be put in here, in a sentence, or null. */
export const insertingRefused = (sheet: Sheet, before: number): string | null =>
  sheet.names && before < NAMING
    ? `Columns A and B of ${sheet.name} hold the names and their values, so none can stand before or between them: choose a column further right`
    : null

/** Why columns cannot be taken out, in a sentence, or null. */
export function removingRefused(sheet: Sheet, first: number, count: number): string | null {
  if (sheet.names && first < NAMING)
    return `Columns A and B of ${sheet.name} hold the names and their values, so they have to stay: choose a column further right`
  return count < sheet.columns.length
    ? null
    : `${sheet.name} would have no column left, and a sheet needs one: take the whole sheet out`
}

/** The first columns of a sheet that names values: the name, and the value. */
const NAMING = 2

const withColumnsShifted = (document: Document, sheet: number, shift: Shift) =>
  withReferences(document, pointingAt(document, sheet, shifted("col", shift)))
