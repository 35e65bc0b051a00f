import {
  columnWith,
  FIELD_PARTS,
  sheetWith,
  withSheet,
  type Content,
  type Document,
  type FieldEntry,
  type Part,
} from "./document"
import {blankRow, withRowsRemoved} from "./rows"

export type FieldKind = keyof typeof FIELD_PARTS
export type FieldContents = NonNullable<FieldEntry["row"]>

/**
 * The document with acts of the field page added: each once, whatever came before and in whatever order. A row that is taken
 * back goes, unless it was changed by hand; one that stands there already, as in a copy of the workbook, is not added again.
 */
export function withFieldEntries(document: Document, entries: readonly FieldEntry[]): Document {
  let next = document
  for (const entry of entries) next = withOne(next, entry)
  return next
}

function withOne(document: Document, entry: FieldEntry): Document {
  const log = document.field ?? []
  if (log.some(({id}) => id === entry.id)) return document
  const logged = {...document, field: [...log, entry]}
  if (entry.takesBack !== undefined) {
    const taken = log.find(({id}) => id === entry.takesBack)
    const isSecond = log.some(({takesBack}) => takesBack === entry.takesBack)
    return taken?.row && !isSecond ? withoutRow(logged, taken.row) : logged
  }
  if (!entry.row || isTakenBack(log, entry) || standsUnlogged(document, entry.row)) return logged
  return withRow(logged, entry.row)
}

const isTakenBack = (log: readonly FieldEntry[], {id}: FieldEntry) =>
  log.some(({takesBack}) => takesBack === id)

/** Which of its sheets a row of the field goes to; null where it is none. */
export const kindOf = (row: FieldContents): FieldKind | null =>
  (Object.keys(FIELD_PARTS) as FieldKind[]).find((kind) => row[FIELD_PARTS[kind][0]] !== undefined) ?? null

/** The sheet and the columns a row of the field goes to, or null where the workbook has none. */
function placeOf(document: Document, row: FieldContents) {
  const kind = kindOf(row)
  const sheet = kind ? sheetWith(document, FIELD_PARTS[kind][0]) : -1
  if (!kind || sheet < 0) return null
  const columns = FIELD_PARTS[kind].map((part): [number, Content] => [
    columnWith(document, sheet, part),
    row[part] ?? null,
  ])
  return {sheet, columns: columns.filter(([col]) => col >= 0)}
}

export const hasPlace = (document: Document, row: FieldContents) => placeOf(document, row) !== null

/** The rows that hold just what a row of the field holds. */
function rowsLike(document: Document, row: FieldContents): {sheet: number; rows: readonly number[]} {
  const place = placeOf(document, row)
  if (!place) return {sheet: -1, rows: []}
  const {sheet, columns} = place
  const rows = document.sheets[sheet]!.rows.flatMap((contents, at) =>
    columns.every(([col, content]) => (contents[col] ?? null) === content) ? [at] : [],
  )
  return {sheet, rows}
}

/** Whether more rows like it stand there than acts are known for. */
export function standsUnlogged(document: Document, row: FieldContents): boolean {
  const log = document.field ?? []
  const known = log.filter((one) => one.row && isSameRow(one.row, row) && !isTakenBack(log, one))
  return rowsLike(document, row).rows.length > known.length
}

export const isSameRow = (one: FieldContents, other: FieldContents) =>
  Object.values(FIELD_PARTS)
    .flat()
    .every((part) => one[part] === other[part])

function withRow(document: Document, row: FieldContents): Document {
  const place = placeOf(document, row)
  if (!place) return document
  const {columns, rows} = document.sheets[place.sheet]!
  const contents = blankRow(columns)
  for (const [col, content] of place.columns) if (columns[col]!.formula === undefined) contents[col] = content
  return withSheet(document, place.sheet, {rows: [...rows, contents]})
}

function withoutRow(document: Document, row: FieldContents): Document {
  const {sheet, rows} = rowsLike(document, row)
  const last = rows.at(-1)
  return last === undefined ? document : withRowsRemoved(document, sheet, last, 1)
}

/** The act of the field page that gave a row of a sheet, as long as the row holds what it gave; null where none did. */
export function fieldEntryOf(
  {field: log = [], sheets}: Document,
  sheet: number,
  row: number,
): FieldEntry | null {
  if (!log.length) return null
  const contents = sheets[sheet]?.rows[row]
  if (!contents) return null
  const held = new Map(sheets[sheet]!.columns.map(({part}, col) => [part, contents[col] ?? null]))
  const kind = (Object.keys(FIELD_PARTS) as FieldKind[]).find((one) => held.has(FIELD_PARTS[one][0]))
  if (!kind) return null
  const parts: readonly Part[] = FIELD_PARTS[kind]
  return (
    log.findLast(
      (entry) =>
        entry.row &&
        parts.every((part) => !held.has(part) || held.get(part) === (entry.row![part as never] ?? null)) &&
        !isTakenBack(log, entry),
    ) ?? null
  )
}
