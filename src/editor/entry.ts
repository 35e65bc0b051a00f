import {dayOf, FIRST_DAY, isoOf, LAST_DAY} from "../../functions/calendar"
import {isRefusal} from "../../functions/refusal"
import {readTally} from "../../functions/spear/tally"
import {COLUMN_FORMULA, type Content, type Document, type Region} from "../workbook/document"
import {noFunction} from "../workbook/faults"
import {hasCellInBraces, isTooIntricate, referenceOf, type Token} from "../workbook/formula"
import {namesIn} from "../workbook/names"
import {PLAIN_REGION, type Decimal} from "../workbook/region"
import {argumentSign, fromScreen, onScreen} from "../workbook/screenFormula"
import {bracketsIn, placedTokens, type Place} from "./brackets"
import type {CellColumn} from "./cellColumn"
import {dateText, measuredText, numberText, withDecimal} from "./display"
import {isVague, measureOf, shownNumber, storedNumber, storedUnit, turned, withMoney} from "./measures"

/** What typed text means in a column, or the sentence that says why it cannot stand there. */
export type Entry = {readonly content: Content} | {readonly refused: string; readonly twoDays?: TwoDays}

/** A date that could be two, as in 3/4; its days as `functions/calendar.ts` counts them. */
export interface TwoDays {
  readonly written: string
  readonly dayFirst: number
  readonly monthFirst: number
}

/** How a text is read. */
interface Reading {
  readonly region?: Region
  /** The person was told that a formula reads two ways, and kept it as it stands. */
  readonly isSure?: boolean
  /** Whether a stored formula gives each function as many arguments as it takes. */
  readonly isWhole?: (formula: string) => boolean
}

/** A stored formula spelt as the engine spells it, or null when it is not one. */
type Normalize = (formula: string) => string | null

/**
 * Reads what a person typed into a cell. Numbers take the decimal sign of the region, thousands parted by spaces or the
 * other sign in proper groups, and behind them the unit that is shown or another of the same kind, which is turned into
 * the stored one; dates are taken in every form that has one meaning. Nothing is guessed: what could mean two things is
 * refused with both readings. `year` completes "25 Apr".
 * An apostrophe in front makes words of anything, except of a formula, and keeps spaces round them.
 */
export function readEntry(
  typed: string,
  column: CellColumn,
  year: number,
  normalize: Normalize,
  reading: Reading = {},
): Entry {
  const {region = PLAIN_REGION} = reading
  const text = typed.trim()
  if (text === "") return {content: null}
  const {words} = column.rule ?? {}
  if (words && !text.startsWith("=")) return readListed(text, column.heading, words)
  if (text.startsWith("'")) return readWords(typed.trimStart().slice(1))
  if (text.startsWith("=")) return readFormula(text, column, normalize, reading)
  if (column.holdsUnit) return {content: storedUnit(text, region)}
  if (column.format === "date" || column.format === "day") return readDate(text, column, year, region)
  const number = readNumber(text, column, region)
  if (number !== null) return typeof number === "number" ? within(number, column, region) : number
  if (holdsNumbers(column))
    return {refused: `“${text}” is not a number; ${column.heading} takes ${unitWords(column, region)}`}
  if (!holdsWords(column) && /^(true|false)$/i.test(text)) return {content: text.toLowerCase() === "true"}
  const tally = column.part === "spears by size" ? readTally(text) : null
  return isRefusal(tally) ? {refused: tally.refused} : {content: text}
}

/** What stands in the entry line for a content: what a person would type to get it. */
export function readsAs(
  content: Content,
  column: CellColumn | undefined,
  formula: string | null,
  region: Region = PLAIN_REGION,
): string {
  const decimal = region.decimal ?? "."
  if (formula !== null) return onScreen(formula, decimal)
  if (content === null) return ""
  if (typeof content === "boolean") return content ? "TRUE" : "FALSE"
  if (typeof content === "number") {
    const percent = withDecimal(`${Number((content * 100).toPrecision(15))}%`, decimal)
    if (column?.format === "share" && readNumber(percent, column, region) === content) return percent
    return withDecimal(String(shownNumber(content, measureOf(column?.unit, region))), decimal)
  }
  if (!column) return content
  if (column.holdsUnit) return measureOf(content, region).unit
  if (column.rule?.words) return content
  const back = readEntry(content, column, 0, () => null, {region})
  return "content" in back && back.content === content ? content : `'${content}`
}

