import {contentAt, type CellAddress, type Column, type Sheet} from "../document"
import {cellsOfSheets, isDateFormat, wordsIn, type Checked} from "./checked"
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
      outsideRule(checked, at, column, content) ??
      zeroAmong(column, sheet, at, content) ??
      farFromOthers(checked, at, content)
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
  if (!usual || (number >= usual[0] && number <= usual[1])) return null
  const why = `usual is ${shown(at, usual[0])} to ${shown(at, usual[1])}`
  const slip = number === 0 ? null : farFromOthers(checked, at, number)
  return slip?.meant === undefined ? {why} : slip
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

/** The modified z-score past which Iglewicz & Hoaglin (1993), How to Detect and Handle Outliers, label a value; from memory. */
const FAR = 3.5
/** Scales the median distance to the standard deviation of a normal distribution: 1/Φ⁻¹(0.75). */
const MEDIAN_DISTANCES = 1.4826
/** Chosen: with fewer others nothing can be said of their spread. */
const FEWEST_FOR_SPREAD = 6
const FEWEST_FOR_TENS = 2

/** Compares with the other numbers of the same planting, which are told by the word in the first column. */
function farFromOthers({document, words}: Checked, at: CellAddress, number: number): Odd | null {
  const {columns, rows} = document.sheets[at.sheet]!
  if (at.col === 0 || columns[at.col]!.unit === undefined ) return null
  const key = wordsIn(rows[at.row]![0] ?? null)
  if (key === null) return null
  const others = rows.flatMap((contents, row) => {
    const other = contents[at.col]
    return row !== at.row && contents[0] === key && typeof other === "number" ? [other] : []
  })
  return tensAway(number, others, key, (value) => words.shown(at, value)) ?? spreadAway(number, others, key)
}

function tensAway(
  number: number,
  others: readonly number[],
  key: string,
  shown: (value: number) => string,
): Odd | null {
  if (others.length < FEWEST_FOR_TENS || number <= 0 || others.some((one) => one <= 0)) return null
  const [low, high] = [Math.min(...others), Math.max(...others)]
  if (number >= low / 5 && number <= high * 5) return null
  for (const [times, words] of TENS) {
    const meant = Number((number / times).toPrecision(12))
    if (meant >= low / 1.5 && meant <= high * 1.5)
      return {why: `about ${words} the others of ${key}; did you mean ${shown(meant)}?`, meant}
  }
  return null
}

const TENS = [
  [10, "10 times"],
  [100, "100 times"],
  [1000, "1000 times"],
  [0.1, "a tenth of"],
  [0.01, "a hundredth of"],
] as const

function spreadAway(number: number, others: readonly number[], key: string): Odd | null {
  if (others.length < FEWEST_FOR_SPREAD) return null
  const middle = median(others)
  const spread = MEDIAN_DISTANCES * median(others.map((one) => Math.abs(one - middle)))
  return spread > 0 && Math.abs(number - middle) > FAR * spread
    ? {why: `far from the ${others.length} others of ${key}, whose middle is ${Number(middle.toPrecision(4))}`}
    : null
}

function median(numbers: readonly number[]): number {
  const sorted = numbers.toSorted((a, b) => a - b)
  const half = sorted.length / 2
  return (sorted[Math.floor(half)]! + sorted[Math.ceil(half) - 1]!) / 2
}
