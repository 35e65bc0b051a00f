import {heldWith} from "../memo"
import {everyDay, everyWord, optional} from "../parameters"
import {isRefusal, wrongKind, type Refusal} from "../refusal"

/** A wait after spraying: no picking from its first day up to, but not on, the day from which picking is allowed again. */
export interface Wait {
  readonly from: number
  readonly until: number
}

/** The waits of each planting, in the order of the plantings. Without any, none has one. */
export type Waits = readonly (readonly Wait[])[]

/** Whether a day lies in one of these waits. */
export const isWaiting = (waits: readonly Wait[], day: number): boolean =>
  waits.some(({from, until}) => from <= day && day < until)

/** The optional arguments that say which plantings wait, and when. The three of the waits belong together row by row. */
export const waitRanges = {
  planting: optional(everyWord("Names of the plantings"), [] as readonly string[]),
  sprayed_planting: optional(everyWord("Plantings sprayed"), [] as readonly string[]),
  sprayed: optional(everyDay("Days of spraying"), [] as readonly (number | null)[]),
  pick_again: optional(
    everyDay("First days on which picking is allowed again"),
    [] as readonly (number | null)[],
  ),
}

/** What those arguments were given. */
export interface WaitRanges {
  readonly planting: readonly string[]
  readonly sprayed_planting: readonly string[]
  readonly sprayed: readonly (number | null)[]
  readonly pick_again: readonly (number | null)[]
}

/** The waits of so many plantings, or why the ranges do not belong together. A row without a name or a day takes no part. */
export function waitsFrom(ranges: WaitRanges, plantings: number): Waits | Refusal {
  const {planting, sprayed_planting, sprayed, pick_again} = ranges
  if (planting.length === 0) return NO_WAITS
  if (planting.length !== plantings)
    return wrongKind(
      `The ranges of the plantings have ${plantings} and ${planting.length} cells: sizes differ`,
    )
  const sizes = [sprayed_planting, sprayed, pick_again].map(({length}) => length)
  if (new Set(sizes).size > 1)
    return wrongKind(`The ranges of the waits have ${sizes.join(", ")} cells: sizes differ`)
  return waitsFor([planting, sprayed_planting, sprayed, pick_again], () => {
    const byName = new Map<string, Wait[]>()
    for (const [row, name] of sprayed_planting.entries()) {
      const [from, until] = [sprayed[row] ?? null, pick_again[row] ?? null]
      if (name === "" || from === null || until === null) continue
      byName.set(name.toLowerCase(), [...(byName.get(name.toLowerCase()) ?? []), {from, until}])
    }
    return planting.map((name) => byName.get(name.toLowerCase()) ?? [])
  })
}

/** The waits of ranges are the same object as long as the ranges are: what rests on them is remembered by it. */
const waitsFor = heldWith<Waits>()

export const NO_WAITS: Waits = []

/** Calculates with the waits of so many plantings, or passes on why there are none. */
export const withWaits = <T>(
  ranges: WaitRanges,
  plantings: number,
  calculate: (waits: Waits) => T,
): T | Refusal => {
  const waits = waitsFrom(ranges, plantings)
  return isRefusal(waits) ? waits : calculate(waits)
}

export const aboutWaits =
  "With the names and the waits after spraying given, none is picked from the day of spraying until the first day allowed " +
  "again. It is picked on that day if a picking was missed; what came up more than one gap between pickings before is by then " +
  "too long to sell and is lost, as is all that stands when cutting ends inside a wait. What the lost spears take " +
  "from the crowns is not reckoned with."
