import {describe, expect, it} from "vitest"
import type {Risk} from "../../../src/studies/risk"
import type {CashYear} from "../../../src/workbook/lender"
import {cashLayout, HEAD} from "../../../src/views/pictures/cashLayout"
import {textWidth} from "../../../src/views/pictures/placing"
import {cashYear, fiveYears} from "./lenders"

describe("the picture of cash and debt", () => {
  it("draws capacity in proportion, from a base at zero", () => {
    const {columns, zero} = cashLayout(fiveYears, 620, null)
    expect(columns.map(({year}) => year)).toEqual([2026, 2027, 2028, 2029, 2030])
    for (const [i, {capacity}] of columns.entries()) {
      expect(capacity.y + capacity.height).toBeCloseTo(zero, 6)
      expect(capacity.height / columns[0]!.capacity.height).toBeCloseTo(fiveYears[i]!.capacity / 182000, 6)
    }
  })

  it("parts the whole scale where years lose money, so that no two numbers beside it run together", () => {
    const years = [cashYear(2026, -230_000, 34_000), cashYear(2027, -180_000, 34_000)]
    const {rules, zero} = cashLayout(years, 620, null)
    expect(rules.map(({text}) => text)).toEqual(["\u2212200\u202f000", "\u2212100\u202f000"])
    expect(rules[0]!.y - rules[1]!.y).toBeCloseTo(rules[1]!.y - zero, 6)
    expect(rules[0]!.y - rules[1]!.y).toBeGreaterThan(18)
  })

  it("hatches what a year lacks, up to the line of what is due, and says by how much", () => {
    const {columns} = cashLayout(fiveYears, 620, null)
    expect(columns.map(({words}) => words?.lines.join(" ") ?? null)).toEqual([
      null,
      "short by 8\u202f000",
      null,
      null,
      null,
    ])
    const bar = columns[1]!.short!
    expect(bar.y).toBeCloseTo(columns[1]!.due.y, 6)
    expect(bar.y + bar.height).toBeCloseTo(columns[1]!.capacity.y, 6)
  })

  it("says above the tight year what it has left, and nothing above one that is short", () => {
    const years = [cashYear(2026, 150, 100), cashYear(2027, 112, 100), cashYear(2028, 140, 100)]
    const {columns} = cashLayout(years, 620, null)
    expect(columns.map(({isTight}) => isTight)).toEqual([false, true, false])
    expect(columns.map(({words}) => words?.lines ?? null)).toEqual([null, ["12 left"], null])
    expect(columns[1]!.words!.y).toBeLessThan(columns[1]!.capacity.y)
    const short = cashLayout(fiveYears, 620, null).columns
    expect(short.map(({isTight, words}) => [isTight, words?.lines])).toEqual(
      fiveYears.map(({year}) => [year === 2027, year === 2027 ? ["short by 8\u202f000"] : undefined]),
    )
  })

  it("says what the tight year alone lacks where the words of neighbours would run together", () => {
    const years = Array.from({length: 10}, (_, i) => cashYear(2026 + i, 34_000 - 2600 * i, 33_000))
    const words = (width: number) => cashLayout(years, width, null).columns.map((one) => one.words)
    expect(words(620).map((one) => one?.lines.join(" ") ?? null)).toEqual([
      null,
      ...[1600, 4200, 6800, 9400, 12_000, 14_600, 17_200, 19_800, 22_400].map(
        (lacks) => `short ${String(lacks).replace(/(?=\d{3}$)/, "\u202f")}`,
      ),
    ])
    const [last, ...others] = words(350).toReversed()
    expect(others.every((one) => one === null)).toBe(true)
    expect(last!.lines).toEqual(["short", "22.4"]) // thousands, as beside the rules
    expect(last!.x + textWidth("short") / 2).toBeLessThanOrEqual(350)
  })

  it("sets the dot of cover 1 on the level that just pays, and wanted above it", () => {
    const {columns, justPays, wanted} = cashLayout(
      [cashYear(2026, 100, 100), cashYear(2027, 150, 100)],
      620,
      1.25,
    )
    expect(columns[0]!.cover!.y).toBeCloseTo(justPays, 6)
    expect(wanted!).toBeCloseTo((columns[0]!.cover!.y + columns[1]!.cover!.y) / 2, 6)
  })

  it("leaves out years with nothing due, and keeps a capacity below zero under the base", () => {
    const {columns, zero, yearsY} = cashLayout([cashYear(2026, -50, 100), cashYear(2027, 80, 0)], 620, null)
    expect(columns.map(({year}) => year)).toEqual([2026])
    expect(columns[0]!.capacity.y).toBeCloseTo(zero, 6)
    expect(yearsY).toBeGreaterThan(zero + columns[0]!.capacity.height)
  })

  it.each([358, 476, 620, 900])("keeps the numbers of neighbours apart at %d px", (width) => {
    const years = Array.from({length: 9}, (_, i) =>
      cashYear(2026 + i, 30_000 + 900 * i, 34_000, {stressed: -0.25}),
    )
    const {columns, height, planY} = cashLayout(years, width, 1.25)
    const texts = (of: "cover" | "stressed") => columns.map((one) => ({x: one.x, ...one[of]!}))
    for (const all of [texts("cover"), texts("stressed")])
      for (const [i, {x, text}] of all.entries()) {
        if (i > 0) expect(x - all[i - 1]!.x).toBeGreaterThan(textWidth(text) - 1)
        expect(x + textWidth(text) / 2).toBeLessThanOrEqual(width + 2)
      }
    expect(planY).toBeGreaterThan(0)
    expect(Math.max(...columns.map(({stressedY}) => stressedY))).toBeLessThan(height)
  })

  it("sets the numbers of the stress in two lines where one would run together", () => {
    const years = Array.from({length: 10}, (_, i) => cashYear(2026 + i, 40_000, 34_000, {stressed: -0.25}))
    const lines = (width: number, isOnPaper = false) =>
      new Set(cashLayout(years, width, 1.25, {}, null, isOnPaper).columns.map(({stressedY}) => stressedY))
        .size
    expect([lines(620), lines(350), lines(332, true)]).toEqual([1, 2, 1])
  })

  it("is lower on paper, where page one has more to hold", () => {
    const years = [cashYear(2026, 150, 100), cashYear(2027, 112, 100)]
    expect(cashLayout(years, 332, 1.25, {}, null, true).height).toBeLessThan(300)
  })

  const bands = (years: readonly CashYear[], ...ends: readonly (readonly [low: number, high: number])[]) => {
    const risk = years.map(({year}, i) => ({year, cover: {at: [ends[i]![0], 1, 1.1, 1.2, ends[i]![1]]}}))
    return {plans: [{years: risk}]} as unknown as Risk
  }

  it.each([358, 476, 620, 900])(
    "keeps the numbers off the level lines, the dots and the bands at %d px",
    (width) => {
      const years = Array.from({length: 8}, (_, i) => cashYear(2026 + i, 125, 100, {stressed: -0.25}))
      const found = bands(years, ...years.map(() => [-0.4, 3] as const))
      const {columns, justPays, wanted, planY, stressY} = cashLayout(years, width, 1.25, {}, found)
      const levels = columns.flatMap(({cover, stressed, band}) => [
        cover!.y,
        stressed!.y,
        band!.low,
        band!.high,
      ])
      for (const y of [justPays, wanted!, ...levels]) {
        expect(y).toBeGreaterThan(planY + 5)
        expect(y).toBeLessThan(stressY - 13) // the height of its letters
      }
    },
  )

  it("cuts the scale for a year that would flatten the others, and writes its numbers", () => {
    const years = Array.from({length: 9}, (_, i) =>
      cashYear(2026 + i, 140 + i, i === 8 ? 20 : 100, {stressed: i === 8 ? -1.3 : -0.2}),
    )
    const found = bands(
      years,
      ...years.map((_, i) => (i === 8 ? ([-1.6, 8.5] as const) : ([-0.4 - i / 50, 3 + i / 10] as const))),
    )
    const cut = cashLayout(years, 620, 1.25, {}, found)
    const odd = cut.columns[8]!
    expect(cut.isCut).toBe(true)
    expect(odd.band!.beyondHigh!.text).toBe("↑\u202f8.50")
    expect(odd.band!.beyondLow!.text).toBe("↓\u202f−1.60")
    expect(odd.stressed!.beyond).toBe("below")
    expect(odd.band!.high).toBe(cut.columns[7]!.band!.high) // the edge: the highest of the others
    for (const {band, cover} of cut.columns.slice(0, 8)) {
      expect([band!.beyondLow, band!.beyondHigh, cover!.beyond]).toEqual([null, null, null])
      expect(band!.low - band!.high).toBeGreaterThan(70) // of 120 px; uncut it would be some 40
    }
    const {text, x} = odd.band!.beyondHigh!
    expect(x + textWidth(text) / 2).toBeLessThanOrEqual(620)
    expect(cashLayout(years.slice(0, 8), 620, 1.25, {}, found).isCut).toBe(false)
  })

  it("names the line of what is due in one column that reaches well above it, or not at all", () => {
    const named = (width: number, ...capacities: number[]) =>
      cashLayout(
        capacities.map((capacity, i) => cashYear(2026 + i, capacity, 100)),
        width,
        null,
      ).columns.map(({isNamed}) => isNamed)
    expect(named(620, 104, 200, 200)).toEqual([false, true, false])
    expect(named(620, 104, 90)).toEqual([false, false])
    // Twelve columns of 358 px are narrower than the word.
    expect(named(358, ...Array.from({length: 12}, () => 200))).not.toContain(true)
  })

  it.each([358, 620])("keeps the words above a tall column off those at the head, at %d px", (width) => {
    const years = Array.from({length: 8}, (_, i) =>
      cashYear(2026 + i, i === 0 ? 95_000 : 60_000, i === 0 ? 90_000 : 20_000),
    )
    const {columns, rules} = cashLayout(years, width, null)
    const {y, lines} = columns[0]!.words!
    expect(y - 11).toBeGreaterThanOrEqual(HEAD + 3) // from the top of its letters to the foot of those
    expect(y + 18 * (lines.length - 1)).toBeLessThan(columns[0]!.capacity.y)
    expect(rules[0]!.y).toBeGreaterThan(columns[0]!.capacity.y)
  })

  it("counts all sums in thousands where there is no room for more, or they are millions", () => {
    const narrow = cashLayout(fiveYears, 358, null)
    // What is wanted is told by its number, which has its room before the line.
    const withWanted = cashLayout(fiveYears, 358, 1.255)
    expect([withWanted.wantedWords, cashLayout(fiveYears, 640, 1.255).wantedWords]).toEqual([
      "1.255",
      "wanted",
    ])
    expect(withWanted.left - 5 - textWidth("1.255")).toBeGreaterThanOrEqual(0)
    expect(narrow.inThousands).toBe(true)
    expect(narrow.rules.map(({text}) => text)).toEqual(["100", "200"])
    expect(cashLayout(fiveYears, 620, null).rules.map(({text}) => text)[0]).toBe("100\u202f000")
    expect(narrow.columns[1]!.words!.lines.join(" ")).toMatch(/^short (by )?8\.0$/)
    const commas = cashLayout(fiveYears, 358, null, {decimal: ","})
    expect(commas.columns[1]!.words!.lines.join(" ")).toMatch(/^short (by )?8,0$/)
    expect(cashLayout([cashYear(2026, 300, 200)], 358, null).inThousands).toBe(false)
    const large = cashLayout([cashYear(2026, 12_400_000, 3_800_000)], 620, null)
    expect(large.rules.map(({text}) => text)).toEqual(["5\u202f000", "10\u202f000"])
    expect(large.columns[0]!.words!.lines).toEqual(["8\u202f600 left"])
  })

  it("sets the scale by the years that show a cover, where those of others are emptied", () => {
    const covers = [3, 3.2, 3.1, null, null].map((cover, i) =>
      cashYear(2026 + i, 100 * (cover ?? 1), 100, {cover}),
    )
    const {columns, isCut} = cashLayout(covers, 620, null)
    expect(isCut).toBe(false)
    expect(columns.map(({cover}) => cover?.beyond)).toEqual([null, null, null, undefined, undefined])
  })

  it("draws the cover of eight draws of ten as a band on the same scale", () => {
    const years = [cashYear(2026, 150, 100)]
    expect(cashLayout(years, 620, null).columns[0]!.band).toBeNull()
    const found = {plans: [{years: [{year: 2026, cover: {at: [1, 1.2, 1.5, 1.8, 2]}}]}]} as unknown as Risk
    const {columns, justPays} = cashLayout(years, 620, null, {}, found)
    const [{band, cover}] = columns as [(typeof columns)[0]]
    expect(band!.low).toBeCloseTo(justPays, 6)
    expect(cover!.y).toBeCloseTo((band!.low + band!.high) / 2, 6)
  })
})
