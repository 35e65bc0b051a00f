import {describe, expect, it} from "vitest"
import {needsLayout, type Need} from "../../../src/views/pictures/needsLayout"
import {boxOfText, overlap, overlaps, textWidth, type Box} from "../../../src/views/pictures/placing"

const needsOf = (atHand: number, ...needed: number[]): Need[] =>
  needed.map((one, i) => ({week: 17 + i, needed: one, atHand, isPast: i < 5}))
/** A farm whose cold is short in most weeks, so that the line runs through the bars. */
const cold = needsOf(9, 5.5, 10.2, 10.2, 10.4, 10.8, 10, 10.3, 9, 4.8)
const options = {decimals: 1, atHandWords: "kW fitted"}

describe("the picture of needs", () => {
  it("draws bars in proportion and hatches what is above the line", () => {
    const {columns, base} = needsLayout(needsOf(16, 8, 16, 20), {...options, width: 600})
    const [half, even, over] = columns as [(typeof columns)[0], (typeof columns)[0], (typeof columns)[0]]
    expect(half.within.height * 2).toBeCloseTo(even.within.height, 6)
    expect(even.short).toBeNull()
    // 4 of 16: a quarter of the bar that is covered.
    expect(over.short!.height * 4).toBeCloseTo(over.within.height, 6)
    expect(over.within.y + over.within.height).toBeCloseTo(base, 6)
  })

  it.each([320, 358, 440, 582, 976])("keeps the words of the line clear of every bar at %d px", (width) => {
    const {columns, atHand, base} = needsLayout(cold, {...options, width})
    expect(atHand).toHaveLength(1)
    const {text, x, y} = atHand[0]!
    const words: Box = {left: x, right: x + textWidth(text), top: y - 10, bottom: y + 3}
    expect(words.left >= 0 && words.right <= width).toBe(true)
    for (const {within, short} of columns) {
      const bar = {left: within.x, right: within.x + within.width, top: (short ?? within).y, bottom: base}
      // The words are measured rather too wide: a few px² are the room between a letter and its box.
      expect(overlap(words, bar)).toBeLessThan(20)
    }
  })

  it.each([
    [976, ["10.0, short 1.0"], undefined],
    [582, ["10.0", "short 1.0"], undefined],
    [358, ["1.0", "short"], "10.0"], // never the number over "short", which reads as if all of it were
  ])("prints what a week to come lacks at %d px", (width, lines, inside) => {
    const {columns} = needsLayout(cold, {...options, width})
    expect(columns[5]!.words).toEqual(lines)
    expect(columns[5]!.inside?.text).toBe(inside)
    expect(columns[8]!.words).toEqual(["4.8"])
    for (const {words, y} of columns) expect(y - 17 * (words.length - 1) - 11).toBeGreaterThanOrEqual(0)
  })

  it("keeps the number apart from what is short where nothing is at hand, so that no bar has room for it", () =>
    expect(needsLayout(needsOf(0, 5, 5, 5, 5, 5, 10), {...options, width: 240}).columns[5]).toMatchObject({
      words: ["10.0:", "10.0", "short"],
      inside: null,
    }))

  it("hatches nothing and draws no line where what is at hand is not known", () => {
    const needs = needsOf(9, 10, 10, 10).with(1, {week: 18, needed: 10, atHand: null, isPast: false})
    const {columns, line, atHand} = needsLayout(needs, {...options, width: 600})
    expect(columns.map(({short}) => short === null)).toEqual([false, true, false])
    expect(columns[1]!.words).toEqual(["10.0"])
    expect(line.match(/M/g)).toHaveLength(2)
    expect(atHand).toHaveLength(2)
    const unknown = needsLayout([{week: 18, needed: null, atHand: 9, isPast: false}], {
      ...options,
      width: 600,
    })
    expect(unknown.columns[0]).toMatchObject({words: [], short: null, within: {height: 0}})
  })

  it("says each level of what is at hand, and draws it as one line in steps", () => {
    const needs = [...needsOf(22, 11, 18, 18, 18), ...needsOf(16, 14, 14, 8)]
    const {atHand, line} = needsLayout(needs, {...options, decimals: 0, atHandWords: "booked", width: 582})
    expect(atHand.map(({text}) => text)).toEqual(["22 booked", "16 booked"])
    expect(line.match(/M/g)).toHaveLength(1)
  })

  it.each([358, 582])("keeps the words of a low line off the numbers of the weeks at %d px", (width) => {
    const {atHand, base} = needsLayout(needsOf(2, 60, 60, 60, 60, 60, 60, 60), {...options, width})
    expect(atHand[0]!.y + 3).toBeLessThanOrEqual(base + 1)
  })

  it.each([358, 582])(
    "lays the words of the line over a bar sooner than over what a week is short, at %d px",
    (width) => {
      const needs = needsOf(9, 18.1, 46.3, 46.1, 47.5, 49.6, 45.6, 47.2, 39.5, 14.1)
      const {atHand, columns} = needsLayout(needs, {...options, width})
      const {text, x, y} = atHand[0]!
      const box = boxOfText(text, x, y)
      const words = columns.flatMap((one) =>
        one.words.map((line, i) =>
          boxOfText(line, one.x - textWidth(line) / 2, one.y - 17 * (one.words.length - 1 - i)),
        ),
      )
      expect(overlaps(box, words)).toBe(0)
    },
  )

  it("draws a farm without a week", () =>
    expect(needsLayout([], {...options, width: 358})).toMatchObject({columns: [], line: "", atHand: []}))
})
