import {expect, it} from "vitest"
import {beside, stretches} from "../../../src/views/pictures/besideLine"
import {boxAround, overlaps, textWidth} from "../../../src/views/pictures/placing"

const room = {left: 0, right: 79, top: 22, bottom: 80}
const line = (...points: [number, number][]) => points.map(([x, y]) => ({x, y}))

/** A low crop that lags, a steep one on its plan, and one of two weeks that is over: as on the demonstration farm. */
const crops = [
  {plan: line([4, 81], [38, 66]), picked: line([4, 81], [24, 78], [35, 70])},
  {plan: line([2, 82], [60, 25]), picked: line([2, 82], [34, 53])},
  {plan: line([6, 82], [20, 76]), picked: line([6, 82], [20, 76])},
  {plan: line([6, 82], [75, 24]), picked: line([6, 82], [70, 28])},
]

it.each(crops)(
  "stands inside its room and clear of both lines, the dot and the axis: %#",
  ({plan, picked}) => {
    const dot = picked.at(-1)!
    const {x, y} = beside(dot, "101\u202f%", [plan, picked], room)
    const half = (1.06 * textWidth("101\u202f%")) / 2
    const words = boxAround(x + half, y - 5, half, 8)
    expect(words.left).toBeGreaterThanOrEqual(room.left)
    expect(words.right).toBeLessThanOrEqual(room.right)
    expect(words.bottom).toBeLessThanOrEqual(room.bottom)
    expect(
      overlaps(words, [...stretches(plan), ...stretches(picked), boxAround(dot.x, dot.y, 3.5, 3.5)]),
    ).toBe(0)
  },
)
