import {isoOf, yearOf} from "../../../functions/calendar"
import {dayText} from "../../editor/display"
import type {Plan} from "../../workbook/plan"
import {calendarSentence, seasonOf, weightText, type Season} from "./calendarWords"
import {shapeOf} from "./limitShapes"
import {boxAround, clearest, fitted, overlaps, textWidth, LETTER, type Box} from "./placing"
import {isoWeekOf, mondayOf} from "./weeks"

export {calendarFinding, calendarSentence, calendarTable} from "./calendarWords"

export interface CalendarOptions {
  /** px, of the whole picture. */
  readonly width: number
  /** px above the first row, as high as the sheet's headings. Below about 62 its lines come close. */
  readonly headHeight?: number
  /** px, as high as a row of the sheet. */
  readonly rowHeight?: number
  /** The selected row, by its position in the sheet. */
  readonly selected?: number | null
  /**
   * "beside": names stand in the sheet at the left, so that each planting keeps the height of its row in the sheet.
   * "inside": the picture stands alone, without gaps, and prints each name above its bar.
   */
  readonly labels?: "beside" | "inside"
  /** Rows of the sheet, where it has blank ones below the last planting. The farm stands under them all. */
  readonly sheetRows?: number
}

/** Where everything of the season calendar stands, px from the upper left corner. Days as in functions/calendar.ts. */
export interface CalendarLayout {
  readonly width: number
  readonly height: number
  readonly headHeight: number
  /** Base lines of the words in the head. */
  readonly lines: HeadLines
  /** From the first day to the day after the last; null when no day is known. */
  readonly axis: {readonly first: number; readonly end: number; readonly perDay: number} | null
  readonly weeks: readonly CalendarWeek[]
  readonly asOf: AsOfLine | null
  readonly rows: readonly CalendarRow[]
  readonly farm: FarmRow
}

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

export interface Words {
  readonly text: string
  readonly x: number
  /** Of the base line. */
  readonly y: number
  readonly end: boolean
}

export interface Span {
  readonly x: number
  readonly width: number
}

export interface CalendarMark {
  readonly name: string
  readonly day: number
  readonly x: number
  readonly y: number
  /** The middle of its day; another x than its own where it had to step aside. */
  readonly dayX: number
  readonly radius: number
  readonly binding: boolean
  /** Its day is before or after the axis, so it stands at the edge. */
  readonly beyond: "before" | "after" | null
}

export interface CalendarRow {
  /** Position in the sheet. */
  readonly row: number
  readonly planting: string
  readonly sentence: string
  readonly selected: boolean
  readonly y: number
  readonly height: number
  /** The middle line of the bar. */
  readonly middle: number
  /** The part of the bar before the as-of day. */
  readonly past: Span | null
  readonly toCome: Span | null
  /** From the close to the next limit. */
  readonly tail: Span | null
  readonly marks: readonly CalendarMark[]
  readonly name: Words | null
  /** What holds the close, or why there are no days of cutting. */
  readonly words: Words | null
  readonly cut: boolean
}

export interface FarmRow {
  readonly y: number
  readonly height: number
  readonly base: number
  readonly name: Words | null
  readonly bars: readonly DailyBar[]
  readonly peak: Words | null
}

export interface DailyBar extends Span {
  readonly day: number
  readonly kg: number
  readonly y: number
  readonly height: number
  readonly past: boolean
}

/** px kept free at both ends of the axis, so that the largest mark is never cut. Chosen. */
const EDGE = 10
/** Chosen: a season longer than this cannot be read by the day; what is beyond stands at the edge. */
const MOST_WEEKS = 30
const BAR = 9
/** Radius of a small mark and of the one that holds, px in a row of 36 px. */
const SMALL = 3.9
const LARGE = 7
/** px by which two marks may touch before one moves. */
const TOUCH = 0.15
/** px kept free beside words. */
const BESIDE = 4

export function seasonCalendar(plan: Plan, options: CalendarOptions): CalendarLayout {
  const {width, headHeight = 70, rowHeight = 36, selected = null, labels = "beside"} = options
  const seasons = plan.rows.map(seasonOf)
  const axis = axisOf(seasons, width)
  const inside = labels === "inside"
  const lines = inside
    ? seasons.length
    : Math.max(options.sheetRows ?? 0, ...seasons.map(({row}) => row.row + 1), 0)
  const asOf = plan.asOf === null ? null : Math.floor(plan.asOf)
  const head = headLines(headHeight)
  const rows = seasons.map((season, index) => {
    const top = headHeight + (inside ? index : season.row.row) * rowHeight
    return rowOf(season, {axis, top, rowHeight, width, inside, asOf, selected})
  })
  const farmTop = headHeight + lines * rowHeight
  return {
    width,
    height: farmTop + rowHeight,
    headHeight,
    lines: head,
    axis,
    weeks: axis ? weeksOf(axis, width) : [],
    asOf: axis && asOf !== null ? asOfLine(axis, asOf, head.asOf, width) : null,
    rows,
    farm: farmRow(plan, {axis, top: farmTop, rowHeight, width, inside, asOf}),
  }
}

