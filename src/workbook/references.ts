import {COLUMN_FORMULA, isFormula, type Content, type Document} from "./document"
import {formulaText, piecesOf, type Pieces, type Reference} from "./formula"

/** What becomes of a reference: the very one where it does not change, "#REF!" where nothing of it is left. */
export type Rewrite = (reference: Reference) => Reference | "#REF!"

/** What becomes of a reference in a formula that stands on a sheet. */
export type Repoint = (reference: Reference, on: number) => ReturnType<Rewrite>

/** How the formula of a column reads afterwards, and what a row then holds that followed it. */
export interface Following {
  readonly formula: string
  readonly contents: (row: number) => Content
}
export type Follow = (formula: string, rewrite: Rewrite, at: {sheet: number; col: number}) => Following

/**
 * Rewrites every formula of a document, each in its place: what moves is put in, taken out or carried over by the
 * caller. What does not change stays the very same object.
 */
export function withReferences(document: Document, repoint: Repoint, follow: Follow = followOn): Document {
  const sheets = document.sheets.map((sheet, index) => {
    const rewrite: Rewrite = (reference) => repoint(reference, index)
    const columns = sheet.columns.map((column, col) => {
      const following =
        column.formula === undefined ? null : follow(column.formula, rewrite, {sheet: index, col})
      const total = column.total === undefined ? undefined : rewrittenText(column.total, rewrite)
      const isSame = (following?.formula ?? column.formula) === column.formula && total === column.total
      const next = {...column, ...(following && {formula: following.formula}), ...(total && {total})}
      return {column: isSame ? column : next, following}
    })
    const rows = sheet.rows.map((row, r) => {
      const next = row.map((content, col) => {
        if (!isFormula(content)) return content
        const following = columns[col]?.following
        return content === COLUMN_FORMULA && following
          ? following.contents(r)
          : rewrittenText(content, rewrite)
      })
      return next.some((content, col) => content !== row[col]) ? next : row
    })
    const isSame = columns.every(({column}, col) => column === sheet.columns[col])
    return isSame && rows.every((row, r) => row === sheet.rows[r])
      ? sheet
      : {...sheet, columns: columns.map(({column}) => column), rows}
  })
  return {...document, sheets}
}

/** The formula of a column rewritten as it stands, and followed by the same rows. */
export const followOn = (formula: string, rewrite: Rewrite): Following => ({
  formula: rewrittenText(formula, rewrite),
  contents: () => COLUMN_FORMULA,
})

/** Whether a reference in a formula that stands on a sheet points at another, or itself: it then need not name it. */
export function pointsAt({sheets}: Document, sheet: number) {
  const name = sheets[sheet]!.name.toLowerCase()
  return (reference: Reference, on: number) =>
    reference.sheet === null ? on === sheet : reference.sheet.toLowerCase() === name
}

/** Rewrites the references to one sheet alone. */
export function pointingAt(document: Document, sheet: number, rewrite: Rewrite): Repoint {
  const isMeant = pointsAt(document, sheet)
  return (reference, on) => (isMeant(reference, on) ? rewrite(reference) : reference)
}

export const rewritten = (pieces: Pieces, rewrite: Rewrite): Pieces =>
  pieces.map((piece) => (typeof piece === "string" ? piece : rewrite(piece)))

/** The formula rewritten; as it was spelt when nothing in it changes. */
export function rewrittenText(formula: string, rewrite: Rewrite): string {
  const pieces = piecesOf(formula)
  const next = rewritten(pieces, rewrite)
  return next.every((piece, i) => piece === pieces[i]) ? formula : formulaText(next)
}
