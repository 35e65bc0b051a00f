import {dayText} from "../../editor/display"
import type {Plan} from "../../workbook/plan"
import {farmRow, type FarmRow} from "./calendarFarm"
import {asOfLine, headLines, weeksOf, type AsOfLine, type CalendarWeek, type HeadLines} from "./calendarHead"
import {boxOfMark, marksOf, type CalendarMark} from "./calendarMarks"
import {boxOfWords, EDGE, spanOf, type Axis, type Place, type Span, type Words} from "./calendarPlace"
import {calendarSentence, seasonOf, type Season} from "./calendarWords"
import {clearest, fitted, overlaps, type Box} from "./placing"
import {mondayOf} from "./weeks"

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
  /** Null when no day is known. */
  readonly axis: Axis | null
  readonly weeks: readonly CalendarWeek[]
  readonly asOf: AsOfLine | null
  readonly rows: readonly CalendarRow[]
  readonly farm: FarmRow
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

/** Chosen: a season longer than this cannot be read by the day; what is beyond stands at the edge. */
const MOST_WEEKS = 30
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

/** Both ends are days of cutting, so the bar runs to the end of the last one. */
function barOf(axis: Axis, opens: number, closes: number, asOf: number | null) {
  const turn = asOf === null ? opens : Math.min(Math.max(asOf, opens), closes + 1)
  return {
    whole: spanOf(axis, opens, closes + 1),
    past: spanOf(axis, opens, turn),
    toCome: spanOf(axis, turn, closes + 1),
  }
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
