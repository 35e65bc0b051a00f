import {normalShare} from "../../functions/normalShare"
import {betaAt} from "./betaShare"
import {normalAt} from "./normalAt"

/** What a price or a yield may be, as it is typed. `variation` is the deviation as a share of the mean. */
export type Distribution =
  | {readonly shape: "lognormal"; readonly mean: number; readonly variation: number}
  /** Least, likeliest and most by judgement: the beta curve of project planning (PERT). */
  | {readonly shape: "judged"; readonly least: number; readonly likely: number; readonly most: number}
  /** A beta curve from 0 to `most` with this mean and deviation. */
  | {readonly shape: "bounded"; readonly mean: number; readonly deviation: number; readonly most: number}
  /** A normal curve cut off at both ends; mean and deviation are those before the cut. */
  | {
      readonly shape: "cut normal"
      readonly mean: number
      readonly deviation: number
      readonly least: number
      readonly most: number
    }

/** A distribution that can be drawn from: its mean and deviation, and its value at a normal score z. */
export interface Drawn {
  readonly mean: number
  readonly deviation: number
  /** The value that has as much of the distribution below it as the normal distribution has below z. */
  at(z: number): number
}

/** Parameters of a distribution from what was typed. Numbers that make no distribution throw: they are refused before. */
export function drawn(typed: Distribution): Drawn {
  switch (typed.shape) {
    case "lognormal": {
      const {mean, variation} = typed
      const spread = logSpread(variation)
      return {
        mean,
        deviation: mean * variation,
        at: (z) => mean * Math.exp(spread * z - spread ** 2 / 2),
      }
    }
    case "judged": {
      const {least, likely, most} = typed
      if (!(least <= likely && likely <= most))
        throw new RangeError(`${least}, ${likely}, ${most} do not rise`)
      if (least === most) return {mean: least, deviation: 0, at: () => least}
      const a = 1 + (4 * (likely - least)) / (most - least)
      const b = 1 + (4 * (most - likely)) / (most - least)
      return betaBetween(least, most, a, b)
    }
    case "bounded": {
      const {mean, deviation, most} = typed
      if (deviation === 0) return {mean, deviation, at: () => mean}
      const x = mean / most
      const k = (x * (1 - x)) / (deviation / most) ** 2 - 1
      if (!(k > 0))
        throw new RangeError(`No beta curve to ${most} has mean ${mean} and deviation ${deviation}`)
      return betaBetween(0, most, x * k, (1 - x) * k)
    }
    case "cut normal":
      return cutNormal(typed.mean, typed.deviation, typed.least, typed.most)
  }
}

/** Deviation of the logarithms of a lognormal with this deviation as a share of its mean: √ln(1 + c²). */
export const logSpread = (variation: number): number => Math.sqrt(Math.log1p(variation ** 2))

function betaBetween(least: number, most: number, a: number, b: number): Drawn {
  const width = most - least
  return {
    mean: least + (width * a) / (a + b),
    deviation: (width / (a + b)) * Math.sqrt((a * b) / (a + b + 1)),
    at: (z) => least + width * betaAt(normalShare(z), a, b),
  }
}

function cutNormal(mean: number, deviation: number, least: number, most: number): Drawn {
  if (!(least < most && deviation > 0)) throw new RangeError(`Nothing is left between ${least} and ${most}`)
  const [from, to] = [(least - mean) / deviation, (most - mean) / deviation]
  const [below, within] = [normalShare(from), normalShare(to) - normalShare(from)]
  const density = (z: number) => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
  const shift = (density(from) - density(to)) / within
  const variance = 1 + (from * density(from) - to * density(to)) / within - shift ** 2
  return {
    mean: mean + deviation * shift,
    deviation: deviation * Math.sqrt(variance),
    at: (z) => mean + deviation * normalAt(below + normalShare(z) * within),
  }
}
