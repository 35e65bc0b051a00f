import {describe, expect, it} from "vitest"
import type {Risk} from "../../../src/studies/risk"
import {cashLayout} from "../../../src/views/pictures/cashLayout"
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

  it("hatches what a year lacks, up to the line of what is due, and says by how much", () => {
    const {columns} = cashLayout(fiveYears, 620, null)
    const short = columns.map((one) => one.short)
    expect(short.map((one) => one?.words.join(" ") ?? null)).toEqual([
      null,
      "short by 8\u202f000",
      null,
      null,
      null,
    ])
    const {bar} = short[1]!
    expect(bar.y).toBeCloseTo(columns[1]!.due.y, 6)
    expect(bar.y + bar.height).toBeCloseTo(columns[1]!.capacity.y, 6)
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
    const {columns, height} = cashLayout(years, width, 1.25)
    const texts = (of: "cover" | "stressed") => columns.map((one) => ({x: one.x, ...one[of]!}))
    for (const all of [texts("cover"), texts("stressed")])
      for (const [i, {x, text, textY}] of all.entries()) {
        if (i > 0) expect(x - all[i - 1]!.x).toBeGreaterThan(textWidth(text) - 1)
        expect(x + textWidth(text) / 2).toBeLessThanOrEqual(width + 2)
        expect(textY).toBeLessThan(height)
      }
  })

  it.each([476, 620])(
    "sets the numbers beside their dots where a band is, inside the picture at %d px",
    (width) => {
      const years = Array.from({length: 8}, (_, i) => cashYear(2026 + i, 150, 100, {stressed: -0.25}))
      const bands = years.map(({year}) => ({year, cover: {at: [1, 1.2, 1.5, 1.8, 2]}}))
      const found = {plans: [{years: bands}]} as unknown as Risk
      const {columns} = cashLayout(years, width, null, {}, found)
      for (const {x, band, cover} of columns) {
        const wide = textWidth(cover!.text)
        const {anchor, textX} = cover!
        const left = anchor === "start" ? textX : anchor === "end" ? textX - wide : textX - wide / 2
        expect(left + wide).toBeLessThanOrEqual(width)
        if (width > 600) expect(left >= x + 6 || left + wide <= x - 6).toBe(true)
        expect(band).not.toBeNull()
      }
    },
  )

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

  it("counts the rules in thousands where there is no room for more", () => {
    const narrow = cashLayout(fiveYears, 358, null)
    expect(narrow.inThousands).toBe(true)
    expect(narrow.rules.map(({text}) => text)).toEqual(["100", "200"])
    expect(cashLayout(fiveYears, 620, null).rules.map(({text}) => text)[0]).toBe("100\u202f000")
    expect(cashLayout([cashYear(2026, 300, 200)], 358, null).inThousands).toBe(false)
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
