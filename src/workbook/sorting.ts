import {withSheet, type Document} from "./document"
import {extrasShifted} from "./extras"
import type {Reference} from "./formula"
import {followOn, pointingAt, withReferences, type Rewrite} from "./references"
import {followMost, pointingPast} from "./rows"
import {shifted, type Shift} from "./shift"
import {isFault, type Value} from "./value"

/** A column to sort by; the first of several counts most. */
export interface SortKey {
  readonly col: number
  readonly descending: boolean
}

/**
 * The order of rows sorted by their values: `order[i]` is the row that comes to row i. Numbers and dates stand before
 * words, then truth values, blanks and errors, whichever way is sorted; rows that are equal keep their order.
 */
export function sortOrder(values: readonly (readonly Value[])[], keys: readonly SortKey[]): number[] {
  const compare = (a: number, b: number): number => {
    for (const {col, descending} of keys) {
      const [one, other] = [values[a]![col] ?? null, values[b]![col] ?? null]
      const apart = rank(one) - rank(other)
      const within = apart === 0 ? compareAlike(one, other) * (descending ? -1 : 1) : 0
      if (apart !== 0 || within !== 0) return apart || within
    }
    return 0
  }
  return [...values.keys()].sort(compare)
}

/**
 * The document with the rows of a sheet in another order: `order[i]` is the row that comes to row i. A formula that
 * points at a cell follows it; a range follows where its rows stand together again, and keeps its place where they do
 * not. A row that follows the formula of its column follows it still: it reads what the formula says at its new place.
 */
export function withRowsMoved(document: Document, sheet: number, order: readonly number[]): Document {
  const {name, rows} = document.sheets[sheet]!
  if (order.length !== rows.length || new Set(order).size !== rows.length || order.some((row) => !rows[row]))
    throw new RangeError(`This is no order of the ${rows.length} rows of ${name}`)
  const shift = placesAfter(order)
  const {of, range} = shift
  const rewrite = shifted("row", {of, range: (from, to) => range(from, to) ?? [from, to]})
  const follow = followMost(document, (_, row) => row, pointingPast(document, sheet))
  const moved = withReferences(document, pointingAt(document, sheet, rewrite), (formula, rewrite, at) =>
    at.sheet === sheet ? followOn(formula, ofFixed(rewrite)) : follow(formula, rewrite, at),
  )
  return withSheet(moved, sheet, {
    rows: order.map((row) => moved.sheets[sheet]!.rows[row]!),
    ...extrasShifted(moved.sheets[sheet]!, "row", shift),
  })
}

/** Where rows stand once they are in that order, those below the last unmoved; null for a range that is torn apart. */
export function placesAfter(order: readonly number[]): Shift {
  const places: number[] = []
  for (const [place, row] of order.entries()) places[row] = place
  const of = (row: number) => places[row] ?? row
  const range = (from: number, to: number): readonly [number, number] | null => {
    const end = Math.min(to, Math.max(from, order.length - 1))
    let [first, last] = [of(to), of(to)]
    for (let row = from; row <= end; row++)
      [first, last] = [Math.min(first, of(row)), Math.max(last, of(row))]
    return last - first === to - from ? [first, last] : null
  }
  return {of, range}
}

/** In the formula of a column only what is the same for every row can follow: the others are the row's own, or its neighbours'. */
export const ofFixed =
  (rewrite: Rewrite): Rewrite =>
  (reference) =>
    isFixed(reference) ? rewrite(reference) : reference

export const isFixed = ({from, to}: Reference) =>
  (from.row === null || from.rowFixed) && (to.row === null || to.rowFixed)

const words = new Intl.Collator("en-GB", {numeric: true, sensitivity: "accent"})

function rank(value: Value): number {
  if (typeof value === "number") return 0
  if (value === null || value === "") return 3
  if (isFault(value)) return 4
  return typeof value === "string" ? 1 : 2
}

/** Of two values of one kind; blanks are equal, and so are errors. */
function compareAlike(a: Value, b: Value): number {
  if (typeof a === "string" && typeof b === "string") return words.compare(a, b)
  return typeof a === "object" || typeof b === "object" ? 0 : Number(a) - Number(b)
}
