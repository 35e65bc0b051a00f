import {describe, expect, it} from "vitest"
import {answerRather, answerYes, keepEditing, startTyping} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {column, documentOf, sheet} from "../workbook/documents"

const farm = documentOf(
  sheet(
    "Plantings",
    [column("Planting", {part: "name of planting"}), column("Area")],
    [
      ["Long Acre", 6.4],
      ["Well Field", 7.2],
      ["Top Corner", 3],
    ],
  ),
  sheet(
    "Plan",
    ["Planting", column("Area", {formula: "=INDEX(Plantings!B:B,MATCH(A1,Plantings!A:A,0))"})],
    [
      ["Long Acre", "="],
      ["Well Field", "="],
    ],
  ),
  sheet(
    "Pickings",
    ["Planting", "Note"],
    [
      ["Long Acre", "Long Acre, wet"],
      ["Well Field", null],
      ["long acre", null],
    ],
  ),
)

function typed(name: string, row = 0) {
  const store = createStore(farm)
  store.turn(choose({sheet: 0, row, col: 0}))
  store.turn(startTyping(name))
  keepEditing(store, 1, 0)
  return store
}

describe("another name for a planting", () => {
  it("is asked about where other sheets find it by its name, and goes everywhere in one step", () => {
    const store = typed("Brook End")
    expect(store.getState().question!.asks).toBe(
      "Long Acre stands in 3 other cells on 2 sheets, which find it by its name. Call it Brook End there too?",
    )
    expect(store.getState().document).toBe(farm)
    answerRather(store)
    const {sheets} = store.getState().document
    expect([sheets[0]!.rows[0]![0], sheets[1]!.rows[0]![0], sheets[2]!.rows[0]]).toEqual([
      "Brook End",
      "Brook End",
      ["Brook End", "Long Acre, wet"],
    ])
    expect(sheets[2]!.rows[2]![0]).toBe("Brook End") // formulas find it in capitals or not
    expect(store.valueAt({sheet: 1, row: 0, col: 1})).toBe(6.4)
    expect(store.getState().cell).toEqual({sheet: 0, row: 1, col: 0})
    expect(store.getState().undoable.at(-1)!.name).toBe("Long Acre called Brook End")
    store.undo()
    expect(store.getState().document).toBe(farm)
  })

  it("can stay in its cell alone", () => {
    const store = typed("Brook End")
    answerYes(store, "", new Date())
    const {sheets} = store.getState().document
    expect([sheets[0]!.rows[0]![0], sheets[1]!.rows[0]![0]]).toEqual(["Brook End", "Long Acre"])
  })

  it("asks nothing where the name stands nowhere else, is the same, or is another planting's", () => {
    for (const [name, row] of [
      ["Brook End", 2],
      ["Long Acre", 0],
      ["Well Field", 0],
    ] as const)
      expect(typed(name, row).getState().question).toBeNull()
  })
})