type Axis = NonNullable<CalendarLayout["axis"]>

/** The left edge of a day. */
export const xOfDay = (axis: Axis, day: number): number => EDGE + (day - axis.first) * axis.perDay

/** Whole weeks from the earliest opening or mark to the latest, at most MOST_WEEKS. */
function axisOf(seasons: readonly Season[], width: number): Axis | null {
  const days = seasons.flatMap(({opens, closes, row}) =>
    [opens, closes, ...row.limits.map(({day}) => day)].filter((day) => day !== null).map(Math.floor),
  )
  if (days.length === 0) return null
  const last = Math.max(...days)
  let first = mondayOf(Math.min(...days))
  let end = mondayOf(last) + 7
  if (end - first > MOST_WEEKS * 7) {
    first = mondayOf(fullestStart(seasons, days))
    end = Math.min(first + MOST_WEEKS * 7, end)
  }
  return {first, end, perDay: Math.max(width - 2 * EDGE, 1) / (end - first)}
}

/** The day from which MOST_WEEKS hold the most openings and closes, so that one slip in a date hides no season. */
function fullestStart(seasons: readonly Season[], days: readonly number[]) {
  const ends = seasons.flatMap(({opens, closes}) => [opens, closes].filter((day) => day !== null))
  const starts = (ends.length > 0 ? ends : [...days]).sort((a, b) => a - b)
  const held = (start: number) =>
    starts.filter((day) => day >= start && day < mondayOf(start) + MOST_WEEKS * 7).length
  return starts.reduce((best, start) => (held(start) > held(best) ? start : best))
}

/** Four lines of words, the lowest 8 px above the rows. */
function headLines(headHeight: number): HeadLines {
  const pitch = Math.min(16.5, (headHeight - 20) / 3)
  const date = headHeight - 8
  return {date, month: date - pitch, week: date - 2 * pitch, asOf: date - 3 * pitch}
}

