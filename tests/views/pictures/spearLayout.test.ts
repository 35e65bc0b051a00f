import {describe, expect, it} from "vitest"
import {readTally, type Tally} from "../../../functions/spear/tally"
import {
  boxAround,
  boxOfText,
  overlap,
  overlaps,
  textWidth,
  type Box,
} from "../../../src/views/pictures/placing"
import {spearLayout} from "../../../src/views/pictures/spearLayout"
import {day, daysOf, once, sizesOf, steady, thinning} from "./spearCases"

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

  it("draws on the limit the days on which the line may meet it, about the day on which it does", () => {
    const {between, meets, band} = spearLayout(thinning, sizesOf(thinning), 600)
    expect(between!.from).toBeLessThan(meets!.x)
    expect(between!.to).toBeGreaterThan(meets!.x)
    const {between: none} = spearLayout(steady, sizesOf(steady), 600)
    expect(none).toBe(null)
    expect(band!.isHidden).toBe(false)
    const tally = {diameters: [6, 23], counts: [1, 1]}
    const counted = {...thinning, days: thinning.days.map((one) => ({...one, tally}))}
    expect(spearLayout(counted, sizesOf(counted), 600).band!.isHidden).toBe(true)
  })

  it.each([320, 358])(
    "writes no words over others or over spears at %d px, and its heading within it",
    (width) => {
      const tally = {diameters: [6, 8, 10, 12, 14, 23], counts: [1, 3, 8, 9, 4, 1]}
      const days = thinning.days.map((one) => ({...one, tally, under: 0.2}))
      const counted = {...thinning, days}
      for (const region of [{}, {measures: "US"} as const]) {
        const {latest, meets, heading, spears} = spearLayout(counted, {...sizesOf(counted), region}, width)
        const box = (words: {text: string; x: number; y: number}) => boxOfText(words.text, words.x, words.y)
        if (latest) expect(overlaps(box(latest), [box(meets!.words)])).toBe(0)
        if (latest)
          expect(
            overlaps(
              box(latest),
              spears.map(({x, y}) => boxAround(x, y, 2, 2)),
            ),
          ).toBe(0)
        expect(textWidth(heading)).toBeLessThanOrEqual(width)
      }
    },
  )

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

  it("draws each spear that was counted by size, those as thick side by side about their day", () => {
    const tallies = ["8×3 10×1", "7×2 9.5×1"].map((text) => readTally(text) as Tally)
    const days = daysOf(8.5, 7.8).map((one, i) => ({...one, tally: tallies[i]!, under: [0.75, 2 / 3][i]!}))
    const counted = {...steady, days}
    const {spears, dots, shares, limit, heading} = spearLayout(counted, sizesOf(counted), 600)
    expect(spears).toHaveLength(7)
    expect(dots.map(({isAmongSpears}) => isAmongSpears)).toEqual([true, true])
    const [first, middle, last, thick] = spears
    expect([first!.y, last!.y]).toEqual([middle!.y, middle!.y])
    expect(middle!.x).toBeCloseTo(dots[0]!.x, 9)
    expect(thick!.x).toBeCloseTo(dots[0]!.x, 9)
    expect(middle!.x - first!.x).toBeCloseTo(last!.x - middle!.x, 9)
    expect(middle!.x - first!.x).toBeGreaterThanOrEqual(4) // their dots are 4 px wide
    // 8.5 mm lies a quarter of the way from 8 to 10; the spear of 9.5 mm is on the limit.
    expect(dots[0]!.y).toBeCloseTo(middle!.y + (thick!.y - middle!.y) / 4, 6)
    expect(spears.at(-1)!.y).toBeCloseTo(limit!.y, 6)
    expect(shares.map(({text}) => text.replace("\u202f", " "))).toEqual(["75 %", "67 %"])
    expect(heading).toBe("each spear as cut, mm; above its day, the share under 9.5\u00a0mm")
  })

  it("marks the day that is expected on the limit, and draws no line to it", () => {
    const two = {...thinning, days: thinning.days.slice(0, 2), isExpected: true, lastDay: day("2026-06-08")}
    const {meets, fitted, toCome, limit, dots} = spearLayout(two, sizesOf(two), 600)
    expect([fitted, toCome, meets!.y, meets!.words.text]).toEqual(["", "", limit!.y, "expected about 8 Jun"])
    expect((meets!.x - dots[0]!.x) / (dots[1]!.x - dots[0]!.x)).toBeCloseTo(35 / 7, 2)
  })

  it("writes the day on which the share of thin spears ends cutting above it", () => {
    const under = [0.1, 0.2, 0.3, 0.4]
    const days = thinning.days.map((one, i) => ({
      ...one,
      tally: readTally("9 10") as Tally,
      under: under[i]!,
    }))
    const counted = {...thinning, days, shareDay: day("2026-06-01")}
    const sizes = {...sizesOf(counted), share: 0.5}
    const {shares, dots} = spearLayout(counted, sizes, 600)
    const {text, x, isAhead} = shares.at(-1)!
    expect([text.replace("\u202f", " "), isAhead]).toEqual(["50 % about 1 Jun", true])
    // 28 of the 21 days between the first and the last mean.
    const at = dots[0]!.x + ((dots[3]!.x - dots[0]!.x) * 28) / 21
    expect(x + textWidth(text) / 2).toBeCloseTo(at, 0)
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
})
