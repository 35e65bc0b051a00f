/**
 * Days as whole numbers, counted from 1899-12-30 (day 0, the null date of OpenFormula hosts).
 * All in universal time, so no time zone can move a day.
 */
const DAY = 86_400_000
const ZERO = Date.UTC(1899, 11, 30)

/** First and last day of OpenFormula's date range (OASIS 2011, 4.3.3): 1904-01-01 and 9999-12-31. */
export const FIRST_DAY = 1462
export const LAST_DAY = 2958465

/** The day of an ISO text such as "2026-04-25", or null when the text is no such day. */
export function dayOf(iso: string): number | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso)
  if (!parts) return null
  const [year, month, date] = [Number(parts[1]), Number(parts[2]), Number(parts[3])]
  const time = Date.UTC(year, month - 1, date)
  const back = new Date(time)
  // Date.UTC moves 2026-02-30 to March and the years 0 to 99 to 1900 to 1999.
  if (back.getUTCFullYear() !== year || back.getUTCMonth() !== month - 1 || back.getUTCDate() !== date)
    return null
  return Math.round((time - ZERO) / DAY)
}

/** The ISO text of a day: 46137 gives "2026-04-25". A part of a day is left off. */
export const isoOf = (day: number): string =>
  new Date(ZERO + Math.floor(day) * DAY).toISOString().slice(0, 10)

/** The year, month (1 to 12) and day of the month of a day. */
export function dateOf(day: number): {year: number; month: number; date: number} {
  const date = new Date(ZERO + Math.floor(day) * DAY)
  return {year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, date: date.getUTCDate()}
}

/** The day of a date whose month and day of the month may run over: day 0 is the last of the month before. */
export const dayOn = (year: number, month: number, date: number): number =>
  Math.round((Date.UTC(year, month - 1, date) - ZERO) / DAY)

/** The day some months later or, below 0, earlier; the last of its month where that is shorter. */
export function monthsLater(day: number, months: number): number {
  const {year, month, date} = dateOf(day)
  return Math.min(dayOn(year, month + months, date), dayOn(year, month + months + 1, 0))
}

export const yearOf = (day: number): number => dateOf(day).year

/** Days from 1 January on, counted from 1: 1 January is day 1. */
export const dayOfYear = (day: number): number => Math.floor(day) - dayOn(yearOf(day), 1, 1) + 1

/** The year that a model runs in: 365 or 366 days from the first of a month. */
export interface ModelYear {
  readonly first: number
  readonly days: number
}

/** The model year that holds a day, when it starts with that month (1 to 12). */
export function modelYearOf(day: number, startMonth: number): ModelYear {
  const start = (year: number) => dayOn(year, startMonth, 1)
  const year = yearOf(day) - (day < start(yearOf(day)) ? 1 : 0)
  return {first: start(year), days: start(year + 1) - start(year)}
}
