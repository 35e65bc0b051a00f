import {lineEdge} from "../../../functions/spear/lineEdge"
import type {LineSpread} from "../../../functions/spear/lineSpread"
import {dayText, numberText, percentText, shownIn} from "../../editor/display"
import type {PlantingSpears, SpearSizes} from "../../workbook/spears"
import {type Box, boxAround, boxOfText, clearest, overlaps, textWidth} from "./placing"
import {limitText} from "./spearWords"
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
  /** What stands on the scale, in which unit. */
  readonly heading: string
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
    /** It is too narrow to be told from the line. */
    readonly isHidden: boolean
    readonly words: Words | null
  } | null
  readonly asOf: number | null
  /** The means; those of spears that were counted by size are short lines among them. */
  readonly dots: readonly (Spot & {readonly isAmongSpears: boolean})[]
  /** Every spear that was counted by size, beside its day where several are as thick. */
  readonly spears: readonly Spot[]
  /** The shares under the limit, above their days; ahead stands the one at which cutting ends. */
  readonly shares: readonly (Words & {readonly isAhead: boolean})[]
  /** The last mean and its day; null where other words take their room. */
  readonly latest: Words | null
  /** On the limit, from the first to the last day on which the line may meet it, at the confidence of the edges. */
  readonly between: {readonly from: number; readonly to: number} | null
  /** Where the line meets the limit after the last measuring; before the third, where it is expected by the balance. */
  readonly meets: (Spot & {readonly words: Words}) | null
}

const HEIGHT = 210
/** Single spears lie further apart than means, and the shares under the limit stand above them. */
const HEIGHT_OF_SPEARS = 290
const LEFT = 44
const RIGHT = 12
const TOP = 26
const TOP_OF_SPEARS = 46
const UNDER_PLOT = 24
const LETTERS = 17
/** A band that is narrower than this all along is hidden by its line, px. */
const VISIBLE = 5
/** Days after the last measuring that the picture reaches at the most; a line that meets the limit later leaves it. Chosen. */
const AHEAD = 60

/** Chosen: at so many places along the line its edges are followed. */
const STEPS = 24

/** The means of one planting by day with their line; the scales are those of all the plantings that were measured. */
export function spearLayout(one: PlantingSpears, sizes: SpearSizes, width: number): SpearLayout {
  const {limit, confidence, asOf, region} = sizes
  const right = width - RIGHT
  const isCounted = sizes.plantings.some(({days}) => days.some(({tally}) => tally !== null))
  const [height, top] = isCounted ? [HEIGHT_OF_SPEARS, TOP_OF_SPEARS] : [HEIGHT, TOP]
  const base = height - UNDER_PLOT
  const {first, until, x, y, rules} = scalesOf(sizes, {right, top, base, isCounted})
  const {unit, text} = shownIn("mm", region)
  const shares = sharesAbove(one, sizes, {x, right, until})
  const dots = one.days.map(({day, mean, tally}) => ({x: x(day), y: y(mean), isAmongSpears: tally !== null}))
  const spears = spearSpots(one, {x, y})
  const {spread} = one
  const line = one.isExpected ? null : one.line // two days are too few for one
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
  const spearBoxes = spears.map((spear) => boxAround(spear.x, spear.y, SPEAR, SPEAR))
  const {place, placeIfClear} = placeClear(right, [
    ...lineBoxes,
    ...dots.map((dot) => boxAround(dot.x, dot.y, 6, 6)),
    ...spearBoxes,
    ...level,
  ])

  // In the order in which words take their places.
  const limitWords = limit === null ? "" : `limit ${limitText(limit, region)}`
  const limitSpots = [LEFT + 4, right - textWidth(limitWords)].flatMap((at) =>
    [LETTERS, -6].map((down) => ({x: at, y: y(limit ?? 0) + down})),
  )
  const limitAt = limit === null ? null : {y: y(limit), words: place(limitWords, limitSpots)}
  const met = isAhead
    ? crossing
    : one.isExpected && one.lastDay !== null && one.lastDay > to
      ? one.lastDay
      : null
  const meetsAt = met !== null && met <= until ? {x: x(met), y: y(limit!)} : null
  const meetsWords =
    one.lastDay === null ? "" : `${one.isExpected ? "expected " : ""}about ${dayText(one.lastDay)}`
  const meets = meetsAt && {...meetsAt, words: place(meetsWords, around(meetsAt, meetsWords))}
  // Its day goes first, since that stands on the scale, then the words: they hide no spear.
  const lastMean = text(one.days.at(-1)!.mean, 1)
  const lastDot = dots.at(-1)!
  const lastSpots = (words: string) => around(lastDot, words, lastDot.isAmongSpears ? STRIP / 2 : 8)
  const atLast = (words: string) => placeIfClear(words, lastSpots(words), spearBoxes)
  const latest = atLast(`${lastMean}, ${dayText(to)}`) ?? atLast(lastMean)
  const bandWords = `${percentText(confidence, "needed", region.decimal)} band`
  const widestAt = (edges: LineSpread) =>
    Math.max(...[from, end].map((day) => y(lineEdge(edges, day, -1)) - y(lineEdge(edges, day, 1))))
  const bandSpots = () =>
    [end, (from + end) / 2, from].flatMap((day) => around({x: x(day), y: y(on(day))}, bandWords))
  return {
    width,
    height,
    left: LEFT,
    right,
    top,
    base,
    heading: headingOf(
      unit,
      {isCounted: spears.length > 0, under: shares.length ? limitText(limit!, region) : ""},
      width,
    ),
    rules,
    weeks: weeksIn(first, until, (right - LEFT) / Math.max(1, until - first)).map((day) => ({
      x: x(day),
      text: dayText(day),
    })),
    limit: limitAt,
    fitted: line ? stretch(from, to) : "",
    toCome: line && isAhead ? stretch(to, end) : "",
    band: spread && {
      ...bandOf(spread, {from, to, end}, {x, y}),
      isHidden: widestAt(spread) < VISIBLE,
      words: widestAt(spread) < VISIBLE ? null : place(bandWords, bandSpots()),
    },
    between:
      meetsAt && one.lastDays
        ? {from: x(Math.max(first, one.lastDays[0])), to: x(Math.min(until, one.lastDays[1]))}
        : null,
    asOf: asOf !== null && asOf >= first && asOf <= until ? x(asOf) : null,
    dots,
    spears,
    shares,
    latest,
    meets,
  }
}

