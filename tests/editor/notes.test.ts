import {expect, it} from "vitest"
import {bringNotes, keepNote, settleNote} from "../../src/editor/commands/notes"
import {createStore} from "../../src/editor/store"
import {compare} from "../../src/workbook/compare"
import {extraAt} from "../../src/workbook/extras"
import {cellAt, documentOf, sheet} from "../workbook/documents"

const NOON = new Date("2026-05-25T12:00:00Z")
const at = cellAt("B1")
const trial = () => createStore(documentOf(sheet("Plan", ["Planting", "Area"], [["Long Acre", 6.4]])))
const noteOf = (store: ReturnType<typeof trial>) => extraAt(store.getState().document, at)?.note

it("keeps a note with who wrote it and when, in a step that is named and can be undone", () => {
  const store = trial()
  store.run(keepNote(at, " surveyed by tape ", "AB ", NOON))
  expect(noteOf(store)).toEqual({text: "surveyed by tape", by: "AB", written: "2026-05-25T12:00:00.000Z"})
  expect(store.getState().undoable.at(-1)?.name).toBe("note of area of Long Acre")
  store.undo()
  expect(noteOf(store)).toBeUndefined()
})

it("does nothing when the note reads so already", () => {
  const store = trial()
  store.run(keepNote(at, "surveyed", "", NOON))
  expect(store.canRun(keepNote(at, "surveyed", "", new Date()))).toBe(false)
})

it("takes a note away when nothing is written, and does nothing where there is none", () => {
  const store = trial()
  expect(store.canRun(keepNote(at, "  ", "", NOON))).toBe(false)
  store.run(keepNote(at, "surveyed", "", NOON))
  store.run(keepNote(at, "", "", NOON))
  expect(noteOf(store)).toBeUndefined()
})

it("settles a note, and opens it again", () => {
  const store = trial()
  store.run(keepNote(at, "surveyed", "", NOON))
  store.run(settleNote(at))
  expect(noteOf(store)?.settled).toBe(true)
  store.run(settleNote(at))
  expect(noteOf(store)).toEqual({text: "surveyed", written: NOON.toISOString()})
})

it("puts the notes of another copy beside one's own, wherever their rows stand, and once", () => {
  const [mine, theirs] = [trial(), trial()]
  const name = cellAt("A1")
  theirs.run(keepNote(at, "measure again", "CD", NOON))
  theirs.run(keepNote(name, "leased", "", NOON))
  theirs.run(() => ({type: "insertRows", sheet: 0, before: 0, count: 1}))
  mine.run(keepNote(at, "surveyed", "AB", NOON))
  const notes = () => compare(theirs.getState().document, mine.getState().document).notes
  mine.run(bringNotes(notes(), "theirs.json"))
  expect(noteOf(mine)).toMatchObject({text: "surveyed\nCD: measure again", by: "AB"})
  expect(extraAt(mine.getState().document, name)?.note?.text).toBe("leased")
  expect(mine.getState().undoable.at(-1)?.name).toBe("2 notes from theirs.json")
  expect(notes()).toEqual([])
  expect(mine.canRun(bringNotes(notes(), "theirs.json"))).toBe(false)
})
