import {BOLD, textWidth} from "./placing"

export interface MovedRow {
  /** Lines of words, the first one bold. */
  readonly words: readonly [string, string]
  readonly days: number
}

export interface MovedLayout {
  readonly height: number
  /** From the left to the line of no change, px. */
  readonly middle: number
  /** px a day. */
  readonly scale: number
  /** Of each row: its upper edge, and that of its bar. */
  readonly rows: readonly {readonly y: number; readonly barY: number}[]
}

const HEAD = 24
const ROW = 40
const BAR_ROW = 26
const MOST = 80 // px of the longest bar
const LEAST = 40 // shorter than this the days cannot be compared; chosen
const NUMBER = 38 // room for "−12 d"
const GAP = 16 // px from the words to the bars, near enough to be read as one row; chosen
/** The fewest days that the scale holds, so that a day does not look like a week; chosen. */
const DAYS = 7

/** Bars beside their words where there is room, under them where there is not. */
export function movedLayout(rows: readonly MovedRow[], width: number): MovedLayout {
  const longest = Math.max(DAYS, ...rows.map(({days}) => Math.abs(days)))
  const isEarlier = rows.some(({days}) => days < 0)
  const isLater = rows.some(({days}) => days > 0)
  const words = Math.max(
    ...rows.flatMap(({words: [bold, quiet]}) => [BOLD * textWidth(bold), textWidth(quiet)]),
  )
  const [before, after] = [textWidth("days earlier") + 10, textWidth("later") + 10]
  const room = width - words - GAP
  const sides = Number(isEarlier) + Number(isLater)
  const spare = room - (isEarlier ? NUMBER : before) - (isLater ? NUMBER : after)
  const beside = Math.min(MOST, spare / Math.max(1, sides))
  if (beside >= LEAST)
    return {
      height: HEAD + ROW * rows.length,
      middle: words + GAP + (isEarlier ? beside + NUMBER : before),
      scale: beside / longest,
      rows: rows.map((_, i) => ({y: HEAD + i * ROW, barY: HEAD + i * ROW + 4})),
    }
  const under = Math.min(MOST, width / 2 - NUMBER)
  return {
    height: HEAD + (ROW + BAR_ROW) * rows.length,
    middle: width / 2,
    scale: under / longest,
    rows: rows.map((_, i) => ({
      y: HEAD + i * (ROW + BAR_ROW),
      barY: HEAD + i * (ROW + BAR_ROW) + ROW,
    })),
  }
}
