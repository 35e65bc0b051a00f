import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {isRefusal} from "../../../functions/refusal"
import {formerSentence} from "../../../src/views/pictures/formerSamples"
import {overlap, textWidth, type Box} from "../../../src/views/pictures/placing"
import {reserveFinding, reserveLayout, reserveYear} from "../../../src/views/pictures/reserveLayout"
import {crownsOf, type CrownYears} from "../../../src/workbook/crowns"
import {readFile} from "../../../src/workbook/file"
import type {Sampling} from "../../../src/workbook/sampleSpread"
import {Workbook} from "../../../src/workbook/workbook"

function farm(): CrownYears {
  const reading = readFile(
    readFileSync(new URL("../../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
  )
  if ("refused" in reading) throw new Error(reading.refused)
  const crowns = crownsOf(new Workbook(reading.document))
  if (!crowns || isRefusal(crowns)) throw new Error("the farm has crowns")
  return crowns
}
const crowns = farm()
const year = reserveYear(crowns)!

describe("the crowns of the demonstration farm", () => {
  it("are read for each planting that has been sampled and opens", () => {
    expect(crowns.plantings.map(({planting}) => planting)).toEqual([
      "North Bench",
      "Long Acre",
      "Sand Piece",
      "Well Field",
      "Home Strip",
    ])
  })
  it("carry what the plan says of the season", () => {
    const longAcre = crowns.plantings[1]!
    expect(longAcre.open).toBe(dayOf("2026-04-25"))
    expect(longAcre.close).toBe(dayOf("2026-06-10"))
    expect(longAcre.floor).toBe(1600)
    expect(longAcre.measured).toHaveLength(1)
    expect(longAcre.measured[0]!.sugar).toBeCloseTo(408.9, 9)
    expect(longAcre.measured[0]!.plants).toBe(10)
    expect(longAcre.samplesUsed).toBe(10)
  })
})

describe("the reserve through the year", () => {
  it("says what is left, how low it will fall and when it is back", () => {
    // By a separate calculation of the balance: lowest store 1 607.1 kg/ha, refill on 10 August.
    expect(reserveFinding(year)).toMatch(
      /^Long Acre: 3.451 kg\/ha left on 25 May; lowest 1.607 kg\/ha on 29 Jun, 7 above your floor; full again on 10 Aug\.$/,
    )
  })

  it("is said and drawn in lb/ac where measures are of the US, sugar in mg/g", () => {
    const us = reserveYear(crowns, {measures: "US"})!
    // By a separate calculation: lowest store 1 607.1 kg/ha, floor 1 600; × 0.892179 = 1 433.8 and 1 427.5 lb/ac.
    expect(reserveFinding(us)).toMatch(
      /lb\/ac left on 25 May; lowest 1.434 lb\/ac on 29 Jun, 7 above your floor/,
    )
    const layout = reserveLayout(us, 1000)
    expect(layout.unit).toBe("lb/ac")
    const [zero, next] = layout.rules
    const step = Number(next!.text.replace("\u202f", ""))
    expect(String(step)).toMatch(/^[125]0+$/) // round in the unit of the axis
    const perPound = (zero!.y - next!.y) / step
    expect(layout.base - layout.floor!.y).toBeCloseTo(1600 * 0.892179 * perPound, 2)
    expect(layout.measured[0]!.words).toContain("mg/g")
  })

  it.each([320, 358, 1000])("says at the lowest how far from the floor it is, within %d px", (width) => {
    const {lowest, right, left} = reserveLayout(year, width)
    expect(lowest.words).toMatch(/^lowest 1.607( on 29 Jun)?, 7 above your floor$/)
    expect(lowest.words.includes("29 Jun")).toBe(width > 400) // where there is room for the day
    expect(lowest.said).toMatch(/^lowest 1.607 kg\/ha on 29 Jun, 7 above your floor$/) // by the keys, with its unit
    expect(lowest.wordsX).toBeGreaterThanOrEqual(left)
    expect(lowest.wordsX + textWidth(lowest.words)).toBeLessThanOrEqual(right)
  })

  it("stands at its numbers: 0 on the base, the lowest under the floor's label, dots at their day", () => {
    const layout = reserveLayout(year, 1000)
    const [zero, next] = layout.rules
    expect(zero!.y).toBe(layout.base)
    const perKg = (zero!.y - next!.y) / 2000
    expect(layout.base - layout.floor!.y).toBeCloseTo(1600 * perKg, 9)
    expect(layout.base - layout.lowest.y).toBeCloseTo(1607.1 * perKg, 1)
    // The days of the year lie evenly between the ends.
    const perDay = (layout.right - layout.left) / 365
    expect(layout.cutting!.to - layout.cutting!.from).toBeCloseTo(47 * perDay, 9)
    expect(layout.asOf!.x - layout.left).toBeCloseTo((31 + 28 + 31 + 30 + 25) * perDay, 9)
    expect(layout.months.map(({words}) => words)).toHaveLength(12)
    expect(layout.months[1]!.x - layout.months[0]!.x).toBeCloseTo(31 * perDay, 9)
    // 408.9 mg/g at the sampled day lies on the line that was drawn from it.
    const [dot] = layout.measured
    expect(layout.base - dot!.y).toBeCloseTo(4514.26 * perKg, 1)
    expect(dot!.top).toBeLessThan(dot!.y)
    expect(dot!.bottom).toBeGreaterThan(dot!.y)
  })

  it("draws a sample the larger the more plants it is of", () => {
    const ofPlants = (plants: number | null) => {
      const measured = year.planting.measured.map((one) => ({...one, plants}))
      return reserveLayout({...year, planting: {...year.planting, measured}}, 1000).measured[0]!
    }
    // The area stands for the plants: twice as many, 1.41 times the radius.
    expect(ofPlants(20).radius / ofPlants(10).radius).toBeCloseTo(Math.SQRT2, 9)
    expect(ofPlants(null).radius).toBe(ofPlants(10).radius)
    expect(ofPlants(1).radius).toBe(3)
    expect(ofPlants(1000).radius).toBe(8)
    expect(ofPlants(10).words).toBe("measured of 10 plants: 409 mg/g, 5 Mar")
    expect(ofPlants(1).words).toBe("measured of 1 plant: 409 mg/g, 5 Mar")
    expect(ofPlants(null).words).toBe("measured 409 mg/g, 5 Mar")
  })

  it.each([340, 390, 640, 1000])("ends the words of a sample before the as-of line, at %d px", (width) => {
    const {measured, asOf, left} = reserveLayout(year, width)
    const [{words, wordsX}] = measured as [(typeof measured)[0]]
    expect(wordsX).toBeGreaterThanOrEqual(left)
    if (width > 340) expect(wordsX + textWidth(words)).toBeLessThan(asOf!.x)
  })

  it.each([340, 358, 390, 1000])("keeps the words of refilling off those of the floor at %d px", (width) => {
    const high = Array.from({length: 53}, () => [0, 0, 0, 0, 9000]) // for which the scale is drawn together
    for (const weekly of [null, high]) {
      const {refill, floor, right} = reserveLayout(year, width, weekly)
      const wide = textWidth(floor!.words)
      const of = (x: number, y: number, text: string): Box => ({
        left: x,
        right: x + textWidth(text),
        top: y - 11,
        bottom: y + 3,
      })
      const floorWords = of(right - wide, floor!.y - 6, floor!.words)
      for (const [y, text] of [
        [refill!.wordsY, refill!.words],
        [refill!.wordsY + 17, "as at opening"],
      ] as const)
        expect(overlap(of(refill!.x + 10, y, text), floorWords)).toBe(0)
    }
  })

  it("is drawn whole to the as-of day and goes on dashed from the same point", () => {
    const {past, toCome, asOf, cutting} = reserveLayout(year, 1000)
    expect(cutting!.now).toBeCloseTo(asOf!.x, 9)
    expect(past.split("L")).toHaveLength(145) // 1 January to 25 May
    expect(past.split("L").at(-1)).toBe(toCome.slice(1).split("L")[0])
    expect(toCome.split("L")).toHaveLength(365 - 144)
  })

  it("draws single draws of a study through their weeks, and makes room for them", () => {
    const flat = Array.from({length: 53}, () => 9000)
    const {singles, rules, base, toCome} = reserveLayout(year, 1000, null, [flat])
    const points = singles[0]!
      .slice(1)
      .split("L")
      .map((point) => point.split(" ").map(Number))
    expect(points).toHaveLength(53)
    expect(new Set(points.map(([, y]) => y)).size).toBe(1)
    expect(points[0]![1]!).toBeGreaterThanOrEqual(Math.min(...rules.map(({y}) => y)))
    expect(points[0]![1]!).toBeLessThan(base / 2)
    // The last week ends where the year does.
    expect(points.at(-1)![0]).toBeCloseTo(Number(toCome.split("L").at(-1)!.split(" ")[0]), 1)
  })

  it("draws the bands of a study at their weeks, the wider one first, and makes room for them", () => {
    const weekly = Array.from({length: 53}, () => [1000, 2000, 3000, 4000, 9000])
    const {bands, rules, base} = reserveLayout(year, 1000, weekly)
    expect(bands.map(({words}) => words)).toEqual(["8 in 10", "half"])
    // "8 in 10" stands above "half", each between two edges of its own band at the end of the year.
    expect(bands[0]!.y).toBeLessThan(bands[1]!.y)
    expect(Number(rules.at(-1)!.text.replace(/\D/g, ""))).toBeGreaterThanOrEqual(9000)
    const perKg = (rules[0]!.y - rules[1]!.y) / 2000
    const corners = bands[1]!.area
      .slice(1, -1)
      .split("L")
      .map((corner) => corner.split(" ").map(Number))
    expect(corners).toHaveLength(106)
    expect(base - corners[0]![1]!).toBeCloseTo(4000 * perKg, 1)
    expect(base - corners.at(-1)![1]!).toBeCloseTo(2000 * perKg, 1)
  })

  describe("with samples of former years", () => {
    const dug = (on: string, mean: number, planting = "Long Acre", isFormer = true): Sampling => ({
      planting,
      day: dayOf(on),
      isFormer,
      plants: [],
      taken: 10,
      mean,
      interval: null,
    })
    const withFormer = (...samplings: Sampling[]) => reserveYear(crowns, undefined, samplings)!

    it("sets each on its date of the year shown, at the store that its sugar makes of this year's roots", () => {
      const {former, measured} = reserveLayout(
        withFormer(dug("2025-03-05", 408.9), dug("2024-03-05", 500), dug("2024-02-29", 450)),
        1000,
      )
      const [leapDay, higher, same] = former as [(typeof former)[0], (typeof former)[0], (typeof former)[0]]
      // The same sugar on the same date as this year's sample: the same place.
      expect([same.x, same.y]).toEqual([measured[0]!.x, measured[0]!.y])
      expect(same).toMatchObject({words: "409 mg/g on 5 Mar 2025", label: {text: "2025"}})
      expect(higher.x).toBe(same.x)
      expect(higher.y).toBeLessThan(same.y)
      expect(same.x - leapDay.x).toBeCloseTo(((1000 - 52 - 16) / 365) * 5, 9) // 28 Feb to 5 Mar
    })

    it("makes room for the highest, and leaves out other plantings and what counts this year", () => {
      const year = withFormer(
        dug("2025-10-01", 700),
        dug("2025-10-01", 300, "Sand Piece"),
        dug("2025-11-01", 300, "Long Acre", false),
        dug("2026-01-20", 300), // of this year's dormant time
      )
      const {former, rules} = reserveLayout(year, 1000)
      expect(former.map(({words}) => words)).toEqual(["700 mg/g on 1 Oct 2025"])
      expect(former[0]!.y).toBeGreaterThanOrEqual(Math.min(...rules.map(({y}) => y)))
    })

    it.each([390, 640, 1000])("keeps its words and years clear of each other at %d px", (width) => {
      const {former, measured} = reserveLayout(
        withFormer(
          dug("2022-03-04", 436),
          dug("2023-03-07", 434),
          dug("2024-03-09", 476),
          dug("2025-03-02", 455),
        ),
        width,
      )
      const words = [
        ...former.flatMap(({label}) => label ?? []),
        ...measured.map(({words, wordsX, wordsY}) => ({text: words, x: wordsX, y: wordsY})),
      ].map(({text, x, y}): Box => ({left: x, right: x + textWidth(text), top: y - 11, bottom: y + 3}))
      for (const [i, one] of words.entries())
        for (const other of words.slice(i + 1)) expect(overlap(one, other)).toBe(0)
      // Where there is no room for a year its ring stands without it, and is told by the keys.
      expect(words.length).toBeGreaterThan(width < 1000 ? 2 : 4)
    })

    it("says what was measured at the same time of former years, of each the nearest", () => {
      const said = (...samplings: Sampling[]) => {
        const {planting, former} = withFormer(...samplings)
        return formerSentence(planting.measured, former)
      }
      expect(said(dug("2024-03-09", 476), dug("2025-02-10", 470), dug("2025-03-02", 455))).toBe(
        "Measured 409 mg/g on 5 Mar 2026; at that time of former years: 455 on 2 Mar 2025, 476 on 9 Mar 2024.",
      )
      expect(said(dug("2025-10-10", 556))).toBe("")
    })
  })

  it("has nothing to show for a planting that is not there", () => {
    expect(reserveYear({...crowns, shown: {...crowns.shown!, planting: "Nowhere"}})).toBeNull()
  })
})
