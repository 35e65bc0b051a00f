import type {Difference} from "../workbook/compare"
import {columnWith, sheetWith, type CellAddress, type Content, type Document} from "../workbook/document"
import {cellsWith} from "../workbook/extras"
import {namesIn} from "../workbook/names"
import {comparedCells} from "./cases"
import {isFault, type Value} from "../workbook/value"
import {Workbook} from "../workbook/workbook"

/** A result that differs between two states of a workbook. */
export interface Moved {
  /** Where it stands in the later state. */
  readonly at: CellAddress
  readonly isDate: boolean
  /** The lowest cover of all years, or the cover of one. */
  readonly cover: "lowest" | "of a year" | null
  readonly before: Value
  readonly after: Value
}

/** How far the changes of one cell alone move each of the results that moved: `by[i]` belongs to `moved[i]`. */
export interface Effect {
  readonly difference: Difference
  readonly by: readonly (number | null)[]
}

export interface Effects {
  readonly moved: readonly Moved[]
  /** The typed changes, the one that moves the results most first. */
  readonly effects: readonly Effect[]
}

const MOST_TRIED = 40 // changes that are tried one by one; chosen, so that it ends within seconds

/**
 * What moved between two states, and which change moved it: each typed change is taken back by itself in the later state,
 * and what the results then give is compared. Changes that work together move more, or less, than their sum.
 */
export function effectsOf(before: Document, after: Document, differences: readonly Difference[]): Effects {
  const [old, now] = [new Workbook(before), new Workbook(after)]
  const moved = resultCells(after).flatMap(({at, cover}): Moved[] => {
    const [value, earlier] = [now.valueAt(at), valueThen(old, after, at)]
    return isAlike(value, earlier)
      ? []
      : [{at, isDate: now.isDateAt(at), cover, before: earlier, after: value}]
  })
  const typed = differences.filter(({now: at, isFormula}) => at !== null && !isFormula)
  const effects = typed.slice(0, MOST_TRIED).map((difference): Effect => {
    const entry = {at: difference.now!, content: difference.before as Content}
    now.revise({type: "enter", cells: [entry]})
    const by = moved.map(({at, after: value}) => apart(value, now.valueAt(at)))
    now.show(after)
    return {difference, by}
  })
  const size = ({by}: Effect) =>
    by.reduce<number>((most, one, i) => Math.max(most, Math.abs(one ?? 0) / scaleOf(moved[i]!)), 0)
  return {moved, effects: effects.toSorted((a, b) => size(b) - size(a))}
}

/**
 * The result to ask about first: for money the lowest cover, else the close, crop or store that moved farthest, or a cover where
 * none of these moved; -1 where none is a number.
 */
export function firstAsked({moved}: Effects, isOfMoney: boolean): number {
  const lowest = moved.findIndex(({cover}) => cover === "lowest")
  if (isOfMoney && lowest >= 0) return lowest
  const ways = moved.map((one) => Math.abs(apart(one.after, one.before) ?? 0) / scaleOf(one))
  const farthest = (some: readonly number[]) => some.findIndex((way) => way > 0 && way === Math.max(...some))
  const other = farthest(ways.map((way, i) => (moved[i]!.cover === null ? way : 0)))
  return other < 0 ? farthest(ways) : other
}

/** The changes that move the lowest cover first, the one that moves it most before the others; null where none moves it. */
export function byLowestCover({moved, effects}: Effects): readonly Effect[] | null {
  const lowest = moved.findIndex(({cover}) => cover === "lowest")
  if (lowest < 0) return null
  const size = ({by}: Effect) => Math.abs(by[lowest] ?? 0)
  return effects.toSorted((a, b) => size(b) - size(a))
}

type Result = Pick<Moved, "at" | "cover">

/**
 * The results of which it is told how they moved: those that cases are compared by and, unless a person chose them, the lowest
 * cover, the store of each planting and the cover of each year. A calibration moves the one, a price the other, and neither need
 * move a close.
 */
function resultCells(document: Document): readonly Result[] {
  const compared = comparedCells(document).map((at): Result => ({at, cover: null}))
  if (cellsWith(document, ({compared: isChosen}) => isChosen).length > 0) return compared
  const column = (part: "store at start" | "cover", cover: Moved["cover"]): readonly Result[] => {
    const sheet = sheetWith(document, part)
    if (sheet < 0) return []
    const col = columnWith(document, sheet, part)
    return document.sheets[sheet]!.rows.map((_, row) => ({at: {sheet, row, col}, cover}))
  }
  const lowest = namesIn(document).find(({name}) => name.toLowerCase() === "tight_cover")
  return [
    ...(lowest ? [{at: lowest.at, cover: "lowest"} as const] : []),
    ...compared,
    ...column("store at start", null),
    ...column("cover", "of a year"),
  ]
}

/** The value of the cell that stood for the same heading and row, told as `compare` tells rows: by its name and which of them. */
function valueThen(old: Workbook, after: Document, at: CellAddress): Value {
  const {name, columns, rows} = after.sheets[at.sheet]!
  const sheet = old.document.sheets.findIndex((one) => one.name === name)
  if (sheet < 0) return null
  const then = old.document.sheets[sheet]!
  const isNamesake = ([key]: (typeof rows)[number]) => key === rows[at.row]?.[0]
  const above = rows.slice(0, at.row).filter(isNamesake).length
  const row = then.rows.flatMap((one, i) => (isNamesake(one) ? [i] : []))[above] ?? -1
  const col = then.columns.findIndex(({heading}) => heading === columns[at.col]!.heading)
  return row < 0 || col < 0 ? null : old.valueAt({sheet, row, col})
}

const apart = (value: Value, without: Value) =>
  typeof value === "number" && typeof without === "number" ? value - without : null

/**
 * A day of a date weighs as much as a hundredth of a number, so that dates and weights can be put in one order (chosen); of a
 * cover as much as 0.01, since a cover near 0 has no hundredth to speak of.
 */
const scaleOf = ({isDate, cover, after}: Moved) => {
  if (cover !== null) return 0.01
  return isDate || typeof after !== "number" ? 1 : Math.max(1e-9, Math.abs(after) / 100)
}

const isAlike = (a: Value, b: Value) =>
  a === b ||
  (isFault(a) && isFault(b)) ||
  (typeof a === "number" && typeof b === "number" && Math.abs(a - b) < 1e-9 * Math.max(1, Math.abs(a)))
