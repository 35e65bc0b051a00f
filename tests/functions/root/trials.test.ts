import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import type {Climate} from "../../../functions/climate/climate"
import {balanceDefaults, type BalanceValues} from "../../../functions/root/balanceValues"
import {dailyBalance, driversOf, emptyCourse, type Course} from "../../../functions/root/dailyBalance"
import {sites} from "./sites"

const YEAR = {first: dayOf("2026-01-01")!, days: 365}
const read = (path: string) => JSON.parse(readFileSync(new URL(path, import.meta.url), "utf8"))

interface Trial {
  readonly key: string
  readonly what: string
  readonly published: string
  readonly agrees: string
  readonly work: string
  readonly tag: string
}
const trials: readonly Trial[] = read("../../reference/trials.json")

/** Years one after the other; days of the year counted from 1, the stop being the day after the last of cutting. */
function years(
  climate: Climate,
  seasons: readonly (readonly [start: number, stop: number])[],
  from: readonly [structure: number, reserve: number],
  {
    values = balanceDefaults,
    lostFrom = 366,
    left = 0,
  }: {values?: BalanceValues; lostFrom?: number; left?: number} = {},
): Course[] {
  const drivers = driversOf(climate, YEAR, values)
  let [structure, reserve] = from
  return seasons.map(([start, stop], year) => {
    const healthy = new Float64Array(365).fill(1)
    if (year === 0) healthy.fill(left, lostFrom - 1)
    const cutting = {open: start - 1, stop: stop - 1, fernEnd: values.Fern_end - 1}
    const course = dailyBalance({structure, reserve}, drivers, cutting, healthy, values, emptyCourse(365))
    structure = course.structure[364]!
    reserve = course.reserve[364]!
    return course
  })
}

const picked = (courses: readonly Course[]) => courses.reduce((sum, {picked}) => sum + picked[364]!, 0)
const repeat = <T>(count: number, of: T) => Array.from({length: count}, () => of)
const OPEN = 115 // 25 April
const weeks = (count: number) => [OPEN, OPEN + 7 * count] as const
const FULL = [6000, 6400] as const // a full-grown field
const STEADY = [6117, 7195] as const // the same after 15 years of 8 weeks

const totals = (values: BalanceValues) =>
  [4, 5, 6, 7, 8, 9].map((count) => picked(years(sites.germany, repeat(10, weeks(count)), FULL, {values})))
const green = totals({...balanceDefaults, Ridge_gain: 3})
const white = totals({...balanceDefaults, Spear_dry: 0.065, Stub_share: 0.25, Ridge_gain: 3})

const schedules = [
  [0, 2, 4],
  [1, 2, 6],
  [2, 4, 8],
].map((schedule) => {
  const courses = years(sites.generic, [...schedule, 8, 8, 8].map(weeks), [1200, 1300])
  return [picked(courses.slice(0, 3)), picked(courses.slice(3))] as const
})

const sugar = ({reserve, structure}: Course, day: number) =>
  (1000 * reserve[day - 1]!) / (reserve[day - 1]! + structure[day - 1]!)
const cut = years(sites.generic, repeat(15, weeks(8)), FULL)[14]!
const uncut = years(sites.generic, repeat(15, weeks(0)), FULL)[14]!
const lower = (day: number) => 1 - sugar(cut, day) / sugar(uncut, day)

const afterLoss = (lostFrom: number, left = 0) =>
  years(sites.generic, repeat(2, weeks(8)), STEADY, {lostFrom, left})[1]!.picked[364]! /
  years(sites.generic, repeat(2, weeks(8)), STEADY)[1]!.picked[364]!

// Planted 1927, cut from 1929: two years of growth from set crowns, then five harvests. The window ends with 31 May.
const iowa = [152, 166, 182, 196].map((stop) =>
  years(sites.iowa, [[OPEN, OPEN], [OPEN, OPEN], ...repeat(5, [OPEN, stop] as const)], [300, 250])
    .slice(2)
    .map(({picked}) => picked[150]!),
)
const ratios = iowa.slice(1).map((crops) => crops.map((crop, year) => crop / iowa[0]![year]!))
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

