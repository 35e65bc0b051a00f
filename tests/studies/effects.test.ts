import {expect, it} from "vitest"
import {effectsOf} from "../../src/studies/effects"
import {compare} from "../../src/workbook/compare"
import {revised} from "../../src/workbook/revised"
import {farm, inPlan} from "../editor/farm"
import type {Document} from "../../src/workbook/document"

const withCells = (document: Document, ...cells: [string, number | string][]): Document =>
  revised(document, {type: "enter", cells: cells.map(([at, content]) => ({at: inPlan(at), content}))})

it("says what moved, and which change moved it, the one that moves most first", () => {
  // Long Acre two weeks shorter, Well Field opened a day later, and a sample that moves no close.
  const after = withCells(farm, ["B2", "2026-04-21"], ["C1", 4], ["F1", 400])
  const {cells} = compare(farm, after)
  const {moved, effects} = effectsOf(farm, after, cells)
  expect(moved.map(({at, before, after: now}) => [at.row, (now as number) - (before as number)])).toEqual([
    [0, -14],
    [1, 1],
  ])
  expect(effects.map(({difference, by}) => [difference.now!.row, difference.now!.col, by])).toEqual([
    [0, 2, [-14, 0]],
    [1, 1, [0, 1]],
    [0, 5, [0, 0]],
  ])
})

it("leaves both states as they are", () => {
  const after = withCells(farm, ["C1", 4])
  const copy = structuredClone(after)
  effectsOf(farm, after, compare(farm, after).cells)
  expect(after).toEqual(copy)
})
