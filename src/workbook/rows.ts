import {COLUMN_FORMULA, isFormula, type Column, type Content, type Document, type Sheet} from "./document"
import {formulaText, piecesDown, piecesOf, type Pieces, type Reference} from "./formula"

/** Where a row of the changed sheet stands afterwards, and where its references then point; null when it is gone. */
interface Move {
  readonly sheet: number
  readonly row: (was: number) => number | null
  /** The first and last row of a range afterwards, or null when nothing of it is left. */
  readonly range: (from: number, to: number) => readonly [number, number] | null
}

/** The document with `count` blank rows before row `before` of a sheet; every formula still points at what it did. */
export function withRowsInserted(document: Document, sheet: number, before: number, count: number): Document {
  const row = (was: number) => (was < before ? was : was + count)
  const moved = withMovedRows(document, {sheet, row, range: (from, to) => [row(from), row(to)]})
  const {columns, rows} = moved.sheets[sheet]!
  const added = Array.from({length: count}, () => blankRow(columns))
  return withSheet(moved, sheet, {rows: rows.toSpliced(before, 0, ...added)})
}

/** The document without `count` rows from `first`; formulas that pointed only at them say #REF!. */
export function withRowsRemoved(document: Document, sheet: number, first: number, count: number): Document {
  const end = first + count
  const row = (was: number) => (was < first ? was : was < end ? null : was - count)
  const range = (from: number, to: number): readonly [number, number] | null => {
    const a = row(from) ?? first
    const b = row(to) ?? first - 1
    return a <= b ? [a, b] : null
  }
  const kept = document.sheets[sheet]!.rows.toSpliced(first, count)
  return withSheet(withMovedRows(document, {sheet, row, range}), sheet, {}, (rows) =>
    rows.length === kept.length ? rows : rows.toSpliced(first, count),
  )
}

/** A row of a sheet with nothing in it but the formulas of its worked-out columns. */
export const blankRow = (columns: readonly Column[]): Content[] =>
  columns.map(({formula}) => (formula === undefined ? null : COLUMN_FORMULA))

/** The document with one sheet changed. */
export function withSheet(
  document: Document,
  index: number,
  change: Partial<Sheet>,
  rows: (rows: Sheet["rows"]) => Sheet["rows"] = (same) => same,
): Document {
  const sheet = {...document.sheets[index]!, ...change}
  return {...document, sheets: document.sheets.with(index, {...sheet, rows: rows(sheet.rows)})}
}

/** Rewrites every formula for rows that move, in place: the rows themselves are put in or taken out by the caller. */
function withMovedRows(document: Document, move: Move): Document {
  const changed = document.sheets[move.sheet]!.name.toLowerCase()
  const sheets = document.sheets.map((sheet, index) => {
    const points = (named: string | null) => (named ?? sheet.name).toLowerCase() === changed
    const rewrite = (pieces: Pieces): Pieces =>
      pieces.map((piece) => (typeof piece === "string" || !points(piece.sheet) ? piece : after(piece, move)))
    const home = (row: number) => (index === move.sheet ? move.row(row) : row)
    const columns = sheet.columns.map((column, col) => movedColumn(sheet, column, col, home, rewrite))
    const rows = sheet.rows.map((row, r) => {
      const next = row.map((content, col) => {
        if (!isFormula(content)) return content
        const {contents} = columns[col]!
        return content === COLUMN_FORMULA && contents ? contents(r) : rewrittenText(content, rewrite)
      })
      return next.some((content, col) => content !== row[col]) ? next : row
    })
    const same = columns.every(({column}, col) => column === sheet.columns[col])
    return same && rows.every((row, r) => row === sheet.rows[r])
      ? sheet
      : {...sheet, columns: columns.map(({column}) => column), rows}
  })
  return {...document, sheets}
}

type Rewrite = (pieces: Pieces) => Pieces

/**
 * The column with its formula as most of its following rows have it afterwards, and with its total rewritten;
 * and what such a row then holds: the column's formula still, or its own where it differs.
 */
function movedColumn(
  {rows}: Sheet,
  column: Column,
  col: number,
  home: (row: number) => number | null,
  rewrite: Rewrite,
): {readonly column: Column; readonly contents?: (row: number) => Content} {
  const {formula, total} = column
  const nextTotal = total === undefined ? {} : {total: rewrittenText(total, rewrite)}
  if (formula === undefined) return {column: total === nextTotal.total ? column : {...column, ...nextTotal}}

  const pieces = piecesOf(formula)
  const inRow = (row: number) => rewrite(piecesDown(pieces, row))
  // How the formula of a row that stays would read in the first row; equal where rows follow one formula.
  const inFirstRow = (row: number) => formulaText(piecesDown(inRow(row), -(home(row) ?? row)))
  const following = new Map<number, string>()
  for (const [r, row] of rows.entries())
    if (row[col] === COLUMN_FORMULA && home(r) !== null) following.set(r, inFirstRow(r))
  // One that lost a cell is no formula for new rows.
  const usable = [...(following.size ? following.values() : [inFirstRow(0)])].filter(
    (text) => !text.includes("#REF!") || formula.includes("#REF!"),
  )
  const spelt = formulaText(pieces)
  const most = mostCommon(usable, spelt)
  const next = most === null || most === spelt ? formula : most
  const same = next === formula && total === nextTotal.total
  return {
    column: same ? column : {...column, formula: next, ...nextTotal},
    contents: (row) => {
      const text = following.get(row)
      return text === undefined || text === most ? COLUMN_FORMULA : formulaText(inRow(row))
    },
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

/** The formula rewritten; as it was spelt when nothing in it changes. */
function rewrittenText(formula: string, rewrite: Rewrite): string {
  const pieces = piecesOf(formula)
  const next = rewrite(pieces)
  return next.every((piece, i) => piece === pieces[i]) ? formula : formulaText(next)
}

/** Where a reference to the changed sheet points afterwards; the very one when it does not change. */
function after(reference: Reference, move: Move): Reference | string {
  const {from, to} = reference
  if (from.row === null || to.row === null) return reference
  const rows = rangeAfter(move, from.row, to.row)
  if (!rows) return "#REF!"
  if (rows[0] === from.row && rows[1] === to.row) return reference
  return {...reference, from: {...from, row: rows[0]}, to: {...to, row: rows[1]}}
}

/** A column formula such as "=SUM(B1:B$5)" is written upside down from its sixth row on. */
const rangeAfter = (move: Move, from: number, to: number) =>
  from <= to ? move.range(from, to) : move.range(to, from)?.toReversed()
