import {dayOf, FIRST_DAY, isoOf, LAST_DAY} from "../../functions/calendar"
import {COLUMN_FORMULA, type Column, type Content} from "../workbook/document"
import {noFunction} from "../workbook/faults"
import {hasCellInBraces} from "../workbook/formula"
import {bracketsIn, placedTokens, type Place} from "./brackets"
import {dateText, numberText} from "./display"

/** What typed text means in a column, or the sentence that says why it cannot stand there. */
export type Entry = {readonly content: Content} | {readonly refused: string}

/** The formula spelt as the engine spells it, or null when it is not one. */
type Normalize = (formula: string) => string | null

/**
 * Reads what a person typed into a cell. Numbers take a decimal point, thousands parted by spaces or commas in
 * proper groups, and the unit of the column behind them; dates are taken in every form that has one meaning.
 * Nothing is guessed: what could mean two things is refused with both readings. `year` completes "25 Apr".
 * An apostrophe in front makes words of anything, except of a formula, and keeps spaces round them.
 */
export function readEntry(typed: string, column: Column, year: number, normalize: Normalize): Entry {
  const text = typed.trim()
  if (text === "") return {content: null}
  if (text.startsWith("'")) return readWords(typed.trimStart().slice(1))
  if (text.startsWith("=")) return readFormula(text, column, normalize)
  if (column.format === "date" || column.format === "day") return readDate(text, column, year)
  const number = readNumber(text, column)
  if (number !== null) return typeof number === "number" ? within(number, column) : number
  if (holdsNumbers(column))
    return {refused: `“${text}” is not a number; ${column.heading} takes ${unitWords(column)}`}
  if (!holdsWords(column) && /^(true|false)$/i.test(text)) return {content: text.toLowerCase() === "true"}
  return {content: text}
}

/** What stands in the entry line for a content: what a person would type to get it. */
export function readsAs(content: Content, column: Column | undefined, formula: string | null): string {
  if (formula !== null) return formula
  if (content === null) return ""
  if (typeof content === "boolean") return content ? "TRUE" : "FALSE"
  if (typeof content === "number") {
    const percent = `${Number((content * 100).toPrecision(15))}%`
    return column?.format === "share" && readNumber(percent, column) === content ? percent : String(content)
  }
  if (!column) return content
  const back = readEntry(content, column, 0, () => null)
  return "content" in back && back.content === content ? content : `'${content}`
}

const readWords = (words: string): Entry =>
  words.startsWith("=")
    ? {refused: `“${words}” would be a formula; words begin with another sign than “=”`}
    : {content: words}

function readFormula(text: string, column: Column, normalize: Normalize): Entry {
  if (text === COLUMN_FORMULA)
    return column.formula === undefined ? {refused: "A formula is missing after “=”"} : {content: text}
  const formula = normalize(text)
  return formula === null
    ? {refused: `This formula cannot be read: ${whatIsOff(text).words}`}
    : {content: formula}
}

/** Something in a formula that is off: in words without a full stop, and where. */
export interface Trouble {
  readonly words: string
  readonly places: readonly Place[]
}

/**
 * What is off in a formula while it is typed: functions that do not exist, among the names of all `functions`, and
 * why it could not be kept. Nothing for the sign "=" alone.
 */
export function troublesIn(
  text: string,
  normalize: Normalize,
  functions: ReadonlySet<string>,
): readonly Trouble[] {
  if (!text.startsWith("=") || text.trim() === "=") return []
  const unknown = pieces(text)
    .filter((one) => one.kind === "function" && !functions.has(one.text.toUpperCase()))
    .map(({text: name, start, end}) => ({words: noFunction(name.toUpperCase()), places: [{start, end}]}))
  if (normalize(text) !== null) return unknown
  const {words, places} = whatIsOff(text)
  return [...unknown, {words: words.replace(/^./, (letter) => letter.toUpperCase()), places}]
}

