import {expect, it} from "vitest"
import {markAt, stepFrom} from "../../../src/views/pictures/PictureWalk"

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

const two = [
  {x: 10, y: 0, line: "plan", words: "0"},
  {x: 20, y: 0, line: "plan", words: "1"},
  {x: 30, y: 0, line: "plan", words: "2"},
  {x: 12, y: 9, line: "stress", words: "3"},
  {x: 29, y: 9, line: "stress", words: "4"},
]
it.each([
  [null, "ArrowRight", 0],
  [null, "ArrowDown", 0],
  [null, "ArrowLeft", 4],
  [1, "ArrowRight", 2],
  [2, "ArrowRight", 2],
  [3, "ArrowLeft", 3],
  [2, "ArrowDown", 4], // the nearest of the other line
  [0, "ArrowDown", 3],
  [4, "ArrowDown", 4],
  [4, "ArrowUp", 2],
  [2, "Home", 0],
  [3, "End", 4],
  [1, "PageDown", null],
])("leads along a line and to the next: from %s by %s to %s", (from, key, to) =>
  expect(stepFrom(two, from, key)).toBe(to),
)

it("leads along the one line by up and down too", () => {
  expect(stepFrom(stops, 0, "ArrowDown")).toBe(1)
  expect(stepFrom(stops, 2, "ArrowUp")).toBe(1)
})
