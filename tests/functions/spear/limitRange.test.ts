import {describe, expect, it} from "vitest"
import {dateAt} from "../../../functions/spear/dateAt"
import {limitRange} from "../../../functions/spear/limitRange"
import {lineEdge} from "../../../functions/spear/lineEdge"
import {lineSpread} from "../../../functions/spear/lineSpread"

const days = [46146, 46153, 46160, 46167] // 4, 11, 18 and 25 May 2026
const means = [13.1, 12.4, 11.6, 10.9]

describe("limitRange", () => {
  it("is where the edges meet the limit, about the day on which the line does", () => {
    const spread = lineSpread(days, means, 0.8)!
    const [from, to] = limitRange(spread, 9.5)!
    expect(lineEdge(spread, from, -1)).toBeCloseTo(9.5, 9)
    expect(lineEdge(spread, to, 1)).toBeCloseTo(9.5, 9)
    const meets = dateAt(days, means, 9.5) as number
    expect(from).toBeLessThan(meets + 1)
    expect(to).toBeGreaterThan(meets)
  })
  it("is one day where every mean lies on the line", () => {
    // 13 mm less a seventh of a mm a day is 9.5 mm after 24.5 days.
    const [from, to] = limitRange(lineSpread([0, 7, 14], [13, 12, 11], 0.8)!, 9.5)!
    expect([from, to]).toEqual([expect.closeTo(24.5, 9), expect.closeTo(24.5, 9)])
  })
  it("widens with the confidence until the line may as well not fall", () => {
    const scattered = [12, 12.6, 11.2, 11.9]
    const width = (confidence: number) => {
      const range = limitRange(lineSpread(days, scattered, confidence)!, 9.5)
      return range && range[1] - range[0]
    }
    expect(width(0.3)!).toBeGreaterThan(width(0.2)!)
    expect(width(0.95)).toBeNull()
  })
  it("is not there for a line that does not fall", () =>
    expect(limitRange(lineSpread([0, 7, 14], [11, 12, 13.1], 0.8)!, 9.5)).toBeNull())
})
