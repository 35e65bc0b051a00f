import {expect, it} from "vitest"
import {bestWeeks} from "../../src/studies/bestWeeks"
import {everyWay, smallCase} from "./everyWay"
import {sixPlantings} from "./sixPlantings"

const sand = sixPlantings.plantings[2]!

it.each([
  ["a strong planting", sand.crowns, null],
  ["a weak planting", {structure: 4200, reserve: 2400}, null],
  ["a planting that brings nothing any more", {structure: 3000, reserve: 200}, null],
  ["a planting that loses half its fern in August", sand.crowns, 212],
])("%s, cleared a year sooner or later, is cut as trying every way finds", (_, crowns, healthyFrom) => {
  const healthy = healthyFrom === null ? [] : [{from: smallCase.site.year.first + healthyFrom, share: 0.5}]
  const asked = {...sand, age: 8, crowns, factor: 1.1, healthy}
  const [one] = bestWeeks({...smallCase, plantings: [asked], nodes: {sugar: 121, structure: 41}}).plantings
  const others = one!.ways.filter(({name}) => name.startsWith("cleared"))
  // Four seasons at most, and none is sooner than none.
  const found = one!.years.length
  expect(others.map(({weeks}) => weeks.length)).toEqual(
    [found - 1, found + 1].filter((seasons) => seasons >= 0 && seasons <= 4),
  )
  for (const {weeks} of others)
    expect(weeks).toEqual(everyWay(crowns, 8, 1.1, healthyFrom, weeks.length).weeks)
})
