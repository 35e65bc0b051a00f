import {expect, it} from "vitest"
import {bestWeeks, NODES} from "../../src/studies/bestWeeks"
import {sixPlantings} from "../studies/sixPlantings"

const grids = [
  {sugar: 9, structure: 5},
  {sugar: 13, structure: 7},
  NODES,
  {sugar: 49, structure: 21},
  {sugar: 97, structure: 41},
]

it("measures the best weeks of six plantings, and how time and error go with the grid", () => {
  bestWeeks({...sixPlantings, nodes: grids[0]!}) // so that the code is warm
  const runs = grids.map((nodes) => {
    const from = performance.now()
    const {ground, plantings} = bestWeeks({...sixPlantings, nodes})
    return {nodes, took: performance.now() - from, ground, plantings}
  })
  const finest = runs.at(-1)!
  for (const {nodes, took, ground, plantings} of runs) {
    const off = plantings.map((one, i) => Math.abs(one.worth / finest.plantings[i]!.worth - 1))
    const weeks = plantings.map((one, i) =>
      Math.max(
        0,
        ...one.years.map((year, at) => Math.abs(year.weeks - (finest.plantings[i]!.years[at]?.weeks ?? 99))),
      ),
    )
    console.log(
      `${nodes.sugar} x ${nodes.structure} nodes: ${took.toFixed(0)} ms; ground ${ground.toFixed(0)}; ` +
        `worths off by up to ${(100 * Math.max(...off)).toFixed(2)} %, weeks by ${Math.max(...weeks)}`,
    )
  }
  expect(runs[2]!.took).toBeLessThan(2000)
})
