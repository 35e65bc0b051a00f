import {CellFault} from "../parameters"
import {dividesByZero, isRefusal, notYet, wrongKind, type Refusal} from "../refusal"
import type {Cells} from "./parameters"

/** The line y = intercept + slope · x. */
export interface Line {
  readonly slope: number
  readonly intercept: number
}

/** The numbers that stand in the same places of two ranges. */
export interface Pairs {
  readonly y: readonly number[]
  readonly x: readonly number[]
}

export const isLine = (line: Line | Refusal | CellFault): line is Line =>
  !isRefusal(line) && !(line instanceof CellFault)

/**
 * The numbers of two ranges of one size, place by place: where either holds a blank, text or a logical value, both are
 * passed over (OpenFormula 6.18.28 and its kin).
 */
export function pairsIn(y: Cells, x: Cells): Pairs | Refusal | CellFault {
  const [rows, cols] = [y.length, y[0]!.length]
  if (rows !== x.length || cols !== x[0]!.length)
    return wrongKind(`y has ${rows} × ${cols} cells and x has ${x.length} × ${x[0]!.length}: sizes differ`)
  const [ys, xs] = [y.flat(), x.flat()]
  const fault = [...ys, ...xs].find((held) => held instanceof CellFault)
  if (fault) return fault
  const full = ys.flatMap((held, i) => (typeof held === "number" && typeof xs[i] === "number" ? i : []))
  if (full.length === 0) return notYet("There is no pair of numbers yet")
  return {y: full.map((i) => ys[i] as number), x: full.map((i) => xs[i] as number)}
}

/** The line of least squares through the pairs; through the origin when `throughOrigin`. Refused when it has no slope. */
export function lineThrough({y, x}: Pairs, throughOrigin = false): Line | Refusal {
  const [meanX, meanY] = throughOrigin ? [0, 0] : [mean(x), mean(y)]
  const sxx = sum(x.map((one) => (one - meanX) ** 2))
  if (sxx === 0) return dividesByZero(throughOrigin ? "All x values are 0" : "All x values are equal")
  const slope = sum(x.map((one, i) => (one - meanX) * (y[i]! - meanY))) / sxx
  return {slope, intercept: meanY - slope * meanX}
}

/** The line through the numbers of two ranges. */
export function lineOf(y: Cells, x: Cells, throughOrigin = false): Line | Refusal | CellFault {
  const pairs = pairsIn(y, x)
  return "y" in pairs ? lineThrough(pairs, throughOrigin) : pairs
}

/** The cells 1, 2, 3, … in the shape of others. */
export const countedLike = (cells: Cells): Cells =>
  cells.map((row, i) => row.map((_, j) => i * row.length + j + 1))

const sum = (numbers: readonly number[]) => numbers.reduce((total, one) => total + one, 0)
const mean = (numbers: readonly number[]) => sum(numbers) / numbers.length
