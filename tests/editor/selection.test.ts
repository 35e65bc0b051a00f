import {describe, expect, it} from "vitest"
import {reachStep} from "../../src/editor/block"
import {startTyping} from "../../src/editor/editing"
import {
  blockEdge,
  choose,
  chosenStep,
  lastFilled,
  openSheet,
  rowsShown,
  tabTarget,
} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

/** 5 rows by 5 columns; the last row and the last column hold nothing. */
const blocks = documentOf(
  sheet(
    "Blocks",
    ["A", "B", "C", "D", "E"],
    [
      ["x", "x", "x", null, null],
      ["x", null, null, "x"],
      ["x", null, "x", "x"],
      [null, false, 0, ""],
      [null, null],
    ],
  ),
  sheet("Empty", ["A", "B"], []),
  sheet("Short", [column("A")], [["x"]]),
)

const at = (address: string) => {
  const store = createStore(blocks)
  store.turn(choose(cellAt(address)))
  return store.getState()
}

describe("choosing a cell", () => {
  it.each([
    ["choosing", choose(cellAt("B2"))],
    ["a step", chosenStep(1, 1)],
  ])("drops what is typed and asked: %s", (_, turn) => {
    const store = createStore(blocks)
    store.turn(startTyping("5"))
    store.turn(() => ({
      question: {asks: "Sure?", yes: "Yes", edit: {type: "enter", cells: []}},
    }))
    store.turn(turn)
    expect(store.getState()).toMatchObject({cell: cellAt("B2"), editing: null, question: null})
  })

  it("stays inside the sheet, whose last row is the next to fill", () => {
    expect(at("E9").cell).toEqual(cellAt("E6"))
    expect(at("Z1").cell).toEqual(cellAt("E1"))
    expect(at("1!B7").cell).toEqual(cellAt("1!B1"))
    expect(at("9!B7").cell).toEqual(cellAt("2!A2"))
    expect(rowsShown(blocks, 0)).toBe(6)
    expect(rowsShown(blocks, 1)).toBe(1)
    const store = createStore(blocks)
    store.turn(choose({sheet: -1, row: -1, col: -1}))
    expect(store.getState().cell).toEqual(cellAt("A1"))
  })

  it("goes to no next row by Tab or Shift in a plan, which grows by plantings alone", () => {
    const parts = ["planting", "open", "close"] as const
    const plan = documentOf(
      sheet(
        "Plan",
        parts.map((part) => column(part, {part})),
        [["Long Acre"], ["Sand Piece"]],
      ),
    )
    const store = createStore(plan)
    store.turn(choose(cellAt("C2")))
    expect(tabTarget(store.getState(), true)).toBeNull()
    store.turn(reachStep(1, -1))
    expect(store.getState()).toMatchObject({reach: {row: 1, col: 1}, said: "B2:C2 chosen, 2 cells."})
  })

  it("opens a sheet on its first cell", () => {
    const store = createStore(blocks)
    store.turn(choose(cellAt("C3")))
    store.turn(openSheet(2))
    expect(store.getState().cell).toEqual(cellAt("2!A1"))
  })

  it.each([
    ["C3", 1, 0, "C4"],
    ["C3", -1, 0, "C2"],
    ["C3", 0, 1, "D3"],
    ["C3", 0, -1, "B3"],
    ["A1", -1, -1, "A1"], // no wrapping at the edges
    ["E6", 1, 1, "E6"],
    ["B2", 40, 0, "B6"],
  ])("steps from %s by %d down and %d right to %s", (from, down, right, to) => {
    const store = createStore(blocks)
    store.turn(choose(cellAt(from)))
    store.turn(chosenStep(down, right))
    expect(store.getState().cell).toEqual(cellAt(to))
  })
})

describe("Tab", () => {
  it.each([
    ["A1", true, "B1"],
    ["E1", true, "A2"],
    ["E5", true, "A6"], // the next row to fill
    ["B1", false, "A1"],
    ["A2", false, "E1"],
  ] as const)("goes from %s (forward: %s) to %s", (from, forward, to) =>
    expect(tabTarget(at(from), forward)).toEqual(cellAt(to)),
  )

  it("leaves at both ends", () => {
    expect(tabTarget(at("E6"), true)).toBeNull()
    expect(tabTarget(at("A1"), false)).toBeNull()
  })
})

describe("the edge of a block", () => {
  const ways: Record<string, [number, number]> = {down: [1, 0], up: [-1, 0], right: [0, 1], left: [0, -1]}
  it.each([
    ["A1", "right", "C1"], // along the block
    ["B1", "left", "A1"],
    ["A1", "down", "A3"],
    ["A3", "up", "A1"],
    ["C1", "right", "E1"], // nothing more: the edge of the sheet
    ["A3", "down", "A5"],
    ["C1", "down", "C3"], // over a gap to the next block
    ["A2", "right", "D2"],
    ["D2", "left", "A2"],
    ["B5", "up", "B4"], // from a blank; false and nought hold something
    ["E5", "up", "E1"],
    ["A1", "up", "A1"],
    ["D6", "up", "D4"], // from the next row to fill
    ["B6", "right", "E6"],
    ["B6", "left", "A6"],
    ["B6", "down", "B6"],
  ])("from %s %s is %s", (from, way, to) => expect(blockEdge(at(from), ...ways[way]!)).toEqual(cellAt(to)))
})

describe("the last cell that holds anything", () => {
  it("is where the last row and column that hold anything meet", () => {
    expect(lastFilled(at("B2"))).toEqual(cellAt("D4"))
    expect(lastFilled(at("1!B1"))).toEqual(cellAt("1!A1"))
    expect(lastFilled(at("2!A2"))).toEqual(cellAt("2!A1"))
  })
})
