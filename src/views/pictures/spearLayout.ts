import {lineEdge} from "../../../functions/spear/lineEdge"
import type {LineSpread} from "../../../functions/spear/lineSpread"
import {dayText, numberText, percentText, shownIn} from "../../editor/display"
import type {Region} from "../../workbook/document"
import type {PlantingSpears, SpearSizes} from "../../workbook/spears"
import {type Box, boxAround, boxOfText, clearest, textWidth} from "./placing"
import {niceStep} from "./steps"
import {mondayOf} from "./weeks"

interface Spot {
  readonly x: number
  readonly y: number
}

interface Words extends Spot {
  readonly text: string
}

/** Everything that the drawing needs, px. */
export interface SpearLayout {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly base: number
  /** The unit of the scale. */
  readonly unit: string
  readonly rules: readonly {readonly y: number; readonly text: string}[]
  readonly weeks: readonly {readonly x: number; readonly text: string}[]
  readonly limit: {readonly y: number; readonly words: Words} | null
  /** The line through the means, as far as was measured, and from there on; empty where there is none. */
  readonly fitted: string
  readonly toCome: string
  /**
   * In which the true line lies, at the confidence of the edges; null with too few means. Its edges likewise in two parts. Where
   * the means scatter it reaches beyond `top` and `base`.
   */
  readonly band: {
    readonly area: string
    readonly past: string
    readonly toCome: string
    readonly words: Words
  } | null
  readonly asOf: number | null
  readonly dots: readonly Spot[]
  readonly latest: Words
  /** Where the line meets the limit after the last measuring. */
  readonly meets: (Spot & {readonly words: Words}) | null
}

const HEIGHT = 210
const LEFT = 44
const RIGHT = 12
const TOP = 26
const BASE = HEIGHT - 24
const LETTERS = 17
/** Days after the last measuring that the picture reaches at the most; a line that meets the limit later leaves it. Chosen. */
const AHEAD = 60

/** Chosen: at so many places along the line its edges are followed. */
const STEPS = 24

/** The means of one planting by day with their line; the scales are those of all the plantings that were measured. */
export function spearLayout(one: PlantingSpears, sizes: SpearSizes, width: number): SpearLayout {
  const {limit, confidence, asOf, region} = sizes
  const right = width - RIGHT
  const {first, until, x, y, rules} = scalesOf(sizes, right)
  const {unit, text} = shownIn("mm", region)
  const dots = one.days.map(({day, mean}) => ({x: x(day), y: y(mean)}))
  const {line, spread} = one
  const [from, to] = [one.days[0]!.day, one.days.at(-1)!.day]
  const on = (day: number) => line!.mean + line!.slope * (day - line!.day)
  const crossing =
    line && limit !== null && one.lastDay !== null ? line.day + (limit - line.mean) / line.slope : null
  const isAhead = crossing !== null && crossing > to
  // Drawn on to the day on which even the upper edge has met the limit.
  const end = line && isAhead ? Math.min(Math.max(crossing, one.lastDays?.[1] ?? 0), until) : to
  const stretch = (a: number, b: number) => `M${px(x(a))} ${px(y(on(a)))}L${px(x(b))} ${px(y(on(b)))}`
  const lineBoxes = line ? boxesAlong({x: x(from), y: y(on(from))}, {x: x(end), y: y(on(end))}) : []
  const level = limit === null ? [] : [{left: LEFT, right, top: y(limit) - 1, bottom: y(limit) + 1}]
  const place = placeClear(right, [
    ...lineBoxes,
    ...dots.map((dot) => boxAround(dot.x, dot.y, 6, 6)),
    ...level,
  ])

  // In the order in which words take their places.
  const limitWords = limit === null ? "" : `limit ${limitText(limit, region)}`
  const limitSpots = [LEFT + 4, right - textWidth(limitWords)].flatMap((at) =>
    [LETTERS, -6].map((down) => ({x: at, y: y(limit ?? 0) + down})),
  )
  const limitAt = limit === null ? null : {y: y(limit), words: place(limitWords, limitSpots)}
  const lastWords = `${text(one.days.at(-1)!.mean, 1)}, ${dayText(to)}`
  const latest = place(lastWords, around(dots.at(-1)!, lastWords))
  const meetsAt = isAhead && crossing <= until ? {x: x(crossing), y: y(limit!)} : null
  const meetsWords = one.lastDay === null ? "" : `about ${dayText(one.lastDay)}`
  const meets = meetsAt && {...meetsAt, words: place(meetsWords, around(meetsAt, meetsWords))}
  const bandWords = `${percentText(confidence, "needed", region.decimal)} band`
  const bandSpots = () =>
    [end, (from + end) / 2, from].flatMap((day) => around({x: x(day), y: y(on(day))}, bandWords))
  return {
    width,
    height: HEIGHT,
    left: LEFT,
    right,
    top: TOP,
    base: BASE,
    unit,
    rules,
    weeks: weeksIn(first, until, (right - LEFT) / Math.max(1, until - first)).map((day) => ({
      x: x(day),
      text: dayText(day),
    })),
    limit: limitAt,
    fitted: line ? stretch(from, to) : "",
    toCome: line && isAhead ? stretch(to, end) : "",
    band: spread && {...bandOf(spread, {from, to, end}, {x, y}), words: place(bandWords, bandSpots())},
    asOf: asOf !== null && asOf >= first && asOf <= until ? x(asOf) : null,
    dots,
    latest,
    meets,
  }
}

