import {describe, expect, it} from "vitest"
import {lineEdge} from "../../../functions/spear/lineEdge"
import {lineSpread} from "../../../functions/spear/lineSpread"

// Dalpiaz, D. Applied Statistics with R, 8.7 (University of Illinois): the line of stopping distances, ft, on speeds, mph, of 50
// cars, with its limits at 99 %, printed to 7 digits: at 5 mph 2.082949 (-10.89309 to 15.05898), at 21 mph 65.001489 (56.45836
// to 73.54462). The cars are those of Ezekiel, M. (1930). Methods of Correlation Analysis. Wiley; as they come with R.
const cars: readonly (readonly [speed: number, ...distances: number[]])[] = [
  [4, 2, 10],
  [7, 4, 22],
  [8, 16],
  [9, 10],
  [10, 18, 26, 34],
  [11, 17, 28],
  [12, 14, 20, 24, 28],
  [13, 26, 34, 34, 46],
  [14, 26, 36, 60, 80],
  [15, 20, 26, 54],
  [16, 32, 40],
  [17, 32, 40, 50],
  [18, 42, 56, 76, 84],
  [19, 36, 46, 68],
  [20, 32, 48, 52, 56, 64],
  [22, 66],
  [23, 54],
  [24, 70, 92, 93, 120],
  [25, 85],
]
const speeds = cars.flatMap(([speed, ...distances]) => distances.map(() => speed))
const distances = cars.flatMap(([, ...distances]) => distances)

describe("lineEdge", () => {
  it.each([
    [5, -10.89309, 15.05898],
    [21, 56.45836, 73.54462],
  ])("gives the limits printed for %d mph", (speed, lower, upper) => {
    const spread = lineSpread(speeds, distances, 0.99)!
    expect(spread.count).toBe(50)
    expect(Math.abs(lineEdge(spread, speed, -1) - lower)).toBeLessThanOrEqual(5e-6)
    expect(Math.abs(lineEdge(spread, speed, 1) - upper)).toBeLessThanOrEqual(5e-6)
  })
  it("is the line itself where every mean lies on it", () => {
    const spread = lineSpread([0, 7, 14], [13, 12, 11], 0.8)!
    for (const side of [-1, 1] as const) expect(lineEdge(spread, 21, side)).toBeCloseTo(10, 10)
  })
  it("needs three means and two days", () => {
    expect(lineSpread([0, 7], [13, 12], 0.8)).toBeNull()
    expect(lineSpread([5, 5, 5], [13, 12, 11], 0.8)).toBeNull()
  })
})
