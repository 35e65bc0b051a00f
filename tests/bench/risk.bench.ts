import {bench, describe} from "vitest"
import {dayOf} from "../../functions/calendar"
import {balanceDefaults} from "../../functions/root/balanceValues"
import {dailyBalance, driversOf, emptyCourse} from "../../functions/root/dailyBalance"
import {drawRisk, type FieldYear, type RiskInput} from "../../src/studies/drawRisk"
import {risk} from "../../src/studies/risk"
import {sites} from "../functions/root/sites"

const [FIELDS, YEARS, DRAWS] = [6, 10, 100]
const crowns = {structure: 6000, reserve: 6400}
const modelYear = {first: dayOf("2026-01-01")!, days: 365}

const farm = (year: FieldYear, airSpread: number): RiskInput => ({
  firstYear: 2026,
  climate: sites.generic,
  modelYear,
  values: balanceDefaults,
  airSpread,
  sunSpread: airSpread / 20,
  fernLoss: null,
  yearSpread: 0.15,
  fieldSpread: 0.2,
  priceLink: -0.3,
  priceMemory: 0.5,
  seed: 7,
  plans: [
    {
      name: "as planned",
      cash: 0,
      fields: Array.from({length: FIELDS}, (_, i) => ({
        name: `Field ${i}`,
        area: 5,
        crowns: {...crowns, structure: 6000 + i}, // fields that are alike would share their runs
        doubt: 0.15,
        years: Array.from({length: YEARS}, () => year),
      })),
      years: Array.from({length: YEARS}, () => ({
        price: {shape: "lognormal", mean: 2.4, variation: 0.2} as const,
        perKg: 1.4,
        costs: 50000,
        due: 100000,
      })),
    },
  ],
})

const cut = {open: 114, close: 169, factor: 1}

describe(`${DRAWS} draws of ${FIELDS} fields over ${YEARS} years`, () => {
  bench("by the balance, each year with weather of its own", () => void drawRisk(farm(cut, 1), 0, DRAWS))
  bench("by the balance, the weather as usual", () => void drawRisk(farm(cut, 0), 0, DRAWS))
  bench("crops given", () => void drawRisk(farm({kg: 4000}, 0), 0, DRAWS))
  const course = emptyCourse(365)
  const whole = new Float64Array(365).fill(1)
  const drivers = driversOf(sites.generic, modelYear, balanceDefaults)
  bench("the balance alone, as often", () => {
    for (let run = 0; run < DRAWS * FIELDS * YEARS; run++)
      dailyBalance(crowns, drivers, {open: 114, stop: 170, fernEnd: 287}, whole, balanceDefaults, course)
  })
})

describe("20 fields over 10 years, each with a season and a table of its own", () => {
  const twenty = (draws: number) => {
    const {plans, ...rest} = farm(cut, 1)
    const fields = Array.from({length: 20}, (_, i) => ({
      ...plans[0]!.fields[0]!,
      name: `Field ${i}`,
      crowns: {structure: 5000 + 100 * i, reserve: 6000},
      years: Array.from({length: YEARS}, () => ({...cut, close: 150 + i})),
    }))
    return () => void drawRisk({...rest, plans: [{...plans[0]!, fields}]}, 0, draws)
  }
  const few = {time: 0, iterations: 3, warmupTime: 0, warmupIterations: 0}
  bench("the tables alone", twenty(1), few)
  bench("with 10 000 draws", twenty(10_000), few)
  const course = emptyCourse(365)
  const whole = new Float64Array(365).fill(1)
  const drivers = driversOf(sites.generic, modelYear, balanceDefaults)
  const season = {open: 114, stop: 160, fernEnd: 287}
  bench(
    "a fiftieth of their 2 000 000 years day by day",
    () => {
      for (let run = 0; run < 40_000; run++)
        dailyBalance(crowns, drivers, season, whole, balanceDefaults, course)
    },
    few,
  )
})

describe("10 000 draws", () => {
  const input = farm({kg: 4000}, 0)
  const parts = [drawRisk(input, 0, 10_000)]
  bench("put together", () => void risk(input, parts))
})