/** Days along and means upwards, on scales that hold every planting that was measured, and the limit. */
function scalesOf({plantings, limit, asOf, region}: SpearSizes, right: number) {
  const days = plantings.flatMap((each) => each.days.map(({day}) => day))
  const [first, latest] = [Math.min(...days), Math.max(...days)]
  const ends = plantings.flatMap(({lastDay, lastDays}) =>
    [lastDay, lastDays?.[1] ?? null].flatMap((day) => (day === null ? [] : [day + 1])),
  )
  const last = Math.max(latest, ...ends.filter((day) => day <= latest + AHEAD), asOf ?? latest)
  const until = Math.min(last, latest + AHEAD) + 1

  const {number: shown} = shownIn("mm", region)
  const means = plantings.flatMap((each) => each.days.map(({mean}) => shown(mean)))
  const marks = limit === null ? means : [...means, shown(limit)]
  const step = niceStep(Math.max(Math.max(...marks) - Math.min(...marks), shown(1)) * 1.2)
  // Half a step of room below, for the words of the limit.
  const least = Math.max(0, Math.floor(Math.min(...marks) / step - 0.5) * step)
  const most = Math.ceil(Math.max(...marks) / step + 0.1) * step
  const heightOf = (mark: number) => BASE - ((mark - least) / (most - least)) * (BASE - TOP)
  return {
    first,
    until,
    x: (day: number) => LEFT + 8 + ((day - first) / Math.max(1, until - first)) * (right - LEFT - 8),
    y: (mm: number) => heightOf(shown(mm)),
    rules: Array.from({length: Math.round((most - least) / step) + 1}, (_, i) => least + i * step).map(
      (mark) => ({y: heightOf(mark), text: numberText(mark, decimalsOf(step), region.decimal)}),
    ),
  }
}

/** The band about a line from its first day, and its edges up to the last day measured and from there on. */
function bandOf(
  spread: LineSpread,
  {from, to, end}: {readonly from: number; readonly to: number; readonly end: number},
  {x, y}: Pick<ReturnType<typeof scalesOf>, "x" | "y">,
) {
  const edge = (side: -1 | 1, a: number, b: number) =>
    Array.from({length: STEPS + 1}, (_, i) => a + ((b - a) * i) / STEPS).map(
      (day) => `${px(x(day))} ${px(y(lineEdge(spread, day, side)))}`,
    )
  const both = (a: number, b: number) =>
    ([-1, 1] as const).map((side) => `M${edge(side, a, b).join("L")}`).join("")
  return {
    area: `M${[...edge(1, from, end), ...edge(-1, from, end).toReversed()].join("L")}Z`,
    past: both(from, to),
    toCome: end > to ? both(to, end) : "",
  }
}

/** Puts words where they stand clearest of the marks and of the words before them. */
function placeClear(right: number, marks: readonly Box[]) {
  const taken = [...marks]
  return (said: string, spots: readonly Spot[]): Words => {
    const candidates = spots.map((spot) => ({
      text: said,
      x: Math.max(LEFT + 2, Math.min(spot.x, right - textWidth(said))),
      y: spot.y,
    }))
    const best = clearest(
      candidates.map((words) => ({...words, box: boxOfText(words.text, words.x, words.y)})),
      taken,
    )!
    taken.push(best.box)
    return {text: said, x: best.x, y: best.y}
  }
}

/** "9.5 mm"; in inches with the millimetres beside them. */
function limitText(limit: number, region: Region) {
  const {unit, text} = shownIn("mm", region)
  const beside = unit === "mm" ? "" : ` (${numberText(limit, 1, region.decimal)}\u00a0mm)`
  return `${text(limit, 1)}\u00a0${unit}${beside}`
}