function readListed(text: string, heading: string, words: readonly string[]): Entry {
  const found = words.find((word) => word.toLowerCase() === text.toLowerCase())
  if (found !== undefined) return {content: found}
  const listed = words.length > 6 ? `${words.slice(0, 6).join(", ")} and others` : words.join(", ")
  return {refused: `“${text}” is not in the list: ${heading} takes ${listed}. Alt and the arrow down open it`}
}

const readWords = (words: string): Entry =>
  words.startsWith("=")
    ? {refused: `“${words}” would be a formula; words begin with another sign than “=”`}
    : {content: words}

function readFormula(
  text: string,
  column: CellColumn,
  normalize: Normalize,
  {region = PLAIN_REGION, isSure = false, isWhole = () => true}: Reading,
): Entry {
  if (text === COLUMN_FORMULA)
    return column.formula === undefined ? {refused: "A formula is missing after “=”"} : {content: text}
  const decimal = region.decimal ?? "."
  const formula = readScreen(text, normalize, decimal)
  if (formula === null)
    return {refused: `This formula cannot be read: ${whatIsOff(text, normalize, decimal).words}`}
  const other = isSure ? null : otherReading(text, normalize, decimal, isWhole)
  return other === null
    ? {content: formula}
    : {
        refused: `“${text}” reads two ways: with a decimal comma it is ${text}, which a point writes ${formula}; with a comma between arguments it is ${other}. Type “;” between arguments, or press Enter again for the decimal comma`,
      }
}

function readScreen(text: string, normalize: Normalize, decimal: Decimal): string | null {
  const stored = fromScreen(text, decimal)
  return stored === null ? null : normalize(stored)
}

/**
 * Where decimals take a comma, the formula as it would be shown if its commas parted arguments; null where they cannot,
 * as in ABS(1,5), which takes one. A formula with ";" shows by itself what parts its arguments.
 */
function otherReading(
  text: string,
  normalize: Normalize,
  decimal: Decimal,
  isWhole: (formula: string) => boolean,
): string | null {
  if (decimal === "." || placedTokens(text, decimal).some((one) => one.text === ";")) return null
  const other = normalize(text)
  if (other === null || other === readScreen(text, normalize, decimal) || !isWhole(other)) return null
  return onScreen(other, decimal)
}

/** A formula that can only be read as it is written with the other sign before decimals, as it is written here; or null. */
function writtenElsewhere(text: string, normalize: Normalize, decimal: Decimal): string | null {
  const stored = readScreen(text, normalize, decimal === "." ? "," : ".")
  return stored === null ? null : onScreen(stored, decimal)
}

/** Something in a formula that is off: in words without a full stop, and where. */
export interface Trouble {
  readonly words: string
  readonly places: readonly Place[]
}

/**
 * What is off in a formula while it is typed: functions that do not exist, among the names of all `functions`, named
 * values and sheets that the document does not have, and why it could not be kept. Nothing for the sign "=" alone.
 */
