/** Chosen: far above the rounding of a few calculations with doubles, far below anything a grower would tell apart. */
const NOISE = 1e-9

const nearly = (a: number, b: number) => Math.abs(a - b) <= NOISE * Math.max(1, Math.abs(a), Math.abs(b))

/** The whole number that `value` is, but for what calculations leave beside it; any other value as it is. */
export function wholeIfNearly(value: number): number {
  const nearest = Math.round(value)
  return (nearly(value, nearest) ? nearest : value) + 0 // no -0
}

/** Smallest whole number not below `value`; 78.0000000001 counts as 78, since that much comes from the calculation. */
export const roundUp = (value: number): number => Math.ceil(wholeIfNearly(value)) + 0

/** Largest whole number not above `value`; 77.9999999999 counts as 78. */
export const roundDown = (value: number): number => 0 - roundUp(-value)

/** Whether `value` is at or above `limit`; a hair below, as calculations leave it, counts as at it. */
export const atLeast = (value: number, limit: number): boolean => value >= limit || nearly(value, limit)