/** Whether the last mean lies under the limit, while no line says since when. */
const isUnder = ({lastDay, days}: PlantingSpears, {limit}: SpearSizes) =>
  limit !== null && lastDay === null && days.at(-1)!.mean < limit

/** What the spears of one planting say, as the title of its picture. */
export function spearTitle(one: PlantingSpears, sizes: SpearSizes): string {
  const {planting, line, lastDay, days} = one
  const {limit, asOf, region} = sizes
  if (isUnder(one, sizes))
    return `${planting} was under ${limitText(limit!, region)} on ${dayText(days.at(-1)!.day)}`
  if (!line) return `${planting}: one day measured`
  if (lastDay !== null && limit !== null) {
    const meets = asOf !== null && lastDay < asOf ? "met" : "meets"
    return `${planting} ${meets} ${limitText(limit, region)} about ${dayText(lastDay)}`
  }
  if (line.slope < 0) return `${planting} is thinning`
  return `${planting} is not thinning`
}

/** "Mean 10.9 mm on 25 May, falling 0.11 mm a day; 9.5 mm about 7 Jun (80 %: 6 Jun to 8 Jun)." */
export function spearSentence(one: PlantingSpears, {limit, confidence, region}: SpearSizes): string {
  const {days, line, lastDay, lastDays, spread} = one
  const {unit, text} = shownIn("mm", region)
  const {day, mean} = days.at(-1)!
  const now = `Mean ${text(mean, 1)}\u00a0${unit} on ${dayText(day)}`
  if (!line) return `${now}; a line needs two different days.`
  const change = `${text(Math.abs(line.slope), 2)}\u00a0${unit} a day`
  const going =
    line.slope < 0 ? `, falling ${change}` : line.slope > 0 ? `, rising ${change}` : ", not changing"
  const sure = lastDays
    ? ` (${percentText(confidence, "needed", region.decimal)}: ${dayText(lastDays[0])} to ${dayText(lastDays[1])})`
    : spread
      ? ", but the line may as well not fall"
      : ", how sure is not known from two"
  const met =
    limit === null
      ? "no limit is set"
      : lastDay === null
        ? `the line does not meet ${limitText(limit, region)}`
        : `${limitText(limit, region)} about ${dayText(lastDay)}${sure}`
  return `${now}${going}; ${met}.`
}

/** What the sheet found: a planting under the limit, or the one that meets it first, and how many of the others do. */
export function spearFinding(sizes: SpearSizes): string {
  const {plantings} = sizes
  const [under, ...alsoUnder] = plantings.filter((one) => isUnder(one, sizes))
  const meeting = plantings
    .filter(({lastDay}) => lastDay !== null)
    .toSorted((a, b) => a.lastDay! - b.lastDay!)
  if (under) {
    const others = alsoUnder.length + meeting.length
    const also = others ? `; ${others} more ${others === 1 ? "is" : "are"} under it or will be` : ""
    return `${spearTitle(under, sizes)}${also}.`
  }
  if (meeting.length === 0)
    return plantings.length === 1
      ? `${spearTitle(plantings[0]!, sizes)}.`
      : `${plantings.length} plantings measured; no line of theirs meets the limit.`
  const others = meeting.length - 1
  const also = others ? `; ${others} more ${others === 1 ? "does" : "do"} later` : ""
  return `${spearTitle(meeting[0]!, sizes)}${also}.`
}

/** Mondays between two days, as many as there is room for their dates. */
function weeksIn(first: number, last: number, perDay: number): number[] {
  const every = Math.max(1, Math.ceil(56 / (7 * perDay)))
  const mondays: number[] = []
  for (let day = mondayOf(first + 6); day <= last; day += 7 * every) mondays.push(day)
  return mondays
}

/** Where words may stand beside a mark, best first. */
function around({x, y}: Spot, text: string): Spot[] {
  const wide = textWidth(text)
  return [
    {x: x + 8, y: y - 8},
    {x: x - wide / 2, y: y - 12},
    {x: x - wide - 8, y: y + 16},
    {x: x + 8, y: y + 18},
    {x: x - wide / 2, y: y + 22},
    {x: x - wide - 8, y: y - 8},
  ]
}

/** A slanting line as a row of small boxes, for words to keep clear of. */
function boxesAlong(from: Spot, to: Spot): Box[] {
  const count = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 8))
  return Array.from({length: count + 1}, (_, i) =>
    boxAround(from.x + ((to.x - from.x) * i) / count, from.y + ((to.y - from.y) * i) / count, 4, 3),
  )
}

const decimalsOf = (step: number) => Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
const px = (value: number) => Math.round(value * 10) / 10
