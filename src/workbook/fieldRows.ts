import {
  columnWith,
  FIELD_PARTS,
  sheetWith,
  withSheet,
  type Column,
  type Content,
  type Document,
  type FieldEntry,
  type Part,
} from "./document"
import {blankRow, withRowsRemoved} from "./rows"

export type FieldKind = keyof typeof FIELD_PARTS
export type FieldContents = NonNullable<FieldEntry["row"]>

/** What became of an act of the field when it came to a workbook. */
export type Landing =
  | "added"
  /** A row like it stood there already, typed or in a copy, and is taken for it. */
  | "stood"
  /** It was taken back before it came. */
  | "taken back"
  /** It takes back a row, which is gone now. */
  | "taken out"
  /** It takes back a row that was changed by hand since, or stood there before it: that stays. */
  | "stays"
  /** It takes back what has not come yet. */
  | "to come"
  /** It is known, or has no place here. */
  | "nothing"

export interface Landed {
  readonly document: Document
  /** One for each act. */
  readonly landings: readonly Landing[]
}

/** The document with acts of the field page added: each once, whatever came before and in whatever order. */
export const withFieldEntries = (document: Document, entries: readonly FieldEntry[]): Document =>
  landed(document, entries).document

/**
 * The same, with what became of each. Rows and acts are matched by what they hold: as many rows of the same contents stand
 * there as acts with them are known and not taken back, unless a row was changed, taken out or typed by hand.
 */
export function landed(document: Document, entries: readonly FieldEntry[]): Landed {
  const log = [...(document.field ?? [])]
  const known = new Map(log.map((one) => [one.id, one]))
  const takenBack = new Set(log.flatMap(({takesBack}) => takesBack ?? []))
  const live = new Map<string, number>()
  const count = (row: FieldContents, by: number) => live.set(keyOf(row), (live.get(keyOf(row)) ?? 0) + by)
  for (const {id, row} of log) if (row && !takenBack.has(id)) count(row, 1)
  const sheets = new SheetRows(document)

  const land = (entry: FieldEntry): Landing => {
    if (known.has(entry.id)) return "nothing"
    if (entry.row && !hasPlace(document, entry.row)) return "nothing"
    const keep = (kept: FieldEntry) => {
      known.set(kept.id, kept)
      log.push(kept)
    }
    const {takesBack, row} = entry
    if (takesBack !== undefined) {
      keep(entry)
      const isSecond = takenBack.has(takesBack)
      takenBack.add(takesBack)
      const taken = known.get(takesBack)
      if (!taken?.row || isSecond) return isSecond ? "nothing" : "to come"
      count(taken.row, -1)
      // Where no more rows are like it than other acts gave, its own was changed or taken out by hand.
      const others = live.get(keyOf(taken.row)) ?? 0
      if (taken.stood || sheets.countLike(taken.row) <= others) return "stays"
      sheets.takeOut(taken.row)
      return "taken out"
    }
    if (!row || takenBack.has(entry.id)) {
      keep(entry)
      return row ? "taken back" : "nothing"
    }
    const stood = sheets.countLike(row) > (live.get(keyOf(row)) ?? 0)
    keep(stood ? {...entry, stood} : entry)
    count(row, 1)
    if (stood) return "stood"
    sheets.add(row)
    return "added"
  }

  const landings = entries.map(land)
  if (log.length === (document.field ?? []).length) return {document, landings}
  return {document: {...sheets.changed(), field: log}, landings}
}

/** Which of its sheets a row of the field goes to; null where it is none. */
export const kindOf = (row: FieldContents): FieldKind | null =>
  (Object.keys(FIELD_PARTS) as FieldKind[]).find((kind) => row[FIELD_PARTS[kind][0]] !== undefined) ?? null

/** Whether the workbook has a column for all that a row of the field holds. */
export function hasPlace(document: Document, row: FieldContents): boolean {
  const kind = kindOf(row)
  const sheet = kind ? sheetWith(document, FIELD_PARTS[kind][0]) : -1
  return sheet >= 0 && Object.keys(row).every((part) => columnWith(document, sheet, part as Part) >= 0)
}

