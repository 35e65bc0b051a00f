/**
 * Remembers results by the numbers they were worked out from, so that the cells of one model share one run wherever
 * their ranges stand. Numbers are compared one by one; the hash only finds the place to look. When `most` results are
 * held, the oldest goes.
 */
export function remembering<T>(most: number): (numbers: readonly number[], make: () => T) => T {
  const held = new Map<number, {readonly numbers: readonly number[]; readonly result: T}[]>()
  let count = 0
  return (numbers, make) => {
    const place = hashOf(numbers)
    const there = held.get(place) ?? []
    const found = there.find((one) => isSame(one.numbers, numbers))
    if (found) return found.result
    const result = make()
    if (count >= most) {
      const [oldest, entries] = held.entries().next().value!
      held.delete(oldest)
      count -= entries.length
    }
    held.set(place, [...there, {numbers: [...numbers], result}])
    count++
    return result
  }
}

const isSame = (one: readonly number[], other: readonly number[]) =>
  one.length === other.length && one.every((number, i) => Object.is(number, other[i]))

const bits = new DataView(new ArrayBuffer(8))

/** FNV-1a (Fowler, Noll and Vo), taken over 32 bits at a time. */
function hashOf(numbers: readonly number[]): number {
  let hash = 0x811c9dc5
  for (const number of numbers) {
    bits.setFloat64(0, number)
    hash = Math.imul(hash ^ bits.getUint32(0), 0x01000193)
    hash = Math.imul(hash ^ bits.getUint32(4), 0x01000193)
  }
  return hash
}

/** Remembers what was read from a range for as long as the range itself is held. */
export function readOnce<R extends object, T>(read: (range: R) => T): (range: R) => T {
  const held = new WeakMap<R, {readonly result: T}>()
  return (range) => {
    const found = held.get(range) ?? {result: read(range)}
    held.set(range, found)
    return found.result
  }
}

/** Remembers what was worked out from these very objects, in their order, for as long as all of them are held. */
export function heldWith<T>(): (objects: readonly object[], make: () => T) => T {
  const held = new WeakMap<object, unknown>()
  return (objects, make) => {
    let level = held
    for (const object of objects) {
      const next = (level.get(object) as WeakMap<object, unknown> | undefined) ?? new WeakMap()
      level.set(object, next)
      level = next
    }
    const found = (level.get(RESULT) as {readonly result: T} | undefined) ?? {result: make()}
    level.set(RESULT, found)
    return found.result
  }
}

const RESULT = {}
