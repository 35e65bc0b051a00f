/** Share of the beta distribution below x, 0 to 1: a continued fraction by Lentz's method; right to about 10⁻¹³. */
export function betaShare(x: number, a: number, b: number): number {
  if (x <= 0) return 0
  if (x >= 1) return 1
  // The fraction settles fast on the near side of the mean only.
  if (x > (a + 1) / (a + b + 2)) return 1 - betaShare(1 - x, b, a)
  return (Math.exp(logBetaDensity(x, a, b)) * x * (1 - x) * fraction(x, a, b)) / a
}

/** The x below which the beta distribution has a share: Newton's steps kept between ends that close in. */
export function betaAt(share: number, a: number, b: number): number {
  let [low, high, x] = [0, 1, a / (a + b)]
  for (let step = 0; step < MOST_STEPS; step++) {
    const off = betaShare(x, a, b) - share
    if (off > 0) high = x
    else low = x
    const newton = x - off / Math.exp(logBetaDensity(x, a, b))
    const next = newton > low && newton < high ? newton : (low + high) / 2
    if (Math.abs(next - x) <= 1e-15 * x) return next
    x = next
  }
  return x
}

const MOST_STEPS = 100

/** I_x(a, b) = x^a (1 - x)^b / (a B(a, b)) · fraction (Abramowitz & Stegun 1964, 26.5.8, from memory). */
function fraction(x: number, a: number, b: number): number {
  const nonzero = (value: number) => (Math.abs(value) < 1e-300 ? 1e-300 : value)
  let c = 1
  let d = 1 / nonzero(1 - ((a + b) * x) / (a + 1))
  let value = d
  for (let m = 1; m < 1000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    const before = value
    for (const term of [even, odd]) {
      d = 1 / nonzero(1 + term * d)
      c = nonzero(1 + term / c)
      value *= c * d
    }
    if (Math.abs(value - before) <= 1e-15 * value) break
  }
  return value
}

const logBetaDensity = (x: number, a: number, b: number) =>
  (a - 1) * Math.log(x) + (b - 1) * Math.log1p(-x) + logGamma(a + b) - logGamma(a) - logGamma(b)

/** Logarithm of the gamma function by Stirling's series, z raised to where it is right to 10⁻¹⁵. */
function logGamma(z: number): number {
  let raised = z
  let product = 1
  for (; raised < 15; raised++) product *= raised
  const r = 1 / (raised * raised)
  const series = (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r / 1188)))) / raised
  return (raised - 0.5) * Math.log(raised) - raised + Math.log(2 * Math.PI) / 2 + series - Math.log(product)
}
