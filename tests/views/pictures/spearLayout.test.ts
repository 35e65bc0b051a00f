import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {lineSpread} from "../../../functions/spear/lineSpread"
import {overlap, textWidth, type Box} from "../../../src/views/pictures/placing"
import {spearFinding, spearLayout, spearSentence, spearTitle} from "../../../src/views/pictures/spearLayout"
import type {PlantingSpears, SpearSizes} from "../../../src/workbook/spears"

const day = (iso: string) => dayOf(iso)!
const daysOf = (...means: number[]) =>
  means.map((mean, i) => ({
    day: day("2026-05-04") + 7 * i,
    mean,
    counted: 40,
    at: {sheet: 0, row: i, col: 2},
  }))
// The line by hand: slope -25.9/245 mm a day through 12.0 mm at 10.5 days; 9.5 mm 34.15 days after 4 May.
const thinning: PlantingSpears = {
  planting: "Sand Piece",
  days: daysOf(13.1, 12.4, 11.6, 10.9),
  line: {day: day("2026-05-04") + 10.5, mean: 12, slope: -25.9 / 245},
  lastDay: day("2026-06-07"),
  spread: lineSpread(
    [0, 7, 14, 21].map((later) => day("2026-05-04") + later),
    [13.1, 12.4, 11.6, 10.9],
    0.8,
  ),
  lastDays: [day("2026-06-06"), day("2026-06-08")],
}
const steady: PlantingSpears = {
  planting: "Long Acre",
  days: daysOf(12, 12.2),
  line: {day: day("2026-05-04") + 3.5, mean: 12.1, slope: 0.2 / 7},
  lastDay: null,
  spread: null,
  lastDays: null,
}
const once: PlantingSpears = {
  planting: "Home Strip",
  days: daysOf(11),
  line: null,
  lastDay: null,
  spread: null,
  lastDays: null,
}
const sizesOf = (...plantings: PlantingSpears[]): SpearSizes => ({
  plantings,
  limit: 9.5,
  confidence: 0.8,
  asOf: day("2026-05-25"),
  region: {},
})

