import {numberText} from "../../editor/display"
import type {CellAddress} from "../../workbook/document"
import type {ReplantField} from "../../workbook/replant"
import {stretches} from "./besideLine"
import {BOLD, clearest, textWidth, type Box} from "./placing"

/** What the picture of the old field against the new planting is drawn from, in numbers as they are shown. */
export interface OldAgainstNew {
  readonly field: string
  /** Of all its sums: "money/ha". */
  readonly unit: string
  readonly seasons: readonly {
    readonly year: number
    readonly cash: number
    /** Ends of the range that holds 8 outcomes of 10; the cash itself where none is known. */
    readonly low: number
    readonly high: number
    /** The cell of the cash. */
    readonly at: CellAddress
  }[]
  /** What a season must bring, and its ends when a new planting yields a tenth less or more. */
  readonly level: number
  readonly levelLow: number
  readonly levelHigh: number
  /** Seasons that the field is best kept. */
  readonly kept: number
  /** Between which seasons either can be right, counted from 0: the earliest near last harvest, and the season after the latest. */
  readonly either: readonly [from: number, to: number]
}

/** The place where the old field is best cleared: between two seasons, before the first, or not among them. */
export type Crossing =
  | {readonly kind: "between"; readonly before: number; readonly after: number; readonly at: number}
  | {readonly kind: "below from the start"}
  | {readonly kind: "above to the end"}

/**
 * Where the line of the old field falls through the level at the best year to clear it: the last season kept lies above the level
 * and the next one below, or another year would be better. It may cross again where later seasons do not make up for poor ones
 * before. `at` counts seasons from 0.
 */
export function crossingOf({
  seasons,
  level,
  kept,
}: Pick<OldAgainstNew, "seasons" | "level" | "kept">): Crossing {
  if (kept === 0) return {kind: "below from the start"}
  if (kept >= seasons.length) return {kind: "above to the end"}
  const [from, to] = [seasons[kept - 1]!, seasons[kept]!]
  const fall = from.cash - to.cash
  const at = kept - 1 + (fall > 0 ? (from.cash - level) / fall : 0)
  return {kind: "between", before: from.year, after: to.year, at}
}

/** The range of a field's seasons: its crop may lie off by the spread; where the cash is typed no range is known. */
export const rangesOf = (
  {seasons}: ReplantField,
  spread: number,
  shown = (stored: number) => stored,
): OldAgainstNew["seasons"] =>
  seasons.map(({year, cash, crop, at}) => {
    const off = crop === null ? 0 : spread * Math.max(0, crop.leaves)
    return {year, cash: shown(cash), low: shown(cash - off), high: shown(cash + off), at}
  })

export interface Words {
  readonly x: number
  readonly y: number
  readonly words: string
  readonly anchor: "start" | "middle" | "end"
}

type Season = OldAgainstNew["seasons"][number]

/** Everything that the drawing needs, px. */
export interface ReplantLayout {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  /** Of all its sums: "money/ha a year". */
  readonly unit: string
  /** Their numbers stand before `left`. */
  readonly rules: readonly {readonly y: number; readonly words: string}[]
  readonly nought: number | null
  readonly years: readonly Words[]
  readonly line: string
  readonly dots: readonly {readonly x: number; readonly y: number; readonly isAbove: boolean}[]
  readonly edges: readonly string[]
  readonly level: {readonly y: number; readonly low: number; readonly high: number; readonly words: Words}
  /** Where the two ranges overlap. */
  readonly either: string
  readonly eitherWords: Words | null
  readonly oldWords: Words
  readonly crossing: {readonly x: number; readonly y: number} | null
  /** Beside the crossing: from when the field brings less than a year must. */
  readonly crossingWords: Words | null
  /** A line from its ring to them; empty without them. */
  readonly crossingLead: string
}

const EITHER = "either can be right"
const HEIGHT = 300
const TOP = 30
const BELOW = 30
const RIGHT = 8
/** px between a number and its rule. */
const GAP = 8
/** Radius of the ring at the crossing, px. */
export const CROSSING = 9
/** Points between two seasons at which the overlap is followed. */
const STEPS = 12

