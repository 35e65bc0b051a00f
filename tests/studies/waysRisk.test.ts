import {expect, it} from "vitest"
import type {WaysInput} from "../../src/studies/drawWays"
import {waysRisk} from "../../src/studies/waysRisk"

const input = {
  asked: {plantings: [{planting: "Long Acre"}, {planting: "Well Field"}]},
  ways: [
    [
      {name: "as found", weeks: [6, 10]},
      {name: "a week less", weeks: [5, 9]},
    ],
    [{name: "as found", weeks: []}],
  ],
  seed: 3,
} as unknown as WaysInput

it("sets the worths of each way together, and beside those of the way found draw by draw", () => {
  // Of three ways, draws 0 and 1, then 2 to 4; the parts come in any order.
  const found = waysRisk(input, [
    {from: 2, count: 3, worths: Float64Array.of(30, 40, 50, 31, 39, 51, 7, 7, 7)},
    {from: 0, count: 2, worths: Float64Array.of(10, 20, 12, 19, 7, 7)},
  ])
  expect(found).toMatchObject({draws: 5, seed: 3})
  const [long, well] = found.plantings
  expect(long!.ways[0]).toMatchObject({name: "as found", weeks: [6, 10], against: null})
  expect(long!.ways[0]!.worth).toMatchObject({at: [14, 20, 30, 40, 46], mean: 30})
  // 2, -1, 1, -1, 1: mean 0.4, squares of what they are off 2.56 + 1.96 + 0.36 + 1.96 + 0.36 = 7.2, √(7.2 / 4 / 5) = 0.6.
  const {more, better} = long!.ways[1]!.against!
  expect(more.mean).toBeCloseTo(0.4, 12)
  expect(more.meanError).toBeCloseTo(0.6, 12)
  expect(better.share).toBe(0.6)
  expect(well).toMatchObject({planting: "Well Field", ways: [{worth: {mean: 7, meanError: 0}}]})
})
