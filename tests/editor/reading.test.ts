import {describe, expect, it} from "vitest"
import {clearCells} from "../../src/editor/commands/cells"
import {pasteTable} from "../../src/editor/clipboard"
import {answerYes, startEditing, startTyping} from "../../src/editor/editing"
import {createStore} from "../../src/editor/store"
import type {Document} from "../../src/workbook/document"

const asks = "This is a reading copy. Make your own copy to try changes?"
const mark = {madeBy: "R.T.", on: "2026-05-25", digest: "0".repeat(64), results: "0".repeat(64)}
const plan: Document = {
  name: "Plan",
  reading: mark,
  sheets: [
    {
      name: "Cost",
      group: "g",
      columns: [{heading: "Paid", kind: "typed", format: "date"}],
      rows: [["2026-05-01"]],
    },
  ],
}

describe("a reading copy (LE12)", () => {
  it.each([
    ["typing", (store: ReturnType<typeof createStore>) => store.turn(startTyping("5"))],
    ["opening a cell", (store: ReturnType<typeof createStore>) => store.turn(startEditing)],
    // Of 3/4 the question would be which day it is, and no answer could be kept.
    [
      "pasting a day that could be two",
      (store: ReturnType<typeof createStore>) => pasteTable(store, {from: "elsewhere", rows: [["3/4"]]}),
    ],
    ["clearing", (store: ReturnType<typeof createStore>) => void store.run(clearCells)],
    [
      "any other act",
      (store: ReturnType<typeof createStore>) =>
        void store.run(() => ({type: "insertRows", sheet: 0, before: 0, count: 1})),
    ],
  ])("answers %s with the way to an own copy", (_, act) => {
    const store = createStore(plan)
    act(store)
    expect(store.getState()).toMatchObject({document: plan, editing: null, said: asks, question: {asks}})
  })

  it("can be changed once it is one's own, and is itself one undo away", () => {
    const store = createStore(plan)
    store.turn(startTyping("5"))
    answerYes(store)
    expect(store.getState().document.reading).toBeUndefined()
    expect(store.getState().said).toMatch(/^This copy is yours/)
    store.turn(startTyping("5"))
    expect(store.getState().editing).toMatchObject({text: "5"})
    store.undo()
    expect(store.getState().document).toEqual(plan)
  })
})
