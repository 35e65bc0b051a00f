import {expect, it} from "vitest"
import {byLowestCover, effectsOf, firstAsked} from "../../src/studies/effects"
import {compare} from "../../src/workbook/compare"
import {revised} from "../../src/workbook/revised"
import {farm, inPlan} from "../editor/farm"
import type {Document} from "../../src/workbook/document"
import type {Edit} from "../../src/workbook/edit"
import {column, documentOf, sheet} from "../workbook/documents"

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

it("tells of the store of a planting and the cover of a year, unless results were chosen", () => {
  const before = documentOf(
    sheet(
      "Crowns",
      ["Planting", "Sugar", column("Store", {part: "store at start", formula: "=B1*10"})],
      [
        ["Long Acre", 400, "="],
        ["Top Corner", "=NA()", "="],
      ],
    ),
    // The rows of the years have no name but their place: the cover of 2027 stays at 2.5.
    sheet(
      "Money",
      ["Year", "Price", column("Cover", {part: "cover", formula: "=B1/2"})],
      [
        ["=2026", 3, "="],
        ["=2027", 5, "="],
      ],
    ),
  )
  const enter = (sheet: number, content: number): Edit => ({
    type: "enter",
    cells: [{at: {sheet, row: 0, col: 1}, content}],
  })
  const after = [enter(0, 420), enter(1, 2.4)].reduce(revised, before)
  const told = (one: Document) => {
    const {moved, effects} = effectsOf(before, one, compare(before, one).cells)
    return [moved.map(({before: was, after: now}) => [was, now]), effects.map(({by}) => by)]
  }
  // Sugar moves the store from 4 000 to 4 200 and the price the cover from 1.5 to 1.2: 4.8 % and 25 % of what they then are.
  expect(told(after)).toEqual([
    [
      [4000, 4200],
      [1.5, 1.2],
    ],
    [
      [0, expect.closeTo(-0.3, 9)],
      [200, 0],
    ],
  ])
  // A cover moved by 30 hundredths, but who does not read of money asks for the store first.
  const found = effectsOf(before, after, compare(before, after).cells)
  expect(firstAsked(found, false)).toBe(0)
  expect(firstAsked({...found, moved: found.moved.slice(1)}, false)).toBe(0)
  const at = {sheet: 0, row: 0, col: 2}
  expect(told(revised(after, {type: "changeExtras", changes: [{at, compared: true}]}))[0]).toEqual([
    [4000, 4200],
  ])
})

it("tells of the lowest cover first, and weighs covers by hundredths, also near 0", () => {
  // Covers of 1.52 and 2 become .02 and 3.5: of the first the price takes 1 and the cost .5.
  const before = documentOf(
    sheet(
      "Money",
      ["Year", "Price", "Cost", column("Cover", {part: "cover", formula: "=(500-100*B1-C1)/100"})],
      [
        ["=2026", 2, 148, "="],
        ["=2027", 2, 100, "="],
      ],
    ),
    sheet("Named values", ["Name", "Value"], [["Tight_cover", "=MIN(Money!D:D)"]], {names: true}),
  )
  const after = revised(before, {
    type: "enter",
    cells: [
      {at: {sheet: 0, row: 0, col: 1}, content: 3},
      {at: {sheet: 0, row: 0, col: 2}, content: 198},
      {at: {sheet: 0, row: 1, col: 1}, content: 0.5},
    ],
  })
  const found = effectsOf(before, after, compare(before, after).cells)
  expect(found.moved.map(({cover, before: was, after: now}) => [cover, was, now])).toEqual([
    ["lowest", expect.closeTo(1.52, 9), expect.closeTo(0.02, 9)],
    ["of a year", expect.closeTo(1.52, 9), expect.closeTo(0.02, 9)],
    ["of a year", 2, 3.5],
  ])
  const rows = ({difference}: (typeof found.effects)[number]) => [difference.now!.row, difference.now!.col]
  const farther = {...found, moved: found.moved.with(2, {...found.moved[2]!, after: 9})}
  expect([firstAsked(farther, true), firstAsked(farther, false)]).toEqual([0, 2])
  // 2027's price moves its year by 1.5 and the lowest cover by nothing.
  expect(found.effects.map(rows)).toEqual([
    [1, 1],
    [0, 1],
    [0, 2],
  ])
  expect(byLowestCover(found)!.map(rows)).toEqual([
    [0, 1],
    [0, 2],
    [1, 1],
  ])
  expect(
    byLowestCover(
      effectsOf(farm, withCells(farm, ["C1", 4]), compare(farm, withCells(farm, ["C1", 4])).cells),
    ),
  ).toBeNull()
})

it("leaves both states as they are", () => {
  const after = withCells(farm, ["C1", 4])
  const copy = structuredClone(after)
  effectsOf(farm, after, compare(farm, after).cells)
  expect(after).toEqual(copy)
})
