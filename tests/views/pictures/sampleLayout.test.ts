import {expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {textWidth} from "../../../src/views/pictures/placing"
import {HALF, sampleFinding, sampleLayout, sampleSentence} from "../../../src/views/pictures/sampleLayout"
import type {Sampling} from "../../../src/workbook/sampleSpread"

const samplingOf = (planting: string, sugars: number[], more: Partial<Sampling> = {}): Sampling => ({
  planting,
  day: dayOf("2026-03-05")!,
  isFormer: false,
  plants: sugars.map((sugar, i) => ({plant: i + 1, sugar, isOdd: false, at: {sheet: 0, row: i, col: 4}})),
  taken: sugars.length,
  mean: 400,
  interval: [390, 410],
  ...more,
})
const spread = {
  samplings: [
    samplingOf("Long Acre", [350, 400, 450]),
    samplingOf("North Bench", [300, 300, 500, 500], {taken: 6, interval: [340, 460]}),
    samplingOf("Home Strip", [400], {interval: null, day: null}),
  ],
  confidence: 0.8,
}
const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, " ")

it.each([320, 358, 640, 1100])("stands every plant on one scale, within %d px", (width) => {
  const {rows, right, left} = sampleLayout(spread, width)
  const [one, other] = rows as [(typeof rows)[0], (typeof rows)[0]]
  // 350, 400 and 450 lie evenly; the 400 of one planting is the mean of the other.
  expect(one.dots[1]!.x - one.dots[0]!.x).toBeCloseTo(one.dots[2]!.x - one.dots[1]!.x, 6)
  expect(other.mean).toBeCloseTo(one.dots[1]!.x, 6)
  expect(other.median).toBeCloseTo(other.mean, 6)
  expect(other.interval!.width).toBeCloseTo(6 * one.interval!.width, 6)
  for (const {dots, words, y} of rows) {
    expect(words.numbersX + textWidth(words.numbers)).toBeLessThanOrEqual(width)
    expect(words.numbersX).toBeGreaterThan(textWidth(words.name) - 30)
    for (const dot of dots) {
      expect(dot.x >= left && dot.x <= right).toBe(true)
      expect(Math.abs(dot.y - y)).toBeLessThan(HALF)
    }
  }
})

it.each([320, 358, 640])("keeps a long name off its numbers, with its day, at %d px", (width) => {
  const long = samplingOf("Long Acre behind the packing shed, lower", [350, 450])
  const {name, numbersX} = sampleLayout({...spread, samplings: [long]}, width).rows[0]!.words
  expect(name).toMatch(/^Long.*, 5 Mar$/)
  expect(textWidth(name)).toBeLessThan(numbersX)
})

it("marks the planting that its finding names, where there are others to compare", () => {
  const marked = (samplings: readonly Sampling[]) =>
    sampleLayout({...spread, samplings}, 640).rows.map(({isLeastSure}) => isLeastSure)
  expect(marked(spread.samplings)).toEqual([false, true, false])
  expect(sampleFinding(spread)).toMatch(/^North Bench is the least sure/)
  expect(marked(spread.samplings.slice(1))).toEqual([false, false]) // of two, one has an interval
})

it.each([480, 640])("says half of each interval beside the marks of its row, within %d px", (width) => {
  const {rows} = sampleLayout(spread, width)
  // 390 to 410 and 340 to 460; the third has no interval. The plants of the second take the whole width of its strip.
  expect(rows.map(({within}) => within?.text)).toEqual(["\u00b110", "\u00b160, least sure", undefined])
  const [first, second] = rows.map(({within}) => within)
  const end = first!.x + textWidth(first!.text)
  expect(rows[0]!.dots.filter(({x}) => x > first!.x - 4 && x < end + 4)).toEqual([])
  expect(second!.y).toBe(rows[1]!.words.y)
  expect(second!.x + textWidth(second!.text)).toBeLessThanOrEqual(width)
})

it.each([320, 640])("names a questioned plant beside its dot, within %d px", (width) => {
  const plants = [460, 190, 540].map((sugar, i) => ({
    plant: i + 1,
    sugar,
    isOdd: i > 0,
    at: {sheet: 0, row: i, col: 4},
  }))
  const [{dots} = {dots: []}] = sampleLayout(
    {samplings: [samplingOf("A", [], {plants})], confidence: 0.8},
    width,
  ).rows
  expect(dots.map(({odd}) => odd?.text)).toEqual([undefined, "plant 2", "plant 3"])
  for (const {x, odd} of dots)
    if (odd) {
      const end = odd.x + textWidth(odd.text)
      expect(odd.x >= 0 && end <= width).toBe(true)
      expect(odd.x >= x + 7 || end <= x - 7).toBe(true)
    }
})

it("says what it shows", () => {
  const [longAcre, northBench, homeStrip] = spread.samplings as [Sampling, Sampling, Sampling]
  const said = (one: Sampling) => plain(sampleSentence(one, 0.8))
  expect(said(longAcre)).toBe("Long Acre, 5 Mar: 3 plants of 3 used, 400 mg/g (80 %: 390–410).")
  expect(said(northBench)).toBe("North Bench, 5 Mar: 4 plants of 6 used, 400 mg/g (80 %: 340–460).")
  expect(said(homeStrip)).toBe("Home Strip: 1 plant of 1 used, 400 mg/g, too few plants for an interval.")
  const former = {...longAcre, day: dayOf("2025-03-12")!, isFormer: true}
  expect(said(former)).toMatch(/^Long Acre, 12 Mar 2025: 3 plants of 3 used/)
  expect(sampleLayout({...spread, samplings: [former]}, 640).rows[0]!.words.name).toBe("Long Acre, Mar 2025")
  const odd = {...longAcre, plants: longAcre.plants.map((one) => ({...one, isOdd: one.plant === 3}))}
  expect(said(odd)).toContain("Questioned: plant 3, 450 mg/g.")
  expect(plain(sampleFinding(spread))).toBe(
    "North Bench is the least sure: 400 mg/g, give or take 60 at 80 %; the others are surer.",
  )
  const twin = {...northBench, planting: "South Bench"}
  expect(sampleFinding({...spread, samplings: [longAcre, northBench, twin]})).toMatch(
    /; none is less sure\.$/,
  )
  expect(plain(sampleFinding({...spread, samplings: [homeStrip]}))).toMatch(/^Too few plants/)
  // A later sampling of the planting is what counts.
  const later = {...northBench, interval: [399, 401] as const}
  expect(sampleFinding({...spread, samplings: [longAcre, northBench, later]})).toMatch(/^Long Acre is/)
  // One of a former season does not.
  const wide = {...northBench, isFormer: true}
  const alone = (samplings: readonly Sampling[]) => plain(sampleFinding({...spread, samplings}))
  expect(alone([wide, longAcre])).toBe("Long Acre: 400 mg/g, give or take 10 at 80 %.")
  expect(alone([longAcre, homeStrip])).toMatch(/; too few plants of the others for an interval\.$/)
})
