import {describe, expect, it} from "vitest"
import {reachTo} from "../../src/editor/block"
import {enterContent} from "../../src/editor/commands/cells"
import {answerYes} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {sortRows} from "../../src/editor/sortRows"
import {createStore} from "../../src/editor/store"
import type {Content} from "../../src/workbook/document"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const farm = (own: string) =>
  documentOf(
    sheet(
      "Plan",
      ["Planting", "Age", column("Twice", {formula: "=B1*2"}), "Own"],
      [
        ["Well Field", 5, "=", null],
        ["Long Acre", 9, "=", own],
        ["Home Strip", 5, "=", null],
      ],
    ),
    sheet("Sum", ["A"], [["=Plan!C2"], ["=SUM(Plan!B:B)"]]),
  )
const on = (own: string, from: string, to = from) => {
  const store = createStore(farm(own))
  store.turn(choose(cellAt(from)))
  store.turn(reachTo(cellAt(to).row, cellAt(to).col))
  return store
}
const names = (store: ReturnType<typeof on>) =>
  store.getState().document.sheets[0]!.rows.map(([name]) => name)

describe("sorting the rows of a sheet", () => {
  it("goes by the chosen column, equal rows in their order, references following", () => {
    const store = on("", "B2")
    sortRows(store, false)
    expect(names(store)).toEqual(["Well Field", "Home Strip", "Long Acre"])
    expect(store.valueAt({sheet: 1, row: 0, col: 0})).toBe(18)
    expect(store.getState().undoable.at(-1)!.name).toBe("rows of Plan sorted")
    store.undo()
    expect(names(store)).toEqual(["Well Field", "Long Acre", "Home Strip"])
  })
  it("goes by several columns, the one on the left first", () => {
    const store = on("", "A1", "B1")
    sortRows(store, true)
    expect(names(store)).toEqual(["Well Field", "Long Acre", "Home Strip"])
    const other = on("", "B1", "C1")
    sortRows(other, true)
    expect(names(other)).toEqual(["Long Acre", "Well Field", "Home Strip"])
  })
  it("is known by its first column while the rows stand so, and after an undo that is done again", () => {
    const store = on("", "A1", "B1")
    expect(store.sortedBy(0)).toBeNull()
    sortRows(store, false)
    const by = {col: 0, descending: false}
    expect(store.sortedBy(0)).toEqual(by)
    store.run(enterContent({sheet: 1, row: 0, col: 0}, 5))
    expect(store.sortedBy(0)).toEqual(by)
    store.undo()
    store.undo()
    expect(store.sortedBy(0)).toBeNull()
    store.redo()
    expect(store.sortedBy(0)).toEqual(by)
    const enter = (text: string, content: Content) => store.run(enterContent(cellAt(text), content))
    enter("B1", 30) // of the column that counts where the first is alike alone
    enter("D1", "words")
    enter("A1", "Brook End")
    enter("A4", "Willow")
    expect(store.sortedBy(0)).toEqual(by)
    enter("A2", "Aspen")
    expect(store.sortedBy(0)).toBeNull()
    enter("A2", "Long Acre")
    expect(store.sortedBy(0)).toEqual(by)
    enter("A5", "Brook End")
    expect(store.sortedBy(0)).toBeNull()
  })
  it("is known no more where what its column works out stands in another order", () => {
    const store = on("", "C1")
    sortRows(store, false)
    expect(store.sortedBy(0)).toEqual({col: 2, descending: false})
    store.run(enterContent(cellAt("B1"), 6))
    expect(store.sortedBy(0)).toBeNull()
    store.undo()
    expect(store.sortedBy(0)).toEqual({col: 2, descending: false})
    store.run(() => ({type: "insertColumns", sheet: 0, before: 0, count: 1}))
    expect(store.sortedBy(0)).toBeNull()
    store.open({...farm(""), name: "Another"})
    expect(store.sortedBy(0)).toBeNull()
  })
  it("says when there is nothing to do", () => {
    const store = on("", "A1")
    sortRows(store, true)
    expect(store.getState().said).toBe("The rows stand in that order already.")
    expect(store.sortedBy(0)).toEqual({col: 0, descending: true})
  })
  it("asks where a range would be torn apart", () => {
    const store = on("=SUM(B1:B2)", "B2")
    sortRows(store, false)
    const {question, document} = store.getState()
    expect(document.sheets[0]!.rows[1]![0]).toBe("Long Acre")
    expect(question!.asks).toContain("1 formula reads cells by their place")
    expect(question!.links).toEqual([{at: cellAt("D2"), words: "Plan!D2"}])
    expect(store.sortedBy(0)).toBeNull()
    answerYes(store)
    expect(names(store)).toEqual(["Well Field", "Home Strip", "Long Acre"])
    expect(store.sortedBy(0)).toEqual({col: 1, descending: false})
  })
})
