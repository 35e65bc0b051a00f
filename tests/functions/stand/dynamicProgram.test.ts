import {describe, expect, it} from "vitest"
import {actsOf, improve, placeAmong, type Lead} from "../../../functions/stand/dynamicProgram"

/** What can be done in a state: what it pays, and where it leads. */
type Choice = readonly [pays: number, leads: readonly Lead[]]

/** Worth and best act of a problem that has no end: improved until nothing changes. */
function settle(states: readonly (readonly Choice[])[], factor: number, rounds = 20_000) {
  const {acts, pays} = taken(states)
  const worth = new Float64Array(states.length)
  const best = new Int32Array(states.length)
  for (let round = 0; round < rounds; round++) {
    const before = worth.slice()
    improve(acts, pays, factor, worth, worth, best)
    if (worth.every((one, i) => Math.abs(one - before[i]!) < 1e-12 * Math.max(1, Math.abs(one)))) break
  }
  return {worth, best: [...best]}
}

const taken = (states: readonly (readonly Choice[])[]) => ({
  acts: actsOf(states.map((choices) => choices.map(([, leads]) => leads))),
  pays: Float64Array.from(states.flat(), ([pays]) => pays),
})

describe("replacing an asset", () => {
  // Miranda and Fackler, Applied Computational Economics and Finance (2002), 7.6.2, as worked by Oyama, QuantEcon
  // notebooks: keeping at ages 1 to 4 pays 50 - 2.5a - 2.5a², replacing 50 - 75; factor 0.9.
  const output = (age: number) => 50 - 2.5 * age - 2.5 * age ** 2
  const states = [1, 2, 3, 4, 5].map((age): Choice[] => [
    [age < 5 ? output(age) : -Infinity, [[Math.min(age, 4), 1]]],
    [-25, [[0, 1]]],
  ])
  it("is worth what is printed, and is done at age 4", () => {
    const {worth, best} = settle(states, 0.9)
    const printed = [216.56004653, 190.62227392, 172.91363769, 169.90404187, 169.90404187]
    for (const [i, expected] of printed.entries()) expect(Math.abs(worth[i]! - expected)).toBeLessThan(1e-7)
    expect(best).toEqual([0, 0, 0, 1, 1])
  })
  it("agrees with the sum of its cycle", () => {
    // (45 + 0.9·35 + 0.81·20 - 0.729·25)/(1 - 0.9⁴)
    expect(settle(states, 0.9).worth[0]).toBeCloseTo((45 + 31.5 + 16.2 - 18.225) / (1 - 0.6561), 8)
  })
})

it("services and replaces an asset at the published ages", () => {
  // The same, 7.6.3: age and services so far; keeping pays (1 - (a-s)/5)·(50 - 2.5a - 2.5a²), a service 10, a new one 75.
  const numbers = new Map<string, number>()
  for (let age = 1; age <= 5; age++)
    for (let services = 0; services < age; services++) numbers.set(`${age},${services}`, numbers.size)
  const at = (age: number, services: number) => numbers.get(`${age},${services}`)!
  const output = (age: number, services: number) =>
    (1 - (age - services) / 5) * (50 - 2.5 * age - 2.5 * age ** 2)
  const states = [...numbers.keys()].map((name): Choice[] => {
    const [age, services] = name.split(",").map(Number) as [number, number]
    if (age === 5)
      return [
        [-Infinity, []],
        [-Infinity, []],
        [-25, [[0, 1]]],
      ]
    return [
      [output(age, services), [[at(age + 1, services), 1]]],
      [output(age, services + 1) - 10, [[at(age + 1, services + 1), 1]]],
      [-25, [[0, 1]]],
    ]
  })
  const {worth, best} = settle(states, 0.9)
  // Keep 0, service 1, replace 2, age by age.
  expect(best).toEqual([1, 0, 1, 2, 0, 0, 2, 2, 2, 2, 2, 2, 2, 2, 2])
  for (const [age, services, expected] of [
    [1, 0, 151.890084],
    [2, 0, 121.530968],
    [2, 1, 129.877871],
    [3, 0, 111.701076],
    [3, 1, 112.530968],
    [3, 2, 116.530968],
  ] as const)
    expect(Math.abs(worth[at(age, services)]! - expected)).toBeLessThan(1e-5)
})

describe("replacing a car by its wear", () => {
  // Rust (1996), Handbook of Computational Economics 1, 619-729, as worked by Oyama, QuantEcon notebooks: cost 200 a unit of wear,
  // a new car 100 000, wear grows by an exponential step of rate 0.5, cut into whole steps; 100 states.
  const chances = Array.from({length: 12}, (_, j) =>
    j === 0
      ? 1 - Math.exp(-0.25)
      : j < 11
        ? Math.exp(-0.5 * (j - 0.5)) - Math.exp(-0.5 * (j + 0.5))
        : Math.exp(-0.5 * 10.5),
  )
  const wearing = (wear: number): Lead[] => {
    const reached = chances.slice(0, 100 - wear)
    const total = reached.reduce((sum, chance) => sum + chance, 0)
    return reached.map((chance, j) => [wear + j, chance / total])
  }
  const states = Array.from({length: 100}, (_, wear): Choice[] => [
    [-200 * wear, wearing(wear)],
    [-100_000, wearing(0)],
  ])
  /** 1e5 = c/(1-β)·(γ - β(1 - e^(-λ(1-β)γ))/(λ(1-β))), the wear at which a new one pays in continuous steps. */
  function threshold(factor: number) {
    const rate = 0.5 * (1 - factor)
    const short = (wear: number) =>
      (200 / (1 - factor)) * (wear - (factor * -Math.expm1(-rate * wear)) / rate) - 100_000
    let [low, high] = [0, 100]
    while (high - low > 1e-13 * high) {
      const middle = (low + high) / 2
      if (middle === low || middle === high) break
      if (short(middle) < 0) low = middle
      else high = middle
    }
    return low
  }
  it("begins at the published wear, near that of continuous steps", () => {
    const factor = 0.95
    const limit = threshold(factor)
    expect(Math.abs(limit - 52.86545636058919)).toBeLessThan(1e-9)
    const {worth, best} = settle(states, factor)
    expect(best.indexOf(1)).toBe(53)
    expect(best.lastIndexOf(0)).toBe(52)
    // V(s) = ∫ from s to γ of c/(1-β)·(1 - β·e^(-λ(1-β)(y-s))) dy - cγ/(1-β) below γ, the last term alone above it.
    const rate = 0.5 * (1 - factor)
    const continuous = (wear: number) => {
      const end = (200 * limit) / (1 - factor)
      if (wear >= limit) return -end
      const left = limit - wear
      return -end + (200 / (1 - factor)) * (left - (factor * -Math.expm1(-rate * left)) / rate)
    }
    const furthest = Math.max(...[...worth].map((one, wear) => Math.abs(one - continuous(wear))))
    expect(Math.abs(furthest - 1162.8806)).toBeLessThan(1e-3)
  })
  it("begins at 43 when the future counts almost fully", () => {
    expect(settle(states, 0.9999, 30_000).best.indexOf(1)).toBe(43)
  })
})

