import {
  withSheet,
  type CellAddress,
  type Column,
  type Document,
  type Extra,
  type Format,
  type Note,
  type Sheet,
} from "./document"
import type {Shift} from "./shift"

/** What a cell carries anew beside its content; null takes it away, what is left out stays. */
export interface ExtraChange {
  readonly at: CellAddress
  readonly note?: Note | null
  readonly format?: Format | null
  readonly cases?: Extra["cases"] | null
  readonly compared?: true | null
  readonly act?: string | null
}

/** What a cell carries beside its content, or undefined. */
export const extraAt = ({sheets}: Document, {sheet, row, col}: CellAddress): Extra | undefined =>
  byPlace(sheets[sheet]?.extras)?.get(placeOf(row, col))

/** The column of a cell, with the cell's own format in it. */
export function columnAt(document: Document, at: CellAddress): Column | undefined {
  const column = document.sheets[at.sheet]?.columns[at.col]
  const format = extraAt(document, at)?.format
  return column && format !== undefined ? {...column, format} : column
}

/** The cells for which `of` gives something, in the order of sheets, rows and columns. */
export const cellsWith = <T>({sheets}: Document, of: (extra: Extra) => T | undefined) =>
  sheets.flatMap(({extras = []}, sheet) =>
    extras
      .flatMap((extra) => {
        const found = of(extra)
        return found === undefined ? [] : [{at: {sheet, row: extra.row, col: extra.col}, found}]
      })
      .toSorted((a, b) => a.at.row - b.at.row || a.at.col - b.at.col),
  )

/** The notes of a document. */
export const notesIn = (document: Document) => cellsWith(document, ({note}) => note)

/** The document with what single cells carry changed. */
export function withExtras(document: Document, changes: readonly ExtraChange[]): Document {
  let next = document
  for (const {at, ...change} of changes) {
    const {row, col, ...was} = extraAt(next, at) ?? at
    const {sheet: _, ...kept} = {...was, ...change} as Partial<CellAddress & ExtraChange>
    const carried = Object.fromEntries(
      Object.entries(kept).filter(([, value]) => value !== null && value !== undefined),
    )
    const others = (next.sheets[at.sheet]!.extras ?? []).filter((one) => one.row !== row || one.col !== col)
    const extras = Object.keys(carried).length ? [...others, {row, col, ...carried} as Extra] : others
    next = withSheet(next, at.sheet, listed(extras))
  }
  return next
}

/** What the cells of a sheet carry, after its rows ("row") or columns ("col") shifted; what stood on one that is gone goes. */
export function extrasShifted({extras}: Sheet, along: "row" | "col", {of}: Shift): Pick<Sheet, "extras"> {
  if (!extras) return {}
  return listed(
    extras.flatMap((extra) => {
      const to = of(extra[along])
      return to === null ? [] : [to === extra[along] ? extra : {...extra, [along]: to}]
    }),
  )
}

/** What the cells of a sheet carry, as the sheet has it: an empty list is not saved. */
export const listed = (extras: readonly Extra[]) =>
  ({extras: extras.length ? extras : undefined}) as Pick<Sheet, "extras">

const placeOf = (row: number, col: number) => `${row}:${col}`

const places = new WeakMap<object, ReadonlyMap<string, Extra>>()
function byPlace(extras: Sheet["extras"]): ReadonlyMap<string, Extra> | undefined {
  if (!extras) return undefined
  const held = places.get(extras)
  if (held) return held
  const made = new Map(extras.map((extra) => [placeOf(extra.row, extra.col), extra]))
  places.set(extras, made)
  return made
}