describe("the picture of spear size", () => {
  it("draws the line solid over what was measured and dashed to the limit", () => {
    const {fitted, toCome, dots, meets, limit} = spearLayout(thinning, sizesOf(thinning), 600)
    const [, lastX, lastY] = /L([\d.]+) ([\d.]+)$/.exec(fitted)!
    expect(toCome.startsWith(`M${lastX} ${lastY}`)).toBe(true)
    expect(Number(lastX)).toBeCloseTo(dots[3]!.x, 1)
    expect(meets!.y).toBeCloseTo(limit!.y, 6)
    // 34.15 of the 21 days between the first and the last dot.
    expect((meets!.x - dots[0]!.x) / (dots[3]!.x - dots[0]!.x)).toBeCloseTo(34.15 / 21, 2)
  })

  it("stands all plantings on the same scales", () => {
    const both = sizesOf(thinning, steady)
    const [one, other] = [spearLayout(thinning, both, 600), spearLayout(steady, both, 600)]
    expect(other.rules).toEqual(one.rules)
    expect(other.dots[0]!.x).toBe(one.dots[0]!.x)
    expect([other.toCome, other.meets]).toEqual(["", null])
  })

  it("draws the edges of the line about it, wider where nothing was measured", () => {
    const {band, dots, fitted} = spearLayout(thinning, sizesOf(thinning), 600)
    const points = band!.area
      .slice(1, -1)
      .split("L")
      .map((point) => point.split(" ").map(Number) as [number, number])
    const [upper, lower] = [points.slice(0, points.length / 2), points.slice(points.length / 2).toReversed()]
    const widths = upper.map(([, y], i) => lower[i]![1] - y)
    expect(Math.min(...widths)).toBeGreaterThan(0)
    expect(widths.at(-1)!).toBeGreaterThan(2 * Math.min(...widths))
    const [, lastX] = /L([\d.]+) [\d.]+$/.exec(fitted)!
    expect(
      band!.past
        .split("M")
        .slice(1)
        .every((edge) => edge.trim().includes(`L${lastX} `)),
    ).toBe(true)
    expect(upper[0]![0]).toBeCloseTo(dots[0]!.x, 1)
    expect(spearLayout(steady, sizesOf(steady), 600).band).toBeNull()
  })

  it("draws the line on to the day on which even the upper edge has met the limit", () => {
    const sizes = sizesOf(thinning)
    const {toCome, dots, meets} = spearLayout(thinning, sizes, 600)
    const end = Number(/L([\d.]+)/.exec(toCome)![1])
    expect(end).toBeGreaterThan(meets!.x)
    // 8 June is 35 days after the first dot, the last dot 21.
    expect((end - dots[0]!.x) / (dots[3]!.x - dots[0]!.x)).toBeCloseTo(35 / 21, 2)
  })

  it("lets a line that meets the limit late leave the picture", () => {
    const slow = {
      ...thinning,
      line: {...thinning.line!, slope: -0.01},
      lastDay: day("2026-05-04") + 260,
    }
    const {toCome, meets, right} = spearLayout(slow, sizesOf(slow), 600)
    expect(meets).toBeNull()
    expect(Number(/L([\d.]+)/.exec(toCome)![1])).toBeLessThanOrEqual(right)
  })

  it.each([320, 358, 480, 800])("keeps its words apart and within %d px", (width) => {
    for (const one of [thinning, steady, once]) {
      const layout = spearLayout(one, sizesOf(thinning, steady, once), width)
      const words = [layout.limit!.words, layout.latest, layout.meets?.words, layout.band?.words].filter(
        (said) => !!said,
      )
      const boxes = words.map(({text, x, y}): Box => ({
        left: x,
        right: x + textWidth(text),
        top: y - 11,
        bottom: y + 3,
      }))
      for (const [i, box] of boxes.entries()) {
        expect(box.left >= 0 && box.right <= width && box.top >= 0).toBe(true)
        for (const other of boxes.slice(i + 1)) expect(overlap(box, other)).toBe(0)
      }
    }
  })

  it("says what it shows, in the units of the region", () => {
    const sizes = sizesOf(thinning, steady, once)
    const said = (one: PlantingSpears, of = sizes) =>
      [spearTitle(one, of), spearSentence(one, of)].map((text) => text.replaceAll(/[\u00a0\u202f]/g, " "))
    expect(said(thinning)).toEqual([
      "Sand Piece meets 9.5 mm about 7 Jun",
      "Mean 10.9 mm on 25 May, falling 0.11 mm a day; 9.5 mm about 7 Jun (80 %: 6 Jun to 8 Jun).",
    ])
    expect(said(steady)).toEqual([
      "Long Acre is not thinning",
      "Mean 12.2 mm on 11 May, rising 0.03 mm a day; the line does not meet 9.5 mm.",
    ])
    expect(said(once)).toEqual([
      "Home Strip: one day measured",
      "Mean 11.0 mm on 4 May; a line needs two different days.",
    ])
    expect(said(thinning, {...sizes, asOf: day("2026-06-10")})[0]).toBe("Sand Piece met 9.5 mm about 7 Jun")
    // 9.5 mm is 0.374 in, 10.9 mm 0.429 in, 0.1057 mm 0.0042 in.
    expect(said(thinning, {...sizes, region: {measures: "US"}})[1]).toBe(
      "Mean 0.429 in on 25 May, falling 0.0042 in a day; 0.374 in (9.5 mm) about 7 Jun (80 %: 6 Jun to 8 Jun).",
    )
  })

  it("says first what lies under the limit, where no line says since when", () => {
    const rising = {...steady, days: daysOf(9.1, 9.4)}
    const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, " ")
    const sizes = sizesOf(steady, thinning, rising)
    expect(plain(spearTitle(rising, sizes))).toBe("Long Acre was under 9.5 mm on 11 May")
    expect(plain(spearFinding(sizes))).toBe(
      "Long Acre was under 9.5 mm on 11 May; 1 more is under it or will be.",
    )
    const single = {...once, days: daysOf(9.4)}
    expect(plain(spearFinding(sizesOf(single)))).toBe("Home Strip was under 9.5 mm on 4 May.")
    expect(spearTitle(single, {...sizes, limit: null})).toBe("Home Strip: one day measured")
  })

  it("leads with the planting that meets the limit first", () => {
    const later = {...thinning, planting: "Well Field", lastDay: day("2026-06-20")}
    expect(spearFinding(sizesOf(later, thinning, steady)).replaceAll("\u00a0", " ")).toBe(
      "Sand Piece meets 9.5 mm about 7 Jun; 1 more does later.",
    )
    expect(spearFinding(sizesOf(steady, once))).toBe(
      "2 plantings measured; no line of theirs meets the limit.",
    )
  })
})
