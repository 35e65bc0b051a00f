import {contentAt, type CellAddress, type Column, type Document, type Sheet} from "./document"

/** Why a number in a cell is questioned. */
export interface Questioned {
  /** The bounds it lies outside of. */
  readonly from: number
  readonly to: number
  /** How many other numbers of the column the bounds come from; 0 where the column's rule gives them. */
  readonly others: number
  /** The number that was probably meant, where one with its point elsewhere lies inside. */
  readonly meant: number | null
}

/** Why a number would be questioned in a cell by the rule of its column, or null. */
export function questionedAt(document: Document, at: CellAddress, number: number): Questioned | null {
  const sheet = document.sheets[at.sheet]
  const {usual, nearOthers} = sheet?.columns[at.col]?.rule ?? {}
  const outside = (from: number, to: number, others: number) =>
    number < from || number > to ? {from, to, others, meant: meantBy(number, from, to)} : null
  const byRule = usual ? outside(usual[0], usual[1], 0) : null
  if (byRule || !nearOthers) return byRule
  const others = othersOf(sheet!, at)
  if (others.length < FEWEST) return null
  const [from, to] = nearTo(others)
  const odd = outside(from, to, others.length)
  return others.length < ENOUGH && odd?.meant === null ? null : odd
}

/** Whether the number that a cell holds is questioned. */
export function isQuestioned(document: Document, at: CellAddress): boolean {
  const content = contentAt(document, at)
  return typeof content === "number" && questionedAt(document, at, content) !== null
}

/**
 * The bounds of what lies near to some numbers: 3.5 times their spread on either side of the median, with the spread
 * taken from the median distance to the median (Iglewicz & Hoaglin, 1993, How to Detect and Handle Outliers, ASQC; from
 * memory) and no less than a tenth of the median, so that a few numbers that happen to agree do not make others odd (chosen).
 */
export function nearTo(numbers: readonly number[]): readonly [number, number] {
  const middle = median(numbers)
  const spread = median(numbers.map((number) => Math.abs(number - middle))) / NORMAL_QUARTILE
  const reach = 3.5 * Math.max(spread, Math.abs(middle) / 10)
  return [middle - reach, middle + reach]
}

const NORMAL_QUARTILE = 0.6745 // half of a normal population lies nearer to its middle than so many standard deviations
// Chosen: a point that slipped shows beside two other numbers, how far apart they lie only from three on.
const FEWEST = 2
const ENOUGH = 3

/** The other numbers of a column in rows of the same name, and measured on the same day; all others where no name occurs twice. */
function othersOf(sheet: Sheet, {row, col}: CellAddress): number[] {
  const groups = groupsOf(sheet, col)
  const numbers = groups.numbers.get(groups.of(sheet.rows[row])) ?? []
  const own = sheet.rows[row]?.[col]
  return typeof own === "number" ? numbers.toSpliced(numbers.indexOf(own), 1) : [...numbers]
}

interface Groups {
  /** The group that a row belongs to. */
  readonly of: (row: Sheet["rows"][number] | undefined) => string
  readonly numbers: ReadonlyMap<string, readonly number[]>
}

/** The numbers of a column by groups; found once for a sheet as it stands. */
function groupsOf(sheet: Sheet, col: number): Groups {
  const byColumn = grouped.get(sheet) ?? new Map<number, Groups>()
  grouped.set(sheet, byColumn)
  const held = byColumn.get(col)
  if (held) return held
  const {columns, rows} = sheet
  const days = columns.flatMap((column, c) => (isMeasuredDay(column) ? [c] : []))
  const isRecord = new Set(rows.map(([name]) => name ?? "")).size < rows.length
  const of: Groups["of"] = (row) =>
    isRecord ? [0, ...days].map((c) => String(row?.[c] ?? "").toLowerCase()).join("\n") : ""
  const numbers = new Map<string, number[]>()
  for (const row of rows) {
    const content = row[col]
    if (typeof content !== "number") continue
    const group = numbers.get(of(row))
    if (group) group.push(content)
    else numbers.set(of(row), [content])
  }
  const groups = {of, numbers}
  byColumn.set(col, groups)
  return groups
}

const grouped = new WeakMap<Sheet, Map<number, Groups>>()

const isMeasuredDay = ({kind, format}: Column) =>
  kind === "measured" && (format === "date" || format === "day")

const meantBy = (number: number, from: number, to: number) =>
  [number / 10, number * 10, number / 100, number * 100]
    .map((meant) => Number(meant.toPrecision(12)))
    .find((meant) => from <= meant && meant <= to) ?? null

function median(numbers: readonly number[]): number {
  const sorted = numbers.toSorted((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2
}