/** What stands on the scale and above it, as much of it as the width has room for. */
function headingOf(
  unit: string,
  {isCounted, under}: {readonly isCounted: boolean; readonly under: string},
  width: number,
): string {
  const spears = isCounted ? `each spear as cut, ${unit}` : `mean diameter of spears as cut, ${unit}`
  const above = under
    ? [`; above its day, the share under ${under}`, "; above, the share under the limit"]
    : [""]
  return spears + (above.find((words) => textWidth(spears + words) <= width) ?? "; above, share of thin")
}

/** Days along and means upwards, on scales that hold every planting that was measured, and the limit. */
function scalesOf(
  {plantings, limit, asOf, region}: SpearSizes,
  {right, top, base, isCounted}: {right: number; top: number; base: number; isCounted: boolean},
) {
  const days = plantings.flatMap((each) => each.days.map(({day}) => day))
  const [first, latest] = [Math.min(...days), Math.max(...days)]
  const ends = plantings.flatMap(({lastDay, lastDays, shareDay}) =>
    [lastDay, lastDays?.[1] ?? null, shareDay].flatMap((day) => (day === null ? [] : [day + 1])),
  )
  const last = Math.max(latest, ...ends.filter((day) => day <= latest + AHEAD), asOf ?? latest)
  const until = Math.min(last, latest + AHEAD) + 1

  const {number: shown} = shownIn("mm", region)
  const sizes = plantings.flatMap((each) =>
    each.days.flatMap(({mean, tally}) => [mean, ...(tally?.diameters ?? [])]),
  )
  const marks = (limit === null ? sizes : [...sizes, limit]).map(shown)
  const range = Math.max(Math.max(...marks) - Math.min(...marks), shown(1))
  const step = niceStep(isCounted ? range : range * 1.2)
  // Half a step of room below, for the words of the limit; single spears leave it anyway.
  const least = Math.max(0, Math.floor(Math.min(...marks) / step - (isCounted ? 0.1 : 0.5)) * step)
  const start = LEFT + (isCounted ? STRIP / 2 : 8)
  const most = Math.ceil(Math.max(...marks) / step + 0.1) * step
  const heightOf = (mark: number) => base - ((mark - least) / (most - least)) * (base - top)
  return {
    first,
    until,
    x: (day: number) => start + ((day - first) / Math.max(1, until - first)) * (right - start),
    y: (mm: number) => heightOf(shown(mm)),
    rules: Array.from({length: Math.round((most - least) / step) + 1}, (_, i) => least + i * step).map(
      (mark) => ({y: heightOf(mark), text: numberText(mark, decimalsOf(step), region.decimal)}),
    ),
  }
}