// 20 000 crowns of 70 g, 22 % of it dry matter and half of that sugar.
const SET = [154, 154] as const
const young = years(sites.generic, [0, 0, 3, 6, 8, 8, 8, 8].map(weeks), SET)
const firstYear = [
  [0, 2, 4, 6, 8, 8, 8, 8],
  [0, 0, 2, 6, 8, 8, 8, 8],
].map((seasons) => picked(years(sites.generic, seasons.map(weeks), SET))) as [number, number]
const longSeason = {...balanceDefaults, Fern_end: 320}
const steps = [
  [2, 3, 4, 6],
  [3, 4, 5, 7],
  [4, 5, 8, 10],
].map((seasons) =>
  years(sites.warmdry, seasons.map(weeks), [1200, 1300], {values: longSeason}).map(
    ({picked}) => picked[364]!,
  ),
)
const secondAutumn = (climate: Climate, Fern_end: number) =>
  years(climate, repeat(2, weeks(0)), SET, {values: {...balanceDefaults, Fern_end}})[1]!.reserve[364]! / 1000

const winter = (() => {
  // Soil 19 °C on the mean with a swing of 5.25, 180 days from 16 August (day 228), no fern.
  let [structure, reserve] = [6000, 6000]
  for (let day = 228; day < 228 + 180; day++) {
    const soil = 19 - 5.25 * Math.cos((2 * Math.PI * (day - 40)) / 365)
    reserve -= 0.0022 * 2 ** ((soil - 20) / 10) * structure
    structure *= 1 - 0.00028
  }
  return 1 - reserve / 6000
})()

const three = (values: readonly number[]) => values.map((value) => value.toFixed(3)).join(", ")
const tonnes = (kg: number) => (kg / 1000).toFixed(1)

/** What the balance gives for each trial, in the words of the sheet Checked against. */
const byTheBalance: Readonly<Record<string, string>> = {
  germany: `4 to 9 weeks over 8: ${green.map((crop) => (crop / green[4]!).toFixed(2)).join(", ")}; white set, 9 over 8: ${(white[5]! / white[4]!).toFixed(2)}`,
  "new york": `first three ${schedules.map(([first]) => tonnes(first)).join(", ")} t/ha; next three ${schedules.map(([, next]) => tonnes(next)).join(", ")}`,
  "cut and uncut": `${(100 * lower(350)).toFixed(0)} % lower in mid-December, ${(100 * lower(196)).toFixed(0)} % in mid-July`,
  "fern cut late": `next crop ${afterLoss(273).toFixed(3)} of the usual`,
  "fern lost early": `next crop ${afterLoss(220).toFixed(2)} of the usual`,
  "iowa mean": three(ratios.map((crops) => mean(crops.slice(1)))),
  "iowa last": three(ratios.map((crops) => crops[4]!)),
  "mild winter": `${(100 * winter).toFixed(0)} %`,
  "young crop": `${young
    .slice(2, 6)
    .map((course) => tonnes(picked([course])))
    .join(", ")} t/ha`,
  "first year": `${firstYear.map(tonnes).join(" against ")} t/ha`,
  "longer each year": steps.map((crops) => crops.map(tonnes).join(", ")).join("; ") + " t/ha",
  "second autumn": `${secondAutumn(sites.generic, 288).toFixed(1)} t/ha; warmer, drier place ${secondAutumn(sites.warmdry, 300).toFixed(1)}`,
  "half the fern lost": `next crop ${afterLoss(213, 0.5).toFixed(2)} of the usual`,
}

