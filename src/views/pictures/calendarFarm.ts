import {dayText} from "../../editor/display"
import type {Plan} from "../../workbook/plan"
import {boxOfWords, onAxis, xOfDay, type Place, type Span, type Words} from "./calendarPlace"
import {weightText} from "./calendarWords"
import {textWidth} from "./placing"

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

/** The farm's expected crop by day as bars from zero, the fullest days named above them. */
export function farmRow(plan: Plan, {axis, top, rowHeight, width, inside, asOf}: Place): FarmRow {
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
  const most = `at most ${weightText(peak.kg, plan.region)} grow a day`
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
