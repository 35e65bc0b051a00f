import {expect, it} from "vitest"
import {enterContent} from "../../src/editor/commands/cells"
import {createStore} from "../../src/editor/store"
import type {Content} from "../../src/workbook/document"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const day = new Date(2026, 4, 25)
const rates = documentOf(
  sheet(
    "Named values",
    [
      "Name",
      column("Value"),
      column("Tag", {format: "text", part: "named tag"}),
      column("Date", {format: "date", part: "named on"}),
    ],
    [["Rate", 3, "looked up", "2026-01-10"]],
    {names: true},
  ),
)
const rowAfter = (at: string, content: Content) => {
  const store = createStore(rates)
  store.run(enterContent(cellAt(at), content, day))
  return [store.getState().document.sheets[0]!.rows[0], store.getState().undoable.map(({name}) => name)]
}

it("dates a named value that is set anew and tags it as typed, in the same step", () => {
  expect(rowAfter("B1", 4)).toEqual([["Rate", 4, "typed", "2026-05-25"], ["value of Rate"]])
})

it("leaves date and tag as they are where the value stays, or something else is typed", () => {
  expect(rowAfter("B1", 3)).toEqual([["Rate", 3, "looked up", "2026-01-10"], []])
  expect(rowAfter("C1", "assumption")[0]).toEqual(["Rate", 3, "assumption", "2026-01-10"])
  expect(rowAfter("D1", "2026-02-01")[0]).toEqual(["Rate", 3, "looked up", "2026-02-01"])
  expect(rowAfter("B1", "=1+2")[0]).toEqual(["Rate", "=1+2", "looked up", "2026-01-10"])
})