describe("a forest that may burn", () => {
  // Cordwell, pymdptoolbox, the forest of Chadès and others (2014), Ecography 37, 916-920: young, middle, old; a fire in one year of
  // ten; an old one pays 4 while it waits, cutting 1 and 2.
  const states: Choice[][] = [0, 1, 2].map((age) => [
    [
      age === 2 ? 4 : 0,
      [
        [0, 0.1],
        [Math.min(age + 1, 2), 0.9],
      ],
    ],
    [age, [[0, 1]]],
  ])
  it("is best left to grow old", () => {
    const {worth, best} = settle(states, 0.9)
    for (const [i, expected] of [26.244, 29.484, 33.484].entries())
      expect(Math.abs(worth[i]! - expected)).toBeLessThan(1e-9)
    expect(best).toEqual([0, 0, 0])
  })
  it("comes to the exact worth at a slower discount", () => {
    // Old: v = 4 + 0.96(0.1 y + 0.9 v); middle m = 0.96(0.1 y + 0.9 v); young y = 0.96(0.1 y + 0.9 m).
    const {worth} = settle(states, 0.96)
    for (const [i, expected] of [74.6496, 78.1056, 82.1056].entries())
      expect(Math.abs(worth[i]! - expected)).toBeLessThan(1e-6)
  })
  it("is cut at middle age in the last of three years", () => {
    const {acts, pays} = taken(states)
    let next = new Float64Array(3)
    const policies: number[][] = []
    for (let year = 0; year < 3; year++) {
      const worth = new Float64Array(3)
      const best = new Int32Array(3)
      improve(acts, pays, 0.9, next, worth, best)
      policies.unshift([...best])
      next = worth
    }
    for (const [i, expected] of [2.6973, 5.9373, 9.9373].entries())
      expect(Math.abs(next[i]! - expected)).toBeLessThan(1e-9)
    expect(policies[2]).toEqual([0, 1, 0])
  })
})

it("finds the closed form of a stock that grows by its root", () => {
  // r' = (r - h)^α, h pays ln h: h = (1 - αβ)·r, V(r) = c1 + ln r/(1 - αβ) (Brock and Mirman; Stokey and Lucas, from memory).
  const [alpha, factor, nodes, low, high] = [0.5, 0.9, 1001, -3, 0]
  const shares = Array.from({length: 61}, (_, i) => 0.2 + i * 0.01)
  const states = Array.from({length: nodes}, (_, node) => {
    const logStock = low + ((high - low) * node) / (nodes - 1)
    return shares.map((taking): Choice => {
      const place = placeAmong(alpha * (logStock + Math.log(1 - taking)), low, high, nodes)
      return [
        logStock + Math.log(taking),
        [
          [place.node, 1 - place.share],
          [place.node + 1, place.share],
        ],
      ]
    })
  })
  const {worth, best} = settle(states, factor, 400)
  expect(shares[best[nodes - 1]!]).toBeCloseTo(0.55, 9)
  expect(Math.abs(worth[nodes - 1]! + 12.511614795)).toBeLessThan(1e-3)
  const half = placeAmong(Math.log(0.5), low, high, nodes)
  const between = (1 - half.share) * worth[half.node]! + half.share * worth[half.node + 1]!
  expect(Math.abs(between + 13.771882396)).toBeLessThan(1e-3)
})

describe("placeAmong", () => {
  it("gives the node below and the share of the way on", () => {
    expect(placeAmong(2.5, 0, 10, 5)).toEqual({node: 1, share: 0})
    expect(placeAmong(3, 0, 10, 5).node).toBe(1)
    expect(placeAmong(3, 0, 10, 5).share).toBeCloseTo(0.2, 12)
  })
  it("keeps the ends, and what lies beyond them", () => {
    expect(placeAmong(10, 0, 10, 5)).toEqual({node: 3, share: 1})
    expect(placeAmong(99, 0, 10, 5)).toEqual({node: 3, share: 1})
    expect(placeAmong(-1, 0, 10, 5)).toEqual({node: 0, share: 0})
  })
})

it("is worth -Infinity where nothing is allowed", () => {
  const worth = new Float64Array(2)
  improve(actsOf([[], [[[0, 1]]]]), Float64Array.of(-Infinity), 0.9, new Float64Array(2), worth)
  expect([...worth]).toEqual([-Infinity, -Infinity])
})
