import {describe, expect, it} from "vitest"
import {
  crossingOf,
  rangesOf,
  replantLayout,
  type OldAgainstNew,
} from "../../../src/views/pictures/replantLayout"
import {
  crossingWords,
  replantFinding,
  replantSentence,
  seasonSentence,
} from "../../../src/views/pictures/replantWords"
import {textWidth} from "../../../src/views/pictures/placing"
import type {ReplantField} from "../../../src/workbook/replant"

const margins = [3100, 2700, 2250, 1700, 1200]
const at = {sheet: 0, row: 0, col: 0}
const field: ReplantField = {
  row: 0,
  field: "Hill Field",
  area: null,
  first: 2026,
  seasons: margins.map((cash, i) => ({year: 2026 + i, cash, crop: null, at})),
  price: null,
  onOldGround: false,
  rest: 0,
  lease: null,
  leaseAct: "",
  leaseYears: null,
  ground: 29886,
  level: 2092,
  keepYears: 3,
  keepLeast: 3,
  keepMost: 3,
  waitGain: 942,
  earlyCost: 1642,
  warning: "",
  note: "",
  cells: {},
}
const picture: OldAgainstNew = {
  field: "Hill Field",
  unit: "money/ha",
  seasons: rangesOf(field, 0.3),
  level: 2092,
  levelLow: 1800,
  levelHigh: 2400,
  kept: 3,
  either: [2, 3],
}

it("says of a season what it brings, in its unit, and what it must", () => {
  expect(seasonSentence(picture.seasons[0]!, picture)).toMatch(
    /^2026: this field brings 3.100 money\/ha, a year must bring 2.092\.$/,
  )
})

describe("the crossing", () => {
  it("lies between the last season above the level and the next, by their distances from it", () => {
    // 2 250 is 158 above, 1 700 is 392 below: 158/550 of the way from the third season.
    const crossing = crossingOf(picture)
    expect(crossing).toEqual({kind: "between", before: 2028, after: 2029, at: 2 + 158 / 550})
    expect(crossingWords(picture)).toBe(
      "This field beats a new planting until 2028; the new one is better from 2029",
    )
    expect(replantSentence(picture)).toContain("The lines cross between 2028 and 2029.")
  })
  it("is not there when one is better throughout", () => {
    expect(crossingWords({...picture, level: 4000, kept: 0})).toBe(
      "A new planting is better from the first season on",
    )
    expect(crossingWords({...picture, level: 1000, kept: 5})).toBe(
      "This field still beats a new planting in 2030",
    )
  })
  it("says of a field whose lease ends that it knows no end", () =>
    expect(crossingWords(picture, 6)).toBe(
      "If the lease had no end: this field beats a new planting until 2028; the new one is better from 2029",
    ))
  it("is the last one of a field that has had a setback", () => {
    const seasons = rangesOf(
      {...field, seasons: [{year: 2025, cash: -200, crop: null, at}, ...field.seasons]},
      0,
    )
    expect(crossingWords({...picture, seasons, kept: 4})).toBe(
      "After a poor start, this field beats a new planting until 2028; the new one is better from 2029",
    )
  })
})

describe("a field that would cross the level again", () => {
  // At 2 137 a year: 2 300 gains less than the 5 137 lost before it, so it is cleared now; 2 200 gains 63, less than the 637 of
  // the season between, so it is cleared after the first.
  const seasonsOf = (cash: readonly number[]) =>
    rangesOf({...field, seasons: cash.map((one, i) => ({year: 2026 + i, cash: one, crop: null, at}))}, 0)
  it("is cleared at once where later seasons do not make up for a poor first one", () => {
    const poor = {...picture, level: 2137, kept: 0, seasons: seasonsOf([-3000, 2300, 1500, 1000])}
    expect(crossingWords(poor)).toBe("A new planting is better from the first season on")
    expect(replantSentence(poor)).toMatch(/The seasons above that do not make up for those below\.$/)
    expect(replantLayout(poor, 640)).toMatchObject({crossing: null, crossingWords: null, crossingLead: ""})
  })
  it("is cleared at the first fall where the rise after it is too small", () => {
    const dips = {...picture, level: 2137, kept: 1, seasons: seasonsOf([3000, 1500, 2200, 1000])}
    expect(crossingWords(dips)).toBe(
      "This field beats a new planting until 2026; the new one is better from 2027",
    )
  })
})

