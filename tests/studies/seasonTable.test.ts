import {describe, expect, it} from "vitest"
import {
  around,
  crownsOn,
  endWithNodeOn,
  fullSugar,
  incomes,
  seasonsFrom,
  sugarOf,
  tabulate,
  worthOf,
  type Grid,
} from "../../src/studies/seasonTable"
import {sixPlantings} from "./sixPlantings"

const grid: Grid = {
  sugar: {low: 0, high: 600, nodes: 4},
  structure: {low: 1000, high: 7000, nodes: 3},
}
const seasons = seasonsFrom(sixPlantings.site, 114)

describe("the sugar from which on more brings no more spears", () => {
  const {site} = sixPlantings
  const kink = fullSugar(site, 114)
  const first = (sugar: number) =>
    seasons.picked({structure: 5000, reserve: (5000 * sugar) / (1000 - sugar)}, 1)[1]!
  it("is where the first day's crop stops rising, whatever the root", () => {
    expect(first(kink + 20)).toBeCloseTo(first(kink), 9)
    expect(first(kink - 1)).toBeLessThan(first(kink))
    // At the opening it is 80 + 1.15 x (500 - 80) = 563; the winter's upkeep lies before that.
    expect(kink).toBeGreaterThan(563)
    expect(fullSugar(site, 0)).toBeCloseTo(563, 9)
  })
  it("lies on a node of an axis that reaches the most, where there is room", () => {
    const end = endWithNodeOn(kink, 620, 25)
    expect(end).toBeGreaterThanOrEqual(620)
    expect(((kink / end) * 24) % 1).toBeCloseTo(0, 9)
    expect(endWithNodeOn(700, 620, 25)).toBe(620)
    expect(endWithNodeOn(10, 620, 25)).toBe(620)
    expect(endWithNodeOn(600, 900, 3)).toBe(900) // the node would put the end past 1000 mg/g
  })
})

describe("a grid of crowns", () => {
  it("has every sugar with every structure", () => {
    const crowns = crownsOn(grid)
    expect(crowns).toHaveLength(12)
    expect(crowns.slice(4, 8).map(({structure}) => structure)).toEqual([4000, 4000, 4000, 4000])
    for (const [i, sugar] of [0, 200, 400, 600].entries())
      expect(sugarOf(crowns[4 + i]!)).toBeCloseTo(sugar, 9)
  })
  it("gives a node all the weight of crowns that lie on it", () => {
    for (const [node, crowns] of crownsOn(grid).entries()) {
      const worth = new Float64Array(12)
      worth[node] = 5
      expect(worthOf(crowns, grid, worth)).toBeCloseTo(5, 9)
    }
  })
  it("draws straight lines between: a worth that is linear in sugar and structure is met everywhere", () => {
    const worth = Float64Array.from(crownsOn(grid), (crowns) => 3 * sugarOf(crowns) + 0.1 * crowns.structure)
    for (const [structure, sugar] of [
      [1500, 50],
      [6900, 599],
      [4000, 321],
    ] as const) {
      const crowns = {structure, reserve: (structure * sugar) / (1000 - sugar)}
      expect(worthOf(crowns, grid, worth)).toBeCloseTo(3 * sugar + 0.1 * structure, 8)
    }
  })
  it("counts crowns beyond its edge as at the edge", () => {
    const {to, weight} = around({structure: 9000, reserve: 0}, grid)
    expect([...to].map((node, i) => [node, weight[i]]).filter(([, share]) => share! > 0)).toEqual([[8, 1]])
  })
})

describe("seasons", () => {
  const crowns = {structure: 5500, reserve: 6000}
  it("bring a crop that grows with the days and does not depend on those that follow", () => {
    const [short, long] = [seasons.picked(crowns, 20), seasons.picked(crowns, 60)]
    expect(short[0]).toBe(0)
    for (let day = 1; day <= 20; day++) {
      expect(short[day]).toBe(long[day])
      expect(short[day]).toBeGreaterThan(short[day - 1]!)
    }
  })
  it("leave less sugar the longer they are", () => {
    const left = [0, 14, 28, 42, 56, 70].map((days) => seasons.after(crowns, days).reserve)
    for (let i = 1; i < left.length; i++) expect(left[i]).toBeLessThan(left[i - 1]!)
  })
  it.each([seasons, seasonsFrom(sixPlantings.site, 0)])(
    "are the same week by week as each by itself",
    (any) => {
      for (const start of [crowns, {structure: 2000, reserve: 90}]) {
        const weeks = Math.floor(any.most / 7)
        const {picked, after} = any.byWeek(start, weeks)
        expect(picked).toEqual(any.picked(start, 7 * weeks))
        for (const [week, {structure, reserve}] of after.entries()) {
          const alone = any.after(start, 7 * week)
          expect(structure).toBeCloseTo(alone.structure, 8)
          expect(reserve).toBeCloseTo(alone.reserve, 8)
        }
      }
    },
  )
  it("can be no longer than up to the fern's end", () => {
    expect(seasons.most).toBe(sixPlantings.site.values.Fern_end - 1 - 114)
  })
})

it("adds up what each day's crop leaves", () => {
  // 10 kg at 2, then 5 at 3.
  expect([...incomes(Float64Array.of(0, 10, 15), (day) => 2 + day)]).toEqual([0, 20, 35])
})

it("tabulates what every season from every node brings and leaves", () => {
  const perKg = (day: number) => (day < 7 ? 2 : 1)
  const table = tabulate(seasons, grid, 3, perKg)
  const worth = Float64Array.from(crownsOn(grid), (crowns) => sugarOf(crowns) + crowns.structure)
  for (const [node, crowns] of crownsOn(grid).entries())
    for (let weeks = 0; weeks <= 3; weeks++) {
      const act = table.acts.first[node]! + weeks
      const picked = seasons.picked(crowns, 21)
      // The first week at 2, the others at 1.
      const expected = picked[7 * weeks]! + picked[Math.min(7, 7 * weeks)]!
      expect(table.income[act]).toBeCloseTo(expected, 6)
      let then = 0
      for (let lead = table.acts.leads[act]!; lead < table.acts.leads[act + 1]!; lead++)
        then += table.acts.weight[lead]! * worth[table.acts.to[lead]!]!
      expect(then).toBeCloseTo(worthOf(seasons.after(crowns, 7 * weeks), grid, worth), 6)
    }
})
