import {COLUMN_FORMULA, withSheet, type Column, type Content, type Document} from "./document"
import {extrasShifted} from "./extras"
import {formulaText, piecesDown, piecesOf, type Reference} from "./formula"
import {pointingAt, pointsAt, rewritten, withReferences, type Follow} from "./references"
import {putIn, shifted, takenOut, type Shift} from "./shift"

/** The document with `count` blank rows before row `before` of a sheet; every formula still points at what it did. */
export function withRowsInserted(document: Document, sheet: number, before: number, count: number): Document {
  const moved = withRowsShifted(document, sheet, putIn(before, count))
  const {columns, rows} = moved.sheets[sheet]!
  const added = Array.from({length: count}, () => blankRow(columns))
  return withSheet(moved, sheet, {
    rows: rows.toSpliced(before, 0, ...added),
    ...extrasShifted(moved.sheets[sheet]!, "row", putIn(before, count)),
  })
}

/** The document without `count` rows from `first`; formulas that pointed only at them say #REF!. */
export function withRowsRemoved(document: Document, sheet: number, first: number, count: number): Document {
  const moved = withRowsShifted(document, sheet, takenOut(first, count))
  return withSheet(moved, sheet, {
    rows: moved.sheets[sheet]!.rows.toSpliced(first, count),
    ...extrasShifted(moved.sheets[sheet]!, "row", takenOut(first, count)),
  })
}

/** A row of a sheet with nothing in it but the formulas of its worked-out columns. */
export const blankRow = (columns: readonly Column[]): Content[] =>
  columns.map(({formula}) => (formula === undefined ? null : COLUMN_FORMULA))

const withRowsShifted = (document: Document, sheet: number, shift: Shift) =>
  withReferences(
    document,
    pointingAt(document, sheet, shifted("row", shift)),
    followMost(document, (on, row) => (on === sheet ? shift.of(row) : row), pointingPast(document, sheet)),
  )

/** Whether a reference on a sheet reads the same in every row of a column, whatever rows move. */
type IsTheSame = (reference: Reference, on: number) => boolean

const pointsAtNoRow: IsTheSame = ({from, to}) => from.row === null && to.row === null

/** Where the rows of one sheet move, a reference past it, or from there to its own row, reads the same too. */
export function pointingPast(document: Document, moving: number): IsTheSame {
  const isAtMoving = pointsAt(document, moving)
  const isAtOwnRow = ({from, to}: Reference) => [from, to].every(({row, rowFixed}) => row === 0 && !rowFixed)
  return (reference, on) => {
    if (pointsAtNoRow(reference, on)) return true
    return on === moving ? isAtMoving(reference, on) && isAtOwnRow(reference) : !isAtMoving(reference, on)
  }
}

/**
 * The column's formula as most of its following rows have it afterwards; a row follows it still, or holds its own
 * where that differs. `home` says where a row of a sheet stands afterwards, null when it is gone.
 */
export function followMost(
  document: Document,
  home: (sheet: number, row: number) => number | null,
  isTheSame = pointsAtNoRow,
): Follow {
  return (formula, rewrite, {sheet, col}) => {
    const pieces = piecesOf(formula)
    if (pieces.every((piece) => typeof piece === "string" || isTheSame(piece, sheet)))
      return {formula, contents: () => COLUMN_FORMULA}
    const inRow = (row: number) => rewritten(piecesDown(pieces, row), rewrite)
    // How the formula of a row that stays would read in the first row; equal where rows follow one formula.
    const inFirstRow = (row: number) => formulaText(piecesDown(inRow(row), -(home(sheet, row) ?? row)))
    const following = new Map<number, string>()
    for (const [r, row] of document.sheets[sheet]!.rows.entries())
      if (row[col] === COLUMN_FORMULA && home(sheet, r) !== null) following.set(r, inFirstRow(r))
    // One that lost a cell is no formula for new rows.
    const usable = [...(following.size ? following.values() : [inFirstRow(0)])].filter(
      (text) => !text.includes("#REF!") || formula.includes("#REF!"),
    )
    const spelt = formulaText(pieces)
    const most = mostCommon(usable, spelt)
    return {
      formula: most === null || most === spelt ? formula : most,
      contents: (row) => {
        const text = following.get(row)
        return text === undefined || text === most ? COLUMN_FORMULA : formulaText(inRow(row))
      },
    }
  }
}

/** The text that occurs most often; `first` where another is as common. Null when there is none. */
function mostCommon(texts: readonly string[], first: string): string | null {
  const counts = new Map([[first, 0]])
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1)
  let [most, times]: [string | null, number] = [null, 0]
  for (const [text, count] of counts) if (count > times) [most, times] = [text, count]
  return most
}
