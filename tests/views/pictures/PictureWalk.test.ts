import {expect, it} from "vitest"
import {markAt} from "../../../src/views/pictures/PictureWalk"

const stops = [
  {x: 50, y: 50, words: "a dot"},
  {x: 200, y: 60, width: 30, height: 100, words: "a bar"},
  {x: 200, y: 100, words: "a dot on the bar"},
]

it.each([
  [52, 48, 0],
  [66, 50, 0],
  [200, 30, 1],
  [190, 20, 1],
  [201, 101, 2],
  [75, 50, 0], // 16 px beside the ring about the dot, which is 18 px wide
  [77, 50, null],
  [110, 50, null],
  [200, 180, null],
])("means at %d, %d the mark there, or none", (x, y, mark) => expect(markAt(stops, x, y)).toBe(mark))
