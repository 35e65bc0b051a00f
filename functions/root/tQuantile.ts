/**
 * The t between whose negative and itself Student's distribution has `confidence` (above 0, below 1), for a whole number
 * of degrees of freedom from 1. Far above 0.9999 rounding eats digits.
 *
 * With t = √df·tan θ that share is 2b·∫₀^θ cos^(df-1): a finite sum by the reduction of the integral of a power of the
 * cosine (Abramowitz & Stegun 1964, Handbook of Mathematical Functions, 26.7.3 and 26.7.4, from memory).
 */
export function tQuantile(confidence: number, df: number): number {
  // The share grows ever more slowly with θ, so Newton's steps from 0 never pass the answer.
  for (let θ = 0; ;) {
    const {share, slope} = shareWithin(θ, df)
    const step = (confidence - share) / slope
    if (!(step > 1e-15 * θ)) return Math.sqrt(df) * Math.tan(θ)
    θ += step
  }
}

/** Share of the distribution between -θ and θ, and how fast it grows with θ. */
function shareWithin(θ: number, df: number): {share: number; slope: number} {
  const [sin, cos] = [Math.sin(θ), Math.cos(θ)]
  const odd = df % 2 === 1
  let share = odd ? (2 * θ) / Math.PI : sin
  let b = odd ? 1 / Math.PI : 1 / 2
  let power = odd ? 1 : cos // cos^(n-1)
  for (let n = odd ? 3 : 4; n <= df; n += 2) {
    b *= (n - 1) / (n - 2)
    share += ((2 * b) / (n - 1)) * sin * cos * power
    power *= cos * cos
  }
  return {share, slope: 2 * b * power}
}
