import {describe, expect, it} from "vitest"
import {reachTo} from "../../src/editor/block"
import {emptied, filled} from "../../src/editor/blockActs"
import {pasteTable, readTable} from "../../src/editor/clipboard"
import {fillDown} from "../../src/editor/commands/fill"
import {deleteRows} from "../../src/editor/deletion"
import {answerYes, keepEditing, startTyping} from "../../src/editor/editing"
import {usersOfName} from "../../src/editor/namesInUse"
import {choose} from "../../src/editor/selection"
import {createStore, type Store} from "../../src/editor/store"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const farm = documentOf(
  sheet(
    "Plan",
    ["Planting", column("Pay", {formula: "=rate*2"}), "Other"],
    [
      ["Long Acre", "=", "=Rate+1"],
      ["Well Field", "=", 5],
    ],
  ),
  sheet(
    "Named values",
    ["Name", "Value"],
    [
      ["Idle", 3],
      ["Rate", 0.95],
    ],
    {names: true},
  ),
)

/** The store after an act on the cells of the sheet of names, from one to another. */
function after(from: string, to: string, act: (store: Store) => void) {
  const store = createStore(farm)
  store.turn(choose(cellAt(`1!${from}`)))
  store.turn(reachTo(cellAt(to).row, cellAt(to).col))
  act(store)
  return store
}
const namesOf = (store: Store) => store.getState().document.sheets[1]!.rows.map(([name]) => name)

it("finds the formulas that use a name, one of a column once", () => {
  expect(usersOfName(farm, "Rate")).toEqual([cellAt("B1"), cellAt("C1")])
  expect(usersOfName(farm, "Idle")).toEqual([])
})

describe("the name of a value that formulas use", () => {
  const lost = "2 formulas use Rate by its name and would say #NAME?."

  it.each<[string, string, (store: Store) => void]>([
    ["emptied", `${lost} Empty all the same?`, emptied],
    ["filled over", `${lost} Fill all the same?`, (store) => filled(store, fillDown)],
    [
      "pasted over by words",
      `${lost} Paste all the same?`,
      (store) => pasteTable(store, readTable("no name")),
    ],
    [
      "pasted over by another name",
      "2 formulas use Rate by its name and would call it Wage. Paste all the same?",
      (store) => pasteTable(store, readTable("Wage")),
    ],
    ["deleted with its row", `${lost} Delete this row all the same?`, deleteRows],
    [
      "emptied by typing",
      `${lost} Empty all the same?`,
      (store) => {
        store.turn(startTyping(""))
        keepEditing(store, 1, 0)
      },
    ],
  ])("is not %s without a question that shows them", (_, asks, act) => {
    const store = after("A2", "A2", act)
    const {question, document, said} = store.getState()
    expect([question?.asks, said]).toEqual([asks, asks])
    expect(question?.links?.map(({words}) => words)).toEqual(["Plan!B1", "Plan!C1"])
    expect(document).toBe(farm)
    expect(answerYes(store)).toBe(true)
    expect(namesOf(store)).not.toContain("Rate")
  })

  it("stays the name of another value where a block of names is pasted one row up", () => {
    const store = after("A1", "A1", (one) => pasteTable(one, readTable("Rate\nSpare")))
    expect(store.getState().question?.asks).toContain("Rate")
  })

  it("is typed anew without a question: the formulas follow", () => {
    const store = after("A2", "A2", (one) => {
      one.turn(startTyping("Wage"))
      keepEditing(one, 1, 0)
    })
    expect(store.getState().question).toBeNull()
    expect(store.getState().document.sheets[0]!.rows[0]![2]).toBe("=Wage+1")
  })
})

it("asks nothing of a name that no formula uses, nor of the values", () => {
  expect(namesOf(after("A1", "A1", emptied))).toEqual([null, "Rate"])
  expect(after("B1", "B2", emptied).getState().question).toBeNull()
})
