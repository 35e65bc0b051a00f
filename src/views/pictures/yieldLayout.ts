import {numberText, percentText, shownIn} from "../../editor/display"
import type {Region} from "../../workbook/document"
import type {LenderPage, YieldEvidence} from "../../workbook/lender"
import {stretches} from "./besideLine"
import {boxAround, boxOfText, clearest, fitted, overlaps, textWidth, type Box} from "./placing"
import {niceStep} from "./steps"

type Shown = Pick<LenderPage, "yields" | "curve" | "fullBearing" | "spread" | "published" | "region">

export interface YieldDot {
  readonly x: number
  readonly y: number
  readonly isDisaster: boolean
}

export interface PlantingYields {
  readonly planting: string
  /** Outline of its mark around a middle, at a radius in px. */
  readonly shape: (x: number, y: number, radius: number) => string
  readonly dots: readonly YieldDot[]
  /** This season's projection, and a line to it from the last record. */
  readonly projection: {readonly x: number; readonly y: number} | null
  readonly lead: string | null
  /** The three-year mean as a short line over the ages it covers. */
  readonly mean: {readonly from: number; readonly to: number; readonly y: number} | null
  readonly label: {
    readonly x: number
    readonly y: number
    readonly lines: readonly string[]
    readonly anchor: "start" | "middle" | "end"
    /** Whether it is projected above its record. */
    readonly isAbove: boolean
    /** A line to its mark, where it stands away from it. */
    readonly lead: string | null
  } | null
}

export interface YieldLayout {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly base: number
  readonly rules: readonly {readonly y: number; readonly text: string}[]
  readonly ages: readonly {readonly x: number; readonly text: string}[]
  readonly line: string
  readonly band: string | null
  readonly published: {
    readonly x: number
    readonly low: number
    readonly high: number
    readonly words: string
    /** Beside the bracket, ending at its right. */
    readonly label: {readonly y: number; readonly text: string}
  } | null
  readonly plantings: readonly PlantingYields[]
}

/** px; on paper less, so that page one has room for what it lists. */
const HEIGHTS = {screen: 344, paper: 266}
const TOP = 30
const BELOW = 44
const LEFT = 52
const BRACKET = 18
const LETTERS = 17
/** Narrower than this there is no room for words beside each gap, px; chosen. */
const NARROW = 460

/** The farm's own records and projections over age, with the curve that the age factors draw through its full bearing. */
export function yieldLayout(
  {yields, curve, fullBearing, spread, published, region}: Shown,
  width: number,
  isOnPaper = false,
): YieldLayout {
  const height = isOnPaper ? HEIGHTS.paper : HEIGHTS.screen
  const base = height - BELOW
  const told = yields.filter(({record, projection}) => record.length > 0 || (projection ?? 0) > 0)
  const lastAge = Math.max(8, ...told.map(({age}) => age ?? 0))
  const isNarrow = width < NARROW
  const right = width - (published ? BRACKET : 4)
  const points = curve.filter(({age}) => age <= lastAge)
  const onCurve = (share: number, times = 1) => share * (fullBearing ?? 0) * times
  const {number} = shownIn("kg/ha", region)
  const most = number(
    Math.max(
      1000,
      published?.high ?? 0,
      ...told.flatMap(({record, projection}) => [projection ?? 0, ...record.map(({kg}) => kg)]),
      ...points.map(({share}) => onCurve(share, 1 + (spread ?? 0))),
    ) * 1.04,
  )
  const x = (age: number) => LEFT + 10 + (age / lastAge) * (right - LEFT - 24)
  const onScale = (shown: number) => base - (shown / most) * (base - TOP)
  const y = (kg: number) => onScale(number(kg))
  const path = (times: number, backwards = false) =>
    (backwards ? points.toReversed() : points).map(
      ({age, share}) => `${round(x(age))} ${round(y(onCurve(share, times)))}`,
    )
  const rule = niceStep(most)
  const hasCurve = fullBearing !== null && points.length > 1
  const plantings = told.map((one, i) => placed(one, SHAPES[i % SHAPES.length]!, x, y))
  const bracket = published && {
    x: width - BRACKET + 6,
    low: y(published.low),
    high: y(published.high),
    words: publishedWords(published, region),
    label: bracketLabel(
      isNarrow ? ["published"] : [`published: ${published.place}`, "published"],
      [y(published.high) - 6, Math.min(base - 5, y(published.low) + LETTERS)],
      width,
      plantings,
    ),
  }
  return {
    width,
    height,
    left: LEFT,
    right,
    base,
    rules: Array.from({length: Math.floor(most / rule)}, (_, i) => (i + 1) * rule).map((shown) => ({
      y: onScale(shown),
      text: numberText(shown),
    })),
    ages: Array.from({length: lastAge + 1}, (_, age) => age)
      .filter((age) => lastAge <= 10 || width > NARROW || age % 2 === 0)
      .map((age) => ({x: x(age), text: String(age)})),
    line: hasCurve ? `M${path(1).join("L")}` : "",
    band: hasCurve && spread ? `M${[...path(1 + spread), ...path(1 - spread, true)].join("L")}Z` : null,
    published: bracket,
    plantings: labelled(
      plantings,
      told,
      {left: LEFT, right: width, top: 2, bottom: base - 4}, // what hangs below a line stays off the axis
      isNarrow,
      bracket
        ? [
            {
              left: width - textWidth(bracket.label.text),
              right: width,
              top: Math.min(bracket.label.y - 12, bracket.high),
              bottom: Math.max(bracket.label.y + 3, bracket.low),
            },
          ]
        : [],
      hasCurve
        ? [1, ...(spread ? [1 + spread, 1 - spread] : [])].flatMap((times) =>
            stretches(points.map(({age, share}) => ({x: x(age), y: y(onCurve(share, times))}))),
          )
        : [],
    ),
  }
}

