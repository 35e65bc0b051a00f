import {describe, expect, it} from "vitest"
import {spearFinding, spearSentence, spearTitle} from "../../../src/views/pictures/spearWords"
import type {PlantingSpears} from "../../../src/workbook/spears"
import {day, daysOf, once, sizesOf, steady, thinning} from "./spearCases"

describe("what is said of spear size", () => {
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
    const with7Jun = (...names: string[]) => names.map((planting) => ({...thinning, planting}))
    expect(spearFinding(sizesOf(...with7Jun("A", "B")))).toMatch(/; 1 more does on the same day\.$/)
    expect(spearFinding(sizesOf(...with7Jun("A", "B"), later))).toMatch(/; 2 more do then or later\.$/)
    expect(spearFinding(sizesOf(steady, once))).toBe(
      "2 plantings measured; no line of theirs meets the limit.",
    )
  })

  it("tells the share of thin spears, and leads with it where it ends cutting first", () => {
    const under = [0.1, 0.2, 0.3, 0.4]
    const days = thinning.days.map((one, i) => ({...one, under: under[i]!}))
    const counted = {...thinning, days, shareDay: day("2026-06-01")}
    const sizes = {...sizesOf(counted), share: 0.5}
    expect(spearTitle(counted, sizes).replace("\u202f", " ")).toBe(
      "Sand Piece has 50 % under 9.5\u00a0mm about 1 Jun",
    )
    expect(spearSentence(counted, sizes).replaceAll("\u202f", " ")).toMatch(
      / On 25 May 40 % of the spears were under 9\.5\u00a0mm; 50 % about 1 Jun\.$/,
    )
    // By the mean it would be 7 June; where the share comes later, the mean is told.
    expect(spearTitle({...counted, shareDay: day("2026-06-08")}, sizes)).toMatch(/meets .* about 7 Jun/)
  })

  it("expects by the balance what two days are too few for", () => {
    const two = {...thinning, days: thinning.days.slice(0, 2), isExpected: true, lastDay: day("2026-06-20")}
    expect(spearTitle(two, sizesOf(two))).toBe("Sand Piece is expected at 9.5\u00a0mm about 20 Jun")
    expect(spearSentence(two, sizesOf(two))).toBe(
      "Mean 12.4\u00a0mm on 11 May. A line is drawn from the third day on; till then spears are taken to thin as the season’s are used up: 9.5\u00a0mm about 20 Jun.",
    )
    const never = {...two, lastDay: null}
    expect(spearTitle(never, sizesOf(never))).toBe("Sand Piece: too few days for a line")
    expect(spearSentence(never, sizesOf(never))).toMatch(/used up: they stay above 9\.5\u00a0mm\.$/)
    // A mean under the limit is that, whatever is expected of it.
    const thin = {...two, days: daysOf(9.6, 9.2)}
    expect(spearTitle(thin, sizesOf(thin))).toMatch(/was under .* on 11 May/)
  })
})