export const isSameRow = (one: FieldContents, other: FieldContents) => keyOf(one) === keyOf(other)

const ALL_PARTS = Object.values(FIELD_PARTS).flat()
const keyOf = (row: FieldContents) => JSON.stringify(ALL_PARTS.map((part) => row[part] ?? null))

/** The rows of the sheets that the field fills, by what they hold; changes are collected, and made at the end. */
class SheetRows {
  readonly #document: Document
  /** Of each kind, the rows that stand there and those to be added, by the keys of their contents. */
  readonly #places = new Map<FieldKind, Map<string, number[]>>()
  readonly #added = new Map<FieldKind, (FieldContents | null)[]>()
  readonly #out = new Map<FieldKind, number[]>()

  constructor(document: Document) {
    this.#document = document
  }

  countLike = (row: FieldContents) => this.#like(row).length

  add(row: FieldContents) {
    const kind = kindOf(row)!
    const added = this.#added.get(kind) ?? []
    this.#added.set(kind, added)
    this.#like(row).push(this.#rowsOf(kind).length + added.length)
    added.push(row)
  }

  /** Takes out the last row like it. */
  takeOut(row: FieldContents) {
    const kind = kindOf(row)!
    const place = this.#like(row).pop()!
    const standing = this.#rowsOf(kind).length
    if (place >= standing) this.#added.get(kind)![place - standing] = null
    else this.#out.set(kind, [...(this.#out.get(kind) ?? []), place])
  }

  changed(): Document {
    let next = this.#document
    for (const [kind, added] of this.#added) {
      const sheet = this.#sheetOf(kind)
      const {columns, rows} = next.sheets[sheet]!
      const fresh = added.flatMap((row) => (row ? [this.#contents(kind, columns, row)] : []))
      next = withSheet(next, sheet, {rows: [...rows, ...fresh]})
    }
    for (const [kind, places] of this.#out)
      for (const place of places.toSorted((a, b) => b - a))
        next = withRowsRemoved(next, this.#sheetOf(kind), place, 1)
    return next
  }

  #contents(kind: FieldKind, columns: readonly Column[], row: FieldContents): Content[] {
    const contents = blankRow(columns)
    for (const part of FIELD_PARTS[kind]) {
      const col = columnWith(this.#document, this.#sheetOf(kind), part)
      if (col >= 0 && columns[col]!.formula === undefined) contents[col] = row[part] ?? null
    }
    return contents
  }

  #sheetOf = (kind: FieldKind) => sheetWith(this.#document, FIELD_PARTS[kind][0])
  #rowsOf = (kind: FieldKind) => this.#document.sheets[this.#sheetOf(kind)]!.rows

  /** Where the rows like it are; what is put in or taken out here is so for the next question. */
  #like(row: FieldContents): number[] {
    const kind = kindOf(row)!
    const places = this.#places.get(kind) ?? this.#read(kind)
    this.#places.set(kind, places)
    const key = this.#key(kind, (part) => row[part] ?? null)
    const found = places.get(key) ?? []
    places.set(key, found)
    return found
  }

  #read(kind: FieldKind): Map<string, number[]> {
    const places = new Map<string, number[]>()
    const columns = new Map(
      FIELD_PARTS[kind].map((part) => [part, columnWith(this.#document, this.#sheetOf(kind), part)]),
    )
    for (const [place, contents] of this.#rowsOf(kind).entries()) {
      const key = this.#key(kind, (part) => contents[columns.get(part as never)!] ?? null)
      const found = places.get(key)
      if (found) found.push(place)
      else places.set(key, [place])
    }
    return places
  }

  #key = (kind: FieldKind, of: (part: keyof FieldContents) => Content) =>
    JSON.stringify(FIELD_PARTS[kind].map((part) => of(part)))
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
        !log.some(({takesBack}) => takesBack === entry.id),
    ) ?? null
  )
}