it("tells of the seasons on both sides of the best year, which are why it is best", () => {
  expect(replantSentence(picture)).toBe(
    "Hill Field brings 3\u202f100 in 2026, 2\u202f250 in 2028 and 1\u202f700 in 2029 (money/ha); " +
      "a year must bring 2\u202f092 to be kept. The lines cross between 2028 and 2029.",
  )
  expect(replantSentence({...picture, level: 1000, kept: 5})).toContain(
    "3\u202f100 in 2026 and 1\u202f200 in 2030 ",
  )
})

describe("what was found", () => {
  it.each([
    [{}, "Hill Field: replant after the 2028 harvest. Clearing now would cost 1\u202f642 money/ha."],
    [
      {keepLeast: 2, keepMost: 4},
      "Hill Field: replant after the 2028 harvest; 2027 and 2029 come within 150 money/ha of it. Clearing now would cost 1\u202f642 money/ha.",
    ],
    [
      {keepYears: 0, keepLeast: 0, keepMost: 1, earlyCost: 0},
      "Hill Field: replant before the 2026 season; 2026 comes within 150 money/ha of it.",
    ],
    [{keepYears: 5}, "Hill Field: keep it through 2030, the last season weighed; longer may be better."],
    [
      {lease: 6, leaseYears: 6, leaseAct: "keep, clear after 2031"},
      "Hill Field: keep it to the end of its lease, through the 2031 harvest: nothing planted in the 6 seasons left would bring more.",
    ],
    [
      {lease: 1, leaseYears: 1, leaseAct: "keep, clear after 2026"},
      "Hill Field: keep it to the end of its lease, through the 2026 harvest: nothing planted in the season left would bring more.",
    ],
    [
      {lease: 6, leaseYears: 2, leaseAct: "keep, clear after 2027"},
      "Hill Field: keep it through the 2027 harvest, then clear it and plant no more; 6 seasons of the lease are left.",
    ],
    [
      {lease: 20, leaseYears: 3, leaseAct: "keep, replant after 2028"},
      "Hill Field: keep it through the 2028 harvest, then replant; 20 seasons of the lease are left.",
    ],
    [
      {lease: 6, leaseYears: 0, leaseAct: "stop"},
      "Hill Field: clear it now and plant no more; 6 seasons of the lease are left.",
    ],
    [
      {waitGain: -2277},
      "Hill Field: replant after the 2028 harvest. Clearing now would cost 1\u202f642 money/ha. Its first season alone would lose 2\u202f277 money/ha, which later ones make up for.",
    ],
    [{seasons: []}, "Hill Field: no net cash of its seasons is known yet."],
  ])("is said in a sentence: %o", (change, words) => {
    expect(replantFinding({...field, ...change}, 150)).toBe(words)
  })
})

it("is told by the acre and in the region's money where that is asked for", () => {
  // An acre is .4046856 of a hectare: 1 642 a hectare are 664.5 an acre, 150 are 60.7.
  const near = {...field, keepLeast: 2}
  expect(replantFinding(near, 150, {measures: "US", currency: "USD"})).toBe(
    "Hill Field: replant after the 2028 harvest; 2027 comes within 61 USD/ac of it. Clearing now would cost 664 USD/ac.",
  )
})