/** Spears that are as thick, to this much, stand side by side, mm; chosen. */
const AS_THICK = 0.5
/** The most that the spears of a day take side by side, px. */
const STRIP = 52
/** Half of what a spear's dot takes, px. */
const SPEAR = 2

/** Each spear that was counted by size: at its day, or beside it on both sides where several are as thick. */
function spearSpots(
  {days}: PlantingSpears,
  {x, y}: Pick<ReturnType<typeof scalesOf>, "x" | "y">,
): readonly Spot[] {
  const gaps = days.slice(1).map(({day}, i) => 0.9 * (x(day) - x(days[i]!.day)))
  const widest = Math.min(STRIP, ...gaps.filter((gap) => gap > 0))
  return days.flatMap(({day, tally}) => {
    if (!tally) return []
    const beside = new Map<number, number[]>()
    for (const [i, diameter] of tally.diameters.entries()) {
      const place = Math.round(diameter / AS_THICK)
      const alike = Array.from({length: tally.counts[i]!}, () => diameter)
      beside.set(place, [...(beside.get(place) ?? []), ...alike])
    }
    const most = Math.max(...[...beside.values()].map((alike) => alike.length))
    const step = Math.min(2 * SPEAR + 1, widest / most)
    return [...beside.values()].flatMap((alike) =>
      alike.map((diameter, i) => ({x: x(day) + (i - (alike.length - 1) / 2) * step, y: y(diameter)})),
    )
  })
}

/** The share under the limit above each day on which spears were counted by size; of days too near each other the later. */
function sharesAbove(
  {days, shareDay}: PlantingSpears,
  {share, region}: SpearSizes,
  {x, right, until}: {readonly x: (day: number) => number; readonly right: number; readonly until: number},
): readonly (Words & {readonly isAhead: boolean})[] {
  const percent = (one: number, decimals?: "needed") => percentText(one, decimals, region.decimal)
  const counted = days.flatMap(({day, under}) =>
    under === null ? [] : [{day, text: percent(under), isAhead: false}],
  )
  const isDrawn =
    share !== null && shareDay !== null && shareDay <= until && shareDay > (counted.at(-1)?.day ?? 0)
  const ahead = isDrawn
    ? [{day: shareDay, text: `${percent(share, "needed")} about ${dayText(shareDay)}`, isAhead: true}]
    : []
  const said: (Words & {isAhead: boolean})[] = []
  let free = Infinity
  for (const {day, text, isAhead} of [...counted, ...ahead].toReversed()) {
    const wide = textWidth(text)
    const at = Math.min(x(day) - wide / 2, right - wide)
    if (at + wide > free) continue
    said.unshift({text, x: at, y: TOP_OF_SPEARS - 10, isAhead})
    free = at - 6
  }
  return said
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
  const words: Box[] = []
  const best = (text: string, spots: readonly Spot[]) =>
    clearest(
      spots.map((spot) => {
        const x = Math.max(LEFT + 2, Math.min(spot.x, right - textWidth(text)))
        return {text, x, y: spot.y, box: boxOfText(text, x, spot.y)}
      }),
      [...marks, ...words],
    )!
  const put = ({text, x, y, box}: ReturnType<typeof best>): Words => {
    words.push(box)
    return {text, x, y}
  }
  return {
    place: (text: string, spots: readonly Spot[]): Words => put(best(text, spots)),
    /** Null where they would lie on other words, or on one of the marks that they may not hide. */
    placeIfClear(text: string, spots: readonly Spot[], seen: readonly Box[]): Words | null {
      const found = best(text, spots)
      return overlaps(found.box, [...words, ...seen]) > 0 ? null : put(found)
    },
  }
}

/** Mondays between two days, as many as there is room for their dates. */
function weeksIn(first: number, last: number, perDay: number): number[] {
  const every = Math.max(1, Math.ceil(56 / (7 * perDay)))
  const mondays: number[] = []
  for (let day = mondayOf(first + 6); day <= last; day += 7 * every) mondays.push(day)
  return mondays
}

/** Where words may stand beside a mark, best first. */
function around({x, y}: Spot, text: string, gap = 8): Spot[] {
  const wide = textWidth(text)
  return [
    {x: x + gap, y: y - 8},
    {x: x - wide / 2, y: y - 12},
    {x: x - wide - gap, y: y + 16},
    {x: x + gap, y: y + 18},
    {x: x - wide / 2, y: y + 22},
    {x: x - wide - gap, y: y - 8},
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
