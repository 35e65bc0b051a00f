import {EDGE, xOfDay, type Axis, type Span} from "./calendarPlace"
import type {Season} from "./calendarWords"
import {shapeOf} from "./limitShapes"
import {boxAround, overlaps, type Box} from "./placing"

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

const BAR = 9
/** Radius of a small mark and of the one that holds, px in a row of 36 px. */
const SMALL = 3.9
const LARGE = 7
/** px by which two marks may touch before one moves. */
const TOUCH = 0.15

interface MarkPlace {
  readonly axis: Axis
  readonly top: number
  readonly rowHeight: number
  readonly middle: number
  readonly scale: number
  readonly bar: {readonly whole: Span | null} | null
  readonly width: number
}

/** The mark that holds first, on the line of the bar; then the others, each moved until it covers nothing. */
export function marksOf(season: Season, place: MarkPlace): CalendarMark[] {
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

export function boxOfMark({x, y, radius, name}: MarkBody): Box {
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
