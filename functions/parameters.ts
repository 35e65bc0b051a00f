import {FIRST_DAY, LAST_DAY, dayOf, isoOf} from "./calendar"
import {readOnce} from "./memo"
import {isWithin, limitsInWords, withUnit, type Limits, type Unit} from "./quantity"
import {isRefusal, notYet, outOfRange, wrongKind, type Refusal} from "./refusal"

/** An error that stood in a cell or came out of an inner formula, with whatever the engine keeps of it. */
export class CellFault {
  constructor(
    readonly code: string,
    readonly origin: unknown,
  ) {}
}

/** What one cell, or one value in a formula, holds. `null` is a blank. */
export type Held = number | string | boolean | null | CellFault

/** What an argument was given: one value, or a range row by row. */
export type Given = Held | readonly (readonly Held[])[]

/** One argument of a formula function: what it means, what it may be, and how it is read from a cell. */
export interface Parameter<T> {
  readonly label: string
  readonly unit: Unit
  /** What it may be, in words: "from 0 to 50 °Brix". */
  readonly takes: string
  readonly isRange: boolean
  /** In an optional argument, what stands for one that is left out or blank. */
  readonly absent?: {readonly value: T; readonly words: string}
  /** A list keeps `null` where a cell is blank; `answer` leaves those rows out. */
  readonly isList?: boolean
  /** In a list, error codes that count as a blank. */
  readonly skips?: readonly string[]
  /** For `[values]`, the names of the crop values that the function uses. */
  readonly names?: readonly string[]
  read(given: Given): T | Refusal
}

export const isRange = (given: Given): given is readonly (readonly Held[])[] => Array.isArray(given)

/** One number with its unit and limits. Text, numbers written as text and truth values are refused. */
export function quantity(label: string, unit: Unit, limits: Limits = {}): Parameter<number> {
  const read = (given: Given) => (isRange(given) ? takesOne(label) : readNumber(label, unit, limits, given))
  return {label, unit, takes: limitsInWords({unit, limits}), isRange: false, read}
}

/** One day, as a date or as ISO text in quotes. Gives the number of the day (see calendar.ts). */
export function date(label: string): Parameter<number> {
  const read = (given: Given) => (isRange(given) ? takesOne(label) : readDay(label, given))
  return {label, unit: "date", takes: "a date", isRange: false, read}
}

/** One name out of a list, in quotes. */
export function choice<const C extends string>(label: string, choices: readonly C[]): Parameter<C> {
  const list = choices.map((name) => `"${name}"`).join(", ")
  const read = (given: Given) => {
    if (isRange(given)) return takesOne(label)
    if (given === null) return notYet(`${label} is blank`)
    const found = choices.find((name) => name === given)
    return found ?? wrongKind(`${label} must be one of ${list}, not ${shown(given)}`)
  }
  return {label, unit: "text", takes: `one of ${list}`, isRange: false, read}
}

/** Which end of a range of values: -1 the lower, 1 the upper. */
export function side(label: string): Parameter<-1 | 1> {
  const read = (given: Given) => {
    const value = quantity(label, "number").read(given)
    if (isRefusal(value)) return value
    return value === 1 || value === -1
      ? value
      : outOfRange(`${label} must be -1 (lower) or 1 (upper), not ${value}`)
  }
  return {label, unit: "number", takes: "-1 (lower) or 1 (upper)", isRange: false, read}
}

/** A range of measured numbers. Blanks are left out; when nothing is left the answer is "not measured yet". */
export function measured(label: string, unit: Unit, limits: Limits = {}): Parameter<readonly number[]> {
  return list(label, unit, limitsInWords({unit, limits}), (held) => readNumber(label, unit, limits, held))
}

/**
 * A range of numbers of which each belongs to a year, in their order. Blanks after the last are the end; a blank between
 * would move the others to other years, so it is refused.
 */
export function yearly(label: string, unit: Unit, limits: Limits = {}): Parameter<readonly number[]> {
  const read = (given: Given) => {
    const cells = isRange(given) ? given.flat() : [given]
    const end = cells.findLastIndex((held) => held !== null) + 1
    const numbers: number[] = []
    for (const held of cells.slice(0, end)) {
      if (held === null) return wrongKind(`${label}: year ${numbers.length + 1} is blank`)
      const number = readNumber(label, unit, limits, held)
      if (isRefusal(number)) return number
      numbers.push(number)
    }
    return numbers // with nothing in it: not measured yet, or the default, by `answer`
  }
  return {label, unit, takes: limitsInWords({unit, limits}), isRange: true, isList: true, read}
}

/** A range of days. Blanks are left out. */
export const dates = (label: string): Parameter<readonly number[]> =>
  list(label, "date", "dates", (held) => readDay(label, held))

/** A range of dates of which some may not be known yet: #N/A counts as a blank, other errors pass. */
export const limitDates = (label: string): Parameter<readonly number[]> => ({
  ...dates(label),
  skips: ["#N/A"],
})

/**
 * A range of which each cell keeps its place: a number, or `null` where there is none yet. Words, blanks and errors that say
 * "not yet" or "cannot be" in one row are no number of that row; they spoil no other.
 */
