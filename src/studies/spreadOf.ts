import {quantiles, type Quantiles} from "./howSure"

/** A result over many draws. */
export interface Spread {
  /** The 10, 25, 50, 75 and 90 of a hundred. */
  readonly at: Quantiles
  /** Standard error of the first of them. */
  readonly lowError: number
  readonly mean: number
  readonly meanError: number
  /** Mean of the lowest tenth of the draws, rounded up to a whole number of them. */
  readonly worstTenth: number
}

export function spreadOf(values: Float64Array): Spread {
  const sorted = Float64Array.from(values).sort()
  const middle = mean(sorted)
  const squares = sorted.reduce((sum, value) => sum + (value - middle) ** 2, 0)
  return {
    at: quantiles(sorted),
    lowError: percentileError(sorted, 0.1),
    mean: middle,
    meanError: Math.sqrt(squares / (sorted.length - 1) / sorted.length),
    worstTenth: mean(sorted.subarray(0, Math.ceil(sorted.length / 10))),
  }
}

const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length

/**
 * Standard error of a percentile of drawn values in rising order, whatever their distribution: half the way between the
 * values that stand √(N·p·(1 - p)) places below and above it.
 */
export function percentileError(sorted: Float64Array, p: number): number {
  const last = sorted.length - 1
  const places = Math.sqrt(sorted.length * p * (1 - p))
  const near = (place: number) => sorted[Math.min(last, Math.max(0, Math.round(place)))]!
  return (near(p * last + places) - near(p * last - places)) / 2
}

/** A share of draws that stands for a chance. */
export interface Chance {
  readonly share: number
  /**
   * Its standard error, √(p(1 - p)/N) with two draws of each kind added (Agresti & Coull 1998, from memory): none in a
   * thousand is not never.
   */
  readonly error: number
}

/** The chance that a value is as asked for. */
export function chanceOf(values: Float64Array, is: (value: number) => boolean): Chance {
  const count = values.reduce((sum, value) => sum + (is(value) ? 1 : 0), 0)
  const draws = values.length + 4
  const p = (count + 2) / draws
  return {share: count / values.length, error: Math.sqrt((p * (1 - p)) / draws)}
}
