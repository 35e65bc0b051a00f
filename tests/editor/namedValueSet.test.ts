import {expect, it} from "vitest"
import {addCase, putCaseIn, putInCase} from "../../src/editor/commands/cases"
import {enterContent} from "../../src/editor/commands/cells"
import {fillDown} from "../../src/editor/commands/fill"
import {nameValue} from "../../src/editor/commands/names"
import {pasteTable} from "../../src/editor/clipboard"
import {withDaysOfNames} from "../../src/editor/namedValueSet"
import {findIn} from "../../src/editor/find"
import {replaceEdit, replacementsOf} from "../../src/editor/replace"
import {reachTo} from "../../src/editor/block"
import {choose} from "../../src/editor/selection"
import {createStore, type Store} from "../../src/editor/store"
import type {Content} from "../../src/workbook/document"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const rates = documentOf(
  sheet(
    "Named values",
    [
      "Name",
      column("Value"),
      column("Tag", {format: "text", part: "named tag"}),
      column("Date", {format: "date", part: "named on"}),
    ],
    [
      ["Rate", 3, "looked up", "2026-01-10"],
      ["Wage", 14, "typed", "2026-01-11"],
    ],
    {names: true},
  ),
  sheet("Plan", ["Planting", "Weeks"], [["Long Acre", 6]]),
)
const opened = () =>
  createStore(
    rates,
    (act) => act(),
    undefined,
    () => "2026-05-25",
  )
const rowsOf = (store: Store) => store.getState().document.sheets[0]!.rows
const rowAfter = (at: string, content: Content) => {
  const store = opened()
  store.run(enterContent(cellAt(at), content))
  return [rowsOf(store)[0], store.getState().undoable.map(({name}) => name)]
}

it("dates a named value that is set anew and tags it as typed, in the same step", () => {
  expect(rowAfter("B1", 4)).toEqual([["Rate", 4, "typed", "2026-05-25"], ["value of Rate"]])
  const store = opened()
  store.run(enterContent(cellAt("B1"), 4))
  store.undo()
  expect(rowsOf(store)).toEqual(rates.sheets[0]!.rows)
})

it("leaves date and tag as they are where the value stays, or something else is typed", () => {
  expect(rowAfter("B1", 3)).toEqual([["Rate", 3, "looked up", "2026-01-10"], []])
  const both = {
    type: "enter",
    cells: [
      {at: cellAt("B1"), content: 3},
      {at: cellAt("C2"), content: "assumption"},
    ],
  } as const
  expect(withDaysOfNames(rates, both, "2026-05-25")).toBe(both)
  expect(rowAfter("C1", "assumption")[0]).toEqual(["Rate", 3, "assumption", "2026-01-10"])
  expect(rowAfter("D1", "2026-02-01")[0]).toEqual(["Rate", 3, "looked up", "2026-02-01"])
  expect(rowAfter("B1", "=1+2")[0]).toEqual(["Rate", "=1+2", "looked up", "2026-01-10"])
  expect(rowAfter("B1", null)[0]).toEqual(["Rate", null, "looked up", "2026-01-10"])
})

it.each<[string, (store: Store) => unknown]>([
  [
    "pasted",
    (store) => {
      store.turn(choose(cellAt("B1")))
      pasteTable(store, {from: "elsewhere", rows: [["14"]]})
    },
  ],
  [
    "put in by replacing",
    (store) => {
      const search = {query: "3", where: "values", wholeCell: true, matchCase: false} as const
      const hits = findIn(store.workbook, search)
      store.run(() => replaceEdit(replacementsOf(store.workbook, hits, search, "14"), "3", "14"))
    },
  ],
  [
    "put in with a case",
    (store) => {
      store.run(addCase("Dear"))
      store.run(putInCase("Dear", cellAt("B1"), 14))
      expect(rowsOf(store)[0]).toEqual(rates.sheets[0]!.rows[0])
      store.run(putCaseIn("Dear"))
    },
  ],
])("dates it when it is %s", (_, act) => {
  const store = opened()
  act(store)
  expect(rowsOf(store)[0]).toEqual(["Rate", 14, "typed", "2026-05-25"])
})

it("dates it when it is filled down, and the row it was filled from not", () => {
  const store = opened()
  store.turn(choose(cellAt("B1")))
  store.turn(reachTo(1, 1))
  store.run((state) => fillDown(state).edit)
  expect(rowsOf(store)).toEqual([rates.sheets[0]!.rows[0], ["Wage", 3, "typed", "2026-05-25"]])
})

it("keeps the day and the tag that come with it, as in a row that is pasted", () => {
  const store = opened()
  store.turn(choose(cellAt("B1")))
  pasteTable(store, {from: "elsewhere", rows: [["5", "assumption", "2026-03-01"]]})
  expect(rowsOf(store)[0]).toEqual(["Rate", 5, "assumption", "2026-03-01"])
})

it("dates a value that is given a name", () => {
  const store = opened()
  store.run(nameValue({sheet: 1, row: 0, col: 1}, "Weeks_there"))
  expect(rowsOf(store)[2]).toEqual(["Weeks_there", 6, "typed", "2026-05-25"])
})
