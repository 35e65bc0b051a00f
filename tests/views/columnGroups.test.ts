import {expect, it} from "vitest"
import {columnGroups} from "../../src/views/columnGroups"

it("parts columns where a page is full, and begins each part with those that are kept in view", () => {
  expect(columnGroups([100, 50, 50, 50, 50], 1, 220)).toEqual([
    [0, 1, 2],
    [0, 3, 4],
  ])
  expect(columnGroups([100, 50, 50], 1, 200)).toEqual([[0, 1, 2]])
  expect(columnGroups([60, 40, 50, 50], 2, 160)).toEqual([
    [0, 1, 2],
    [0, 1, 3],
  ])
})

it("leaves no column out that is wider than a page, nor a sheet of one column", () => {
  expect(columnGroups([100, 500, 50], 1, 220)).toEqual([
    [0, 1],
    [0, 2],
  ])
  expect(columnGroups([100], 1, 220)).toEqual([[0]])
  expect(columnGroups([300, 50], 0, 220)).toEqual([[0], [1]])
})
