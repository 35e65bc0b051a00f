import {describe, expect, it} from "vitest"
import {
  awaitCorner,
  blockAt,
  blockText,
  cellsOf,
  chooseAround,
  chooseColumns,
  chooseRows,
  chosenBlock,
  reachEdge,
  reachStep,
  reachTo,
} from "../../src/editor/block"
import {clearCells} from "../../src/editor/commands/cells"
import {pressKey} from "../../src/editor/sheetKeys"
import {choose} from "../../src/editor/selection"
import {createStore, type Turn} from "../../src/editor/store"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

/** A block of three by three with a gap, and a column that is worked out. */
const farm = documentOf(
  sheet(
    "Plan",
    ["A", "B", column("C", {formula: "=A1*2"}), "D", "E"],
    [
      [1, 2, "=", null, null],
      [3, 4, "=", null, 9],
      [5, null, 7, null, null],
      [null, null, "=", null, null],
    ],
  ),
  sheet("Root samples", ["A", "B"], [["x", "y"]]),
)
const after = (from: string, ...turns: Turn[]) => {
  const store = createStore(farm)
  store.turn(choose(cellAt(from)))
  for (const turn of turns) store.turn(turn)
  return store
}
const text = (from: string, ...turns: Turn[]) => blockText(chosenBlock(after(from, ...turns).getState()))

describe("the chosen cells", () => {
  it.each([
    ["one cell", [], "B2"],
    ["a step further down and right", [reachStep(1, 1)], "B2:C3"],
    ["a step back over the chosen cell", [reachStep(1, 0), reachStep(-2, 0)], "B1:B2"],
    ["as far as the sheet goes, with the next row to fill", [reachTo(99, 99)], "B2:E5"],
    ["to the upper left", [reachTo(-5, -5)], "A1:B2"],
    ["to the next edge of filled cells", [reachEdge(0, 1)], "B2:C2"],
    ["whole rows", [reachStep(1, 0), chooseRows], "A2:E3"],
    ["whole columns", [reachStep(0, 1), chooseColumns], "B1:C4"],
    ["back on the one cell", [reachStep(1, 0), reachStep(-1, 0)], "B2"],
    ["another cell", [reachStep(1, 1), choose(cellAt("D1"))], "D1"],
  ])("are %s", (_, turns, block) => {
    expect(text("B2", ...turns)).toBe(block)
  })

  it("are the filled cells around, and then the whole sheet", () => {
    expect(text("B2", chooseAround)).toBe("A1:C4")
    expect(text("B2", chooseAround, chooseAround)).toBe("A1:E4")
  })

  it("are told with their number", () => {
    expect(after("B2", reachStep(1, 1)).getState().said).toBe("B2:C3 chosen, 4 cells.")
    const store = after("B2", reachStep(1, 1))
    store.turn(choose({sheet: 0, row: 0, col: 0}))
    expect(store.getState().said).toBe("") // of a block that is chosen no longer
  })

  it("come row by row", () => {
    const block = chosenBlock(after("A1", reachStep(1, 1)).getState())
    expect([...cellsOf(block)].map(({row, col}) => [row, col])).toEqual([
      [0, 0],
      [0, 1],
      [1, 0],
      [1, 1],
    ])
  })

  it("stay when one of them is typed in and kept by a command", () => {
    const store = after("A1", reachStep(1, 0))
    store.run(clearCells)
    expect(blockText(chosenBlock(store.getState()))).toBe("A1:A2")
  })

  it.each([
    ["Shift+ArrowDown", {key: "ArrowDown", shiftKey: true}, "B2:B3"],
    ["Shift+Home", {key: "Home", shiftKey: true}, "A2:B2"],
    ["Shift+End", {key: "End", shiftKey: true}, "B2:E2"],
    ["Ctrl+Shift+Home", {key: "Home", shiftKey: true, ctrlKey: true}, "A1:B2"],
    ["Ctrl+Shift+End", {key: "End", shiftKey: true, ctrlKey: true}, "B2:E4"],
    ["Shift+PageDown", {key: "PageDown", shiftKey: true}, "B2:B4"],
    ["Ctrl+Space", {key: " ", ctrlKey: true}, "B1:B4"],
    ["Shift+Space", {key: " ", shiftKey: true}, "A2:E2"],
    ["Cmd+A", {key: "a", metaKey: true}, "A1:C4"],
  ])("follow %s", (_, press, block) => {
    const store = after("B2")
    const used = pressKey(
      store,
      {shiftKey: false, ctrlKey: false, metaKey: false, altKey: false, ...press},
      {page: 2, keepFileCopy: () => {}},
    )
    expect([used, blockText(chosenBlock(store.getState()))]).toEqual([true, block])
  })
})

describe("emptying what is chosen", () => {
  it("leaves worked-out cells, empties the typed-over one, in one step", () => {
    const store = after("B1", reachTo(3, 2))
    store.run(clearCells)
    const {document, undoable} = store.getState()
    expect(document.sheets[0]!.rows.map((row) => row.slice(1, 3))).toEqual([
      [null, "="],
      [null, "="],
      [null, null],
      [null, "="],
    ])
    expect(undoable.at(-1)!.name).toBe("emptying of 3 cells in Plan")
    store.undo()
    expect(store.getState().document).toBe(farm)
  })
})

describe("a typed reference", () => {
  const names = new Map([["rate", cellAt("B3")]])
  it.each([
    ["b3", "B3"],
    [" A2:B9 ", "A2:B5"],
    ["B3:A1", "A1:B3"],
    ["C:C", "C1:C4"],
    ["2:3", "A2:E3"],
    ["'Root samples'!A1", "1 A1"],
    ["Root samples!A1", "1 A1"],
    ["root samples", "1 A1"],
    ["Rate", "B3"],
    ["$B$2", "B2"],
  ])("means cells: %s", (typed, block) => {
    const found = blockAt(farm, 0, typed, names)!
    expect(`${found.sheet ? `${found.sheet} ` : ""}${blockText(found)}`).toBe(block)
  })
  it.each(["", "12", "Nothing!A1", "A1+B2", "no name"])("may mean none: %j", (typed) => {
    expect(blockAt(farm, 0, typed, names)).toBeNull()
  })
})

it("waits for the cell to choose up to until one is chosen, or another act chooses", () => {
  const store = after("B2")
  store.turn(awaitCorner)
  expect(store.getState()).toMatchObject({
    awaitsCorner: true,
    said: "Tap or click the cell to choose up to, from B2. Esc leaves it.",
  })
  store.turn(reachTo(3, 2))
  expect(store.getState().awaitsCorner).toBe(false)
  store.turn(awaitCorner)
  store.turn(choose(cellAt("A1")))
  expect(store.getState().awaitsCorner).toBe(false)
})
