import {
  columnWith,
  sheetWith,
  withSheet,
  type Content,
  type Document,
  type Extra,
  type FieldEntry,
  type Part,
  type Sheet,
} from "./document"
import {extraAt, listed} from "./extras"
import {FIELD_PARTS} from "./parts"
import {blankRow, withRowsRemoved} from "./rows"

export type FieldKind = keyof typeof FIELD_PARTS
export type FieldContents = NonNullable<FieldEntry["row"]>
/** Which of its sheets a row of the field goes to; null where it is none. */
export const kindOf = (row: FieldContents): FieldKind | null =>
  KINDS.find((kind) => row[FIELD_PARTS[kind][0]] !== undefined) ?? null

export const KINDS = Object.keys(FIELD_PARTS) as FieldKind[]

/** Whether the workbook has a column for all that a row of the field holds. */
export function hasPlace(document: Document, row: FieldContents): boolean {
  const kind = kindOf(row)
  const sheet = kind ? sheetWith(document, FIELD_PARTS[kind][0]) : -1
  return sheet >= 0 && Object.keys(row).every((part) => columnWith(document, sheet, part as Part) >= 0)
}

export const isSameRow = (one: FieldContents, other: FieldContents) => keyOf(one) === keyOf(other)

const ALL_PARTS = Object.values(FIELD_PARTS).flat()
export const keyOf = (row: FieldContents) => JSON.stringify(ALL_PARTS.map((part) => row[part] ?? null))

/** What a row of a sheet holds in the columns of the field; blanks are left out. */
export function contentsOf(document: Document, kind: FieldKind, sheet: number, row: number): FieldContents {
  const held = FIELD_PARTS[kind].map((part) => [
    part,
    document.sheets[sheet]!.rows[row]?.[columnWith(document, sheet, part)] ?? null,
  ])
  return Object.fromEntries(held.filter(([, content]) => content !== null)) as FieldContents
}

/** A row that stands on a sheet of the field, or is to be added to it. */
export interface Place {
  readonly kind: FieldKind
  /** Null for one that is to be added. */
  readonly row: number | null
  readonly contents: FieldContents
  readonly key: string
  act: string | null
}

/** The rows of the sheets that the field fills; changes are collected, and made at the end. */
export class FieldRows {
  readonly #document: Document
  readonly #kinds = new Map<FieldKind, OfKind>()

  constructor(document: Document) {
    this.#document = document
  }

  like = (row: FieldContents): readonly Place[] => [...(this.#of(kindOf(row)!).byKey.get(keyOf(row)) ?? [])]
  ofAct = (row: FieldContents, id: string) => this.#of(kindOf(row)!).byAct.get(id)

  add(row: FieldContents, act: string) {
    const place: Place = {kind: kindOf(row)!, row: null, contents: row, key: keyOf(row), act}
    const of = this.#of(place.kind)
    of.put(place)
    of.added.add(place)
  }

  give(place: Place, act: string | null) {
    const {byAct, given} = this.#of(place.kind)
    if (place.act !== null && byAct.get(place.act) === place) byAct.delete(place.act)
    if (act !== null) byAct.set(act, place)
    place.act = act
    given.add(place)
  }

  takeOut(place: Place) {
    const of = this.#of(place.kind)
    of.byKey.get(place.key)?.delete(place)
    if (place.act !== null && of.byAct.get(place.act) === place) of.byAct.delete(place.act)
    if (!of.added.delete(place)) of.out.push(place.row!)
  }

  changed(): Document {
    let next = this.#document
    for (const [kind, {sheet, added, given, out}] of this.#kinds) {
      const {columns, rows} = next.sheets[sheet]!
      const acts = new Map<number, string | null>()
      for (const {row, act} of given) if (row !== null) acts.set(row, act)
      const fresh = [...added].map(({contents, act}, i) => {
        acts.set(rows.length + i, act)
        const row: Content[] = blankRow(columns)
        for (const part of FIELD_PARTS[kind]) {
          const col = columnWith(next, sheet, part)
          if (col >= 0 && columns[col]!.formula === undefined) row[col] = contents[part] ?? null
        }
        return row
      })
      if (!fresh.length && !acts.size && !out.length) continue
      const key = columnWith(next, sheet, FIELD_PARTS[kind][0])
      next = withSheet(next, sheet, {
        rows: [...rows, ...fresh],
        ...withActs(next.sheets[sheet]!, key, acts),
      })
      for (const row of out.toSorted((a, b) => b - a)) next = withRowsRemoved(next, sheet, row, 1)
    }
    return next
  }

  #of(kind: FieldKind): OfKind {
    const of = this.#kinds.get(kind) ?? new OfKind(this.#document, kind)
    this.#kinds.set(kind, of)
    return of
  }
}

class OfKind {
  readonly sheet: number
  readonly byKey = new Map<string, Set<Place>>()
  readonly byAct = new Map<string, Place>()
  readonly added = new Set<Place>()
  readonly given = new Set<Place>()
  readonly out: number[] = []

  constructor(document: Document, kind: FieldKind) {
    this.sheet = sheetWith(document, FIELD_PARTS[kind][0])
    const col = columnWith(document, this.sheet, FIELD_PARTS[kind][0])
    for (const row of document.sheets[this.sheet]!.rows.keys()) {
      const contents = contentsOf(document, kind, this.sheet, row)
      const act = extraAt(document, {sheet: this.sheet, row, col})?.act ?? null
      this.put({kind, row, contents, key: keyOf(contents), act})
    }
  }

  put(place: Place) {
    const like = this.byKey.get(place.key) ?? new Set()
    this.byKey.set(place.key, like.add(place))
    if (place.act !== null) this.byAct.set(place.act, place)
  }
}

/** What the cells of a sheet carry, with the acts of some of its rows. */
function withActs(
  {extras = []}: Sheet,
  col: number,
  acts: ReadonlyMap<number, string | null>,
): Pick<Sheet, "extras"> {
  const isOwn = (extra: Extra) => extra.col === col && acts.has(extra.row)
  const own = new Map(extras.filter(isOwn).map((extra) => [extra.row, extra]))
  const marked = [...acts].flatMap(([row, act]): Extra[] => {
    const {act: _, ...rest} = own.get(row) ?? {row, col}
    if (act !== null) return [{...rest, act}]
    return Object.keys(rest).length > 2 ? [rest] : []
  })
  return listed([...extras.filter((extra) => !isOwn(extra)), ...marked])
}