function whatIsOff(formula: string): Trouble {
  const all = pieces(formula)
  const texts = all.filter(({kind}) => kind === "text")
  const unclosed = texts.filter(({text}) => (text.match(/"/g) ?? []).length % 2)
  if (unclosed.length) return {words: "a quotation mark is not closed", places: unclosed}
  const sign = (start: number) => ({start, end: start + 1})
  const brackets = bracketsIn(formula)
  const [open, extra] = [brackets.unclosed.length, brackets.extra.length]
  if (open > 0)
    return {
      words: `${open} bracket${open > 1 ? "s are" : " is"} not closed`,
      places: brackets.unclosed.map(sign),
    }
  if (extra > 0)
    return {words: `${extra} bracket${extra > 1 ? "s" : ""} too many`, places: brackets.extra.map(sign)}
  if (hasCellInBraces(formula))
    return {words: "an array in braces takes numbers and words, not cells or names", places: []}
  const parting = all.filter(({text}) => text === ";")
  if (parting.length) return {words: "arguments are parted by commas here, not by “;”", places: parting}
  const last = all.at(-1)
  if (last?.kind === "sign" && /^[-+*/^&=<>,]/.test(last.text))
    return {words: `something is missing after “${last.text}”`, places: [last]}
  return {words: "check its signs and commas", places: []}
}

const pieces = (formula: string) => placedTokens(formula).filter(({kind}) => kind !== "space")

/** Whether the column is for words alone. One with a rule holds numbers shown as they are typed, such as years. */
const holdsWords = ({format, rule}: Column) => format === "text" && rule === undefined

const holdsNumbers = (column: Column) => {
  const {format, unit, kind, rule} = column
  if (holdsWords(column)) return false
  const counts = typeof format === "number" || format === "share" || rule !== undefined
  return counts || (unit !== undefined && kind !== "worked out")
}

const unitWords = ({unit, format}: Column) =>
  format === "share" ? "a share such as 86 % or 0.86" : unit ? `a number in ${unit}` : "a number"

const GROUPED = /^[1-9]\d{0,2}([ ,])\d{3}(\1\d{3})*(\.\d+)?$/

/** A number, a refusal, or null when the text is not like a number at all. */
function readNumber(text: string, column: Column): number | {refused: string} | null {
  const parts = /^([-+\u2212]?)((?:\d|\.\d)[\d.,\s]*?(?:[eE][-+]?\d+)?)\s*([^\d\s.,].*)?$/.exec(text)
  if (!parts || holdsWords(column)) return null
  const [, sign, written, unit = ""] = parts
  const digits = written!.replace(/\s/g, " ").trim()
  const isUnit = unit === "" || unit === column.unit || (unit === "%" && takesPercent(column))
  const refusedHere = (refused: string) => (isUnit || holdsNumbers(column) ? {refused} : null)
  if (/^\d+,\d+$/.test(digits) && !GROUPED.test(digits)) {
    const readings = [digits.replace(",", "."), digits.replace(",", "").replace(/^0+(?=\d)/, "")]
    return refusedHere(
      `“${digits}” could be ${readings.join(" or ")}; type a point for decimals, or leave the comma out`,
    )
  }
  const plain = GROUPED.test(digits) ? digits.replace(/[ ,]/g, "") : digits
  if (!/^(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?$/.test(plain) || (/\d/.test(unit) && !isUnit))
    return holdsNumbers(column) ? {refused: `“${text}” is not one number`} : null
  if (!isUnit)
    return refusedHere(`“${unit}” is not the unit here: ${column.heading} takes ${unitWords(column)}`)
  const value = signed(unit === "%" && column.unit !== "%" ? hundredth(plain) : Number(plain), sign!)
  return Number.isFinite(value) ? value : {refused: `“${text}” is too large`}
}

const takesPercent = ({format, unit}: Column) => format === "share" || unit === undefined || unit === "share"

/** Moves the point instead of dividing, so that 12.3 % is 0.123. */
const hundredth = (plain: string) => (/e/i.test(plain) ? Number(plain) / 100 : Number(`${plain}e-2`))

const signed = (value: number, sign: string) =>
  value !== 0 && (sign === "-" || sign === "\u2212") ? -value : value

function within(value: number, {heading, unit, rule, format}: Column): Entry {
  const {least, most} = rule ?? {}
  const shown = (n: number) => {
    if (format === "share") return `${numberText(n * 100)} %`
    return `${format === "text" ? n : numberText(n)}${unit ? ` ${unit}` : ""}`
  }
  if (least !== undefined && value < least)
    return {refused: `${heading} ${shown(value)} is below ${shown(least)}`}
  if (most !== undefined && value > most) {
    // A point was forgotten, or the sign behind a share.
    const meant = value / (format === "share" ? 100 : 10)
    const guess = (least ?? -Infinity) <= meant && meant <= most ? ` (did you mean ${shown(meant)}?)` : ""
    return {refused: `${heading} ${shown(value)} is above ${shown(most)}${guess}`}
  }
  return {content: value}
}

const MONTH_NAMES =
  "january february march april may june july august september october november december".split(" ")

function readDate(text: string, column: Column, year: number): Entry {
  const read = dateIn(text, year)
  if (read === null) return {refused: `“${text}” is not a date; type 25 Apr or 2026-04-25`}
  if (typeof read === "string") return {refused: read}
  const [least, most] = [column.rule?.least ?? FIRST_DAY, column.rule?.most ?? LAST_DAY]
  if (read < least || read > most)
    return {refused: `${column.heading} ${dateText(read)} is outside ${dateText(least)} to ${dateText(most)}`}
  return {content: isoOf(read)}
}

/** The day, a sentence when the text has two meanings, or null when it is no date. */
function dateIn(text: string, year: number): number | string | null {
  const yearFirst = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/.exec(text)
  if (yearFirst) return day(Number(yearFirst[1]), Number(yearFirst[3]), Number(yearFirst[4]))
  const named =
    /^(\d{1,2})\.?[\s-]*([a-z]{3,9})\.?[\s,-]*(\d{4}|\d{2})?$/i.exec(text) ??
    swap(/^([a-z]{3,9})\.?[\s-]*(\d{1,2})(?:[\s,]+(\d{4}|\d{2}))?$/i.exec(text))
  if (named) {
    const written = named[2]!.toLowerCase()
    const month = MONTH_NAMES.findIndex((name) => name.startsWith(written)) + 1
    return month ? day(fullYear(named[3], year), month, Number(named[1])) : null
  }
  const dotted = /^(\d{1,2})\.\s*(\d{1,2})(?:\.\s*(\d{4}|\d{2})?)?$/.exec(text)
  if (dotted) return day(fullYear(dotted[3], year), Number(dotted[2]), Number(dotted[1]))
  const parted =
    /^(\d{1,2})\/(\d{1,2})(?:\/(\d{4}|\d{2}))?$/.exec(text) ?? /^(\d{1,2})-(\d{1,2})(?:-(\d{4}))?$/.exec(text)
  if (!parted) return null
  const [a, b, y] = [Number(parted[1]), Number(parted[2]), fullYear(parted[3], year)]
  const [dayFirst, monthFirst] = [day(y, b, a), day(y, a, b)]
  if (dayFirst !== null && monthFirst !== null && a !== b)
    return `“${text}” could be ${dateText(dayFirst)} or ${dateText(monthFirst)}; type the month in letters`
  return dayFirst ?? monthFirst
}

const swap = (found: RegExpExecArray | null) => found && [found[0], found[2], found[1], found[3]]

const fullYear = (written: string | undefined, year: number) =>
  written === undefined ? year : written.length === 2 ? 2000 + Number(written) : Number(written)

const day = (year: number, month: number, date: number) =>
  dayOf(`${year}-${String(month).padStart(2, "0")}-${String(date).padStart(2, "0")}`)
