import {describe, expect, it} from "vitest"
import {chooseBlock} from "../../src/editor/block"
import {copyChosen, pasteTable, readTable} from "../../src/editor/clipboard"
import {enterContent} from "../../src/editor/commands/cells"
import {isCut, leaveCut, markCut} from "../../src/editor/cut"
import {answerYes} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore, type Store} from "../../src/editor/store"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const farm = documentOf(
  sheet(
    "Plan",
    [
      column("Planting", {format: "text"}),
      column("Area", {unit: "ha", rule: {least: 0, most: 50}}),
      column("Twice", {formula: "=B1*2"}),
      "Note",
    ],
    [
      ["Long Acre", 6.4, "=", "=B1+B2"],
      ["Well Field", 7.2, "=", "=Rate*2"],
      ["Sand Piece", null, "=", 98],
      ["Top Corner", 3, 8, "=SUM(B1:B2)"],
    ],
  ),
  sheet("Other", ["A", "B"], [["=Plan!B2", "=Plan!D3"]]),
  sheet(
    "Values",
    ["Name", "Value"],
    [
      ["Rate", 0.5],
      ["Fee", 2],
    ],
    {names: true},
  ),
)

const block = (from: string, to = from) => {
  const [a, b] = [cellAt(from), cellAt(to)]
  return chooseBlock({sheet: a.sheet, rows: [a.row, b.row], cols: [a.col, b.col]})
}
/** Cuts a block, as the sheet does when the browser asks it to, and gives what was copied. */
function cut(store: Store, from: string, to = from): string {
  store.turn(block(from, to))
  const {plain, cells} = copyChosen(store)
  store.turn(markCut(cells))
  return plain
}
function paste(store: Store, plain: string, to: string) {
  store.turn(choose(cellAt(to)))
  pasteTable(store, readTable(plain))
}
const contents = (store: Store, ...cells: string[]) =>
  cells.map((text) => {
    const {sheet, row, col} = cellAt(text)
    return store.getState().document.sheets[sheet]!.rows[row]?.[col] ?? null
  })