function weeksOf(axis: Axis, width: number): CalendarWeek[] {
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
function asOfLine(axis: Axis, day: number, y: number, width: number): AsOfLine {
  const before = day < axis.first
  const beyond = before || day > axis.end
  const x = beyond ? (before ? EDGE : width - EDGE) : xOfDay(axis, day)
  const plain = `as of ${dayText(day)}`
  const text = beyond ? (before ? `\u2190 ${plain}` : `${plain} \u2192`) : plain
  const end = x + 4 + textWidth(text) > width
  return {x, beyond, words: {text, x: end ? x - 4 : x + 4, y, end}}
}

interface Place {
  readonly axis: Axis | null
  readonly top: number
  readonly rowHeight: number
  readonly width: number
  readonly inside: boolean
  readonly asOf: number | null
}

function rowOf(season: Season, place: Place & {readonly selected: number | null}): CalendarRow {
  const {axis, top, rowHeight, width, inside, asOf, selected} = place
  const {row, opens, closes} = season
  const scale = Math.min(1, rowHeight / 36)
  const middle = top + rowHeight * 0.628
  const baseLine = middle - 11 * scale
  const bar = axis && opens !== null && closes !== null ? barOf(axis, opens, closes, asOf) : null
  const marks = axis ? marksOf(season, {axis, top, rowHeight, middle, scale, bar, width}) : []
  const name: Words | null = inside
    ? {text: fitted(row.planting, width / 2), x: 2, y: baseLine, end: false}
    : null
  const tailEnd = season.next && closes !== null && season.next.day > closes ? season.next.day : null
  return {
    row: row.row,
    planting: row.planting,
    sentence: calendarSentence(row),
    selected: row.row === selected,
    y: top,
    height: rowHeight,
    middle,
    past: bar?.past ?? null,
    toCome: bar?.toCome ?? null,
    tail: axis && closes !== null && tailEnd !== null ? spanOf(axis, closes + 0.5, tailEnd + 0.5) : null,
    marks,
    name,
    words: wordsOf(season, {...place, baseLine, middle, bar, marks, name}),
    cut: closes !== null,
  }
}

const onAxis = (axis: Axis, day: number) => Math.min(Math.max(day, axis.first), axis.end)

/** The part of a stretch of days that is on the axis, or null when none of it is. */
function spanOf(axis: Axis, from: number, to: number): Span | null {
  const x = xOfDay(axis, onAxis(axis, from))
  const width = xOfDay(axis, onAxis(axis, to)) - x
  return width > 0 ? {x, width} : null
}

/** Both ends are days of cutting, so the bar runs to the end of the last one. */
function barOf(axis: Axis, opens: number, closes: number, asOf: number | null) {
  const turn = asOf === null ? opens : Math.min(Math.max(asOf, opens), closes + 1)
  return {
    whole: spanOf(axis, opens, closes + 1),
    past: spanOf(axis, opens, turn),
    toCome: spanOf(axis, turn, closes + 1),
  }
}

interface MarkPlace {
  readonly axis: Axis
  readonly top: number
  readonly rowHeight: number
  readonly middle: number
  readonly scale: number
  readonly bar: ReturnType<typeof barOf> | null
  readonly width: number
}

/** The mark that holds first, on the line of the bar; then the others, each moved until it covers nothing. */
function marksOf(season: Season, place: MarkPlace): CalendarMark[] {
  const {axis, middle, scale, bar, width} = place
  const taken: Box[] = []
  const marks: CalendarMark[] = []
  const dayX = (day: number) => {
    const x = xOfDay(axis, day + 0.5)
    const beyond = day < axis.first ? "before" : day >= axis.end ? "after" : null
    return {beyond, x: beyond === "before" ? EDGE : beyond === "after" ? width - EDGE : x} as const
  }
  if (season.closes !== null) {
    const {x, beyond} = dayX(season.closes)
    const radius = LARGE * scale
    const common = {name: season.holder, day: season.closes, binding: true, beyond, radius}
    marks.push({...common, x, y: middle, dayX: x})
    taken.push(boxOfMark({x, y: middle, radius, name: season.holder}))
  }
  if (bar?.whole) {
    const {x, width} = bar.whole
    taken.push({left: x, right: x + width, top: middle - BAR / 2, bottom: middle + BAR / 2})
  }
  const others = season.row.limits
    .flatMap(({name, day, at}) =>
      day === null || at === season.binding?.at ? [] : [{name: name.trim(), day: Math.floor(day)}],
    )
    .sort((a, b) => a.day - b.day)
  for (const {name, day} of others) {
    const {x: dayAt, beyond} = dayX(day)
    const radius = SMALL * scale
    const {x, y} = freePlace({x: dayAt, y: middle, radius, name}, taken, place)
    marks.push({name, day, x, y, dayX: dayAt, radius, binding: false, beyond})
    taken.push(boxOfMark({x, y, radius, name}))
  }
  return marks
}

type MarkBody = Pick<CalendarMark, "x" | "y" | "radius" | "name">

function boxOfMark({x, y, radius, name}: MarkBody): Box {
  const {halfWidth, halfHeight} = shapeOf(name)
  return boxAround(x, y, halfWidth * radius - TOUCH, halfHeight * radius - TOUCH)
}

/** The nearest free place for a small mark: on the line, under it, above it; at last a step aside. */
function freePlace(mark: MarkBody, taken: readonly Box[], {top, rowHeight, middle, scale, width}: MarkPlace) {
  const {radius} = mark
  const heights = [0, 8, 9, -8, -9, 11, -11, -16.6]
    .map((offset) => middle + offset * scale)
    .filter((y) => y - radius >= top && y + radius <= top + rowHeight)
  const step = 2 * radius + 1
  const most = Math.ceil(width / step)
  for (let aside = 0; aside <= most; aside++) {
    for (const x of aside === 0 ? [mark.x] : [mark.x + aside * step, mark.x - aside * step]) {
      if (x < radius || x > width - radius) continue
      const y = heights.find((y) => overlaps(boxOfMark({...mark, x, y}), taken) === 0)
      if (y !== undefined) return {x, y}
    }
  }
  return mark
}

interface WordsPlace extends Place {
  readonly baseLine: number
  readonly middle: number
  readonly bar: ReturnType<typeof barOf> | null
  readonly marks: readonly CalendarMark[]
  readonly name: Words | null
}

/** The words beside the mark that holds, or the reason why there is no bar. */
function wordsOf(season: Season, place: WordsPlace): Words | null {
  const {axis, width, inside, asOf, baseLine, middle, bar, marks, name} = place
  const {closes, holder, notCut} = season
  // The words may touch the mark that they name.
  const obstacles = marks.filter(({binding}) => !binding).map((mark) => widened(boxOfMark(mark)))
  if (name) obstacles.push(boxOfWords(name, 8))
  if (closes === null) {
    const y = inside || marks.length > 0 ? baseLine : middle + 1
    const x = name ? boxOfWords(name, 12).right : EDGE + 3
    return placed(fitted(notCut, width - x - 4), y, [{x, end: false}], obstacles, width)
  }
  const mark = marks.find(({binding}) => binding)
  if (!axis || !mark) return null
  const isPast = asOf !== null && closes < asOf
  const past = season.row.isClosed ? "closed" : "past its close"
  const day = inside ? `${dayText(closes)}, ` : ""
  const wordings = isPast
    ? [
        season.row.isClosed && !inside
          ? `closed to fern, ${holder}`
          : `${past}${inside ? " " : ", "}${day}${holder}`,
        `${past}, ${holder}`,
        holder,
      ]
    : [`${day}${holder}`, holder]
  const above = marks.filter(({y}) => y < middle - 4)
  const starts = [
    {x: mark.x + 2, end: false},
    {x: mark.x + 2, end: true},
    {x: Math.max(mark.x, ...above.map(({x}) => x)) + 8, end: false},
    {x: Math.min(mark.x, ...above.map(({x}) => x)) - 8, end: true},
    ...(name ? [{x: boxOfWords(name, 8).right, end: false}] : []),
    {x: width - 4, end: true},
    ...(bar?.whole ? [{x: bar.whole.x, end: false}] : []),
    {x: 2, end: false},
  ]
  for (const text of wordings) {
    const words = placed(text, baseLine, starts, obstacles, width)
    if (overlaps(boxOfWords(words), obstacles) === 0) return words
  }
  return placed(fitted(holder, width - 8), baseLine, starts, obstacles, width)
}

const widened = (box: Box): Box => ({...box, left: box.left - BESIDE, right: box.right + BESIDE})

/** The words at the first of these starts that is inside the picture and clear of all obstacles, or nearly so. */
function placed(
  text: string,
  y: number,
  starts: readonly {readonly x: number; readonly end: boolean}[],
  obstacles: readonly Box[],
  width: number,
): Words {
  const candidates = starts
    .map(({x, end}) => ({text, x, y, end}))
    .map((words) => ({words, box: boxOfWords(words)}))
    .filter(({box}) => box.left >= 0 && box.right <= width)
  return clearest(candidates, obstacles)?.words ?? {text, x: 2, y, end: false}
}

/** The room that words take, with `margin` px after them. */
function boxOfWords({text, x, y, end}: Words, margin = 0): Box {
  const wide = textWidth(text)
  const left = end ? x - wide : x
  return {left, right: left + wide + margin, top: y - LETTER * 0.72, bottom: y + LETTER * 0.22}
}

/** The farm's expected crop by day as bars from zero, the fullest days named above them. */
function farmRow(plan: Plan, {axis, top, rowHeight, width, inside, asOf}: Place): FarmRow {
  const base = top + rowHeight - 3
  const y = top + 12
  const name = inside ? {text: "Farm, each day", x: 2, y, end: false} : null
  const peak = peakOf(plan.daily)
  const empty = {y: top, height: rowHeight, base, name, bars: [], peak: null}
  if (!axis || !peak) return empty
  const room = base - y - 5
  const gap = axis.perDay >= 4 ? 1 : 0
  const bars = plan.daily
    .filter(({day, kg}) => kg > 0 && day >= axis.first && day < axis.end)
    .map(({day, kg}): DailyBar => {
      const height = (kg / peak.kg) * room
      const past = asOf !== null && day < asOf
      return {day, kg, x: xOfDay(axis, day), width: axis.perDay - gap, y: base - height, height, past}
    })
  const days =
    peak.first === peak.last ? dayText(peak.first) : `${dayText(peak.first)} to ${dayText(peak.last)}`
  const most = `most ${weightText(peak.kg, plan.region)} a day`
  const least = name ? boxOfWords(name, 8).right : 2
  const text = least + textWidth(`${most}, ${days}`) > width ? most : `${most}, ${days}`
  const wide = textWidth(text)
  const centre = xOfDay(axis, onAxis(axis, (peak.first + peak.last + 1) / 2))
  const x = Math.max(least, Math.min(centre - wide / 2, width - 2 - wide))
  return {...empty, bars, peak: {text, x, y, end: false}}
}

/** The highest daily crop, and the first run of days in a row that have it. */
function peakOf(daily: Plan["daily"]) {
  const kg = Math.max(0, ...daily.map((day) => day.kg))
  if (kg === 0) return null
  // Days of the same plantings differ by the rounding of their sums.
  const isPeak = (at: number) => daily[at] !== undefined && daily[at].kg > kg * (1 - 1e-9)
  const start = daily.findIndex((_, at) => isPeak(at))
  let end = start
  while (isPeak(end + 1) && daily[end + 1]!.day === daily[end]!.day + 1) end++
  return {kg, first: daily[start]!.day, last: daily[end]!.day}
}