/** What the bracket is called, above or below it, in words that hide no mark of a planting if any can. */
function bracketLabel(
  words: readonly string[],
  heights: readonly number[],
  width: number,
  plantings: readonly Placed[],
): {readonly text: string; readonly y: number} {
  const marks = plantings.flatMap(({dots, projection}) =>
    [...dots, ...(projection ? [projection] : [])].map(({x, y}) => boxAround(x, y, 8, 8)),
  )
  const spots = words.flatMap((text) =>
    heights.map((y) => ({text, y, box: boxOfText(text, width - textWidth(text), y)})),
  )
  const {text, y} = clearest(spots, marks)!
  return {text, y}
}

/** "Michigan, peak years, 3 923 to 4 483 kg/ha" */
export function publishedWords({place, low, high}: NonNullable<Shown["published"]>, region: Region): string {
  const {unit, text} = shownIn("kg/ha", region)
  const range = low === high ? text(low, 0) : `${text(low, 0)} to ${text(high, 0)}`
  return `${place}, ${range} ${unit}`
}

const round = (value: number) => Math.round(value * 10) / 10

type Placed = Omit<PlantingYields, "label">

function placed(
  {planting, age, record, projection, mean}: YieldEvidence,
  shape: PlantingYields["shape"],
  x: (age: number) => number,
  y: (kg: number) => number,
): Placed {
  const dots = record.map(({age, kg, isDisaster}) => ({x: x(age), y: y(kg), isDisaster}))
  const hollow = age !== null && (projection ?? 0) > 0 ? {x: x(age), y: y(projection!)} : null
  const last = dots.at(-1)
  return {
    planting,
    shape,
    dots,
    projection: hollow,
    lead: hollow && last ? `M${round(last.x)} ${round(last.y)}L${round(hollow.x)} ${round(hollow.y)}` : null,
    mean: mean === null || age === null ? null : {from: x(age - 3) - 6, to: x(age - 1) + 6, y: y(mean)},
  }
}

