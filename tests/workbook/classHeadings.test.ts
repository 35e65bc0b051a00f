import {describe, expect, it} from "vitest"
import {revised} from "../../src/workbook/revised"
import {column, documentOf, sheet} from "./documents"

const farm = documentOf(
  sheet(
    "Sizes",
    [column("Class", {format: "text", part: "size class"}), column("From", {part: "size from"})],
    [
      ["thin", 0],
      ["thick", 12],
    ],
  ),
  sheet(
    "Weeks",
    [
      column("Packed", {format: 0}),
      column("thin", {part: "in size"}),
      column("thick", {part: "in size"}),
      column("third", {part: "in size"}),
    ],
    [],
  ),
  sheet("Another", [column("thin")], []),
)
const headings = (document: typeof farm, at: number) =>
  document.sheets[at]!.columns.map(({heading}) => heading)
const enter = (row: number, content: string | null) =>
  ({type: "enter", cells: [{at: {sheet: 0, row, col: 0}, content}]}) as const

describe("the headings of weights by size", () => {
  it("follow the classes, the first the first", () => {
    const named = revised(farm, enter(1, "Extra"))
    expect(headings(named, 1)).toEqual(["Packed", "thin", "Extra", "no class 3"])
    expect(headings(named, 2)).toEqual(["thin"])
    expect(headings(revised(named, enter(2, "jumbo")), 1)).toEqual(["Packed", "thin", "Extra", "jumbo"])
  })

  it("follow rows that are moved, put in and deleted", () => {
    const moved = revised(farm, {type: "moveRows", sheet: 0, order: [1, 0]})
    expect(headings(moved, 1)).toEqual(["Packed", "thick", "thin", "no class 3"])
    const fewer = revised(moved, {type: "removeRows", sheet: 0, first: 0, count: 1})
    expect(headings(fewer, 1)).toEqual(["Packed", "thin", "no class 2", "no class 3"])
  })

  it("stay apart from each other and from those beside them", () => {
    const twice = revised(farm, {
      type: "several",
      edits: [enter(1, "thin"), enter(2, "Packed")],
      name: "names",
    })
    expect(headings(twice, 1)).toEqual(["Packed", "thin", "thin, class 2", "Packed, class 3"])
  })

  it("stay as they were called while the classes do", () => {
    const called = revised(farm, {type: "changeColumn", sheet: 1, col: 3, change: {heading: "my own"}})
    expect(headings(called, 1)).toEqual(["Packed", "thin", "thick", "my own"])
    const typed = revised(called, {
      type: "enter",
      cells: [{at: {sheet: 1, row: 0, col: 0}, content: 5}],
    })
    expect(typed.sheets[1]!.columns).toBe(called.sheets[1]!.columns)
  })
})
