/** Numbers drawn at random, from 0 up to but not including 1. */
export type Random = () => number

/** Rounds after which three seeds are well mixed, as the generator's author has it. */
const RUN_IN = 15

/**
 * A stream of random numbers for one draw of a study: the same seed and draw give the same numbers, however the draws are
 * shared out.
 */
export const randomOf = (seed: number, draw: number): Random => {
  const next = sfc32(seed, draw, 0x9e3779b9) // the golden ratio, so that seed 0 and draw 0 do not start with zeros alone
  return () => next() / 2 ** 32
}

/** Whole numbers from 0 to 2³² - 1 by the generator sfc32 (Chris Doty-Humphrey, PractRand), seeded by three words and run in. */
export function sfc32(first: number, second: number, third: number): () => number {
  let [a, b, c, counter] = [first | 0, second | 0, third | 0, 1]
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0
    counter = (counter + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (c << 21) | (c >>> 11)
    c = (c + sum) | 0
    return sum >>> 0
  }
  for (let round = 0; round < RUN_IN; round++) next()
  return next
}

/** A number of the normal distribution, mean 0 and deviation 1, by Box and Muller (1958); uses two random numbers. */
export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

/** A number of the triangular distribution between two ends with its peak at `mode`. */
export function triangular(random: Random, low: number, mode: number, high: number): number {
  if (high <= low) return mode
  const share = random()
  const rise = (mode - low) / (high - low)
  return share < rise
    ? low + Math.sqrt(share * (high - low) * (mode - low))
    : high - Math.sqrt((1 - share) * (high - low) * (high - mode))
}
