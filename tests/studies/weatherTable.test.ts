import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {balanceDefaults} from "../../functions/root/balanceValues"
import {dailyBalance, driversOf, emptyCourse} from "../../functions/root/dailyBalance"
import {weatherTable, type YearScores} from "../../src/studies/weatherTable"
import {sites} from "../functions/root/sites"
import {seeded} from "../workbook/documents"

const year = {first: dayOf("2026-01-01")!, days: 365}
const hurt = Float64Array.from({length: 365}, (_, day) => (day < 220 ? 1 : 0.3))
const whole = new Float64Array(365).fill(1)
const fernEnd = balanceDefaults.Fern_end - 1

const season = {open: 114, close: 169, values: balanceDefaults, structures: [6000], hurt: null}

const driversAt =
  (site: keyof typeof sites) =>
  ({warmth, sun}: YearScores) => {
    const {air, soil, sun: light} = sites[site]
    return driversOf(
      {
        air: air.map((one) => one + warmth),
        soil: soil.map((one) => one + 0.75 * warmth),
        sun: light.map((one) => one * (1 + 0.05 * sun)),
      },
      year,
      balanceDefaults,
    )
  }

/** Chains of ten years of drawn weather, each read from the table and run day by day; how far the crops lie apart. */
function apart(site: keyof typeof sites, open: number, close: number, lossChance: number) {
  const drivers = driversAt(site)
  const table = weatherTable({
    open,
    close,
    values: balanceDefaults,
    driversAt: drivers,
    structures: [4500, 8500],
    hurt: lossChance > 0 ? hurt : null,
  })
  const random = seeded(open + close)
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const course = emptyCourse(365)
  const end = {crop: 0, structure: 0, reserve: 0}
  const offs: number[] = []
  let [sum, beyond] = [0, 0]
  for (let chain = 0; chain < 60; chain++) {
    const structure = 4500 + 4000 * random()
    let direct = {structure, reserve: structure * (0.7 + 0.5 * random())}
    let read = direct
    for (let one = 0; one < 10; one++) {
      const scores = {warmth: normal(), sun: normal()}
      const isHurt = random() < lossChance
      const healthy = isHurt ? hurt : whole
      dailyBalance(
        direct,
        drivers(scores),
        {open, stop: close + 1, fernEnd},
        healthy,
        balanceDefaults,
        course,
      )
      direct = {structure: course.structure[364]!, reserve: course.reserve[364]!}
      if (table.read(read, scores, isHurt, end)) {
        offs.push(end.crop - course.picked[364]!)
        sum += course.picked[364]!
        read = {structure: end.structure, reserve: end.reserve}
      } else {
        beyond++
        read = direct
      }
    }
  }
  const mean = sum / offs.length
  return {
    worst: Math.max(...offs.map(Math.abs)) / mean,
    bias: Math.abs(offs.reduce((all, off) => all + off, 0) / sum),
    beyond,
  }
}

describe("years read from a table", () => {
  it.each([
    ["generic", 114, 169, 0],
    ["generic", 114, 169, 0.1],
    ["generic", 120, 155, 0],
    ["warmdry", 100, 170, 0],
    ["germany", 110, 172, 0],
  ] as const)("lie near those run day by day, ten years on (%s, %i to %i)", (site, open, close, loss) => {
    const {worst, bias, beyond} = apart(site, open, close, loss)
    expect(worst).toBeLessThan(0.03)
    expect(bias).toBeLessThan(0.001)
    expect(beyond).toBeLessThan(12) // of 600
  })

  it("are those run day by day at the nodes", () => {
    const drivers = driversAt("generic")
    const table = weatherTable({
      ...season,
      driversAt: drivers,
    })
    const crowns = {structure: 3000, reserve: (3000 * 440) / 560} // the first node of structure, 440 mg/g
    const end = {crop: 0, structure: 0, reserve: 0}
    expect(table.read(crowns, {warmth: 1, sun: -3}, false, end)).toBe(true)
    const course = emptyCourse(365)
    const cutting = {open: 114, stop: 170, fernEnd}
    dailyBalance(crowns, drivers({warmth: 1, sun: -3}), cutting, whole, balanceDefaults, course)
    expect(end.crop).toBeCloseTo(course.picked[364]!, 6)
    expect(end.structure).toBeCloseTo(course.structure[364]!, 6)
    expect(end.reserve).toBeCloseTo(course.reserve[364]!, 6)
  })

  it("are not guessed beyond the grid", () => {
    const table = weatherTable({
      ...season,
      driversAt: driversAt("generic"),
    })
    const end = {crop: 0, structure: 0, reserve: 0}
    const crowns = {structure: 6000, reserve: 6400}
    const usual = {warmth: 0, sun: 0}
    expect(table.read(crowns, usual, false, end)).toBe(true)
    expect(table.read(crowns, {warmth: 3.1, sun: 0}, false, end)).toBe(false)
    expect(table.read(crowns, {warmth: 0, sun: -3.1}, false, end)).toBe(false)
    expect(table.read({structure: 20_000, reserve: 6400}, usual, false, end)).toBe(false)
    expect(table.read({structure: 6000, reserve: 0}, usual, false, end)).toBe(false)
  })
})
