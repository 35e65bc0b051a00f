import {numberText} from "../../editor/display"
import type {Quantiles} from "../../studies/howSure"
import type {Risk} from "../../studies/risk"
import type {Region} from "../../workbook/document"
import type {CashYear} from "../../workbook/lender"
import {PLAIN_REGION} from "../../workbook/region"
import {coverOf, coverText, tightYear} from "./lenderWords"
import {coverScale} from "./coverScale"
import {LETTER, textWidth} from "./placing"
import {niceStep} from "./steps"

/** A rectangle standing on or hanging from a line, px. */
interface Bar {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export interface YearColumn {
  readonly year: number
  /** Middle of the column, px. */
  readonly x: number
  readonly capacity: Bar
  /** The line of what is due. */
  readonly due: {readonly from: number; readonly to: number; readonly y: number}
  /** Whether it has the lowest cover. */
  readonly isTight: boolean
  /** Above its column, what a year lacks, or what the tight year has left where it pays; null where there is no room for it. */
  readonly words: ColumnWords | null
  /** Whether the word "due" stands on the line: in one column, where it has room. */
  readonly isNamed: boolean
  /** The part of what is due that capacity does not reach; null where the year pays. */
  readonly short: Bar | null
  readonly cover: CoverDot | null
  readonly stressed: CoverDot | null
  /** The line of the stress's number: the lower of two in every other column where they are tightly set. */
  readonly stressedY: number
  /** From the cover that one draw in ten falls below to that which one lies above; null before it was worked out. */
  readonly band: CoverBand | null
}

export interface ColumnWords {
  readonly lines: readonly string[]
  /** Their middle, px. */
  readonly x: number
  readonly y: number
}

/** A cover at its level; at the edge of the scale where it lies beyond it. */
export interface CoverDot {
  readonly y: number
  readonly text: string
  readonly beyond: "above" | "below" | null
}

export interface CoverBand {
  readonly low: number
  readonly high: number
  /** The numbers of ends that lie beyond the scale, each with the words' middle, px; null of others. */
  readonly beyondLow: {readonly text: string; readonly x: number} | null
  readonly beyondHigh: {readonly text: string; readonly x: number} | null
}

export interface CashLayout {
  readonly width: number
  readonly height: number
  readonly left: number
  /** The level that just pays is called 1: there is no room for words. */
  readonly isNarrow: boolean
  /** At the line of the cover that is wanted: the number alone where there is no room for more, nothing on paper. */
  readonly wantedWords: string
  /** Whether all sums are in thousands: those of the rules and those in words. */
  readonly inThousands: boolean
  readonly zero: number
  readonly rules: readonly {readonly y: number; readonly text: string}[]
  readonly columns: readonly YearColumn[]
  readonly yearsY: number
  /** The level at which capacity is just what is due, and the cover that is wanted. */
  readonly justPays: number
  readonly wanted: number | null
  readonly coverTitleY: number
  /** Where the numbers stand, in a line each, so that none lies on a level: the plan's above all dots, the stress's below. */
  readonly planY: number
  readonly stressY: number
  /** And those of bands that reach beyond the scale. */
  readonly beyondHighY: number
  readonly beyondLowY: number
  /** Where the words stand for what the stress is. */
  readonly stressWordsY: number
  readonly isCut: boolean
}

const TOP = 34
/** Where the name of the money stands, at the head. */
export const HEAD = 16
/** Of the columns and of the dots, px: where there is little room beside, there is little below. */
const HEIGHTS = {
  wide: {money: 124, cover: 120},
  narrow: {money: 92, cover: 84},
  paper: {money: 56, cover: 54},
}
/** Size of the letters on paper, px (`pictures.css`). */
const LETTER_ON_PAPER = 12
const LETTERS = 18
const LEFT = 8
/** Room for a number beside the rules, px. */
const NUMBERS = 58
const ROOM_BESIDE = 460
/** px from the dots nearest to an edge of the scale to the numbers beyond it. */
const CLEAR = 14

/**
 * The years that have something due: what there is to pay it as columns with a line for what is due, and below them the cover
 * of the plan and of the stress on one level scale that always holds 0 and 1, cut where a year would flatten all others.
 */
export function cashLayout(
  all: readonly CashYear[],
  width: number,
  wanted: number | null,
  region: Region = PLAIN_REGION,
  risk: Risk | null = null,
  isOnPaper = false,
): CashLayout {
  const years = all.filter(({due}) => due > 0)
  const isNarrow = width < ROOM_BESIDE
  const {money: moneyHeight, cover: coverHeight} = HEIGHTS[isOnPaper ? "paper" : isNarrow ? "narrow" : "wide"]
  const letter = isOnPaper ? LETTER_ON_PAPER : LETTER
  const most = Math.max(1, ...years.flatMap(({capacity, due}) => [capacity, due])) * 1.06
  const least = Math.min(0, ...years.map(({capacity}) => capacity))
  const rule = niceStep(most - least)
  const inThousands = rule >= (isNarrow ? 1000 : 1_000_000)
  const below = Math.floor(-least / rule)
  const marks = Array.from(
    {length: below + Math.floor(most / rule) + 1},
    (_, i) => (i - below) * rule,
  ).filter((value) => value !== 0)
  const texts = marks.map((value) => numberText(inThousands ? value / 1000 : value))
  // On half a page the room goes to the numbers of the stress: what stands over the picture names the line.
  const wantedText = wanted === null || isOnPaper ? "" : numberText(wanted, undefined, region.decimal)
  const left = isNarrow
    ? Math.max(...texts.map((text) => textWidth(text) + 8), textWidth(wantedText) + 5)
    : LEFT + NUMBERS
  const step = (width - left) / Math.max(1, years.length)
  const barWidth = Math.min(44, step * 0.62)
  const tight = tightYear(all)
  const middle = (i: number) => left + (i + 0.5) * step
  const amount = (value: number) =>
    inThousands
      ? numberText(value / 1000, Math.abs(value) < 99_950 ? 1 : 0, region.decimal)
      : numberText(value, 0)
  const told = years.map((one, i) =>
    one.short >= 0.5 || one === tight ? wordsOver(one, middle(i), step, amount, width, letter) : null,
  )
  const crowd = told.some((one, i) => one?.isWide && told.some((other, j) => other && Math.abs(i - j) === 1))
  const words = told.map((one, i) => (one === null || (crowd && years[i] !== tight) ? null : one))
  // The columns begin lower where words above one would run into those at the head of the picture.
  const wordsY = (top: number, {level, lines}: ToldOver) =>
    scale(least, most, top + moneyHeight, top)(level) - 8 - LETTERS * (lines.length - 1)
  const top = TOP + Math.max(0, ...words.map((one) => (one ? HEAD + LETTERS - wordsY(TOP, one) : 0)))
  const money = scale(least, most, top + moneyHeight, top)
  const coverTitleY = top + moneyHeight + 48
  const bandIn = (year: number) => risk?.plans[0]?.years.find((one) => one.year === year)?.cover?.at
  // A cover that is typed over moves no dot; one that is emptied takes it away.
  const planned = years.map((one) => (one.cover === null ? null : coverOf(one)))
  const reaches = years.flatMap(({year, stressed}, i) => {
    const [low = null, , , , high = null] = bandIn(year) ?? []
    const all = [planned[i]!, stressed, low, high].filter((one) => one !== null)
    return all.length ? [{least: Math.min(...all), most: Math.max(...all)}] : []
  })
  const {isCut, ...ends} = coverScale(reaches, {least: 0, most: Math.max(1.2, wanted ?? 0)})
  const beyondHighY = coverTitleY + LETTERS + 4
  const hasBeyond = isCut && risk !== null
  const planY = hasBeyond ? beyondHighY + LETTERS : beyondHighY
  const [coverTop, coverBottom] = [planY + CLEAR, planY + CLEAR + coverHeight]
  const stressY = coverBottom + CLEAR + 10
  const stressTexts = years.map(({stressed}) => (stressed === null ? "" : coverText(stressed, region)))
  const isTightlySet = Math.max(...stressTexts.map((text) => textWidth(text, letter))) > step - 1
  const beyondLowY = stressY + LETTERS * (isTightlySet ? 2 : 1)
  const stressWordsY = (hasBeyond ? beyondLowY : beyondLowY - LETTERS) + LETTERS + 2
  const level = scale(ends.least, ends.most, coverBottom, coverTop)
  const cover = (value: number) => Math.min(coverBottom, Math.max(coverTop, level(value)))
  const beyond = (value: number) => (value > ends.most ? "above" : value < ends.least ? "below" : null)
  const dot = (value: number | null): CoverDot | null =>
    value === null ? null : {y: cover(value), text: coverText(value, region), beyond: beyond(value)}
  const band = (at: Quantiles | undefined, x: number): CoverBand | null => {
    if (!at) return null
    const [low, , , , high] = at
    const end = (value: number, arrow: string) => {
      if (beyond(value) === null) return null
      const text = `${arrow}\u202f${coverText(value, region)}`
      return {text, x: Math.min(x, width - textWidth(text) / 2)}
    }
    return {low: cover(low), high: cover(high), beyondLow: end(low, "↓"), beyondHigh: end(high, "↑")}
  }
  const zero = money(0)
  // The word stands inside a column that reaches well above what is due.
  const named =
    barWidth < textWidth("due")
      ? -1
      : years.findIndex(({capacity, due}) => capacity > due && money(due) - money(capacity) > LETTERS)
  return {
    width,
    height: stressWordsY + 8,
    left,
    isNarrow,
    wantedWords: isNarrow ? wantedText : "wanted",
    inThousands,
    zero,
    rules: marks.map((value, i) => ({y: money(value), text: texts[i]!})),
    columns: years.map((one, i) => {
      const x = middle(i)
      return {
        year: one.year,
        x,
        capacity: barFrom(x, barWidth, zero, money(one.capacity)),
        due: {from: x - barWidth / 2 - 5, to: x + barWidth / 2 + 5, y: money(one.due)},
        isTight: one === tight,
        words: words[i] ? {lines: words[i].lines, x: words[i].x, y: wordsY(top, words[i])} : null,
        isNamed: i === named,
        short:
          one.short < 0.5 ? null : barFrom(x, barWidth, money(Math.max(0, one.capacity)), money(one.due)),
        cover: dot(planned[i]!),
        stressed: dot(one.stressed),
        stressedY: isTightlySet && i % 2 === 1 ? stressY + LETTERS : stressY,
        band: band(bandIn(one.year), x),
      }
    }),
    yearsY: money(least) + LETTERS,
    justPays: cover(1),
    wanted: wanted === null ? null : cover(wanted),
    coverTitleY,
    planY,
    stressY,
    beyondHighY,
    beyondLowY,
    stressWordsY,
    isCut,
  }
}

const scale = (least: number, most: number, bottom: number, top: number) => (value: number) =>
  bottom - ((value - least) / (most - least)) * (bottom - top)

const barFrom = (x: number, width: number, from: number, to: number): Bar => ({
  x: x - width / 2,
  y: Math.min(from, to),
  width,
  height: Math.abs(to - from),
})

interface ToldOver {
  readonly lines: readonly string[]
  readonly x: number
  /** The sum above which they stand. */
  readonly level: number
  readonly isWide: boolean
}

/** What a year lacks or has left, above its column: in one line where it fits into its step, or else in two. */
function wordsOver(
  {capacity, due, short}: CashYear,
  x: number,
  step: number,
  amountOf: (value: number) => string,
  width: number,
  letter: number,
): ToldOver {
  const amount = amountOf(short >= 0.5 ? short : capacity - due)
  const [inOne, ...inTwo] =
    short >= 0.5 ? [`short by ${amount}`, "short", amount] : [`${amount} left`, amount, "left"]
  const lines = textWidth(inOne!, letter) < step ? [inOne!] : inTwo
  const wide = Math.max(...lines.map((line) => textWidth(line, letter)))
  return {
    lines,
    x: Math.min(x, width - wide / 2),
    level: short >= 0.5 ? due : capacity,
    isWide: wide > step,
  }
}
