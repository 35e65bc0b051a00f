import {expect, it} from "vitest"
import {balanceDefaults} from "../../functions/root/balanceValues"
import {dailyBalance, driversOf, emptyCourse} from "../../functions/root/dailyBalance"
import {driversBetween, fromStop} from "../../src/studies/fromStop"
import {sixPlantings} from "./sixPlantings"

const {climate, year} = sixPlantings.site
const drivers = driversOf(climate, year, balanceDefaults)
const last = year.days - 1
const hurt = Float64Array.from({length: year.days}, (_, day) => (day < 220 ? 1 : 0.3))

it.each([
  ["cut from the first day of the year", 0, 40, 287, {structure: 6000, reserve: 6400}],
  ["cut for eight weeks", 114, 170, 287, {structure: 6000, reserve: 6400}],
  ["cut up to the fern's end", 114, 287, 287, {structure: 6000, reserve: 6400}],
  ["cut beyond it", 114, 300, 287, {structure: 6000, reserve: 6400}],
  ["with fern all year", 114, 170, 400, {structure: 6000, reserve: 6400}],
  ["with a store that comes to nothing", 114, 280, 287, {structure: 6000, reserve: 1200}],
])("goes on as the whole year does: %s", (_, open, stop, fernEnd, crowns) => {
  const values = {...balanceDefaults, Fern_end: fernEnd + 1}
  const whole = dailyBalance(crowns, drivers, {open, stop, fernEnd}, hurt, values, emptyCourse(year.days))
  const [structure, reserve] = [whole.structure[stop - 1]!, whole.reserve[stop - 1]!]
  const end = fromStop(drivers, stop, hurt, values)({structure, reserve})
  expect(end.structure).toBeCloseTo(whole.structure[last]!, 8)
  expect(end.reserve).toBeCloseTo(whole.reserve[last]!, 8)
})

it("takes the days asked for of what drives the balance", () => {
  const some = driversBetween(10, 12, drivers)
  for (const key of ["spears", "fern", "breath", "light"] as const)
    expect([...some[key]]).toEqual([drivers[key][10], drivers[key][11]])
})