/** Lays out the picture: seasons along, money up; the old field as a line through its seasons, the new planting as a level. */
export function replantLayout(picture: OldAgainstNew, width: number): ReplantLayout {
  const {seasons, level, levelLow, levelHigh, unit} = picture
  const base = HEIGHT - BELOW
  const all = [...seasons.flatMap(({low, high}) => [low, high]), levelLow, levelHigh, 0]
  const step = niceStep(Math.max(...all) - Math.min(...all))
  const [lowest, highest] = [
    Math.floor(Math.min(...all) / step) * step,
    Math.ceil(Math.max(...all) / step) * step,
  ]
  const y = (money: number) => base - ((money - lowest) / (highest - lowest)) * (base - TOP)
  const count = Math.round((highest - lowest) / step)
  const steps = Array.from({length: count + 1}, (_, i) => lowest + i * step)
  const left = Math.max(...steps.map((money) => textWidth(numberText(money, 0)))) + GAP
  const each = (width - left - RIGHT) / seasons.length
  const x = (season: number) => left + each * (season + 0.5)
  const through = (of: (one: OldAgainstNew["seasons"][number]) => number) =>
    seasons.map((one, i) => `${i ? "L" : "M"}${px(x(i))} ${px(y(of(one)))}`).join("")
  const hasRange = seasons.some(({low, high}) => high > low)
  const crossing = crossingOf(picture)
  const skips = Math.max(1, Math.ceil(44 / each))
  const {areas, ends} = overlapOf(picture, x, y)
  const levelText = `a year must bring ${numberText(Math.round(level), 0)}`
  const lastCash = seasons.at(-1)!.cash
  const oldWords: Words = {
    x: x(seasons.length - 1),
    y: y(lastCash) + (lastCash < level ? 20 : -12),
    words: "this field",
    anchor: seasons.length > 1 ? "end" : "middle",
  }
  const alongs = [
    (one: Season) => one.cash,
    ...(hasRange ? [(one: Season) => one.high, (one: Season) => one.low] : []),
  ]
  const lines = alongs.flatMap((of) => stretches(seasons.map((one, i) => ({x: x(i), y: y(of(one))}))))
  const levels = [level, levelLow, levelHigh].map((money) => lineBox(left, width - RIGHT, y(money)))
  const atLevel = [-7, 17].flatMap((down): Words[] => [
    {x: width - RIGHT, y: y(level) + down, words: levelText, anchor: "end"},
    {x: left + 4, y: y(level) + down, words: levelText, anchor: "start"},
  ])
  const levelWords = clearest(
    atLevel.map((words) => ({words, box: boxOf(words)})),
    [boxOf(oldWords), ...lines, ...(ends ? [ends] : []), ...levels],
  )!.words
  const obstacles = [boxOf(levelWords), boxOf(oldWords), ...lines, ...levels]
  const room = {left, right: width - RIGHT, top: TOP, bottom: base}
  const either = ends && eitherWords(ends, room, obstacles)
  const crossed = crossing.kind === "between" ? {x: x(crossing.at), y: y(level)} : null
  const words =
    crossed && crossing.kind === "between"
      ? wordsAbout(crossed, `too little from ${crossing.after}`, room, [
          ...obstacles,
          ...(either ? [boxOf(either)] : []),
        ])
      : null
  return {
    width,
    height: HEIGHT,
    left,
    right: width - RIGHT,
    unit: `${unit} a year`,
    rules: steps.map((money) => ({y: y(money), words: numberText(money, 0)})),
    nought: lowest < 0 ? y(0) : null,
    years: seasons.flatMap(({year}, i) =>
      i % skips === 0 ? [{x: x(i), y: HEIGHT - 8, words: String(year), anchor: "middle" as const}] : [],
    ),
    line: through(({cash}) => cash),
    dots: seasons.map(({cash}, i) => ({x: x(i), y: y(cash), isAbove: cash >= level})),
    edges: hasRange ? [through(({high}) => high), through(({low}) => low)] : [],
    level: {
      y: y(level),
      low: y(levelLow),
      high: y(levelHigh),
      words: levelWords,
    },
    either: areas,
    eitherWords: either,
    oldWords,
    crossing: crossed,
    crossingWords: words,
    crossingLead: crossed && words ? leadTo(crossed, boxOf(words)) : "",
  }
}

