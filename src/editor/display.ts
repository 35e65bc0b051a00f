import {isoOf, LAST_DAY} from "../../functions/calendar"
import {MONTHS} from "../workbook/clock"
import {isRate, type Region} from "../workbook/document"
import {PLAIN_REGION, type Decimal} from "../workbook/region"
import {isFault, type Fault, type Value} from "../workbook/value"
import type {CellColumn} from "./cellColumn"
import {measureOf, shownNumber, type Measure} from "./measures"

/** "25 Apr 2026": the month in letters, so that no one asks which number is the day. */
export const dateText = (day: number) =>
  isDay(day) ? `${dayText(day)} ${isoOf(day).slice(0, 4)}` : numberText(day)

/** "25 Apr"; a number outside the calendar, which a formula can give, stays a number. */
export function dayText(day: number) {
  if (!isDay(day)) return numberText(day)
  const [, month, date] = isoOf(day).split("-")
  return `${Number(date)} ${MONTHS[Number(month) - 1]}`
}

const isDay = (day: number) => day >= 0 && day < LAST_DAY + 1

/** A number with its thousands parted by a thin space and a fixed count of decimals, or as many as it has up to 9. */
export function numberText(value: number, decimals?: number, decimal: Decimal = "."): string {
  const form = `${decimals}${decimal}`
  const known = texts.get(form) ?? new Map<number, string>()
  const text = known.get(value) ?? formatted(value, decimals, decimal)
  if (known.size >= MOST_TEXTS) known.clear()
  known.set(value, text)
  texts.set(form, known)
  return text
}

/** Texts of numbers that were shown, by their form: a sheet that is drawn again asks for the same, and to format takes long. */
const texts = new Map<string, Map<number, string>>()
const MOST_TEXTS = 10_000 // of each form; chosen

function formatted(value: number, decimals: number | undefined, decimal: Decimal): string {
  if (decimals === undefined && value !== 0 && Math.abs(value) < 1e-6)
    return withDecimal(String(value).replaceAll("-", "\u2212"), decimal)
  const format = decimals === undefined ? plain : fixed(decimals)
  const text = format
    .format(value)
    .replaceAll(",", "\u202f")
    .replace(/^-/, "\u2212")
    .replace(/^\u2212(0(\.0*)?)$/, "$1")
  return withDecimal(text, decimal)
}

/** A share as a percentage; `decimals` "needed" are as many as it has, two at the most. */
export function percentText(share: number, decimals: number | "needed" = 0, decimal: Decimal = "."): string {
  const percent = share * 100
  const number =
    decimals === "needed"
      ? numberText(Math.round(percent * 100) / 100, undefined, decimal)
      : numberText(percent, decimals, decimal)
  return `${number}\u202f%`
}

/** A number written with a point, with the sign of the region before its decimals. */
export const withDecimal = (text: string, decimal: Decimal) =>
  decimal === "." ? text : text.replace(".", decimal)

/**
 * A stored number as a region shows it, without its unit. Where the column asks for no count of decimals, what is turned
 * into other units has two digits more than are stored, from four to seven: chosen, so that 0.95 does not look surer in
 * another unit, and what was typed in that unit, which is stored with many digits, reads as typed.
 */
export function measuredText(value: number, measure: Measure, decimals: number | undefined, region: Region) {
  const decimal = region.decimal ?? "."
  const {factor, offset, moreDecimals} = measure
  if (factor === 1 && offset === 0) return numberText(value, decimals, decimal)
  const shown = shownNumber(value, measure)
  if (decimals !== undefined) return numberText(shown, decimals + moreDecimals, decimal)
  const digits = Math.max(4, Math.min(7, digitsOf(value) + 2))
  const isLong = Math.abs(shown) >= 10 ** (digits - 1)
  return numberText(isLong ? Number(shown.toFixed(1)) : Number(shown.toPrecision(digits)), undefined, decimal)
}

/** How many digits a number is written with, noughts at its ends left out. */
const digitsOf = (value: number) =>
  String(Math.abs(value))
    .replace(/e.*$/, "")
    .replace(".", "")
    .replace(/^0+|0+$/g, "").length

/**
 * The words for a limit of the plan that has no day: whether a measurement lacks, or there is one and it leads to none, such as
 * spears that do not get thinner. Without a reason it is taken for not measured.
 */
export const withoutDay = (why?: Fault): string =>
  why && !NOTHING_THERE.test(why.reason) ? "no day yet" : "not measured yet"

/** What NA(), a range without a measurement and our own functions give for a reason where a measurement lacks. */
const NOTHING_THERE = /^$|^Empty range|not measured yet/

/** Whether a cell is a limit of the plan that has no day. */
export const isUnknownLimit = (value: Value, column?: Pick<CellColumn, "part">): boolean =>
  (column?.part === "limit" || column?.part === "limit by") && isFault(value) && value.code === "#N/A"

