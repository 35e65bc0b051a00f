import {piecesIn} from "../cells"
import {
  columnWith,
  contentAt,
  isFormula,
  sheetNamed,
  type CellAddress,
  type Content,
  type Document,
} from "../document"
import {namesIn} from "../names"
import {planSheet} from "../plan"
import {cellsOf, keyOfRow} from "../trace"
import type {Workbook} from "../workbook"
import {keyOf} from "./checked"
import {toTheEnd} from "./checks"
import {inARow, RULES, type Finding, type Rule} from "./finding"

/** What of the plan rests on the cells of a finding. A planting is told by its name. */
export interface Effect {
  /** The plantings whose close rests on it. */
  readonly closes: readonly string[]
  /** The plantings whose crop rests on it. */
  readonly crops: readonly string[]
  /** How many formulas use it directly. */
  readonly users: number
}

export interface Ranked extends Finding {
  readonly effect: Effect
}

/** What makes a workbook hard to follow, and no number wrong. */
const HABITS: ReadonlySet<Rule> = new Set<Rule>(["number in a formula", "no source"])

/**
 * The findings, those first on which the close of the most plantings rests, then the crop of the most, then the most
 * formulas; among what the plan rests on, habits come after slips. What rests on a cell is followed as in "Where from": of
 * a sheet kept by planting, a planting has its own rows.
 */
export const ranked = (workbook: Workbook, findings: readonly Finding[]): readonly Ranked[] =>
  toTheEnd(ranking(workbook, findings))

/** The same step by step, so that the page can answer in between. The workbook must stay as it is meanwhile. */
export function* ranking(
  workbook: Workbook,
  findings: readonly Finding[],
): Generator<void, readonly Ranked[]> {
  const resting = yield* restingIn(workbook)
  const told: Ranked[] = []
  for (const finding of findings) {
    yield
    told.push({...finding, effect: effectOf(workbook, resting, finding)})
  }
  return told.sort(
    (a, b) =>
      tierOf(a) - tierOf(b) ||
      b.effect.closes.length - a.effect.closes.length ||
      b.effect.crops.length - a.effect.crops.length ||
      b.effect.users - a.effect.users ||
      RULES.indexOf(a.rule) - RULES.indexOf(b.rule),
  )
}

const tierOf = ({rule, effect: {closes, crops}}: Ranked) =>
  closes.length + crops.length === 0 ? 2 : HABITS.has(rule) ? 1 : 0

/** An effect in words: "The close of Long Acre and Well Field rests on this". */
export function effectWords({closes, crops, users}: Effect): string {
  if (closes.length) return planWords("close", closes)
  if (crops.length) return planWords("crop", crops)
  if (users === 0) return "No formula rests on this"
  return `${users === 1 ? "1 formula uses" : `${users} formulas use`} this, no close or crop of the plan`
}

const MOST_NAMED = 3

const planWords = (what: string, plantings: readonly string[]) =>
  `The ${what} of ${plantings.length > MOST_NAMED ? `${plantings.length} plantings` : inARow(plantings)} rests on this`

/** What of the plan rests on each cell, by its key: of the plantings that are cut, or may be, a bit for each in their order. */
interface Resting {
  readonly plantings: readonly string[]
  readonly closes: ReadonlyMap<string, bigint>
  readonly crops: ReadonlyMap<string, bigint>
}

function* restingIn(workbook: Workbook): Generator<void, Resting> {
  const {document} = workbook
  const sheet = planSheet(document)
  if (sheet < 0) return {plantings: [], closes: new Map(), crops: new Map()}
  const [close, crop] = [columnWith(document, sheet, "close"), columnWith(document, sheet, "crop")]
  const reads = readerOf(document)
  const rows = [...document.sheets[sheet]!.rows.keys()].filter(
    (row) => typeof workbook.valueAt({sheet, row, col: close}) !== "string",
  )
  const cellsIn = (col: number) => (col < 0 ? [] : rows.map((row) => ({sheet, row, col})))
  return {
    plantings: rows.map((row) => keyOfRow(document, {sheet, row})),
    closes: yield* restingOn(cellsIn(close), reads),
    crops: yield* restingOn(cellsIn(crop), reads),
  }
}

