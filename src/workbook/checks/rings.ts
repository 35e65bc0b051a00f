import {piecesIn} from "../cells"
import {sheetNamed, type CellAddress} from "../document"
import {keyOf, type Checked} from "./checked"
import type {Finding} from "./finding"

/** Formulas that rest on themselves, each ring told once by its shortest way round. */
export function rings(checked: Checked): Finding[] {
  const {faults, words} = checked
  const caught = faults.flatMap(({at, fault}) => (fault.code === "#CYCLE!" ? [at] : []))
  const columns = byColumn(caught)
  const reads: Links = new Map(caught.map((at) => [keyOf(at), readsAmong(checked, at, columns).map(keyOf)]))
  return knotsIn(reads).map((knot): Finding => {
    const cells = caught.filter((at) => knot.has(keyOf(at)))
    const ring = shortestRing(keyOf(cells[0]!), knot, reads)
    const [first, ...others] = ring.map((key) => cells.find((at) => keyOf(at) === key)!)
    const names = [first!, ...others, first!].map(words.name)
    const way = names.length > MOST_NAMED ? [...names.slice(0, MOST_NAMED - 1), "…", names.at(-1)!] : names
    return {
      rule: "ring",
      cells: [first!, ...others],
      sentence: `Goes round in a ring: ${way.join(" → ")}`,
    }
  })
}

const MOST_NAMED = 8 // chosen, so that a ring takes two or three lines

/** Cells by their column, since formulas read columns or parts of them. */
type ByColumn = ReadonlyMap<string, readonly CellAddress[]>

function byColumn(cells: readonly CellAddress[]): ByColumn {
  const columns = new Map<string, CellAddress[]>()
  for (const cell of cells) {
    const column = `${cell.sheet}:${cell.col}`
    if (!columns.get(column)?.push(cell)) columns.set(column, [cell])
  }
  return columns
}

/** Those of some cells that a formula reads, within its ranges and by its names. */
function readsAmong({document, names}: Checked, at: CellAddress, cells: ByColumn): CellAddress[] {
  const among = (sheet: number, col: number, from: number | null, to: number | null) =>
    (cells.get(`${sheet}:${col}`) ?? []).filter(({row}) => lies(row, from, to))
  return (piecesIn(document, at) ?? []).flatMap((piece) => {
    if (typeof piece === "string") {
      const named = names.get(piece.toLowerCase())?.at
      return named ? among(named.sheet, named.col, named.row, named.row) : []
    }
    const {from, to} = piece
    const sheet = piece.sheet === null ? at.sheet : sheetNamed(document.sheets, piece.sheet)
    const columns = [...(document.sheets[sheet]?.columns.keys() ?? [])]
    return columns
      .filter((col) => lies(col, from.col, to.col))
      .flatMap((col) => among(sheet, col, from.row, to.row))
  })
}

const lies = (place: number, from: number | null, to: number | null) =>
  from === null || to === null || (place >= Math.min(from, to) && place <= Math.max(from, to))

/** From the key of a cell to those of the cells it reads, or is read by. */
type Links = ReadonlyMap<string, readonly string[]>

/** The sets of cells of which each rests on each other, in the order in which they are found. */
function knotsIn(reads: Links): readonly ReadonlySet<string>[] {
  const users = turned(reads)
  const left = new Set(reads.keys())
  const knots: ReadonlySet<string>[] = []
  for (let at = onRing(left, reads, users); at !== null; at = onRing(left, reads, users)) {
    const before = reached(at, left, users)
    const knot = new Set([...reached(at, left, reads)].filter((key) => before.has(key)))
    knots.push(knot)
    for (const key of knot) left.delete(key)
  }
  return knots
}

function turned(links: Links): Links {
  const back = new Map<string, string[]>()
  for (const [from, all] of links) for (const to of all) if (!back.get(to)?.push(from)) back.set(to, [from])
  return back
}

/** A cell that rests on itself, or null. Takes out of those left what reads none of them, and so on. */
function onRing(left: Set<string>, reads: Links, users: Links): string | null {
  const counts = new Map<string, number>()
  const loose: string[] = []
  for (const key of left) {
    const count = reads.get(key)!.filter((one) => left.has(one)).length
    counts.set(key, count)
    if (count === 0) loose.push(key)
  }
  for (let key = loose.pop(); key !== undefined; key = loose.pop()) {
    left.delete(key)
    for (const user of users.get(key) ?? []) {
      counts.set(user, counts.get(user)! - 1)
      if (counts.get(user) === 0) loose.push(user)
    }
  }
  // All that are left read one another, so a walk along them comes back to where it was.
  const walked = new Set<string>()
  let [at] = left
  while (at !== undefined && !walked.has(at)) {
    walked.add(at)
    at = reads.get(at)!.find((one) => left.has(one))
  }
  return at ?? null
}

function reached(start: string, within: ReadonlySet<string>, links: Links): Set<string> {
  const seen = new Set([start])
  for (const key of seen) for (const next of links.get(key) ?? []) if (within.has(next)) seen.add(next)
  return seen
}

/** The shortest way from a cell of a knot back to itself, without its end. */
function shortestRing(start: string, knot: ReadonlySet<string>, reads: Links): string[] {
  const cameFrom = new Map<string, string | null>([[start, null]])
  for (const at of cameFrom.keys())
    for (const next of reads.get(at)!) {
      if (next === start) {
        const way = []
        for (let key: string | null = at; key !== null; key = cameFrom.get(key)!) way.unshift(key)
        return way
      }
      if (knot.has(next) && !cameFrom.has(next)) cameFrom.set(next, at)
    }
  throw new Error("A knot has a ring through each of its cells")
}
