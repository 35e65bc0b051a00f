import type {WaysInput, WaysPart} from "./drawWays"
import {chanceOf, spreadOf, type Chance, type Spread} from "./spreadOf"
import type {Way} from "./waysBeside"

export interface WayRisk extends Way {
  /** Worth today, money/ha. */
  readonly worth: Spread
  /** Its worth less that of the way found, draw by draw, and the chance that it is above 0; null for the way found. */
  readonly against: {readonly more: Spread; readonly better: Chance} | null
}

export interface PlantingRisk {
  readonly planting: string
  readonly ways: readonly WayRisk[]
}

export interface WaysRisk {
  readonly draws: number
  readonly seed: number
  readonly plantings: readonly PlantingRisk[]
}

/** Puts the parts of a comparison of ways together. */
export function waysRisk({asked, ways, seed}: WaysInput, parts: readonly WaysPart[]): WaysRisk {
  const ordered = parts.toSorted((a, b) => a.from - b.from)
  const draws = ordered.reduce((sum, {count}) => sum + count, 0)
  const column = (place: number) => {
    const all = new Float64Array(draws)
    for (const {from, count, worths} of ordered)
      all.set(worths.subarray(place * count, (place + 1) * count), from - ordered[0]!.from)
    return all
  }
  let place = 0
  return {
    draws,
    seed,
    plantings: asked.plantings.map(({planting}, number) => {
      const own = ways[number]!.map((way) => ({way, worths: column(place++)}))
      return {
        planting,
        ways: own.map(({way, worths}, i) => ({...way, ...told(worths, i ? own[0]!.worths : null)})),
      }
    }),
  }
}

function told(worths: Float64Array, found: Float64Array | null): Pick<WayRisk, "worth" | "against"> {
  const more = found && worths.map((worth, draw) => worth - found[draw]!)
  return {
    worth: spreadOf(worths),
    against: more && {more: spreadOf(more), better: chanceOf(more, (sum) => sum > 0)},
  }
}
