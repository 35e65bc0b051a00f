import {normalSeries} from "./root/normalQuantile"

/** Beyond this z less than 10⁻¹⁸ is left, below what a double beside 1 can hold. */
const ALL = 9

/** Share of the normal distribution below z. Right to about 10⁻¹⁵; what the tails hold beyond z = 9 counts as nothing. */
export function normalShare(z: number): number {
  if (Math.abs(z) > ALL) return z > 0 ? 1 : 0
  const half = (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * normalSeries(Math.abs(z))
  return z < 0 ? 0.5 - half : 0.5 + half
}