describe("the layout", () => {
  const layout = replantLayout(picture, 640)
  it("says what a year must bring where no line of the field runs", () => {
    // High at first and through the level at the right, where the words would lie on it.
    const seasons = [8000, 7000, 6000, 5000, 4000, 2500, 1500].map((cash, i) => ({
      year: 2026 + i,
      cash,
      low: 0.7 * cash,
      high: 1.3 * cash,
      at: {sheet: 0, row: 0, col: 0},
    }))
    const {level} = replantLayout({...picture, seasons, kept: 6, either: [5, 6]}, 350)
    expect(level.words.anchor).toBe("start")
  })

  it("puts the crossing on the level, between its two seasons", () => {
    expect(layout.crossing!.y).toBe(layout.level.y)
    expect(layout.crossing!.x).toBeGreaterThan(layout.dots[2]!.x)
    expect(layout.crossing!.x).toBeLessThan(layout.dots[3]!.x)
    expect(layout.dots.map(({isAbove}) => isAbove)).toEqual([true, true, true, false, false])
  })
  it("keeps everything in the picture at any width, the higher sum further up", () => {
    for (const width of [320, 640, 900]) {
      const {dots, rules, years} = replantLayout(picture, width)
      for (const {x, y} of dots) expect(x > 0 && x < width && y > 0 && y < 300).toBe(true)
      expect(dots.map(({y}) => y)).toEqual(dots.map(({y}) => y).toSorted((a, b) => a - b))
      expect(rules.length).toBeGreaterThan(3)
      expect(years.every(({x}) => x < width)).toBe(true)
    }
  })
  it.each([330, 358, 640, 900])(
    "names the overlap, clear of the lines and of the other words, at %d px",
    (width) => {
      const seasons = picture.seasons.map((one) => ({...one, low: one.cash - 900, high: one.cash + 900}))
      const {eitherWords, level, left, right, rules} = replantLayout({...picture, seasons}, width)
      const {x, y, words} = eitherWords!
      expect(words).toBe("either can be right")
      expect(x).toBeGreaterThanOrEqual(left)
      expect(x + textWidth(words)).toBeLessThanOrEqual(right)
      expect(y > level.words.y + 14 || y < level.words.y - 14 || x + textWidth(words) < right - 150).toBe(
        true,
      )
      // The numbers have the room before `left` for themselves.
      for (const {words} of rules) expect(textWidth(words)).toBeLessThan(left)
    },
  )
  it.each([330, 358, 640, 900])("says beside the crossing from when it is too little, at %d px", (width) => {
    const {crossing, crossingWords, crossingLead, level, oldWords, left, right} = replantLayout(
      picture,
      width,
    )
    const {x, y, words} = crossingWords!
    expect(words).toBe("too little from 2029")
    expect(x).toBeGreaterThanOrEqual(left)
    expect(x + textWidth(words)).toBeLessThanOrEqual(right)
    expect(Math.abs(y - crossing!.y)).toBeLessThan(90)
    const [fromX, fromY] = /M(\S+) (\S+)L/.exec(crossingLead)!.slice(1).map(Number)
    expect(Math.hypot(fromX! - crossing!.x, fromY! - crossing!.y)).toBeCloseTo(9, 0) // from the edge of the ring
    for (const other of [level.words, oldWords]) expect(Math.abs(y - other.y)).toBeGreaterThan(13)
  })
  it("draws a range only where the crop is known, and shades where it meets that of the new planting", () => {
    expect(layout.edges).toEqual([])
    const grown = rangesOf(
      {...field, seasons: field.seasons.map((one) => ({...one, crop: {leaves: 3000, sells: 9000}}))},
      0.3,
    )
    // 30 % of 3 000 either way.
    expect(grown[2]).toEqual({year: 2028, cash: 2250, low: 1350, high: 3150, at})
    const ranged = replantLayout({...picture, seasons: grown}, 640)
    expect(ranged.edges).toHaveLength(2)
    expect(ranged.either).toMatch(/^M.*Z$/)
  })
})