/** What a cell shows. An error shows its code, a limit without a day words; `sentenceOf` in workbook/faults.ts has its words. */
export function textOf(
  value: Value,
  column?: Pick<CellColumn, "format" | "unit" | "holdsUnit" | "part">,
  isDate = false,
  region: Region = PLAIN_REGION,
): string {
  if (value === null) return ""
  if (isFault(value)) {
    if (!isUnknownLimit(value, column)) return value.code
    return column?.part === "limit by" ? "not yet" : withoutDay(value) // the limit beside it says what lacks
  }
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE"
  if (typeof value === "string") {
    if (column?.part === "page text") return sentenceText(value, region)
    return column?.holdsUnit ? measureOf(value, region).unit : value
  }
  const format = column?.format
  if (format === "date" || (format !== "day" && isDate)) return dateText(value)
  if (format === "day") return dayText(value)
  const decimal = region.decimal ?? "."
  if (format === "share") return percentText(value, isRate(column) ? "needed" : 0, decimal)
  // A year, or a number that names something: no groups.
  if (format === "text") return withDecimal(String(value), decimal)
  return measuredText(
    value,
    measureOf(column?.unit, region),
    typeof format === "number" ? format : undefined,
    region,
  )
}

/** What a cell shows with its unit beside it, for sentences: "409 mg/g", "6 Jun 2026". */
export function textWithUnit(
  value: Value,
  column: CellColumn | undefined,
  isDate = false,
  region: Region = PLAIN_REGION,
): string {
  const dated = column?.format === "day" ? ({...column, format: "date"} as const) : column
  const text = textOf(value, dated, isDate, region)
  const format = dated?.format
  const counted = typeof value === "number" && !isDate && format !== "date" && format !== "share"
  return counted && column?.unit ? `${text}\u00a0${measureOf(column.unit, region).unit}` : text
}

/** How far two numbers of a column lie apart, with the unit: 10 °C apart is 18 °F, without the zero of the scale. */
export function differenceText(apart: number, column: CellColumn | undefined, region: Region): string {
  const measure = {...measureOf(column?.unit, region), offset: 0}
  if (measure.factor === 1) return textWithUnit(Math.abs(apart), column, false, region)
  const decimals = typeof column?.format === "number" ? column.format : undefined
  return `${measuredText(Math.abs(apart), measure, decimals, region)}\u00a0${measure.unit}`
}

/** How far a change moved a number of a column, with its sign: "−1.2 t", "+3 d"; null where the decimals shown show none of it. */
export function shiftText(
  by: number,
  isDate: boolean,
  column: CellColumn | undefined,
  region: Region,
): string | null {
  const size = isDate ? `${numberText(Math.abs(by))}\u202fd` : differenceText(by, column, region)
  return /[1-9]/.test(size) ? `${by > 0 ? "+" : "\u2212"}${size}` : null
}

/** How the numbers of one unit are shown in a region: the unit's name, a number in it, and that as a text. */
export function shownIn(unit: string, region: Region = PLAIN_REGION) {
  const measure = measureOf(unit, region)
  return {
    unit: measure.unit,
    number: (stored: number) => shownNumber(stored, measure),
    text: (stored: number, decimals?: number) => measuredText(stored, measure, decimals, region),
  }
}

/** A weight of a crop, to a decimal of a tonne or ton, and the word that goes with it: "4.4", "tons". */
export function inTonnes(
  kg: number,
  decimals: number,
  region: Region = PLAIN_REGION,
): readonly [string, string] {
  const {unit, text} = shownIn("t", region)
  const shown = text(kg / 1000, decimals)
  return [shown, counted(shown, unit)]
}

const counted = (shown: string, unit: string) =>
  unit === "ton" && !/^1([.,]0+)?$/.test(shown) ? "tons" : unit

/** A number as a formula writes it, with what may be its unit: "96.7 t", "3.04 per packed kg". Behind a capital it is part of a name. */
const WRITTEN =
  /(?<![\p{L}\d.,])(?<!\p{Lu}\S*\s)(\u2212?)(\d{1,3}(?:\u202f\d{3})+|\d+)(\.\d+)?(?:(\s(?:per packed |per )?)([\p{L}°](?:[^\s,;:]*[^\s,;:.])?))?/gu

/**
 * A sentence that a formula puts together, as a region shows it: the formula writes its numbers as they are stored, in
 * metric measures with a decimal point. Each keeps its count of decimals; what is "per kg" is turned by the weight.
 */
export function sentenceText(sentence: string, region: Region): string {
  const {decimal = ".", measures} = region
  if (decimal === "." && measures !== "US") return sentence
  return sentence.replace(WRITTEN, (_, sign: string, whole: string, part = "", gap = "", name = "") => {
    const per = gap.length > 1 ? "per " : ""
    const measure = measureOf(per + name, measures ? {measures} : PLAIN_REGION)
    if (measure.unit === per + name) return withDecimal(sign + whole + part, decimal) + gap + name
    const stored = Number(`${sign && "-"}${whole.replaceAll("\u202f", "")}${part}`)
    const decimals = Math.max(0, part.length - 1) + measure.moreDecimals
    const shown = numberText(shownNumber(stored, measure), decimals, decimal)
    return shown + gap + counted(shown, measure.unit.slice(per.length))
  })
}

/** A stored quantity in a sentence, with its unit: "2 000 kg/ha", "1 784 lb/ac". */
export function quantityText(value: number, decimals: number, unit: string, region: Region): string {
  const measure = measureOf(unit, region)
  return `${measuredText(value, measure, decimals, region)}${measure.unit ? ` ${measure.unit}` : ""}`
}

const plain = new Intl.NumberFormat("en-GB", {maximumFractionDigits: 9})
const fixedFormats = new Map<number, Intl.NumberFormat>()
function fixed(decimals: number) {
  const held = fixedFormats.get(decimals)
  if (held) return held
  const made = new Intl.NumberFormat("en-GB", {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  })
  fixedFormats.set(decimals, made)
  return made
}
