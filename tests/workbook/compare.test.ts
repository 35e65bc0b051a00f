import {describe, expect, it} from "vitest"
import {compare, sidesOf} from "../../src/workbook/compare"
import type {Edit} from "../../src/workbook/edit"
import {revised} from "../../src/workbook/revised"
import {cellAt, column, documentOf, sheet} from "./documents"
import {addressText} from "../../src/workbook/cells"

const before = documentOf(
  sheet(
    "Plan",
    ["Planting", column("Area", {unit: "ha"}), column("Twice", {formula: "=B1*2"})],
    [
      ["Long Acre", 6.4, "="],
      ["Well Field", 7.2, "="],
      ["Long Acre", 1, "="],
    ],
  ),
  sheet("Old", ["A"], [[1]]),
)
const after = (...edits: Edit[]) => edits.reduce(revised, before)
const told = (...edits: Edit[]) => {
  const next = after(...edits)
  const {cells, added, removed} = compare(before, next)
  return [
    ...cells.map(({now, before: was, after: is}) => `${addressText(next, now!)} ${was} > ${is}`),
    ...added.map((one) => `+ ${one}`),
    ...removed.map((one) => `- ${one}`),
  ]
}
const enter = (at: string, content: number | string | null): Edit => ({
  type: "enter",
  cells: [{at: cellAt(at), content}],
})

describe("two states of a workbook", () => {
  it("differ in nothing when they are the same", () => expect(told()).toEqual([]))
  it("differ in what was typed", () => expect(told(enter("B2", 7.5))).toEqual(["Plan!B2 7.2 > 7.5"]))
  it("differ in a cell that was typed over, with the formula that stood there", () =>
    expect(told(enter("C2", 20))).toEqual(["Plan!C2 =B2*2 > 20"]))
  it("tell a row by its name, wherever it was moved to", () =>
    expect(told({type: "moveRows", sheet: 0, order: [1, 0, 2]})).toEqual([]))
  it("tell rows of one name by which of them they are", () =>
    expect(told(enter("B3", 2))).toEqual(["Plan!B3 1 > 2"]))
  it("tell a column by its heading", () =>
    expect(told({type: "insertColumns", sheet: 0, before: 1, count: 1})).toEqual([
      "+ column New column of Plan",
    ]))
  it("name what has come and gone", () =>
    expect(
      told(
        {type: "insertRows", sheet: 0, before: 1, count: 1},
        enter("A2", "Brook End"),
        {type: "removeSheet", sheet: 1},
        {type: "addSheet", name: "New", group: "Trial"},
      ),
    ).toEqual(["+ row Brook End of Plan", "+ sheet New", "- sheet Old"]))
  it("tell a row that has no name by its place among all rows", () =>
    expect(told(enter("B4", 3))).toEqual(["+ row 4 of Plan"]))
})

it("tells on which side a cell was changed since both began", () => {
  const there = after(enter("B1", 6.6), enter("B2", 7.5), {type: "moveRows", sheet: 0, order: [1, 0, 2]})
  const here = after(enter("B2", 7), enter("B3", 2))
  const sideOf = sidesOf(before, there, here)
  const sides = compare(there, here).cells.map((one) => {
    const {side, began} = sideOf(one)
    return `${addressText(here, one.now!)} ${one.before} > ${one.after}: ${side}, began as ${began}`
  })
  expect(sides).toEqual([
    "Plan!B1 6.6 > 6.4: there, began as 6.4",
    "Plan!B2 7.5 > 7: both, began as 7.2",
    "Plan!B3 1 > 2: here, began as 1",
  ])
})
