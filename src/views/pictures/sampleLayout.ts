import {dateText, dayText, numberText, percentText} from "../../editor/display"
import type {Sampling, SampleSpread} from "../../workbook/sampleSpread"
import {BOLD, fitted, textWidth} from "./placing"
import {niceStep} from "./steps"

interface Dot {
  readonly x: number
  readonly y: number
  /** What a questioned plant is called beside its ring. */
  readonly odd: {readonly text: string; readonly x: number; readonly y: number} | null
}

/** One sampling, on its own line of the picture. */
export interface SampleRow {
  readonly y: number
  /** Of its name, and of its numbers. */
  readonly words: {
    readonly name: string
    readonly numbers: string
    readonly y: number
    readonly numbersX: number
  }
  /** Whether it is the least sure of several latest means. */
  readonly isLeastSure: boolean
  readonly interval: {readonly x: number; readonly width: number} | null
  /** Half of the interval in words, beside all of the row's marks; null where there is none, or no room. */
  readonly within: {readonly text: string; readonly x: number; readonly y: number} | null
  readonly mean: number
  readonly median: number
  readonly dots: readonly Dot[]
}

/** Everything that the drawing needs, px. */
export interface SampleLayout {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly base: number
  readonly rules: readonly {readonly x: number; readonly text: string}[]
  readonly rows: readonly SampleRow[]
}

const TOP = 22
const EACH = 48
/** From the middle of a strip to its edge. */
export const HALF = 10
const BELOW = 24
const SIDE = 16
/** Narrower than this a name gets the room of the confidence, which the sentences say; chosen. */
const NARROW = 420
/** Between a name and its numbers, px. */
const NAME_GAP = 14

/** Radius of the ring about a questioned plant. */
export const RING = 7

/** The dots of a row stand a little apart, by turns above and below its middle, so that like ones can be told apart. */
const LIFTS = [0, -5, 5, -2.5, 2.5]

/** One line for each sampling, all on one scale of mg/g: every plant a dot, the mean and its interval. */
export function sampleLayout(spread: SampleSpread, width: number): SampleLayout {
  const {samplings, confidence} = spread
  const {widest, isAlone} = leastSure(spread) ?? {}
  const right = width - SIDE
  const all = samplings.flatMap(({plants, interval}) => [
    ...plants.map(({sugar}) => sugar),
    ...(interval ?? []),
  ])
  const [lowest, highest] = [Math.min(...all), Math.max(...all)]
  const step = niceStep(Math.max(10, highest - lowest))
  const least = Math.floor(lowest / step) * step
  const most = Math.max(least + step, Math.ceil(highest / step) * step)
  const x = (sugar: number) => SIDE + ((sugar - least) / (most - least)) * (right - SIDE)
  const base = TOP + EACH * samplings.length
  return {
    width,
    height: base + BELOW,
    left: SIDE,
    right,
    base,
    rules: Array.from({length: Math.round((most - least) / step) + 1}, (_, i) => least + i * step).map(
      (mark) => ({
        x: x(mark),
        text: numberText(mark),
      }),
    ),
    rows: samplings.map((one, i): SampleRow => {
      const isLeastSure = one === widest && !isAlone
      const y = TOP + EACH * i + 34
      const when = one.day === null ? "" : `, ${one.isFormer ? monthText(one.day) : dayText(one.day)}`
      const numbers = numbersOf(one, width < NARROW ? null : confidence)
      const room = width - textWidth(numbers) - NAME_GAP
      const name = fitted(one.planting, room / BOLD - textWidth(when)) + when
      const dots = one.plants.map(({plant, sugar, isOdd}, k) => {
        const dot = {x: x(sugar), y: y + LIFTS[k % LIFTS.length]!}
        const text = plant === null ? "questioned" : `plant ${plant}`
        const right = dot.x + RING + 3
        const wide = textWidth(text)
        const textX = right + wide <= width ? right : dot.x - RING - 3 - wide
        return {...dot, odd: isOdd ? {text, x: textX, y: dot.y + 5} : null}
      })
      const interval = one.interval && {
        x: x(one.interval[0]),
        width: Math.max(1, x(one.interval[1]) - x(one.interval[0])),
      }
      const words = {
        name,
        numbers,
        y: y - 17,
        numbersX: Math.min(textWidth(name) + NAME_GAP, width - textWidth(numbers)),
      }
      return {
        y,
        words,
        isLeastSure,
        interval,
        mean: x(one.mean),
        median: x(medianOf(one)),
        within: besideMarks(withinWords(one, isLeastSure), {y, dots, interval, words}, width),
        dots,
      }
    }),
  }
}