describe("cells that are cut", () => {
  it("stay and are marked until they are pasted, which moves them in one step", () => {
    const store = createStore(farm)
    const plain = cut(store, "B1", "B2")
    expect(store.getState()).toMatchObject({
      document: farm,
      said: "B1:B2 moves to where it is pasted; Esc leaves it.",
    })
    expect(["B1", "B2", "B3", "A1", "1!B1"].map((text) => isCut(store.getState(), cellAt(text)))).toEqual([
      true,
      true,
      false,
      false,
      false,
    ])
    paste(store, plain, "B5")
    expect(contents(store, "B1", "B2", "B5", "B6", "D1", "D4", "1!A1")).toEqual([
      null,
      null,
      6.4,
      7.2,
      "=B5+B6",
      "=SUM(B5:B6)",
      "=Plan!B6",
    ])
    expect(store.getState()).toMatchObject({
      cut: null,
      cell: cellAt("B5"),
      reach: {row: 5, col: 1},
      undoable: [{name: "move of 2 cells in Plan"}],
    })
    expect(store.getState().said).toContain("2 cells moved to B5:B6.")
    store.undo()
    expect(store.getState().document).toBe(farm)
  })

  it("are pasted a second time as copies of what was cut, its values among them", () => {
    const store = createStore(farm)
    const plain = cut(store, "D1")
    paste(store, plain, "D5")
    expect(contents(store, "D1", "D5")).toEqual([null, "=B1+B2"])
    paste(store, plain, "D6")
    expect(contents(store, "D5", "D6")).toEqual(["=B1+B2", "=B6+B7"])
    store.getState().offer!.act(store)
    expect(contents(store, "D6")).toEqual([13.6])
  })

  it("are copies after another edit, after undo, and where only values are pasted", () => {
    const between: ((store: Store) => unknown)[] = [
      (store) => store.run(enterContent(cellAt("A4"), "Top")),
      (store) => (store.run(enterContent(cellAt("A4"), "Top")), store.undo()),
      (store) => store.turn(leaveCut),
      (store) => store.turn(() => ({cut: null})),
    ]
    for (const act of between) {
      const store = createStore(farm)
      const plain = cut(store, "D1")
      act(store)
      expect(store.getState().cut).toBeNull()
      paste(store, plain, "D3")
      expect(contents(store, "D1", "D3")).toEqual(["=B1+B2", "=B3+B4"])
    }
    const store = createStore(farm)
    const plain = cut(store, "D1")
    store.turn(choose(cellAt("D3")))
    pasteTable(store, readTable(plain), {valuesOnly: true})
    expect(contents(store, "D1", "D3")).toEqual(["=B1+B2", 13.6])
  })

  it("leave worked-out cells in their place, and are copied alone where all are worked out", () => {
    const store = createStore(farm)
    const plain = cut(store, "A1", "D1")
    expect(store.getState().said).toContain("1 worked-out cell stays as it is.")
    paste(store, plain, "A5")
    expect(store.getState().document.sheets[0]!.rows.map((row) => row[2])).toEqual(["=", "=", "=", 8, "="])
    expect(contents(store, "A1", "B1", "A5", "B5", "D5")).toEqual([null, null, "Long Acre", 6.4, "=B5+B2"])
    expect(store.getState().said).toContain("3 cells moved to A5:D5. 1 worked-out cell stays as it is.")

    cut(store, "C1", "C2")
    expect(store.getState()).toMatchObject({
      cut: null,
      said: "C1:C2 copied. 2 worked-out cells stay as they are.",
    })
  })

  it("move all or none, and say why none", () => {
    const tries = [
      ["D3", "B3", "B3: Area 98 ha is above 50 ha"],
      ["D3", "C3", "C3: a worked-out cell stands there"],
      ["B1:D1", "D1", "F1: there is no column there"],
    ]
    for (const [from, to, why] of tries) {
      const store = createStore(farm)
      const [first, last] = from!.split(":")
      const plain = cut(store, first!, last)
      paste(store, plain, to!)
      expect(store.getState().said).toContain("Nothing was moved.")
      expect(store.getState().said).toContain(why)
      expect(store.getState()).toMatchObject({document: farm, question: null})
      expect(store.getState().cut).not.toBeNull() // another place can be chosen
    }
  })

  it("take a range along that has a gap in it", () => {
    const store = createStore(farm)
    store.run(enterContent(cellAt("D3"), "=SUM(B2:B4)"))
    paste(store, cut(store, "B2", "B4"), "B5")
    expect(contents(store, "B2", "B4", "B5", "B6", "B7", "D3")).toEqual([
      null,
      null,
      7.2,
      null,
      3,
      "=SUM(B5:B7)",
    ])
    expect(store.getState().said).toContain("3 cells moved to B5:B7.")
    paste(store, cut(store, "B2"), "B3")
    expect(store.getState()).toMatchObject({said: "It stands there already.", undoable: {length: 2}})
  })

  it("ask before they take the cells away that formulas point at", () => {
    const store = createStore(farm)
    const plain = cut(store, "B4")
    paste(store, plain, "B2")
    expect(store.getState().question).toMatchObject({
      asks: "2 formulas point at what would be written over and would say #REF!. Move all the same?",
      links: [{words: "Plan!D1"}, {words: "Other!A1"}],
    })
    expect(store.getState().document).toBe(farm)
    answerYes(store)
    expect(contents(store, "B2", "B4", "D1", "1!A1")).toEqual([3, null, "=B1+#REF!", "=#REF!"])
    expect(store.getState()).toMatchObject({cut: null, undoable: {length: 1}})
  })

  it("ask before a name is parted from its value, and not where both go", () => {
    const store = createStore(farm)
    paste(store, cut(store, "2!A1", "2!B1"), "2!A3")
    expect(store.getState().question).toBeNull()
    expect(store.valueAt(cellAt("D2"))).toBe(1)
    paste(store, cut(store, "2!B3"), "2!B4")
    expect(store.getState().question!.asks).toBe(
      "1 formula uses Rate, which would be the name of another value. Move all the same?",
    )
    store.turn(() => ({question: null}))
    paste(store, cut(store, "2!A3"), "1!A2")
    expect(store.getState().question!.asks).toContain("by its name and would say #NAME?.")
  })

  it("stay where they are pasted onto themselves", () => {
    const store = createStore(farm)
    paste(store, cut(store, "B1", "B2"), "B1")
    expect(store.getState()).toMatchObject({document: farm, cut: null, said: "It stands there already."})
  })
})
