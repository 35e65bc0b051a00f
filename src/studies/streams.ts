import {normalAt} from "./normalAt"
import {randomOf} from "./random"

/** Half a step of the generator's 2³² numbers, so that a share is never 0 or 1. */
const HALF_STEP = 2 ** -33

/**
 * A number of the normal distribution that belongs to a seed, a draw and a key, whoever asks and in whatever order: what
 * is keyed by its own name stays the same when other names come or go. One random number each, through the inverse of the
 * distribution, so draws of one key can be compared between plans.
 */
export const normalOf = (seed: number, draw: number, key: number): number =>
  normalAt(randomOf(seed ^ key, draw)() + HALF_STEP)

/** The key of a name: 32 bits by FNV-1a (Fowler, Noll and Vo), with a last round of mixing, since names differ by little. */
export function keyOf(...names: readonly (string | number)[]): number {
  let hash = 0x811c9dc5
  for (const char of names.join("|")) hash = Math.imul(hash ^ char.codePointAt(0)!, 0x01000193)
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b) // the finish of MurmurHash3 (Austin Appleby)
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35)
  return hash ^ (hash >>> 16)
}
