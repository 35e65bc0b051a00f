import {BOLD, textWidth} from "./placing"

export interface MovedRow {
  /** Lines of words, the first one bold. */
  readonly words: readonly [string, string]
  /** How far it moved: below 0 to the left. */
  readonly by: number
  /** The same as it stands at the end of the bar: "−12 d". */
  readonly text: string
}

export interface MovedLayout {
  readonly height: number
  /** From the left to the line of no change, px. */
  readonly middle: number
  /** px for each 1 of `by`. */
  readonly scale: number
  /** Of each row: its upper edge, and that of its bar. */
  readonly rows: readonly {readonly y: number; readonly barY: number}[]
}

const HEAD = 24
const ROW = 40
const BAR_ROW = 26
const MOST = 80 // px of the longest bar
const LEAST = 40 // shorter than this the bars cannot be compared; chosen
const END = 5 // px from a bar to its number
const GAP = 16 // px from the words to the bars, near enough to be read as one row; chosen

/**
 * Bars beside their words where there is room, under them where there is not. `sides` are the words above the bars to the left
 * and to the right; the scale holds `least` at the fewest, so that a small move does not look like a large one.
 */
export function movedLayout(
  rows: readonly MovedRow[],
  width: number,
  {sides, least}: {sides: readonly [string, string]; least: number},
): MovedLayout {
  const longest = Math.max(least, ...rows.map(({by}) => Math.abs(by)))
  const [left, right] = [rows.filter(({by}) => by < 0), rows.filter(({by}) => by > 0)]
  const words = Math.max(
    ...rows.flatMap(({words: [bold, quiet]}) => [BOLD * textWidth(bold), textWidth(quiet)]),
  )
  const heads = sides.map((side) => textWidth(side) + 10) as [number, number]
  const numbers = [left, right].map((some) =>
    Math.max(0, ...some.map(({text}) => END + BOLD * textWidth(text))),
  ) as [number, number]
  const isOn = [left.length > 0, right.length > 0]
  // The words above a side need room as well, of which its bars take up LEAST at the fewest.
  const taken = [0, 1].map((i) => (isOn[i] ? Math.max(numbers[i]!, heads[i]! - LEAST) : heads[i]!))
  const spare = width - words - GAP - taken[0]! - taken[1]!
  const beside = Math.min(MOST, spare / Math.max(1, Number(isOn[0]) + Number(isOn[1])))
  if (beside >= LEAST)
    return {
      height: HEAD + ROW * rows.length,
      middle: words + GAP + Math.max(heads[0], isOn[0] ? beside + numbers[0] : 0),
      scale: beside / longest,
      rows: rows.map((_, i) => ({y: HEAD + i * ROW, barY: HEAD + i * ROW + 4})),
    }
  const under = Math.min(MOST, width / 2 - Math.max(...numbers))
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
