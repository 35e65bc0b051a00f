import {COLUMN_FORMULA, type Column, type Content, type Document, type Sheet} from "./document"
import {movedDown, referenceOf, referenceText, tokens} from "./formula"

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
  const sheets = document.sheets.map((sheet, index) => {
    const home = (row: number) => (index === move.sheet ? move.row(row) : row)
    const rewrite = (formula: string) =>
      rewritten(formula, sheet.name, document.sheets[move.sheet]!.name, move)
    const columns = sheet.columns.map((column, col) => movedColumn(sheet, column, col, home, rewrite))
    const rows = sheet.rows.map((row, r) => {
      const next = row.map((content, col) => {
        if (typeof content !== "string" || !content.startsWith("=")) return content
        const {formula} = sheet.columns[col]!
        if (content !== COLUMN_FORMULA || formula === undefined) return rewrite(content)
        const stands = home(r)
        const now = rewrite(movedDown(formula, r))
        return stands === null || now === movedDown(columns[col]!.formula!, stands) ? COLUMN_FORMULA : now
      })
      return next.some((content, col) => content !== row[col]) ? next : row
    })
    const same = columns.every((column, col) => column === sheet.columns[col])
    return same && rows.every((row, r) => row === sheet.rows[r]) ? sheet : {...sheet, columns, rows}
  })
  return {...document, sheets}
}

/** The column with its formula as most of its following rows have it afterwards, and with its total rewritten. */
function movedColumn(
  {rows}: Sheet,
  column: Column,
  col: number,
  home: (row: number) => number | null,
  rewrite: (formula: string) => string,
): Column {
  const {formula, total} = column
  const next = formula === undefined ? undefined : (mostCommon(followingFormulas(formula)) ?? formula)
  const nextTotal = total === undefined ? undefined : rewrite(total)
  if (next === formula && nextTotal === total) return column
  return {
    ...column,
    ...(next === undefined ? {} : {formula: next}),
    ...(nextTotal === undefined ? {} : {total: nextTotal}),
  }

  /** The formula of each following row, as it would read in the first row; those that lost a cell are left out. */
  function followingFormulas(formula: string): readonly string[] {
    const follow = [...rows.keys()].filter((r) => rows[r]![col] === COLUMN_FORMULA && home(r) !== null)
    return (follow.length ? follow : [0])
      .map((r) => movedDown(rewrite(movedDown(formula, r)), -(home(r) ?? r)))
      .filter((now) => !now.includes("#REF!") || formula.includes("#REF!"))
  }
}

function mostCommon(texts: readonly string[]): string | null {
  const counts = new Map<string, number>()
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1)
  const most = Math.max(...counts.values())
  return texts.find((text) => counts.get(text) === most) ?? null
}

function rewritten(formula: string, ownSheet: string, changedSheet: string, move: Move): string {
  return tokens(formula)
    .map(({kind, text}) => {
      if (kind !== "reference") return text
      const reference = referenceOf(text)
      const {sheet, from, to} = reference
      const points = (sheet ?? ownSheet).toLowerCase() === changedSheet.toLowerCase()
      if (!points || from.row === null || to.row === null) return text
      const rows = from.row === to.row ? pair(move.row(from.row)) : rangeAfter(move, from.row, to.row)
      if (!rows) return "#REF!"
      if (rows[0] === from.row && rows[1] === to.row) return text
      return referenceText({...reference, from: {...from, row: rows[0]}, to: {...to, row: rows[1]}})
    })
    .join("")
}

/** A column formula such as "=SUM(B1:B$5)" is written upside down from its sixth row on. */
const rangeAfter = (move: Move, from: number, to: number) =>
  from < to ? move.range(from, to) : move.range(to, from)?.toReversed()

const pair = (row: number | null) => (row === null ? null : ([row, row] as const))
