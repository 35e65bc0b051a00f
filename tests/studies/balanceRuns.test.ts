import {expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {balanceDefaults} from "../../functions/root/balanceValues"
import {driversOf} from "../../functions/root/dailyBalance"
import {balanceRuns, type RunSeason} from "../../src/studies/balanceRuns"
import type {FieldYear, RiskField} from "../../src/studies/drawRisk"
import type {WeatherTable} from "../../src/studies/weatherTable"
import {sites} from "../functions/root/sites"

const crowns = {structure: 6000, reserve: 6400}
const weeks = (...weeks: (number | null)[]): FieldYear[] =>
  weeks.map((weeks) => (weeks === null ? {kg: 900} : {open: 114, close: 113 + 7 * weeks, factor: 1}))
const field = (years: FieldYear[], from = crowns): RiskField => ({
  name: "Any",
  area: 1,
  crowns: from,
  doubt: 0,
  years,
})
const usual = {warmth: 0, sun: 0}
const drivers = driversOf(sites.generic, {first: dayOf("2026-01-01")!, days: 365}, balanceDefaults)

it("runs once what fields have in common, up to the year in which they part", () => {
  const {ofFields, crops} = balanceRuns(
    [
      field(weeks(8, 8, 8)),
      field(weeks(8, 6, 8)),
      field(weeks(8, 8, 8)),
      field(weeks(8), {...crowns, reserve: 5000}),
    ],
    365,
    balanceDefaults,
  )
  expect(ofFields).toEqual([[0, 1, 2], [0, 3, 4], [0, 1, 2], [5]])
  let asked = 0
  const found = crops({driversIn: () => (asked++, drivers), fernIn: () => null, scoresIn: () => usual})
  expect(asked).toBe(6)
  expect(found[4]).toBeGreaterThan(found[2]!) // a shorter second year leaves more for the third
  expect(found[5]).toBeLessThan(found[0]!)
})
it("leaves the store as it is over years whose crop is given", () => {
  const {ofFields, crops} = balanceRuns([field(weeks(8, null, 8)), field(weeks(8, 8))], 365, balanceDefaults)
  expect(ofFields).toEqual([
    [0, null, 1],
    [0, 2],
  ])
  const found = crops({driversIn: () => drivers, fernIn: () => null, scoresIn: () => usual})
  expect(found[1]).toBe(found[2])
})
it("gives a factor to the field and not to the run", () => {
  const [one, half] = [weeks(8), weeks(8).map((year) => ({...year, factor: 0.5}))]
  expect(balanceRuns([field(one), field(half)], 365, balanceDefaults).ofFields).toEqual([[0], [0]])
})

it("reads a season from its table, and runs a year that lies beyond it", () => {
  const asked: RunSeason[] = []
  const table: WeatherTable = {
    read(_, {warmth}, __, end) {
      if (warmth > 3) return false
      Object.assign(end, {crop: 1234, ...crowns})
      return true
    },
  }
  const {crops} = balanceRuns([field(weeks(8, 8))], 365, balanceDefaults, (season) => {
    asked.push(season)
    return table
  })
  const years = (warmth: number) => ({
    driversIn: () => drivers,
    fernIn: () => null,
    scoresIn: (year: number) => ({warmth: year === 1 ? warmth : 0, sun: 0}),
  })
  expect(asked).toEqual([{open: 114, close: 169, structures: [6000, 6000]}])
  expect([...crops(years(0))]).toEqual([1234, 1234])
  const [, direct] = crops(years(4))
  const alone = balanceRuns([field(weeks(8))], 365, balanceDefaults)
  expect(direct).toBe(alone.crops({...years(0), scoresIn: () => usual})[0])
})
