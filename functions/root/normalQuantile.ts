/**
 * The z between whose negative and itself the normal distribution has `confidence` (above 0, below 1). Far above 0.9999
 * rounding eats digits. The share within z is 2φ(z)·(z + z³/3 + z⁵/(3·5) + ...) (Abramowitz & Stegun 1964, Handbook of
 * Mathematical Functions, 26.2.11, from memory).
 */
export function normalQuantile(confidence: number): number {
  // The share grows ever more slowly with z, so Newton's steps from 0 never pass the answer.
  for (let z = 0; ;) {
    const slope = Math.sqrt(2 / Math.PI) * Math.exp((-z * z) / 2) // 2φ(z)
    const step = confidence / slope - normalSeries(z)
    if (!(step > 1e-15 * z)) return z
    z += step
  }
}

/** z + z³/3 + z⁵/(3·5) + ... of a z of 0 or more: half the share within z, over φ(z). */
export function normalSeries(z: number): number {
  let sum = 0
  for (let term = z, n = 1; sum + term !== sum; n += 2, term *= (z * z) / n) sum += term
  return sum
}
