import {describe, expect, it, vi} from "vitest"
import {heldWith, readOnce, remembering} from "../../functions/memo"

/** A memo of so many results, with a maker that gives a new object each time. */
function memoOf(most: number) {
  const recall = remembering<object>(most)
  const make = vi.fn<() => object>(() => ({}))
  return {make, of: (...numbers: number[]) => recall(numbers, make)}
}

describe("remembering", () => {
  it("works out once for the same numbers", () => {
    const {make, of} = memoOf(5)
    expect(of(1, 2.5, -3)).toBe(of(1, 2.5, -3))
    expect(make).toHaveBeenCalledTimes(1)
  })
  it("tells other numbers, another order and another count apart", () => {
    const {of} = memoOf(9)
    const results = [of(1, 2), of(2, 1), of(1), of(1, 2, 0), of(), of(1, 2 + Number.EPSILON * 2)]
    expect(new Set(results).size).toBe(6)
  })
  it("tells -0 from 0 and takes NaN for the same as NaN", () => {
    const {of} = memoOf(5)
    expect(of(0)).not.toBe(of(-0))
    expect(of(NaN)).toBe(of(NaN))
  })
  it("tells numbers apart whose hashes are the same", () => {
    // FNV-1a over 32 bits at a time: after the upper half of a number the hash is h = (offset ^ upper)·prime, after the
    // lower (h ^ lower)·prime. Two numbers collide where h ^ lower is the same.
    const afterUpper = (upper: number) => Math.imul(0x811c9dc5 ^ upper, 0x01000193)
    const number = (upper: number, lower: number) => {
      const view = new DataView(new ArrayBuffer(8))
      view.setUint32(0, upper)
      view.setUint32(4, lower >>> 0)
      return view.getFloat64(0)
    }
    const [one, other] = [0x40000000, 0x40100000]
    const {of} = memoOf(5)
    const first = of(number(one, 7))
    const second = of(number(other, 7 ^ afterUpper(one) ^ afterUpper(other)))
    expect(second).not.toBe(first)
    expect(of(number(one, 7))).toBe(first)
    expect(of(number(other, 7 ^ afterUpper(one) ^ afterUpper(other)))).toBe(second)
  })
  it("is not led astray when the list it was given changes later", () => {
    const recall = remembering<object>(5)
    const numbers = [1, 2]
    const first = recall(numbers, () => ({}))
    numbers[1] = 9
    expect(recall([1, 2], () => ({}))).toBe(first)
  })
  it("lets the oldest go when it is full", () => {
    const {make, of} = memoOf(2)
    const [first, second] = [of(1), of(2)]
    of(3)
    expect(make).toHaveBeenCalledTimes(3)
    expect(of(2)).toBe(second)
    expect(of(1)).not.toBe(first)
    expect(make).toHaveBeenCalledTimes(4)
  })
})

describe("readOnce", () => {
  it("reads a range once while it is the same object", () => {
    const read = vi.fn<(range: number[]) => object>((range) => ({sum: range[0]!}))
    const once = readOnce(read)
    const range = [1]
    expect(once(range)).toBe(once(range))
    expect(read).toHaveBeenCalledTimes(1)
    expect(once([1])).not.toBe(once(range))
    expect(read).toHaveBeenCalledTimes(2)
  })
  it("remembers that there was nothing to read", () => {
    const read = vi.fn<(range: number[]) => undefined>(() => undefined)
    const once = readOnce(read)
    const range = [1]
    once(range)
    expect(once(range)).toBeUndefined()
    expect(read).toHaveBeenCalledTimes(1)
  })
})

describe("heldWith", () => {
  const [one, other] = [{}, {}]
  it("works out once from the same objects in the same order", () => {
    const held = heldWith<object>()
    const first = held([one, other], () => ({}))
    expect(held([one, other], () => ({}))).toBe(first)
    expect(held([other, one], () => ({}))).not.toBe(first)
    expect(held([one], () => ({}))).not.toBe(first)
    expect(held([one, {}], () => ({}))).not.toBe(first)
  })
  it("remembers that there was nothing", () => {
    const make = vi.fn<() => undefined>(() => undefined)
    const held = heldWith<undefined>()
    held([one], make)
    held([one], make)
    expect(make).toHaveBeenCalledTimes(1)
  })
})
