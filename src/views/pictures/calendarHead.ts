import {isoOf, yearOf} from "../../../functions/calendar"
import {dayText} from "../../editor/display"
import {EDGE, xOfDay, type Axis, type Words} from "./calendarPlace"
import {textWidth} from "./placing"
import {isoWeekOf} from "./weeks"

export interface HeadLines {
  readonly asOf: number
  readonly week: number
  readonly month: number
  readonly date: number
}

/** A Monday. Words that have no room are null. */
export interface CalendarWeek {
  readonly day: number
  readonly week: number
  readonly x: number
  readonly date: string | null
  readonly number: string | null
  readonly month: string | null
}

export interface AsOfLine {
  readonly x: number
  /** Whether the day is beyond an end of the axis; then there are words, but no line. */
  readonly beyond: boolean
  readonly words: Words
}

/** Four lines of words, the lowest 8 px above the rows. */
export function headLines(headHeight: number): HeadLines {
  const pitch = Math.min(16.5, (headHeight - 20) / 3)
  const date = headHeight - 8
  return {date, month: date - pitch, week: date - 2 * pitch, asOf: date - 3 * pitch}
}

export function weeksOf(axis: Axis, width: number): CalendarWeek[] {
  const mondays = Array.from({length: (axis.end - axis.first) / 7}, (_, index) => axis.first + index * 7)
  const every = Math.ceil((textWidth("w00") + 4) / (axis.perDay * 7))
  const years = yearOf(axis.first) !== yearOf(axis.end - 1)
  const monthOf = (day: number) => isoOf(day).slice(0, 7)
  const named = mondays.filter((day, index) => index === 0 || monthOf(day) !== monthOf(day - 7))
  const monthWords = (day: number) => {
    const month = dayText(day).split(" ")[1]!
    const newYear = years && (day === axis.first || yearOf(day) !== yearOf(day - 7))
    return newYear ? [`${month} ${yearOf(day)}`, month] : [month]
  }
  return mondays.map((day, index) => {
    const x = xOfDay(axis, day)
    const fits = (text: string, next = Infinity) => x + 3 + textWidth(text) <= Math.min(width, next)
    const date = dayText(day).split(" ")[0]!
    const week = isoWeekOf(day)
    const number = index === 0 ? `w${week}` : String(week)
    const months = named.includes(day) ? monthWords(day) : []
    const nextNamed = named.find((other) => other > day)
    const nextX = nextNamed === undefined ? Infinity : xOfDay(axis, nextNamed)
    const labelled = index % every === 0
    return {
      day,
      week,
      x,
      date: labelled && fits(date) ? date : null,
      number: labelled && fits(number) ? number : null,
      month: months.find((month) => fits(month, nextX)) ?? null,
    }
  })
}

/** The line stands at the beginning of the day: what is left of it is past. */
export function asOfLine(axis: Axis, day: number, y: number, width: number): AsOfLine {
  const before = day < axis.first
  const beyond = before || day > axis.end
  const x = beyond ? (before ? EDGE : width - EDGE) : xOfDay(axis, day)
  const plain = `as of ${dayText(day)}`
  const text = beyond ? (before ? `\u2190 ${plain}` : `${plain} \u2192`) : plain
  const end = x + 4 + textWidth(text) > width
  return {x, beyond, words: {text, x: end ? x - 4 : x + 4, y, end}}
}
