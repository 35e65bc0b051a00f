import type {LineSpread} from "./lineSpread"

/**
 * The days, not whole, on which the lower and the upper edge of a falling line meet `limit`, mm: between them the true line
 * meets it at the confidence of the edges. With x from the middle day and D the mean less the limit they are the roots of
 * (b² - k²/Σx²)x² + 2Dbx + D² - k²/n = 0, k = t·s (Fieller, E.C. (1954). Some problems in interval estimation. Journal of the
 * Royal Statistical Society B 16, 175-185; from memory). Null where the line does not fall, or may as well not fall.
 */
export function limitRange(
  {middle, mean, slope, count, squares, reach}: LineSpread,
  limit: number,
): readonly [number, number] | null {
  const over = mean - limit
  const a = slope * slope - (reach * reach) / squares
  if (slope >= 0 || a <= 0) return null
  const half = reach * Math.sqrt(a / count + (over * over) / squares)
  const root = (sign: -1 | 1) => middle + (-over * slope + sign * half) / a
  return [root(-1), root(1)]
}
