import type {SimpleRangeValue} from "hyperformula"
import {nodeOf} from "./insides"

type Test = (held: unknown) => boolean

/**
 * The places of a range where a test holds, rising: kept with the range, by the kind of the test and what it tests for, as long as
 * it holds the same. Null where there is no such test.
 */
export function placesWhere(
  range: SimpleRangeValue,
  kind: string,
  what: unknown,
  testOf: () => Test | null,
): readonly number[] | null {
  const {data} = range
  const node = nodeOf(range)
  const held = node?.getFunctionValue(kind) as Kept | undefined
  const kept: Kept = held?.data === data ? held : {data, places: new Map(), count: 0}
  const found = kept.places.get(what)
  if (found) return found
  const test = testOf()
  if (!test) return null
  const places: number[] = []
  let place = 0
  for (const row of data) {
    for (const one of row) {
      if (test(one)) places.push(place)
      place++
    }
  }
  if (node && kept.count + places.length <= MOST_KEPT * place) {
    kept.places.set(what, places)
    kept.count += places.length
    node.setFunctionValue(kind, kept)
  }
  return places
}

interface Kept {
  readonly data: SimpleRangeValue["data"]
  readonly places: Map<unknown, readonly number[]>
  count: number
}

/** How often the places of a range are kept at most, in all: running totals would keep half of them for each row. Chosen. */
const MOST_KEPT = 8

/** What stands in all of some rising lists. */
export function inAll(lists: readonly (readonly number[])[]): readonly number[] {
  const [shortest, ...others] = [...lists].sort((a, b) => a.length - b.length)
  const at = others.map(() => 0)
  return shortest!.filter((place) =>
    others.every((list, i) => {
      while (at[i]! < list.length && list[at[i]!]! < place) at[i]!++
      return list[at[i]!] === place
    }),
  )
}

/** A value without its unit or kind: a date is its number. */
export const rawOf = (held: unknown) =>
  typeof held === "object" && held !== null && "val" in held ? held.val : held
