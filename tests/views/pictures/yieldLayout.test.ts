import {describe, expect, it} from "vitest"
import {gapText, publishedWords, yieldLayout} from "../../../src/views/pictures/yieldLayout"
import {stretches} from "../../../src/views/pictures/besideLine"
import {boxAround, boxOfText, overlaps, textWidth} from "../../../src/views/pictures/placing"
import {evidence} from "./lenders"

const curve = [0, 0, 0.15, 0.5, 0.8, 0.95, 1, 1, 1, 0.95, 0.9].map((share, age) => ({age, share}))
const page = {
  yields: [
    evidence("Long Acre"),
    evidence("Home Strip", {age: 2, record: [], mean: null, gap: null, projection: 600}),
  ],
  curve,
  fullBearing: 5000,
  spread: 0.3,
  published: {place: "Michigan, peak years", low: 3923, high: 4483},
  region: {},
}

describe("the picture of yields by age", () => {
  it("sets records, projection and mean on one scale", () => {
    const {plantings, base, rules} = yieldLayout(page, 560)
    const [first] = plantings
    const perKg = (base - rules[0]!.y) / Number(rules[0]!.text.replace(/\D/g, ""))
    const kgAt = (y: number) => (base - y) / perKg
    expect(first!.dots.map(({y}) => Math.round(kgAt(y)))).toEqual([4150, 3820, 4460])
    expect(Math.round(kgAt(first!.projection!.y))).toBe(4900)
    expect(Math.round(kgAt(first!.mean!.y))).toBe(4143)
    const [x6, x7, x8] = first!.dots.map(({x}) => x)
    expect(x8! - x7!).toBeCloseTo(x7! - x6!, 6)
    expect(first!.projection!.x - x8!).toBeCloseTo(x8! - x7!, 6)
  })

  it("gives each planting a shape of its own, and draws no record where there is none", () => {
    const {plantings} = yieldLayout(page, 560)
    expect(new Set(plantings.map(({shape}) => shape(0, 0, 5))).size).toBe(2)
    expect(plantings[1]!.dots).toEqual([])
    expect(plantings[1]!.lead).toBeNull()
    expect(plantings[1]!.mean).toBeNull()
    expect(plantings[1]!.label!.lines).toEqual(["Home Strip"])
    expect(plantings[0]!.label!.lines).toEqual(["Long Acre", "18\u202f% above record"])
    expect(plantings.map(({label}) => label!.isAbove)).toEqual([true, false])
    expect(yieldLayout(page, 358).plantings[0]!.label!.lines).toEqual(["Long Acre", "+18\u202f%"])
  })

  it("marks a year of disaster and leaves it in", () => {
    const record = [{age: 8, kg: 1000, isDisaster: true}]
    const {plantings} = yieldLayout({...page, yields: [evidence("A", {record})]}, 560)
    expect(plantings[0]!.dots.map(({isDisaster}) => isDisaster)).toEqual([true])
  })

  it("draws no curve without a record at full bearing, and no band without a spread", () => {
    expect(yieldLayout({...page, fullBearing: null}, 560)).toMatchObject({line: "", band: null})
    expect(yieldLayout({...page, spread: null}, 560).band).toBeNull()
    expect(yieldLayout({...page, published: null}, 560).published).toBeNull()
  })

  it.each([358, 560, 830])("calls the published yields where it hides no mark, at %d px", (width) => {
    for (const projection of [4100, 4500, 4700, 5000]) {
      const alone = {...page, yields: [evidence("Long Acre", {projection})], curve: curve.slice(0, 9)}
      const {published, plantings} = yieldLayout(alone, width)
      const {text, y} = published!.label
      const marks = plantings.flatMap(({dots, projection}) => [...dots, projection!])
      const words = boxOfText(text, width - textWidth(text), y)
      expect(
        overlaps(
          words,
          marks.map(({x, y}) => boxAround(x, y, 6, 6)),
        ),
      ).toBe(0)
    }
  })

  it.each([358, 560, 900])("keeps the labels inside and apart at %d px", (width) => {
    const {plantings, base} = yieldLayout(page, width)
    const [one, other] = plantings.map(({label}) => label!)
    for (const {x, y} of [one!, other!]) {
      expect(x).toBeGreaterThan(0)
      expect(x).toBeLessThan(width)
      expect(y).toBeLessThanOrEqual(base)
    }
    expect(Math.abs(one!.y - other!.y) > 17 || Math.abs(one!.x - other!.x) > 60).toBe(true)
  })

  it("names of many plantings those above their record first, and none over another", () => {
    const many = Array.from({length: 40}, (_, i) => evidence(`Field ${i}`, i === 39 ? {} : {gap: -0.1}))
    const labels = yieldLayout({...page, yields: many}, 560).plantings.map(({label}) => label)
    expect(labels[39]!.lines[0]).toBe("Field 39")
    const boxes = labels.flatMap((one) =>
      one ? [boxAround(one.x, one.y + 4, Math.max(...one.lines.map((line) => textWidth(line))) / 2, 17)] : [],
    )
    expect(boxes.length).toBeLessThan(40)
    for (const [i, box] of boxes.entries()) expect(overlaps(box, boxes.slice(i + 1))).toBe(0)
  })

  it("leaves the marks to be seen beside long names on a narrow page", () => {
    const long = [
      evidence("Long Acre behind the packing shed, lower"),
      evidence("Well Field with the deep well by the oaks", {age: 4, record: [], projection: 2500}),
    ]
    const {plantings, width} = yieldLayout({...page, yields: long}, 358)
    for (const {label, projection} of plantings) {
      const half = Math.max(...label!.lines.map((line) => textWidth(line))) / 2
      expect(2 * half).toBeLessThan(width / 2)
      expect(
        overlaps(boxAround(label!.x, label!.y + 4, half, 17), [
          boxAround(projection!.x, projection!.y, 5, 5),
        ]),
      ).toBe(0)
    }
  })

  it("keeps the name of a young planting off the steep part of the curve", () => {
    const {plantings, line} = yieldLayout(page, 560)
    const {x, y, lines} = plantings[1]!.label!
    const half = textWidth(lines[0]!) / 2
    const points = [...line.matchAll(/([\d.]+) ([\d.]+)/g)].map(([, left, top]) => ({x: +left!, y: +top!}))
    expect(overlaps(boxAround(x, y - 5, half, 8), stretches(points))).toBe(0)
  })

  it("says a gap with its sign, and a published range or single yield", () => {
    expect(gapText(-0.295)).toBe("\u221230\u202f%")
    expect(gapText(1.297)).toBe("+130\u202f%")
    expect(publishedWords({place: "Ontario", low: 7846, high: 7846}, {})).toBe("Ontario, 7\u202f846 kg/ha")
  })

  it("speaks the units of the region on the same picture", () => {
    const metric = yieldLayout(page, 560)
    const us = yieldLayout({...page, region: {measures: "US"}}, 560)
    expect(us.plantings[0]!.projection!.y).toBeCloseTo(metric.plantings[0]!.projection!.y, 6)
    // 3 923 and 4 483 kg/ha are 3 500 and 4 000 lb an acre.
    expect(us.published!.words).toBe("Michigan, peak years, 3\u202f500 to 4\u202f000 lb/ac")
  })
})
