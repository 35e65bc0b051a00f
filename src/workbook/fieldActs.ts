import {columnWith, sheetWith, type Document, type FieldEntry} from "./document"
import {extraAt} from "./extras"
import {contentsOf, FieldRows, hasPlace, isSameRow, keyOf, KINDS, type FieldContents} from "./fieldRows"
import {FIELD_PARTS} from "./parts"

/** Which act of the field it is, on what device and when it was entered. */
export type FieldMark = Pick<FieldEntry, "id" | "device" | "entered">

/** An id that no other act has, on whatever device: 128 bits by chance. */
export const newId = () => hexadecimal(16)

/** So many bytes by chance, in hexadecimal digits. */
export const hexadecimal = (bytes: number) =>
  [...crypto.getRandomValues(new Uint8Array(bytes))].map((one) => one.toString(16).padStart(2, "0")).join("")

/** What became of an act of the field when it came to a workbook. */
export type Landing =
  | "added"
  /** A row like it stood there already, typed or in a copy, and is taken for it. */
  | "stood"
  /** It was taken back before it came. */
  | "taken back"
  /** It takes back a row, which is gone now. */
  | "taken out"
  /** It takes back a row that was changed or taken out by hand since, or stood there before it. */
  | "stays"
  /** It takes back what has not come yet. */
  | "to come"
  /** It is known, or has no place here. */
  | "nothing"

/**
 * The document with acts of the field added, and what became of each: each once, whatever came before. The row of an act
 * carries its id, through sorting and editing, so that it is that row which goes when the act is taken back. An act that was
 * entered elsewhere takes a row that stands there, holds the same and is no other act's, for its own: so the same rows come
 * out in whatever order acts arrive.
 */
export function landed(
  document: Document,
  entries: readonly FieldEntry[],
  from: "here" | "elsewhere",
): {readonly document: Document; readonly landings: readonly Landing[]} {
  const log = new Map((document.field ?? []).map((one) => [one.id, one]))
  const known = log.size
  const takenBack = new Set([...log.values()].flatMap(({takesBack}) => takesBack ?? []))
  const rows = new FieldRows(document)

  const takeBack = (id: string): Landing => {
    takenBack.add(id)
    const taken = log.get(id)
    if (!taken?.row) return "to come"
    const place = rows.ofAct(taken.row, id)
    if (!place || place.key !== keyOf(taken.row)) return "stays"
    if (!taken.stood) {
      rows.takeOut(place)
      return "taken out"
    }
    // What stood there stays; another act that holds the same would have been taken for it, had this one not come.
    const other = rows
      .like(taken.row)
      .find(({act}) => act !== null && act !== id && log.get(act)?.stood === undefined)
    rows.give(place, other?.act ?? null)
    if (!other) return "stays"
    log.set(other.act!, {...log.get(other.act!)!, stood: true})
    rows.takeOut(other)
    return "taken out"
  }

  const landings = entries.map((entry): Landing => {
    const {id, takesBack, row} = entry
    if (log.has(id) || (row && !hasPlace(document, row))) return "nothing"
    const act: FieldEntry = from === "here" ? entry : {...entry, brought: true}
    log.set(id, act)
    if (takesBack !== undefined) return takeBack(takesBack)
    if (!row) return "nothing"
    if (takenBack.has(id)) return "taken back"
    const like = from === "here" ? undefined : rows.like(row).find(({act}) => act === null)
    if (!like) {
      rows.add(row, id)
      return "added"
    }
    rows.give(like, id)
    log.set(id, {...act, stood: true})
    return "stood"
  })
  if (log.size === known) return {document, landings}
  return {document: {...rows.changed(), field: [...log.values()]}, landings}
}

/**
 * An earlier or later document with all acts that were entered here until now: they may have left for another device, so
 * undoing one is an act of its own. What was brought from elsewhere comes and goes with the document. `mark` makes new marks.
 */
export function withActsKept(shown: Document, next: Document, mark: () => FieldMark): Document {
  const log = shown.field ?? []
  const there = new Set((next.field ?? []).map(({id}) => id))
  const undone = log.filter(({id, brought}) => !brought && !there.has(id))
  if (!undone.length) return next
  const takenBack = new Set(log.flatMap(({takesBack}) => takesBack ?? []))
  const rows = new FieldRows(next)
  const acts = undone.flatMap(({id, row, takesBack}): FieldEntry[] => {
    if (row) return takenBack.has(id) ? [] : [{...mark(), takesBack: id}]
    const back = log.find((one) => one.id === takesBack)?.row
    const place = back && hasPlace(next, back) ? rows.ofAct(back, takesBack!) : undefined
    if (!back || !place) return []
    const again = {...mark(), row: back}
    rows.give(place, again.id)
    return [again]
  })
  return {...rows.changed(), field: [...(next.field ?? []), ...undone, ...acts]}
}

/** Chosen: a shift of work; what was entered before is mended on its sheet. */
const TAKEN_BACK_WITHIN = 12 * 3_600_000 // ms

/**
 * What was entered here last by a moment, in ISO form, and can be taken back: it is no older than a shift, and its row stands
 * as it was entered. Null where nothing can. Once it is taken back, what was entered before it is the last.
 */
export function lastEntered(
  document: Document,
  moment: string,
): (FieldEntry & {readonly row: FieldContents}) | null {
  const log = document.field ?? []
  const takenBack = new Set(log.flatMap(({takesBack}) => takesBack ?? []))
  const last = log.findLast(({id, row, brought}) => row && !brought && !takenBack.has(id))
  if (!last?.row || Date.parse(moment) - Date.parse(last.entered) > TAKEN_BACK_WITHIN) return null
  const {id, row} = last
  const stands = hasPlace(document, row) && new FieldRows(document).ofAct(row, id)?.key === keyOf(row)
  return stands ? {...last, row} : null
}

/** The act of the field that gave a row of a sheet, and whether the row was changed since; null where none did. */
export function actOf(
  document: Document,
  sheet: number,
  row: number,
): {readonly entry: FieldEntry; readonly isChanged: boolean} | null {
  const kind = KINDS.find((one) => sheetWith(document, FIELD_PARTS[one][0]) === sheet)
  if (!kind) return null
  const id = extraAt(document, {sheet, row, col: columnWith(document, sheet, FIELD_PARTS[kind][0])})?.act
  const entry = id === undefined ? undefined : document.field?.find((one) => one.id === id)
  if (!entry?.row) return null
  return {entry, isChanged: !isSameRow(contentsOf(document, kind, sheet, row), entry.row)}
}
