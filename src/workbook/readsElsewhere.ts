import {piecesIn} from "./cells"
import {isSameCell, type Document} from "./document"
import {piecesOf, type Pieces} from "./formula"
import {pointingAt} from "./references"
import {shifted, type Shift} from "./shift"
import {placesAfter, withRowsMoved} from "./sorting"
import {namesIn} from "./names"

/** Where a formula stands; the total of a column has no row. */
export interface FormulaPlace {
  readonly sheet: number
  readonly row: number | null
  readonly col: number
}

/**
 * The formulas that would read other cells than they do once the rows of a sheet are in another order (see
 * `withRowsMoved`), by where they stand now: a range that is torn apart, a row that reads its neighbour or the row of
 * the same number elsewhere, a name that a twin would take. What rests on them is not among them.
 */
export function readsElsewhere(
  document: Document,
  sheet: number,
  order: readonly number[],
): readonly FormulaPlace[] {
  const next = withRowsMoved(document, sheet, order)
  const moved = placesAfter(order)
  const follow = pointingAt(document, sheet, shifted("row", moved))
  const otherwise = namesOtherwise(document, next, sheet, moved)
  const isKept = (was: Pieces, now: Pieces, on: number) =>
    was.every((piece, i) =>
      typeof piece === "string"
        ? typeof now[i] === "string" && !otherwise.has(piece.toLowerCase())
        : isSameRange(follow(piece, on), now[i]!),
    )
  const found: FormulaPlace[] = []
  for (const [on, {columns, rows}] of document.sheets.entries()) {
    const home = (row: number) => (on === sheet ? moved.of(row)! : row)
    for (const [row, contents] of rows.entries())
      for (const col of contents.keys()) {
        const was = piecesIn(document, {sheet: on, row, col})
        const now = was && piecesIn(next, {sheet: on, row: home(row), col})
        if (was && now && !isKept(was, now, on)) found.push({sheet: on, row, col})
      }
    for (const [col, {total}] of columns.entries()) {
      const now = next.sheets[on]!.columns[col]!.total
      if (total && now && !isKept(piecesOf(total), piecesOf(now), on)) found.push({sheet: on, row: null, col})
    }
  }
  return found
}

/** The names, in lower case, that would stand for another cell: where two rows have one name, the first counts. */
function namesOtherwise(
  document: Document,
  next: Document,
  sheet: number,
  moved: Shift,
): ReadonlySet<string> {
  const after = new Map(namesIn(next).map(({name, at}) => [name.toLowerCase(), at]))
  const otherwise = namesIn(document).filter(({name, at}) => {
    const row = at.sheet === sheet ? moved.of(at.row)! : at.row
    return !isSameCell(after.get(name.toLowerCase())!, {...at, row})
  })
  return new Set(otherwise.map(({name}) => name.toLowerCase()))
}

function isSameRange(a: Pieces[number], b: Pieces[number]): boolean {
  if (typeof a === "string" || typeof b === "string") return false
  const [one, other] = [a, b].map(({from, to}) => [from.row, to.row].sort((x, y) => (x ?? 0) - (y ?? 0)))
  return one![0] === other![0] && one![1] === other![1]
}
