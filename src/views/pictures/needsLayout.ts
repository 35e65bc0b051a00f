import {numberText} from "../../editor/display"
import type {CellAddress} from "../../workbook/document"
import type {Decimal} from "../../workbook/region"
import {type Box, boxOfText, clearest, overlaps, textWidth} from "./placing"
import {niceStep} from "./steps"

/** One week's need against what is at hand, in the same unit; null where it is not known. */
export interface Need {
  readonly week: number
  readonly needed: number | null
  readonly atHand: number | null
  /** The week lies behind: its bar is filled. */
  readonly isPast: boolean
  /** The cell of what is needed. */
  readonly at?: CellAddress | undefined
  /** What makes its day, as a sentence. */
  readonly made?: (() => string) | undefined
}

export interface NeedsOptions {
  readonly width: number
  readonly decimals: number
  readonly decimal?: Decimal
  /** Of what is at hand: "booked", "kW fitted". */
  readonly atHandWords: string
}

interface Bar {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export interface NeedColumn {
  readonly week: number
  readonly isPast: boolean
  /** Middle of the column, px. */
  readonly x: number
  readonly within: Bar
  /** The part above what is at hand; null where it is enough. */
  readonly short: Bar | null
  /** The number, and what is short under it; the last line stands at `y`. */
  readonly words: readonly string[]
  readonly y: number
  /** In a column too narrow for both above it the number stands within the bar. */
  readonly inside: {readonly text: string; readonly y: number} | null
}

/** Everything that the drawing needs, px. */
export interface NeedsLayout {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly base: number
  readonly rules: readonly {readonly y: number; readonly text: string}[]
  readonly columns: readonly NeedColumn[]
  /** What is at hand, a line in steps. */
  readonly line: string
  readonly atHand: readonly {readonly text: string; readonly x: number; readonly y: number}[]
}

const ROOM = 124 // px from the base to the highest bar; chosen
const BELOW = 26
const LEFT = 34
const LETTERS = 17
const LEAST_ROOM = 22 // px that a number within a bar takes; chosen
/** Of a column's room that its bar takes; chosen. */
const WIDE = 0.72

/** What a need is short by, where its decimals can show it; null where it is not, or not known to be. */
export function shortBy({needed, atHand}: Need, decimals: number): number | null {
  if (needed === null || atHand === null) return null
  return needed - atHand > 0.5 * 10 ** -decimals ? needed - atHand : null
}

/** Bars on one scale, what is at hand as a line in steps, and words that stand clear of both. */
export function needsLayout(needs: readonly Need[], options: NeedsOptions): NeedsLayout {
  const {width, decimals, decimal, atHandWords} = options
  const shown = (value: number) => numberText(value, decimals, decimal)
  const step = (width - LEFT) / Math.max(1, needs.length)
  const most = Math.max(1, ...needs.flatMap(({needed, atHand}) => [needed ?? 0, atHand ?? 0])) * 1.08
  const hasRoom = (value: number) => (value / most) * ROOM >= LEAST_ROOM
  const words = needs.map((need) =>
    wordsOf(need, step, shown, shortBy(need, decimals), hasRoom(need.atHand ?? 0)),
  )
  const top = 6 + LETTERS * Math.max(1, ...words.map(({above}) => above.length))
  const base = top + ROOM
  const y = (value: number) => base - (value / most) * ROOM
  const rule = niceStep(most)
  const columns = needs.map((need, i): NeedColumn => {
    const {week, isPast} = need
    const needed = need.needed ?? 0
    const lacks = shortBy(need, decimals)
    const enough = lacks === null ? needed : needed - lacks
    const bar = (from: number, to: number) => ({
      x: LEFT + (i + (1 - WIDE) / 2) * step,
      y: y(to),
      width: WIDE * step,
      height: y(from) - y(to),
    })
    return {
      week,
      isPast,
      x: LEFT + (i + 0.5) * step,
      within: bar(0, enough),
      short: lacks === null ? null : bar(enough, needed),
      words: words[i]!.above,
      y: y(needed) + (lacks !== null || !hasRoom(needed) ? -5 : 16),
      inside: words[i]!.isInside ? {text: shown(needed), y: y(enough) + 16} : null,
    }
  })
  return {
    width,
    height: base + BELOW,
    left: LEFT,
    base,
    rules: Array.from({length: Math.floor(most / rule)}, (_, i) => (i + 1) * rule).map((value) => ({
      y: y(value),
      text: numberText(value, undefined, decimal),
    })),
    columns,
    line: needs
      .map(({atHand}, i) => {
        if (atHand === null) return ""
        const starts = i === 0 || needs[i - 1]!.atHand === null
        return `${starts ? `M${px(LEFT + i * step)} ` : "V"}${px(y(atHand))}H${px(LEFT + (i + 1) * step)}`
      })
      .join(""),
    atHand: runsOf(needs).flatMap(({from, to, atHand}) => {
      const texts = [`${shown(atHand)} ${atHandWords}`, `${shown(atHand)} ${atHandWords.split(" ").at(-1)}`]
      const starts = Array.from({length: to - from}, (_, i) => LEFT + (from + i) * step + 4)
      const spots = texts.flatMap((text) =>
        [...starts, Math.min(LEFT + to * step, width) - 4 - textWidth(text)]
          .filter((x) => x >= LEFT && x + textWidth(text) <= width)
          .flatMap((x) => [-6, LETTERS].map((down) => ({text, x, y: y(atHand) + down})))
          .map((spot) => ({...spot, box: boxOfText(spot.text, spot.x, spot.y)})),
      )
      const lines = needs.flatMap((one, i) =>
        one.atHand === null || one.atHand === atHand
          ? []
          : [stretch(LEFT + i * step, LEFT + (i + 1) * step, y(one.atHand))],
      )
      const weeks = {left: 0, right: width, top: base + 1, bottom: base + BELOW}
      const words = columns.flatMap(wordsBoxes)
      const bars = columns.map((one) => barBox(one, base))
      const free = clearest(spots, [...bars, ...words, ...lines, weeks])
      // Over a bar words can still be read, over others they cannot.
      const best =
        atHand > 0 && free && overlaps(free.box, words) > 0
          ? clearest(spots, [...words, ...lines, weeks])
          : free
      return best ? [{text: best.text, x: best.x, y: best.y}] : []
    }),
  }
}

/**
 * "19, short 3" in as many lines as its column asks for. In a narrow one the number goes into the bar and "3 short" stands
 * above it, since "19" over "short" over "3" would read as 19 short; of a week that lies behind, only the number where even
 * that is too wide.
 */
function wordsOf(
  {needed, isPast}: Need,
  step: number,
  shown: (value: number) => string,
  lacks: number | null,
  hasRoom: boolean,
): {readonly above: readonly string[]; readonly isInside: boolean} {
  if (needed === null || needed <= 0) return {above: [], isInside: false}
  const number = shown(needed)
  const fits = (text: string) => textWidth(text) <= step - 2
  if (lacks === null) return {above: [number], isInside: false}
  const short = shown(lacks)
  if (fits(`${number}, short ${short}`)) return {above: [`${number}, short ${short}`], isInside: false}
  if (fits(`short ${short}`)) return {above: [number, `short ${short}`], isInside: false}
  if (isPast && !fits("short")) return {above: [number], isInside: false}
  return hasRoom
    ? {above: [short, "short"], isInside: true}
    : {above: [`${number}:`, short, "short"], isInside: false}
}

/** Weeks in a row with the same known at hand, as positions, the end left out. */
function runsOf(needs: readonly Need[]) {
  const starts = needs.flatMap(({atHand}, i) => (i === 0 || needs[i - 1]!.atHand !== atHand ? [i] : []))
  return starts.flatMap((from, i) => {
    const {atHand} = needs[from]!
    return atHand === null ? [] : [{from, to: starts[i + 1] ?? needs.length, atHand}]
  })
}

const barBox = ({within, short}: NeedColumn, base: number): Box => ({
  left: within.x,
  right: within.x + within.width,
  top: (short ?? within).y,
  bottom: base,
})

/** The room of a column's words, above its bar and within it. */
function wordsBoxes({x, words, y, inside}: NeedColumn): Box[] {
  const half = Math.max(0, ...words.map((text) => textWidth(text))) / 2
  const above = {left: x - half, right: x + half, top: y - LETTERS * words.length + 4, bottom: y + 3}
  const within = inside && boxOfText(inside.text, x - textWidth(inside.text) / 2, inside.y)
  return [...(words.length ? [above] : []), ...(within ? [within] : [])]
}

const stretch = (left: number, right: number, y: number): Box => ({left, right, top: y - 1, bottom: y + 1})
const px = (value: number) => Math.round(value * 10) / 10
