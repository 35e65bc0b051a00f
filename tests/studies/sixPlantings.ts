import {dayOf} from "../../functions/calendar"
import {climateRange, type Climate} from "../../functions/climate/climate"
import {balanceDefaults} from "../../functions/root/balanceValues"
import type {AskedPlanting, BestWeeksInput} from "../../src/studies/bestWeeksAsked"

/** Monthly normals of the invented farm: air, soil and sun. */
const air = [0.6, 1.5, 4.5, 9.1, 13.9, 17.6, 19.3, 18.5, 15.4, 10.8, 6.0, 2.3]
const soil = [3.6, 3.0, 4.2, 7.0, 10.6, 14.0, 16.4, 17.0, 15.7, 12.9, 9.3, 5.9]
const sun = [4.4, 7.1, 11.1, 15.4, 18.8, 20.4, 19.7, 16.8, 12.8, 8.5, 5.1, 3.6]

const first = dayOf("2026-01-01")!

/** Roots of so many plants of that dry mass, g, at that sugar, mg/g. */
const crownsOf = (plants: number, dryRoot: number, sugar: number) => {
  const root = (plants * dryRoot) / 1000
  return {structure: (root * (1000 - sugar)) / 1000, reserve: (root * sugar) / 1000}
}

const planting = (
  name: string,
  age: number,
  open: string,
  crowns: AskedPlanting["crowns"],
  factor = 1,
): AskedPlanting => ({
  planting: name,
  age,
  open: dayOf(open)! - first,
  crowns,
  factor,
  foretold: null,
  healthy: [],
})

/** The plantings of the invented demonstration farm, near enough for a test. */
export const sixPlantings: BestWeeksInput = {
  site: {
    climate: climateRange.read(air.map((degrees, m) => [degrees, soil[m]!, sun[m]!])) as Climate,
    year: {first, days: 365},
    values: balanceDefaults,
  },
  money: {
    prices: [3.65, 3.5, 3.3, 3.15, 3, 2.85, 2.7, 2.6, 2.5, 2.4],
    pick: 0.95,
    haul: 0.03,
    pack: 0.45,
    packout: 0.86,
    weekCost: 0,
    yearCost: 900,
    clear: 350,
    rest: 0,
    restIncome: 0,
    otherUse: 0,
    rate: 0.07,
    lossFlow: -900,
  },
  successor: {
    age: 2,
    crowns: crownsOf(19_600, 260, 545),
    open: dayOf("2026-04-25")! - first,
    factor: 1,
    foretold: null,
    flows: [-9800, -1500],
  },
  plantings: [
    planting("North Bench", 14, "2026-04-25", crownsOf(13_600, 520, 498)),
    planting("Long Acre", 9, "2026-04-25", crownsOf(18_400, 600, 409)),
    planting("Sand Piece", 7, "2026-04-23", crownsOf(18_900, 610, 531)),
    planting("Well Field", 5, "2026-04-27", crownsOf(19_300, 560, 538)),
    planting("Home Strip", 2, "2026-04-28", crownsOf(19_600, 260, 545)),
    planting("Top Corner", 1, "2026-04-28", crownsOf(19_800, 110, 545)),
  ],
  // The decline after age 8 alone: youth is in the root mass.
  ageFactors: Array.from({length: 31}, (_, age) =>
    age <= 8 ? 1 : 0.95 ** Math.min(age - 8, 3) * 0.9 ** Math.max(0, age - 11),
  ),
  caps: [0, 0, 2, 4, 6, 8],
  technicalWeeks: 10,
  lossChances: [0],
  oldest: 25,
  nodes: {sugar: 25, structure: 11},
}
