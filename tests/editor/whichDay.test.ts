import {describe, expect, it} from "vitest"
import {pasteTable, readTable} from "../../src/editor/clipboard"
import {answerRather, answerYes, editAgain, keepEditing, startTyping} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore, type Store} from "../../src/editor/store"
import {contentAt} from "../../src/workbook/document"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

// The documents of these tests are of the season 2026.
const storeOf = (...columns: Parameters<typeof column>[1][]) =>
  createStore(
    documentOf(
      sheet(
        "Plan",
        columns.map((more, i) => column(`Day ${i}`, more)),
        [[null], [null]],
      ),
    ),
  )
const type = (store: Store, address: string, text: string) => {
  store.turn(choose(cellAt(address)))
  store.turn(startTyping(text))
  return keepEditing(store, 1, 0)
}
const content = (store: Store, address: string) => contentAt(store.getState().document, cellAt(address))

describe("a date that could be two", () => {
  it("is asked about once, and the workbook keeps the answer", () => {
    const store = storeOf({format: "date"})
    expect(type(store, "A1", "03/04")).toBe(false)
    expect(store.getState().question).toMatchObject({
      asks: "Is “03/04” 3 Apr 2026 or 4 Mar 2026? The workbook keeps the answer for other dates; “Region and units” changes it.",
      rather: {words: "3 Apr 2026"},
      yes: "4 Mar 2026",
    })
    expect(content(store, "A1")).toBeNull()
    answerRather(store)
    expect([content(store, "A1"), store.getState().cell]).toEqual(["2026-04-03", cellAt("A2")])
    expect(store.getState().question).toBeNull()
    expect(type(store, "A2", "05/06")).toBe(true)
    expect(content(store, "A2")).toBe("2026-06-05")
  })

  it("is the other day by the other answer; undo takes the date back before the answer", () => {
    const store = storeOf({format: "date"})
    type(store, "A1", "03/04")
    answerYes(store)
    expect(content(store, "A1")).toBe("2026-03-04")
    store.undo()
    expect([content(store, "A1"), store.getState().document.region]).toEqual([null, {dates: "month first"}])
    store.undo()
    expect(store.getState().document.region).toBeUndefined()
  })

  it("can be typed in another form instead", () => {
    const store = storeOf({format: "date"})
    type(store, "A1", "03/04")
    store.turn(editAgain(store.getState().question!.typed!))
    expect(store.getState().editing).toMatchObject({text: "03/04", at: cellAt("A1")})
    expect(store.getState().document.region).toBeUndefined()
  })

  it("is refused where the answer leads out of what the column takes", () => {
    const store = storeOf({format: "date", rule: {least: 46113}}) // from 1 Apr 2026 on: 46113 days after 1899-12-30
    type(store, "A1", "03/04")
    answerYes(store)
    expect(store.getState().editing).toMatchObject({text: "03/04"})
    expect(store.getState().editing!.refused).toContain("4 Mar 2026 is outside 1 Apr 2026")
  })

  it("is asked about once for all that is pasted", () => {
    const store = storeOf({format: "date"}, {format: 0})
    pasteTable(store, readTable("03/04\t1\r\n05/04\t2\r\n"))
    expect(store.getState().question!.asks).toContain("Is “03/04” 3 Apr 2026 or 4 Mar 2026?")
    answerRather(store)
    expect([content(store, "A1"), content(store, "A2"), content(store, "B2")]).toEqual([
      "2026-04-03",
      "2026-04-05",
      2,
    ])
    expect(store.getState().question).toBeNull()
  })
})
