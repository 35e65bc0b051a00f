import {healthAlong} from "../../functions/fern/healthy"
import type {BestWeeksInput} from "./bestWeeksAsked"
import {seasonWorth, type Field, type Standing} from "./plantingSeason"

/** The best weeks of a planting that is cleared after just so many seasons; `worths` are of keeping it until then. */
export function weeksKept(
  input: BestWeeksInput,
  planting: Standing,
  age: number,
  field: Field,
  worths: readonly Float64Array[],
  ground: number,
  seasons: number,
): number[] {
  const kept: number[] = []
  let standing: Standing = planting
  for (let year = 0; year < seasons; year++) {
    const next = worths[year + 1]!
    const isLast = year === seasons - 1
    const {weeks} = seasonWorth(input, standing, field, age + year, next, ground, isLast)
    const green = healthAlong(standing.healthy, input.site.year)
    const crowns = field.seasons.after(standing.crowns, 7 * weeks, green)
    standing = {crowns, shares: planting.shares, healthy: []}
    kept.push(weeks)
  }
  return kept
}