/** Cells under their keys; one range that many formulas read is one list. */
type Read = readonly {readonly at: CellAddress; readonly key: string}[]
type Reads = (at: CellAddress) => readonly Read[]

/**
 * Which of some cells rest on each cell, themselves among them, as bits in their order. All are followed at once, each cell
 * again when more of them come to rest on it: followed one by one they would pass through the same cells hundreds of times.
 */
function* restingOn(
  goals: readonly CellAddress[],
  reads: Reads,
): Generator<void, ReadonlyMap<string, bigint>> {
  const bits = new Map(goals.map((at, i) => [keyOf(at), 1n << BigInt(i)]))
  const through = new Map<Read, bigint>()
  const waiting = new Map(goals.map((at) => [keyOf(at), at]))
  for (const [user, from] of waiting) {
    yield
    waiting.delete(user) // put in again, it comes at the end
    for (const read of reads(from)) {
      const more = bits.get(user)! & ~(through.get(read) ?? 0n)
      if (more === 0n) continue
      through.set(read, (through.get(read) ?? 0n) | more)
      for (const {at, key} of read) {
        const had = bits.get(key) ?? 0n
        if ((had | more) === had) continue
        bits.set(key, had | more)
        waiting.set(key, at)
      }
    }
  }
  return bits
}

/** Reads each formula, and each range that is of one planting, once. */
function readerOf(document: Document): Reads {
  const names = new Map(namesIn(document).map(({name, at}) => [name.toLowerCase(), at]))
  const held = new Map<string, readonly Read[]>()
  const ranges = new Map<string, Read>()
  const keyed = (at: CellAddress) => ({at, key: keyOf(at)})
  const plantingsOn = new Map(
    document.sheets.map(({rows}, sheet) => [sheet, new Set(rows.map(([first]) => lowerCase(first ?? null)))]),
  )
  /** The planting of a row where the other sheet has rows of it, else nothing. */
  const plantingAt = (at: CellAddress, sheet: number) => {
    const planting = lowerCase(contentAt(document, {...at, col: 0}))
    return plantingsOn.get(sheet)!.has(planting) ? planting : ""
  }
  const readBy = (at: CellAddress): readonly Read[] =>
    (piecesIn(document, at) ?? []).flatMap((piece): readonly Read[] => {
      if (typeof piece === "string") {
        const named = names.get(piece.toLowerCase())
        return named ? [[keyed(named)]] : []
      }
      const sheet = piece.sheet === null ? at.sheet : sheetNamed(document.sheets, piece.sheet)
      if (sheet < 0) return []
      const planting = piece.from.row === null && sheet !== at.sheet ? plantingAt(at, sheet) : ""
      const {from, to} = piece
      const key = [at.sheet, sheet, from.row, from.col, to.row, to.col, planting].join()
      const range = ranges.get(key) ?? cellsOf(document, at, sheet, piece).map(keyed)
      ranges.set(key, range)
      return [range]
    })
  return (at) => {
    if (!isFormula(contentAt(document, at))) return []
    const key = keyOf(at)
    const read = held.get(key) ?? readBy(at)
    held.set(key, read)
    return read
  }
}

const lowerCase = (content: Content) => String(content ?? "").toLowerCase()

function effectOf(workbook: Workbook, {plantings, closes, crops}: Resting, {cells}: Finding): Effect {
  const resting = (bits: ReadonlyMap<string, bigint>) => {
    const all = cells.reduce((held, at) => held | (bits.get(keyOf(at)) ?? 0n), 0n)
    return plantings.filter((_, i) => (all >> BigInt(i)) & 1n)
  }
  const users = new Set(cells.slice(0, MOST_ASKED).flatMap((at) => workbook.usersOf(at).map(keyOf)))
  return {closes: resting(closes), crops: resting(crops), users: users.size}
}

/** Chosen: the users of more cells than this need not be counted for a rank. */
const MOST_ASKED = 40