/** Each planting's name and gap beside its projection, clear of the marks and of each other where there is room. */
function labelled(
  plantings: readonly Placed[],
  told: readonly YieldEvidence[],
  room: Box,
  isNarrow: boolean,
  bracket: readonly Box[],
  curves: readonly Box[],
): readonly PlantingYields[] {
  const obstacles: Box[] = plantings.flatMap(({dots, projection, mean}) => [
    ...[...dots, ...(projection ? [projection] : [])].map(({x, y}) => boxAround(x, y, 9, 9)),
    ...(projection && dots.length ? stretches([dots.at(-1)!, projection]) : []),
    ...(mean ? [{left: mean.from, right: mean.to, top: mean.y - 1, bottom: mean.y + 1}] : []),
  ])
  obstacles.push(...bracket, ...curves)
  const labels: Box[] = []
  const labelOf = (one: Placed, gap: number | null): PlantingYields["label"] => {
    const at = one.projection ?? one.dots.at(-1)
    if (!at) return null
    const name = fitted(one.planting, NAME_SHARE * room.right)
    const lines = gap === null ? [name] : [name, isNarrow ? gapText(gap) : gapWords(gap)]
    const half = Math.max(...lines.map((line) => textWidth(line))) / 2
    const high = (lines.length * LETTERS) / 2
    const candidates = PLACES.map(([right, down]) => {
      const middleX = clamp(at.x + right * (half + 12), room.left + half, room.right - half)
      const middleY = clamp(at.y + down * (high + 12), room.top + high, room.bottom - high)
      return {middleX, middleY, box: boxAround(middleX, middleY, half, high)}
    })
    const best = clearest(candidates, obstacles)!
    if (overlaps(best.box, labels) > 0) return null // two names over each other are none
    obstacles.push(best.box)
    labels.push(best.box)
    const edge = best.middleY > at.y ? best.box.top : best.box.bottom
    const isAway = Math.abs(edge - at.y) > AWAY && (best.box.top > at.y || best.box.bottom < at.y)
    return {
      x: best.middleX,
      y: best.middleY - high + LETTERS - 4,
      lines,
      anchor: "middle" as const,
      isAbove: (gap ?? 0) > 0,
      lead: isAway
        ? `M${round(at.x)} ${round(at.y + (edge > at.y ? 8 : -8))}L${round(best.middleX)} ${round(edge)}`
        : null,
    }
  }
  // Those above their record have the first places, and then the others by how far they lie from theirs.
  const gaps = told.map(({gap}) => gap)
  const rank = (i: number) => (gaps[i] === null ? -1 : gaps[i]! > 0 ? 1 + gaps[i]! : -gaps[i]!)
  const order = plantings.map((_, i) => i)
  if (order.length > FEW) order.sort((a, b) => rank(b) - rank(a))
  const found = new Map(order.map((i) => [i, labelOf(plantings[i]!, gaps[i]!)]))
  return plantings.map((one, i) => ({...one, label: found.get(i)!}))
}

/** Chosen: up to so many names there is room for all. */
const FEW = 8

/** Of the picture's width that a name may take, so that the marks stay to be seen; chosen. */
const NAME_SHARE = 0.4

/** px from which on a line leads from a label to its mark; chosen. */
const AWAY = 20

/** Where a label may stand about its mark, the best first. */
const PLACES: readonly (readonly [number, number])[] = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
  [0, 2.2],
  [0, -2.2],
  [1, 2.2],
  [-1, 2.2],
  [1, -2.2],
  [-1, -2.2],
]

const clamp = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value))

/** "−30 %", "+18 %" */
export const gapText = (gap: number): string => `${gap < 0 ? "\u2212" : "+"}${percentText(Math.abs(gap))}`

/** "30 % under record", "18 % above record" */
const gapWords = (gap: number) => `${percentText(Math.abs(gap))} ${gap < 0 ? "under" : "above"} record`

const polygon = (...points: readonly (readonly [number, number])[]) =>
  `M${points.map(([x, y]) => `${round(x)} ${round(y)}`).join("L")}Z`

/** One outline for each planting, all of about the same weight. */
const SHAPES: readonly PlantingYields["shape"][] = [
  (x, y, r) => polygon([x, y - 1.2 * r], [x + 1.2 * r, y], [x, y + 1.2 * r], [x - 1.2 * r, y]),
  (x, y, r) => `M${round(x - r)} ${round(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`,
  (x, y, r) => polygon([x, y - 1.15 * r], [x + 1.1 * r, y + 0.85 * r], [x - 1.1 * r, y + 0.85 * r]),
  (x, y, r) =>
    polygon(
      [x - 0.9 * r, y - 0.9 * r],
      [x + 0.9 * r, y - 0.9 * r],
      [x + 0.9 * r, y + 0.9 * r],
      [x - 0.9 * r, y + 0.9 * r],
    ),
  (x, y, r) => polygon([x, y + 1.15 * r], [x + 1.1 * r, y - 0.85 * r], [x - 1.1 * r, y - 0.85 * r]),
  (x, y, r) =>
    polygon(
      [x - 0.45 * r, y - 1.2 * r],
      [x + 0.45 * r, y - 1.2 * r],
      [x + 0.45 * r, y + 1.2 * r],
      [x - 0.45 * r, y + 1.2 * r],
    ),
]
