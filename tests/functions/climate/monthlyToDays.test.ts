import {describe, expect, it} from "vitest"
import {MONTH_DAYS, monthlyToDays} from "../../../functions/climate/monthlyToDays"

const years = {
  "a rising and falling year": [0.6, 1.5, 4.5, 9.1, 13.9, 17.6, 19.3, 18.5, 15.4, 10.8, 6, 2.3],
  "a jagged year": [31, -12, 4, 4, 28, 1, -9, 17, 3, 22, -30, 8],
  "one warm month": [0, 0, 0, 0, 0, 0, 10, 0, 0, 0, 0, 0],
}
const starts = MONTH_DAYS.map((_, month) => MONTH_DAYS.slice(0, month).reduce((sum, days) => sum + days, 0))
/** Middle of each month, in days from 1 January. */
const middles = [15.5, 45, 74.5, 105, 135.5, 166, 196.5, 227.5, 258, 288.5, 319, 349.5]
/** Entry of a day that may lie before or after the year. */
const at = (days: Float64Array, day: number) => days[(day + 365) % 365]!

describe.each(Object.entries(years))("monthlyToDays for %s", (_, means) => {
  const days = monthlyToDays(means)

  it("gives 365 days", () => {
    expect(days.length).toBe(365)
  })
  it("keeps the mean of every month", () => {
    const scale = Math.max(...means.map(Math.abs))
    for (const [month, mean] of means.entries()) {
      const of = days.slice(starts[month], starts[month]! + MONTH_DAYS[month]!)
      const kept = of.reduce((sum, day) => sum + day, 0) / of.length
      expect(Math.abs(kept - mean)).toBeLessThanOrEqual(1e-12 * scale)
    }
  })
  it("is straight between the middles of the months, round the year, and the lines meet there", () => {
    let straight = 0
    for (const [month, middle] of middles.entries()) {
      const next = middles[month + 1] ?? middles[0]! + 365
      // The value of a day is that at its middle, half a day after it begins.
      const first = Math.ceil(middle - 0.5)
      const last = Math.floor(next - 0.5)
      for (let day = first + 1; day < last; day++, straight++)
        expect(at(days, day + 1) - 2 * at(days, day) + at(days, day - 1)).toBeCloseTo(0, 10)
      const fromLeft = at(days, last) + (next - 0.5 - last) * (at(days, last) - at(days, last - 1))
      const after = Math.ceil(next - 0.5)
      const fromRight = at(days, after) - (after + 0.5 - next) * (at(days, after + 1) - at(days, after))
      expect(fromLeft).toBeCloseTo(fromRight, 10)
    }
    // Seven middles fall on the middle of a day, which then ends one line and begins the next: 365 + 7 days in twelve
    // lines, less the first and last of each.
    expect(straight).toBe(365 + 7 - 24)
  })
})

it("leaves a flat year flat", () => {
  for (const day of monthlyToDays(Array.from({length: 12}, () => 7.3))) expect(day).toBeCloseTo(7.3, 12)
})
