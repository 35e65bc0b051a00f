import {isoOf, LAST_DAY} from "../../functions/calendar"
import type {Column} from "../workbook/document"
import {isFault, type Value} from "../workbook/value"

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]

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
export function numberText(value: number, decimals?: number): string {
  if (decimals === undefined && value !== 0 && Math.abs(value) < 1e-6)
    return String(value).replaceAll("-", "\u2212")
  const format = decimals === undefined ? plain : fixed(decimals)
  return format
    .format(value)
    .replaceAll(",", "\u202f")
    .replace(/^-/, "\u2212")
    .replace(/^\u2212(0(\.0*)?)$/, "$1")
}

/** What a cell shows. An error shows its code; `sentenceOf` in workbook/faults.ts has its words. */
export function textOf(value: Value, format?: Column["format"], isDate = false): string {
  if (value === null) return ""
  if (isFault(value)) return value.code
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE"
  if (typeof value === "string") return value
  if (format === "date" || (format !== "day" && isDate)) return dateText(value)
  if (format === "day") return dayText(value)
  if (format === "share") return `${numberText(value * 100, 0)}\u202f%`
  if (format === "text") return String(value) // a year, or a number that names something: no groups
  return numberText(value, typeof format === "number" ? format : undefined)
}

/** What a cell shows with its unit beside it, for sentences: "409 mg/g", "6 Jun 2026". */
export function textWithUnit(value: Value, column: Column | undefined, isDate = false): string {
  const format = column?.format === "day" ? "date" : column?.format
  const text = textOf(value, format, isDate)
  const counted = typeof value === "number" && !isDate && format !== "date" && format !== "share"
  return counted && column?.unit ? `${text}\u00a0${column.unit}` : text
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
