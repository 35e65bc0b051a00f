import {readFileSync} from "node:fs"
import {addPicking, addSample, addSpears} from "../../src/editor/field"
import {createStore, type Store} from "../../src/editor/store"
import type {Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"

export const {document: farm} = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}

export const mark = (n: number, device = "Phone") => ({
  id: n.toString(16).padStart(32, "0"),
  device,
  entered: "2026-05-25T06:12:00.000Z",
})

/** What a phone with a copy of the farm enters in a morning. */
export function phone(): Store {
  const store = createStore(farm)
  store.run(addPicking("Sand Piece", "2026-05-25", 1160.5, mark(1)))
  store.run(addSpears("Long Acre", "2026-05-25", {8: 3, 9: 6, 11: 7, 12: 12}, mark(2)))
  store.run(addSample("Top Corner", "2026-05-20", 1, "sample reading", 18.5, mark(3, "=Phone, the red one")))
  store.run(() => ({
    type: "addField",
    entries: [{...mark(4), takesBack: mark(2).id}],
    from: "here",
    name: "taken back",
  }))
  return store
}
