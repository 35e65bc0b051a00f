import {isRefusal} from "../refusal"
import {tQuantile} from "../root/tQuantile"
import {average, trend} from "./trend"

/** What the means say of their line of least squares: x counted in days from `middle`, diameters in mm. */
export interface LineSpread {
  readonly middle: number
  /** On the middle day. */
  readonly mean: number
  /** mm a day */
  readonly slope: number
  readonly count: number
  /** Σ(x - x̄)², days². */
  readonly squares: number
  /** t·s: Student's t of the two-sided confidence times the standard deviation about the line, mm, with n - 2 degrees of freedom. */
  readonly reach: number
}

/** Null with fewer than three means, which leave nothing to judge the line by, or with means of one day only. */
export function lineSpread(
  days: readonly number[],
  diameters: readonly number[],
  confidence: number,
): LineSpread | null {
  const count = days.length
  const slope = trend(days, diameters)
  if (isRefusal(slope) || count < 3) return null
  const [middle, mean] = [average(days), average(diameters)]
  const off = days.map((day, row) => diameters[row]! - mean - slope * (day - middle))
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value * value, 0)
  const s = Math.sqrt(sum(off) / (count - 2))
  return {
    middle,
    mean,
    slope,
    count,
    squares: sum(days.map((day) => day - middle)),
    reach: tQuantile(confidence, count - 2) * s,
  }
}
