import {expect, it} from "vitest"
import {bestWeeks} from "../../src/studies/bestWeeks"
import {weeksRefused, type BestWeeksInput} from "../../src/studies/bestWeeksAsked"
import {sixPlantings} from "./sixPlantings"

const {money, successor, plantings} = sixPlantings

it("can be run on the six plantings", () => expect(weeksRefused(sixPlantings)).toBeNull())

it.each<[Partial<BestWeeksInput>, string]>([
  [{money: {...money, rate: 0}}, "Rate a year must be above 0 and up to 1, not 0"],
  [
    {money: {...money, rest: 1.5}},
    "Years of rest after clearing must be a whole number from 0 to 30 years, not 1.5 years",
  ],
  [{money: {...money, prices: []}}, "Prices: not given yet"],
  [
    {money: {...money, prices: [3, -1]}},
    "Price of packed spears must be 0 money/kg or more, not -1 money/kg",
  ],
  [{caps: [0, 2.5]}, "Most weeks must be a whole number from 0 to 52 weeks, not 2.5 weeks"],
  [{lossChances: [5]}, "Chance of losing the planting must be from 0 to 1 share/year, not 5 share/year"],
  [
    {successor: {...successor, flows: [-9800]}},
    "Net cash of a new planting is given for 1 of the 2 years before it is cut",
  ],
  [{oldest: 2}, "Oldest age (2 years) must be above the age of the first season (2 years)"],
  [
    {successor: {...successor, foretold: [0, 0, 600, -1]}},
    "Crop foretold by age must be 0 kg/ha or more, not -1 kg/ha",
  ],
  [
    {plantings: [{...plantings[0]!, crowns: {structure: 0, reserve: 100}}]},
    "Structural root must be above 0 kg/ha, not 0 kg/ha",
  ],
])("refuses what cannot be run: %#", (changed, refused) => {
  const input = {...sixPlantings, ...changed}
  expect(weeksRefused(input)).toMatchObject({refused})
  expect(() => bestWeeks(input)).toThrow(refused)
})
