import type {LineSpread} from "./lineSpread"

/**
 * Lower (-1) or upper (1) end, mm, of the interval in which the true line lies on a day:
 * ȳ + b(x - x̄) ± t·s·√(1/n + (x - x̄)²/Σ(x - x̄)²). It widens away from the days that were measured.
 */
export function lineEdge(
  {middle, mean, slope, count, squares, reach}: LineSpread,
  day: number,
  side: -1 | 1,
): number {
  const x = day - middle
  return mean + slope * x + side * reach * Math.sqrt(1 / count + (x * x) / squares)
}
