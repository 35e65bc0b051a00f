import {CellMap} from "./cellMap"
import {withSheetContents} from "./contents"
import {isFormula, sheetNamed, type CellAddress, type Content, type Document} from "./document"
import type {Entry} from "./edit"
import {extraAt, withExtras, type ExtraChange} from "./extras"
import type {Corner, Reference} from "./formula"
import {followOn, rewrittenText, withReferences, type Follow, type Repoint} from "./references"
import {followMost} from "./rows"
import {isFixed, ofFixed} from "./sorting"

/** A cell that comes to another place, and what it holds there; a formula as it stands now, whose references are seen to. */
export interface CellMove {
  readonly from: CellAddress
  readonly to: CellAddress
  readonly content: Content
}

/**
 * The document with cells of one sheet moved to other places, with what they carry beside their contents. What points at
 * a cell, or at a range that stays together, follows, whole columns and rows apart; what pointed only at cells that are
 * written over says #REF!, unless they were blank. A moved formula goes on pointing at what it did.
 *
 * A row that follows the formula of its column reads its own row: where cells come to other rows it reads what stands there
 * then, where they stay in their rows it follows them.
 */
export function withCellsMoved(document: Document, moves: readonly CellMove[]): Document {
  const repoint = repointing(document, moves)
  const followed = withReferences(document, repoint, following(document, moves))
  const left = moves.filter(({from}) => from.row < document.sheets[from.sheet]!.rows.length)
  const emptied = withSheetContents(
    followed,
    left.map(({from}): Entry => ({at: from, content: null})),
  )
  const landed = moves.flatMap((move): Entry[] => {
    const {to, content} = move
    if (content === null && to.row >= document.sheets[to.sheet]!.rows.length) return []
    return [{at: to, content: isFormula(content) ? carried(document, move, repoint) : content}]
  })
  return withExtras(withSheetContents(emptied, landed), extrasMoved(document, moves))
}

/** What a moved formula says at its new place. */
function carried({sheets}: Document, {from, to, content}: CellMove, repoint: Repoint): string {
  const home = sheets[from.sheet]!.name
  return rewrittenText(content as string, (reference) => {
    const next = repoint(reference, from.sheet)
    if (next === "#REF!" || from.sheet === to.sheet || reference.sheet !== null) return next
    return {...next, sheet: next === reference ? home : null}
  })
}

function repointing({sheets}: Document, moves: readonly CellMove[]): Repoint {
  const [homes, writtenOver] = [new CellMap<CellAddress>(), new CellMap<{readonly isBlank: boolean}>()]
  for (const {from, to} of moves) homes.set(from, to)
  for (const {to} of moves)
    if (!homes.get(to))
      writtenOver.set(to, {isBlank: (sheets[to.sheet]!.rows[to.row]?.[to.col] ?? null) === null})

  return (reference, on) => {
    const sheet = reference.sheet === null ? on : sheetNamed(sheets, reference.sheet)
    const first = firstCell(reference, sheet)
    const home = first && homes.get(first)
    if (home) {
      const [down, right] = [home.row - first.row, home.col - first.col]
      const isTogether = areAll(cellsIn(reference, sheet), (one) => {
        const to = homes.get(one)
        return to?.row === one.row + down && to.col === one.col + right
      })
      const step = (corner: Corner) => ({...corner, row: corner.row! + down, col: corner.col! + right})
      const [from, to] = [reference.from, reference.to].map(step) as [Corner, Corner]
      const name = home.sheet === sheet ? reference.sheet : sheets[home.sheet]!.name
      return isTogether ? {...reference, sheet: name, from, to} : reference
    }
    if (!first || !writtenOver.get(first)) return reference
    const isGone =
      areAll(cellsIn(reference, sheet), (one) => writtenOver.get(one) !== undefined) &&
      !areAll(cellsIn(reference, sheet), (one) => writtenOver.get(one)!.isBlank)
    return isGone ? "#REF!" : reference
  }
}

/** The cell at the upper left of what a reference covers; null for whole columns and rows. */
function firstCell({from, to}: Reference, sheet: number): CellAddress | null {
  if (from.row === null || from.col === null || to.row === null || to.col === null) return null
  return {sheet, row: Math.min(from.row, to.row), col: Math.min(from.col, to.col)}
}

function* cellsIn({from, to}: Reference, sheet: number): Generator<CellAddress> {
  const [rows, cols] = [[from.row!, to.row!] as const, [from.col!, to.col!] as const]
  for (let row = Math.min(...rows); row <= Math.max(...rows); row++)
    for (let col = Math.min(...cols); col <= Math.max(...cols); col++) yield {sheet, row, col}
}

function areAll<T>(all: Iterable<T>, test: (one: T) => boolean): boolean {
  for (const one of all) if (!test(one)) return false
  return true
}

function following(document: Document, moves: readonly CellMove[]): Follow {
  const isInRows = moves.every(({from, to}) => from.sheet !== to.sheet || from.row === to.row)
  if (!isInRows) return (formula, rewrite) => followOn(formula, ofFixed(rewrite))
  const follow = followMost(document, (_, row) => row)
  return (formula, rewrite, at) =>
    follow(
      formula,
      (reference) => {
        const next = rewrite(reference)
        return next === "#REF!" && !isFixed(reference) ? reference : next // another content of the row it reads
      },
      at,
    )
}

/** What cells carry goes with them; what one carries that is written over stays where nothing of the kind comes. */
function extrasMoved(document: Document, moves: readonly CellMove[]): ExtraChange[] {
  const carrying = moves.filter(({from}) => extraAt(document, from))
  const nothing = {note: null, format: null, cases: null, compared: null, act: null}
  return [
    ...carrying.map(({from}) => ({at: from, ...nothing})),
    ...carrying.map(({from, to}) => {
      const {row: _, col: __, ...carried} = extraAt(document, from)!
      return {at: to, ...carried} as ExtraChange
    }),
  ]
}