/** "±12, least sure" */
const withinWords = (one: Sampling, isLeastSure: boolean) =>
  `\u00b1${whole(halfOf(one))}${isLeastSure ? ", least sure" : ""}`

/** Where words stand beside all the marks of a row: after them, before them, or after the row's numbers; null without room. */
function besideMarks(
  text: string,
  {y, dots, interval, words}: Pick<SampleRow, "y" | "dots" | "interval" | "words">,
  width: number,
): SampleRow["within"] {
  if (!interval) return null
  const wide = textWidth(text) * BOLD
  const marks = [
    {from: interval.x, to: interval.x + interval.width},
    ...dots.map((dot) => ({from: dot.x - RING, to: dot.x + RING})),
    ...dots.flatMap(({odd}) => (odd ? [{from: odd.x, to: odd.x + textWidth(odd.text)}] : [])),
  ]
  const spots = [
    {x: Math.max(...marks.map(({to}) => to)) + 6, y: y + 5},
    {x: Math.min(...marks.map(({from}) => from)) - 6 - wide, y: y + 5},
    {x: words.numbersX + textWidth(words.numbers) + NAME_GAP, y: words.y},
  ]
  const spot = spots.find(({x}) => x >= 0 && x + wide <= width)
  return spot ? {text, ...spot} : null
}

/** "409 mg/g (80 %: 397–421), 10 of 10" */
function numbersOf({mean, interval, plants, taken}: Sampling, confidence: number | null): string {
  const share = confidence === null ? "" : `${percentText(confidence, "needed")}: `
  const range = interval ? ` (${share}${whole(interval[0])}\u2013${whole(interval[1])})` : ""
  return `${whole(mean)}\u00a0mg/g${range}, ${plants.length} of ${taken}`
}

/** "Long Acre, 5 Mar: 10 plants of 10 used, 409 mg/g (80 %: 397–421)." */
export function sampleSentence(one: Sampling, confidence: number): string {
  const {planting, day, isFormer, plants, taken, mean, interval} = one
  const range = interval
    ? ` (${percentText(confidence, "needed")}: ${whole(interval[0])}\u2013${whole(interval[1])})`
    : ", too few plants for an interval"
  const odd = plants.filter(({isOdd}) => isOdd)
  const ringed = odd.length
    ? ` Questioned: ${odd.map(({plant, sugar}) => `${plant === null ? "" : `plant ${plant}, `}${whole(sugar)}\u00a0mg/g`).join("; ")}.`
    : ""
  const when = day === null ? "" : `, ${isFormer ? dateText(day) : dayText(day)}`
  return `${planting}${when}: ${plants.length} ${plants.length === 1 ? "plant" : "plants"} of ${taken} used, ${whole(mean)}\u00a0mg/g${range}.${ringed}`
}

/** What the samples found: the least sure of the latest means, by the width of its interval, or the only one that has one. */
export function sampleFinding(spread: SampleSpread): string {
  const found = leastSure(spread)
  if (!found) return "Too few plants sampled for an interval: take two or more of a planting."
  const {widest, isAlone, isTied} = found
  const within = `give or take ${whole(halfOf(widest))} at ${percentText(spread.confidence, "needed")}`
  const mean = `${whole(widest.mean)}\u00a0mg/g, ${within}`
  if (!isAlone)
    return `${widest.planting} is the least sure: ${mean}; ${isTied ? "none is less sure" : "the others are surer"}.`
  const others = spread.samplings.some(({planting, isFormer}) => planting !== widest.planting && !isFormer)
  return `${widest.planting}: ${mean}${others ? "; too few plants of the others for an interval" : ""}.`
}

/** Of the latest sampling of each planting the one with the widest interval; null where none has an interval. */
function leastSure({samplings}: SampleSpread) {
  const latest = new Map(
    samplings.flatMap((one) => (one.interval && !one.isFormer ? [[one.planting, one]] : [])),
  )
  const [first, ...others] = latest.values()
  if (!first) return null
  const widest = others.reduce((most, one) => (halfOf(one) > halfOf(most) ? one : most), first)
  const isTied = others.some((one) => one !== widest && whole(halfOf(one)) === whole(halfOf(widest)))
  return {widest, isAlone: others.length === 0, isTied}
}

/** Half of its interval, mg/g. */
const halfOf = ({interval}: Sampling) => (interval ? (interval[1] - interval[0]) / 2 : 0)

function medianOf({plants}: Sampling): number {
  const sorted = plants.map(({sugar}) => sugar).toSorted((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2
}

const whole = (value: number) => numberText(value, 0)

/** "Mar 2025" */
const monthText = (day: number) => dateText(day).replace(/^\S+\s/, "")
