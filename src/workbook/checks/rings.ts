import {piecesIn} from "../cells"
import {sheetNamed, type CellAddress} from "../document"
import {isFault} from "../value"
import {cellsOfSheets, keyOf, type Checked} from "./checked"
import type {Finding} from "./finding"

/** Formulas that rest on themselves, each ring told once by its shortest way round. */
export function rings(checked: Checked): Finding[] {
  const {document, workbook, words} = checked
  const caught = [...cellsOfSheets(document)]
    .map(({at}) => at)
    .filter((at) => {
      const value = workbook.valueAt(at)
      return isFault(value) && value.code === "#CYCLE!"
    })
  const reads = new Map(caught.map((at) => [keyOf(at), readsAmong(checked, at, caught)]))
  const told = new Set<string>()
  const found: Finding[] = []
  for (const at of caught) {
    if (told.has(keyOf(at))) continue
    const ring = shortestRing(at, reads)
    if (!ring) continue
    for (const one of together(at, caught, reads)) told.add(one)
    const names = [...ring, at].map(words.name)
    const way = names.length > MOST_NAMED ? [...names.slice(0, MOST_NAMED - 1), "…", names.at(-1)!] : names
    found.push({
      rule: "ring",
      cells: [at, ...ring.slice(1)],
      sentence: `Goes round in a ring: ${way.join(" → ")}`,
    })
  }
  return found
}

const MOST_NAMED = 8 // chosen, so that a ring takes two or three lines

type Reads = ReadonlyMap<string, readonly CellAddress[]>

/** Those of some cells that a formula reads, within its ranges and by its names. */
function readsAmong(
  {document, names}: Checked,
  at: CellAddress,
  cells: readonly CellAddress[],
): CellAddress[] {
  const pieces = piecesIn(document, at) ?? []
  return cells.filter((cell) =>
    pieces.some((piece) => {
      if (typeof piece === "string") {
        const named = names.get(piece.toLowerCase())?.at
        return named !== undefined && keyOf(named) === keyOf(cell)
      }
      const sheet = piece.sheet === null ? at.sheet : sheetNamed(document.sheets, piece.sheet)
      return (
        sheet === cell.sheet &&
        lies(cell.row, piece.from.row, piece.to.row) &&
        lies(cell.col, piece.from.col, piece.to.col)
      )
    }),
  )
}

const lies = (place: number, from: number | null, to: number | null) =>
  from === null || to === null || (place >= Math.min(from, to) && place <= Math.max(from, to))

/** The shortest way from a cell back to itself, without its end, or null. */
function shortestRing(start: CellAddress, reads: Reads): readonly CellAddress[] | null {
  const ways: (readonly CellAddress[])[] = [[start]]
  const seen = new Set<string>()
  for (const way of ways)
    for (const next of reads.get(keyOf(way.at(-1)!)) ?? []) {
      if (keyOf(next) === keyOf(start)) return way
      if (seen.has(keyOf(next))) continue
      seen.add(keyOf(next))
      ways.push([...way, next])
    }
  return null
}

/** The cells that both rest on this one and are rested on by it. */
function together(at: CellAddress, caught: readonly CellAddress[], reads: Reads): string[] {
  const behind = reached(keyOf(at), (key) => (reads.get(key) ?? []).map(keyOf))
  const users = new Map<string, string[]>()
  for (const user of caught)
    for (const read of reads.get(keyOf(user))!)
      users.set(keyOf(read), [...(users.get(keyOf(read)) ?? []), keyOf(user)])
  const before = reached(keyOf(at), (key) => users.get(key) ?? [])
  return [...behind].filter((key) => before.has(key))
}

function reached(start: string, nextOf: (key: string) => readonly string[]): Set<string> {
  const seen = new Set([start])
  for (const key of seen) for (const next of nextOf(key)) seen.add(next) // a set goes on with what is added
  return seen
}