/** Words about a point: under or over it, as close as they stand clear. */
function wordsAbout(
  at: {readonly x: number; readonly y: number},
  words: string,
  room: Box,
  obstacles: readonly Box[],
): Words {
  const wide = textWidth(words) * 1.06
  const places = [26, -18, 44, -36, 62, -54, 80].flatMap((down) =>
    [at.x + 12, at.x - wide / 2, at.x - wide - 12].map((x) => {
      const one = {
        x: Math.min(Math.max(x, room.left), room.right - wide),
        y: at.y + down,
        words,
        anchor: "start" as const,
      }
      return {at: one, box: boxOf(one)}
    }),
  )
  const inside = places.filter(({at: {y}}) => y - 12 >= room.top && y + 3 <= room.bottom)
  return clearest(inside, obstacles)?.at ?? places[0]!.at
}

/** From the edge of the ring at a crossing to the nearest edge of its words. */
function leadTo({x, y}: {readonly x: number; readonly y: number}, words: Box): string {
  const to = {
    x: Math.min(Math.max(x, words.left + 4), words.right - 4),
    y: words.top > y ? words.top : words.bottom,
  }
  const share = CROSSING / Math.max(CROSSING, Math.hypot(to.x - x, to.y - y))
  return `M${px(x + (to.x - x) * share)} ${px(y + (to.y - y) * share)}L${px(to.x)} ${px(to.y)}`
}

/** Where the words of the overlap stand: at its upper right if that is clear, or about it. */
function eitherWords({left, right, top, bottom}: Box, room: Box, obstacles: readonly Box[]): Words {
  const wide = textWidth(EITHER) * 1.06
  const places = [top - 6, bottom + 16, top - 22, bottom + 32].flatMap((y) =>
    [right + 6, left, right - wide, (left + right - wide) / 2].map((x) => ({
      x: Math.min(Math.max(x, room.left), room.right - wide),
      y,
    })),
  )
  const words = places
    .filter(({y}) => y - 12 >= room.top && y + 3 <= room.bottom)
    .map(({x, y}) => ({x, y, words: EITHER, anchor: "start"}) as const)
    .map((at) => ({at, box: boxOf(at)}))
  return clearest(words, obstacles)?.at ?? {x: left, y: bottom + 16, words: EITHER, anchor: "start"}
}

function boxOf({x, y, words, anchor}: Words): Box {
  const wide = textWidth(words) * BOLD
  const from = anchor === "end" ? x - wide : anchor === "middle" ? x - wide / 2 : x
  return {left: from, right: from + wide, top: y - 11, bottom: y + 3}
}

const lineBox = (left: number, right: number, y: number): Box => ({left, right, top: y - 1, bottom: y + 1})

/** The area between the ranges where they overlap within the span, and the box around it. */
function overlapOf(
  {seasons, levelLow, levelHigh, either: [from, to]}: OldAgainstNew,
  x: (season: number) => number,
  y: (money: number) => number,
): {areas: string; ends: Box | null} {
  const points = Array.from({length: Math.round((to - from) * STEPS) + 1}, (_, i) => from + i / STEPS)
  const at = (season: number, of: (one: OldAgainstNew["seasons"][number]) => number) => {
    const before = Math.min(Math.floor(season), seasons.length - 1)
    const after = Math.min(before + 1, seasons.length - 1)
    const share = season - before
    return of(seasons[before]!) * (1 - share) + of(seasons[after]!) * share
  }
  const shared = points.flatMap((season) => {
    const high = Math.min(
      at(season, (one) => one.high),
      levelHigh,
    )
    const low = Math.max(
      at(season, (one) => one.low),
      levelLow,
    )
    return high > low ? [{x: x(season), top: y(high), bottom: y(low)}] : []
  })
  if (shared.length < 2) return {areas: "", ends: null}
  const tops = shared.map((one) => `${px(one.x)} ${px(one.top)}`)
  const bottoms = shared.toReversed().map((one) => `${px(one.x)} ${px(one.bottom)}`)
  const ends = {
    left: shared[0]!.x,
    right: shared.at(-1)!.x,
    top: Math.min(...shared.map(({top}) => top)),
    bottom: Math.max(...shared.map(({bottom}) => bottom)),
  }
  return {areas: `M${[...tops, ...bottoms].join("L")}Z`, ends}
}

const px = (value: number) => value.toFixed(1)

/** A step of 1, 2 or 5 times a power of ten that gives some four to seven rules. */
function niceStep(range: number): number {
  const rough = Math.max(range, 1) / 5
  const power = 10 ** Math.floor(Math.log10(rough))
  return power * ([1, 2, 5].find((one) => one * power >= rough) ?? 10)
}