export function troublesIn(
  text: string,
  normalize: Normalize,
  functions: ReadonlySet<string>,
  document: Document,
  decimal: Decimal = ".",
): readonly Trouble[] {
  if (!text.startsWith("=") || text.trim() === "=") return []
  const names = new Set(["true", "false", ...namesIn(document).map(({name}) => name.toLowerCase())])
  const sheets = new Set(document.sheets.map(({name}) => name.toLowerCase()))
  const missing = ({kind, text: piece}: Token): string | null => {
    if (kind === "function")
      return functions.has(piece.toUpperCase()) ? null : noFunction(piece.toUpperCase())
    if (kind === "name") return names.has(piece.toLowerCase()) ? null : `There is no named value ${piece}`
    const sheet = kind === "reference" ? referenceOf(piece).sheet : null
    return sheet === null || sheets.has(sheet.toLowerCase()) ? null : `There is no sheet ${sheet}`
  }
  const unknown = pieces(text, decimal).flatMap(({start, end, ...token}): Trouble[] => {
    const words = missing(token)
    return words === null ? [] : [{words, places: [{start, end}]}]
  })
  if (readScreen(text, normalize, decimal) !== null) return unknown
  const {words, places} = whatIsOff(text, normalize, decimal)
  return [...unknown, {words: words.replace(/^./, (letter) => letter.toUpperCase()), places}]
}

