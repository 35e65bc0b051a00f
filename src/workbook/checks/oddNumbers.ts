import {contentAt, type CellAddress, type Column, type Sheet} from "../document"
import {cellsOfSheets, isDateFormat, rowsByKey, wordsIn, type Checked} from "./checked"
import type {Finding} from "./finding"

/**
 * Typed and measured numbers that may be slips: outside what the column allows or calls usual, ten times or a tenth of
 * the same planting's others, far from them, or a zero where all others are above it. Nothing is dropped by itself.
 */
export function oddNumbers(checked: Checked): Finding[] {
  const {document, words} = checked
  const found: Finding[] = []
  for (const {at, sheet} of cellsOfSheets(document)) {
    const column = sheet.columns[at.col]!
    const content = contentAt(document, at)
    if (typeof content !== "number" || column.kind === "worked out" || isDateFormat(column.format)) continue
    const odd =
      tensAway(checked, at, content) ??
      zeroAmong(column, sheet, at, content) ??
      outsideRule(checked, at, column, content) ??
      spreadAway(checked, at, content)
    if (!odd) continue
    const {why, meant} = odd
    found.push({
      rule: "odd number",
      cells: [at],
      sentence: `${words.name(at)} is ${words.shown(at, content)}: ${why}`,
      ...(meant !== undefined && {
        fix: {
          words: `Put ${words.shown(at, meant)} in`,
          edit: {type: "enter", cells: [{at, content: meant}]} as const,
        },
      }),
    })
  }
  return found
}

interface Odd {
  readonly why: string
  /** What was probably meant. */
  readonly meant?: number
}

function outsideRule(checked: Checked, at: CellAddress, {rule}: Column, number: number): Odd | null {
  const {shown} = checked.words
  const {least = -Infinity, most = Infinity, usual} = rule ?? {}
  if (number < least) return {why: `the column takes ${shown(at, least)} or more`}
  if (number > most) return {why: `the column takes ${shown(at, most)} or less`}
  return !usual || (number >= usual[0] && number <= usual[1])
    ? null
    : {why: `usual is ${shown(at, usual[0])} to ${shown(at, usual[1])}`}
}

/** Chosen: with at least this many others, and at most this share of zeros, a zero looks like a blank. */
const FEWEST_FOR_ZERO = 3
const MOST_ZEROS = 0.2

function zeroAmong({rule, kind}: Column, {rows}: Sheet, {col}: CellAddress, number: number): Odd | null {
  if (number !== 0 || kind !== "measured" || (rule?.least ?? 0) < 0) return null
  const numbers = rows.map((row) => row[col]).filter((one) => typeof one === "number")
  const zeros = numbers.filter((one) => one === 0).length
  const isRare = numbers.length > FEWEST_FOR_ZERO && zeros <= MOST_ZEROS * numbers.length
  return isRare && numbers.every((one) => one >= 0)
    ? {why: "a zero is used as a measurement; leave the cell blank if it was not measured"}
    : null
}

/** Chosen: fewer others show no record. */
const FEWEST_FOR_TENS = 2
/** Chosen: a number within this many times the others is no slip of the point, and one mended lies within half as much again. */
const NEAR = 5
const AGAIN = 1.5

const TENS = [
  [10, "10 times"],
  [100, "100 times"],
  [1000, "1000 times"],
  [0.1, "a tenth of"],
  [0.01, "a hundredth of"],
] as const

function tensAway(checked: Checked, at: CellAddress, number: number): Odd | null {
  const {others: all, key} = othersOf(checked, at)
  const others = all.filter((one) => one > 0)
  if (others.length < FEWEST_FOR_TENS || number <= 0) return null
  const [low, high] = [Math.min(...others), Math.max(...others)]
  if (number >= low / NEAR && number <= high * NEAR) return null
  for (const [times, words] of TENS) {
    const meant = Number((number / times).toPrecision(12))
    if (meant >= low / AGAIN && meant <= high * AGAIN)
      return {
        why: `about ${words} the others of ${key}; did you mean ${checked.words.shown(at, meant)}?`,
        meant,
      }
  }
  return null
}

/** The modified z-score past which Iglewicz & Hoaglin (1993), How to Detect and Handle Outliers, label a value; from memory. */
const FAR = 3.5
/** Scales the median distance to the standard deviation of a normal distribution: 1/Φ⁻¹(0.75). */
const MEDIAN_DISTANCES = 1.4826
/** Chosen: with fewer others nothing can be said of their spread. */
const FEWEST_FOR_SPREAD = 6

function spreadAway(checked: Checked, at: CellAddress, number: number): Odd | null {
  const {others, key} = othersOf(checked, at)
  if (others.length < FEWEST_FOR_SPREAD) return null
  const middle = median(others)
  const spread = MEDIAN_DISTANCES * median(others.map((one) => Math.abs(one - middle)))
  return spread > 0 && Math.abs(number - middle) > FAR * spread
    ? {
        why: `far from the ${others.length} others of ${key}, whose middle is ${checked.words.shown(at, middle)}`,
      }
    : null
}

/** The other numbers of the same planting, which are told by the word in the first column. */
function othersOf({document}: Checked, at: CellAddress): {others: readonly number[]; key: string} {
  const sheet = document.sheets[at.sheet]!
  const key = wordsIn(sheet.rows[at.row]![0] ?? null)
  if (at.col === 0 || sheet.columns[at.col]!.unit === undefined || key === null) return {others: [], key: ""}
  const others = rowsByKey(sheet)
    .get(key)!
    .flatMap((row) => {
      const other = sheet.rows[row]![at.col]
      return row !== at.row && typeof other === "number" ? [other] : []
    })
  return {others, key}
}

function median(numbers: readonly number[]): number {
  const sorted = numbers.toSorted((a, b) => a - b)
  const half = sorted.length / 2
  return (sorted[Math.floor(half)]! + sorted[Math.ceil(half) - 1]!) / 2
}