export const everyNumber = (label: string, unit: Unit): Parameter<readonly (number | null)[]> => ({
  label,
  unit,
  takes: "numbers; a cell without one stands for a row that takes no part",
  isRange: true,
  skips: EVERY_ERROR,
  read: numbersOf,
})

/** The same for days, which may be written as ISO text. */
export const everyDay = (label: string): Parameter<readonly (number | null)[]> => ({
  ...everyNumber(label, "date"),
  takes: "dates; a cell without one stands for a row that takes no part",
  read: daysOf,
})

/** The same for words: what is none is an empty word. */
export const everyWord = (label: string): Parameter<readonly string[]> => ({
  label,
  unit: "text",
  takes: "words; a cell without one stands for a row that takes no part",
  isRange: true,
  skips: EVERY_ERROR,
  read: wordsOf,
})

const EVERY_ERROR = ["#N/A", "#NUM!", "#VALUE!", "#DIV/0!", "#REF!", "#NAME?", "#CYCLE!"]

/** A range of words. A blank cell is an empty word: it never leaves out a row by itself. */
export const words = (label: string): Parameter<readonly string[]> =>
  list(label, "text", "words", (held) => readWord(label, held))

/** One word, or text in quotes. */
export const word = (label: string): Parameter<string> => ({
  label,
  unit: "text",
  takes: "a word",
  isRange: false,
  read: (given) => (isRange(given) ? takesOne(label) : readWord(label, given)),
})

const readWord = (label: string, held: Held): string | Refusal =>
  held === null
    ? ""
    : typeof held === "string"
      ? held
      : wrongKind(`${label} must be words, not ${shown(held)}`)

/** Reads each cell of a range as `read` takes it, once for all the functions that are given the range. */
const eachOf = <T>(read: (held: Held) => T) =>
  readRange((given): readonly T[] => {
    if (!isRange(given)) return [read(given)]
    const all: T[] = []
    for (const row of given) for (const held of row) all.push(read(held))
    return all
  })

const numbersOf = eachOf((held) => (typeof held === "number" ? held : null))
const wordsOf = eachOf((held) => (typeof held === "string" ? held : ""))
const daysOf = eachOf((held) => {
  const day = typeof held === "string" ? dayOf(held) : held
  return typeof day === "number" ? Math.floor(day) : null
})

/**
 * Reads a range once for all the cells that are given the same one: it is the same object as long as it holds the same. A
 * range of one cell comes as what stands in it, and is the same as long as that is.
 */
function readRange<T>(read: (given: Given) => T): (given: Given) => T {
  const once = readOnce((range: readonly (readonly Held[])[]) => read(range))
  const alone = new Map<Held, {readonly result: T}>()
  return (given) => {
    if (isRange(given)) return once(given)
    const found = alone.get(given) ?? {result: read(given)}
    if (alone.size >= MOST_ALONE) alone.clear()
    alone.set(given, found)
    return found.result
  }
}

const MOST_ALONE = 10_000 // chosen

/** Makes an argument optional: left out or blank it stands for `value`. */
export function optional<T, A>(
  parameter: Parameter<T>,
  value: A,
  says = value === null ? "" : String(value),
): Parameter<T | A> {
  return {...parameter, absent: {value, words: says}} as Parameter<T | A>
}

function list<T>(
  label: string,
  unit: Unit,
  takes: string,
  readOne: (held: Held) => T | Refusal,
): Parameter<readonly T[]> {
  const read = (given: Given) => {
    const read: (T | null)[] = []
    for (const held of isRange(given) ? given.flat() : [given]) {
      const one = held === null && unit !== "text" ? null : readOne(held)
      if (isRefusal(one)) return one
      read.push(one)
    }
    return read as T[] // blanks are dropped by `answer`, row by row, before anyone calculates
  }
  return {label, unit, takes, isRange: true, isList: true, read}
}

function readNumber(label: string, unit: Unit, limits: Limits, held: Held): number | Refusal {
  if (held === null) return notYet(`${label}: not measured yet`)
  if (typeof held !== "number") return wrongKind(`${label} must be a number, not ${shown(held)}`)
  if (isWithin(held, limits)) return held
  return outOfRange(`${label} must be ${limitsInWords({unit, limits})}, not ${withUnit(held, unit)}`)
}

function readDay(label: string, held: Held): number | Refusal {
  if (held === null) return notYet(`${label}: no date yet`)
  const day = typeof held === "string" ? dayOf(held) : held
  if (typeof day !== "number")
    return wrongKind(`${label} must be a date such as 2026-04-25, not ${shown(held)}`)
  if (day >= FIRST_DAY && day < LAST_DAY + 1) return Math.floor(day)
  return outOfRange(
    `${label} must be a date from ${isoOf(FIRST_DAY)} to ${isoOf(LAST_DAY)}, not the number ${day}`,
  )
}

const takesOne = (label: string) => wrongKind(`${label} takes one value, not a range`)

/** A held value as it is quoted in a sentence. */
export const shown = (held: Held): string =>
  typeof held === "string"
    ? `the text "${held}"`
    : typeof held === "boolean"
      ? String(held).toUpperCase()
      : String(held instanceof CellFault ? held.code : held)