function whatIsOff(formula: string, normalize: Normalize, decimal: Decimal): Trouble {
  if (isTooIntricate(formula))
    return {
      words: "it is too long, or lies too deep in itself: put parts of it in cells of their own",
      places: [],
    }
  const all = pieces(formula, decimal)
  const texts = all.filter(({kind}) => kind === "text")
  const unclosed = texts.filter(({text}) => (text.match(/"/g) ?? []).length % 2)
  if (unclosed.length) return {words: "a quotation mark is not closed", places: unclosed}
  const sign = (start: number) => ({start, end: start + 1})
  const brackets = bracketsIn(formula, decimal)
  const [open, extra] = [brackets.unclosed.length, brackets.extra.length]
  if (open > 0)
    return {
      words: `${open} bracket${open > 1 ? "s are" : " is"} not closed`,
      places: brackets.unclosed.map(sign),
    }
  if (extra > 0)
    return {words: `${extra} bracket${extra > 1 ? "s" : ""} too many`, places: brackets.extra.map(sign)}
  if (hasCellInBraces(fromScreen(formula, decimal) ?? formula))
    return {words: "an array in braces takes numbers and words, not cells or names", places: []}
  const elsewhere = writtenElsewhere(formula, normalize, decimal)
  const meant = elsewhere === null ? "" : ` (did you mean ${elsewhere}?)`
  if (decimal === "." && all.some(({text}) => text === ";"))
    return {
      words: `arguments are parted by commas here, not by “;”${meant}`,
      places: all.filter(({text}) => text === ";"),
    }
  const last = all.at(-1)
  if (last?.kind === "sign" && (/^[-+*/^&=<>]/.test(last.text) || last.text === argumentSign(decimal)))
    return {words: `something is missing after “${last.text}”`, places: [last]}
  const foreign = all.filter(({kind, text}) => kind === "unknown" && (text === "." || text === ","))
  if (decimal === "," && (elsewhere !== null || foreign.length))
    return {words: `decimals take a comma here, and arguments are parted by “;”${meant}`, places: foreign}
  return {words: "check its signs and commas", places: []}
}

const pieces = (formula: string, decimal: Decimal) =>
  placedTokens(formula, decimal).filter(({kind}) => kind !== "space")

/** Whether the column is for words alone. One with a rule holds numbers shown as they are typed, such as years. */
const holdsWords = ({format, rule}: CellColumn) =>
  rule?.words !== undefined || (format === "text" && rule === undefined)

const holdsNumbers = (column: CellColumn) => {
  const {format, unit, kind, rule} = column
  if (holdsWords(column)) return false
  const counts = typeof format === "number" || format === "share" || rule !== undefined
  return counts || (unit !== undefined && kind !== "worked out")
}

const unitWords = ({unit, format}: CellColumn, region: Region) => {
  const decimal = region.decimal ?? "."
  if (format === "share") return `a share such as 86 % or ${withDecimal("0.86", decimal)}`
  const asPercent = unit?.startsWith("share/") ? `, such as ${withDecimal("0.068 or 6.8", decimal)} %` : ""
  return unit ? `a number in ${measureOf(unit, region).unit}${asPercent}` : "a number"
}

const GROUPED = /^[1-9]\d{0,2}([ ,'])\d{3}(\1\d{3})*(\.\d+)?$/

/** A number as it is stored, a refusal, or null when the text is not like a number at all. */
function readNumber(text: string, column: CellColumn, region: Region): number | {refused: string} | null {
  const measure = measureOf(column.unit, region)
  const bare = withoutCurrency(text, column, region)
  const inches = measure.unit === "in" ? readFraction(bare) : null
  if (inches !== null) return storedNumber(inches, measure)
  const parts =
    /^([-+\u2212]?)((?:\d|[.,]\d)[\d.,\s'\u2019]*?(?:[eE][-+]?\d+)?)\s*([^\d\s.,'\u2019].*)?$/.exec(bare)
  if (!parts || holdsWords(column)) return null
  const [, sign, written, typedUnit = ""] = parts
  // From here on with a point before decimals, as it is stored.
  const digits = swapped(written!.replace(/\s/g, " ").replaceAll("\u2019", "'").trim(), region)
  const hasSign = bare !== text
  const unit = withMoney(
    hasSign && typedUnit.startsWith("/") ? region.currency + typedUnit : typedUnit,
    region,
  )
  const isShown = typedUnit === "" || typedUnit === measure.unit
  const isPercent = unit === "%" ? takesPercent(column) : unit.startsWith("%") && unit === percentOf(column)
  const turn = (value: number): number | null => {
    if (isShown) return storedNumber(value, measure)
    if (isPercent) return value
    return isVague(unit, region) ? null : turned(value, unit, column.unit ?? "")
  }
  const isUnit = turn(1) !== null
  const refusedHere = (refused: string) => (isUnit || holdsNumbers(column) ? {refused} : null)
  if (/^\d+,\d+$/.test(digits) && !GROUPED.test(digits)) {
    const readings = [digits.replace(",", "."), digits.replace(",", "").replace(/^0+(?=\d)/, "")]
    const [decimal, group] = region.decimal === "," ? ["comma", "point"] : ["point", "comma"]
    return refusedHere(
      `“${swapped(digits, region)}” could be ${readings.map((one) => swapped(one, region)).join(" or ")}; type a ${decimal} for decimals, or leave the ${group} out`,
    )
  }
  const plain = GROUPED.test(digits) ? digits.replace(/[ ,']/g, "") : digits
  if (!/^(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?$/.test(plain) || (/\d/.test(unit) && !isUnit))
    return holdsNumbers(column) ? {refused: `“${text}” is not one number`} : null
  if (!isUnit)
    return refusedHere(
      `“${typedUnit}” is not the unit here: ${column.heading} takes ${unitWords(column, region)}`,
    )
  const value = turn(signed(isPercent ? hundredth(plain) : Number(plain), sign!))!
  return Number.isFinite(value) ? value : {refused: `“${text}” is too large`}
}

/** Point and comma change places where decimals take a comma. */
const swapped = (text: string, {decimal}: Region) =>
  decimal === "," ? text.replace(/[.,]/g, (sign) => (sign === "." ? "," : ".")) : text

/** Money may have its sign in front: "$ 2.10". */
function withoutCurrency(text: string, {unit}: CellColumn, {currency}: Region): string {
  const isMoney = currency !== undefined && unit?.startsWith("money") && text.startsWith(currency)
  return isMoney ? text.slice(currency.length).trimStart() : text
}

/** Inches as a rule has them: "7/16", "1 3/8 in". */
function readFraction(text: string): number | null {
  const found = /^(?:(\d+)[\s-]+)?(\d+)\/(2|4|8|16|32|64)(?:\s*in)?$/.exec(text)
  return found && Number(found[1] ?? 0) + Number(found[2]) / Number(found[3])
}

/** A share, and a share of a time, such as the rate of a loan, may be typed as a percentage; so may a number without a unit. */
const takesPercent = (column: CellColumn) =>
  column.format === "share" || column.unit === undefined || percentOf(column) !== null

/** "%" for a share, "%/year" for a share a year; null for another unit. */
const percentOf = ({unit}: Pick<CellColumn, "unit">) =>
  /^share(\/|$)/.test(unit ?? "") ? unit!.replace("share", "%") : null

/** Moves the point instead of dividing, so that 12.3 % is 0.123. */
const hundredth = (plain: string) => (/e/i.test(plain) ? Number(plain) / 100 : Number(`${plain}e-2`))

const signed = (value: number, sign: string) =>
  value !== 0 && (sign === "-" || sign === "\u2212") ? -value : value

function within(value: number, {heading, unit, rule, format}: CellColumn, region: Region): Entry {
  const {least, most} = rule ?? {}
  const decimal = region.decimal ?? "."
  const measure = measureOf(unit, region)
  const shown = (n: number) => {
    if (format === "share") return `${numberText(n * 100, undefined, decimal)} %`
    if (format === "text") return `${withDecimal(String(n), decimal)}${unit ? ` ${unit}` : ""}`
    return `${measuredText(n, measure, undefined, region)}${measure.unit ? ` ${measure.unit}` : ""}`
  }
  // A limit in other units is rounded: what reads as the limit is taken.
  const readsAsLimit = (limit: number) => measure.factor !== 1 && shown(value) === shown(limit)
  if (least !== undefined && value < least && !readsAsLimit(least))
    return {refused: `${heading} ${shown(value)} is below ${shown(least)}`}
  if (most !== undefined && value > most && !readsAsLimit(most)) {
    // A point was forgotten, or the sign behind a share.
    const isShare = format === "share" || percentOf({unit}) !== null
    const meant = isShare ? hundredth(String(value)) : storedNumber(shownNumber(value, measure) / 10, measure)
    const guess = (least ?? -Infinity) <= meant && meant <= most ? ` (did you mean ${shown(meant)}?)` : ""
    return {refused: `${heading} ${shown(value)} is above ${shown(most)}${guess}`}
  }
  return {content: value}
}

const MONTH_NAMES =
  "january february march april may june july august september october november december".split(" ")

/** A day as other programs write it, with the time at which it begins. */
const MIDNIGHT = /(?<=\d)[T\s]\s*00?:00(:00(\.0+)?)?$/

function readDate(text: string, column: CellColumn, year: number, {dates}: Region): Entry {
  const read = dateIn(text.replace(MIDNIGHT, ""), year, dates)
  if (read === null) return {refused: `“${text}” is not a date; type 25 Apr or 2026-04-25`}
  if (typeof read === "object") {
    const [one, other] = [dateText(read.dayFirst), dateText(read.monthFirst)]
    return {refused: `“${text}” could be ${one} or ${other}; type the month in letters`, twoDays: read}
  }
  const [least, most] = [column.rule?.least ?? FIRST_DAY, column.rule?.most ?? LAST_DAY]
  if (read < least || read > most)
    return {refused: `${column.heading} ${dateText(read)} is outside ${dateText(least)} to ${dateText(most)}`}
  return {content: isoOf(read)}
}

/** The day, a sentence when the text has two meanings, or null when it is no date. */
function dateIn(text: string, year: number, order: Region["dates"]): number | TwoDays | null {
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
  if (dayFirst !== null && monthFirst !== null && a !== b) {
    if (order) return order === "day first" ? dayFirst : monthFirst
    return {written: text, dayFirst, monthFirst}
  }
  return dayFirst ?? monthFirst
}

const swap = (found: RegExpExecArray | null) => found && [found[0], found[2], found[1], found[3]]

const fullYear = (written: string | undefined, year: number) =>
  written === undefined ? year : written.length === 2 ? 2000 + Number(written) : Number(written)

const day = (year: number, month: number, date: number) =>
  dayOf(`${year}-${String(month).padStart(2, "0")}-${String(date).padStart(2, "0")}`)