describe("the published trials", () => {
  it.each(["hollow-brook-farm.json", "blank.json"])(
    "stand in %s beside what the balance gives today",
    (file) => {
      const {sheets} = read(`../../../workbooks/${file}`) as {sheets: {name: string; rows: string[][]}[]}
      const {rows} = sheets.find(({name}) => name === "Checked against")!
      expect(rows).toEqual(
        trials.map(({key, what, published, agrees, work, tag}) => [
          what,
          published,
          byTheBalance[key],
          agrees,
          work,
          tag,
        ]),
      )
    },
  )

  it("of Germany: 8 weeks bear most in ten years with green values, not with the white set", () => {
    expect(Math.max(...green)).toBe(green[4])
    expect(white[5]! / white[4]!).toBeGreaterThan(1)
  })

  it("of New York: the hardest start bears most at first and least after", () => {
    const [traditional, moderate, severe] = schedules as [
      (typeof schedules)[0],
      (typeof schedules)[0],
      (typeof schedules)[0],
    ]
    expect(traditional[0]).toBeLessThan(moderate[0])
    expect(moderate[0]).toBeLessThan(severe[0])
    expect(severe[1]).toBeLessThan(moderate[1])
    expect(moderate[1]).toBeLessThan(traditional[1])
  })

  it("of South Carolina: cutting shows in summer, little in winter", () => {
    // 8 % and 41 % are printed with the balance.
    expect(lower(350)).toBeCloseTo(0.08, 2)
    expect(lower(196)).toBeCloseTo(0.41, 2)
  })

  it("of fern lost: late does little, early far too much", () => {
    // Printed with the balance: 30 Sep 0.963, 15 Sep 0.894, 1 Sep 0.788, 8 Aug 0.39, 1 Aug 0.10.
    const printed: [day: number, share: number, digits: number][] = [
      [273, 0.963, 3],
      [258, 0.894, 3],
      [244, 0.788, 3],
      [220, 0.39, 2],
      [213, 0.1, 2],
    ]
    for (const [day, share, digits] of printed) expect(afterLoss(day)).toBeCloseTo(share, digits - 0.31)
    expect(afterLoss(220)).toBeLessThan(0.48) // the worst that was published
  })

  it("of Iowa: in order, but the last year falls less than it did", () => {
    const [june15, july1, july15] = ratios.map((crops) => crops[4]!) as [number, number, number]
    expect(june15).toBeGreaterThan(july1)
    expect(july1).toBeGreaterThan(july15)
    for (const [ours, published] of [
      [june15, 0.807],
      [july1, 0.623],
      [july15, 0.327],
    ] as const)
      expect(ours - published).toBeGreaterThan(0.1)
  })

  it("of a young crop: the first full crop comes one season late", () => {
    // Printed with the balance, line L: yields of seasons 3 to 8 and dry root, t/ha, to two digits.
    const printed = [0.74, 3.1, 5.4, 5.8, 6.2, 6.4]
    for (const [i, crop] of printed.entries())
      expect(Math.abs(picked([young[i + 2]!]) / 1000 - crop)).toBeLessThan(0.06)
    expect(picked([young[3]!])).toBeLessThan(5000)
    expect(picked([young[4]!])).toBeGreaterThan(5000)
  })

  it("of Illinois: cutting in the first year costs over eight seasons", () => {
    expect(firstYear[0] / firstYear[1]).toBeCloseTo(0.985, 2)
  })

  it("of the long season: each step bears more in every year", () => {
    for (const year of [0, 1, 2, 3])
      expect(steps.map((crops) => crops[year]!)).toEqual(
        steps.map((crops) => crops[year]!).toSorted((a, b) => a - b),
      )
  })

  it("of the second autumn: below what was measured at the common site, within it at the warm one", () => {
    expect(secondAutumn(sites.generic, 288)).toBeLessThan(2.6)
    const warm = secondAutumn(sites.warmdry, 300)
    expect(warm).toBeGreaterThan(2.6)
    expect(warm).toBeLessThan(6.3)
  })

  it("of half the fern lost: printed with the balance as 0.91", () => {
    expect(afterLoss(213, 0.5)).toBeCloseTo(0.91, 2)
  })

  it("of a mild winter: more than 30 % of the store is lost", () => {
    expect(Math.abs(winter - 0.376)).toBeLessThanOrEqual(0.01) // printed with the balance, to 1 point
    expect(winter).toBeGreaterThan(0.3)
  })
})
