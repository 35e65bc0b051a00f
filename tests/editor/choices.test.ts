import {describe, expect, it} from "vitest"
import {choicesAt} from "../../src/editor/choices"
import {
  choicesNow,
  dropEditing,
  keepEditing,
  openChoices,
  startTyping,
  takeChoice,
  typeText,
} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {contentAt} from "../../src/workbook/document"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const KINDS = ["frost", "hail", "Slugs"]
const farm = documentOf(
  sheet(
    "Losses",
    [
      column("Planting", {format: "text"}),
      column("Night", {format: "date"}),
      column("Lost", {format: 0}),
      column("What", {format: "text", rule: {words: KINDS}}),
      column("Twice", {formula: "=C1*2"}),
      column("Remark"),
    ],
    [
      ["Sand Piece", "2026-05-03", 5, "frost", "=", "Looked at again, with a sentence that is far too long"],
      ["Sand Piece", null, 6, "drought", "=", "late"],
      [null, null, null, null, "=", "=C1"],
    ],
  ),
  sheet(
    "Plantings",
    [column("Planting", {format: "text", part: "name of planting"}), column("Area", {format: 0})],
    [
      ["Well Field", 1],
      ["Sand Piece", 2],
    ],
  ),
)
const choices = (address: string) => choicesAt(farm, cellAt(address))
const at = (address: string) => {
  const store = createStore(farm)
  store.turn(choose(cellAt(address)))
  return store
}
const content = (store: ReturnType<typeof at>, address: string) =>
  contentAt(store.getState().document, cellAt(address))

describe("the words for a cell", () => {
  it("are those its column takes, in their order", () => expect(choices("D3")).toEqual(KINDS))
  it("are all plantings, where the column holds some", () =>
    expect(choices("A3")).toEqual(["Well Field", "Sand Piece"]))
  it("are else the words of the other rows, no sentences and no formulas", () => {
    expect(choices("F3")).toEqual(["late"])
    expect(choices("F2")).toEqual([])
  })
  it.each(["B3", "C3", "E3"])("are none in %s, which holds dates, numbers or a formula", (address) =>
    expect(choices(address)).toEqual([]),
  )
})

describe("the open list", () => {
  it("shows all words at first, then those that begin with what is typed", () => {
    const store = at("D1")
    store.turn(openChoices)
    expect(store.getState().said).toContain("3 words to choose from")
    expect(choicesNow(store.getState())).toEqual(KINDS)
    store.turn(typeText("H", 1))
    expect(choicesNow(store.getState())).toEqual(["hail"])
    expect(content(store, "D1")).toBe("frost")
    store.turn(typeText("Hx", 2)) // none begins so: all can be chosen from
    expect(choicesNow(store.getState())).toEqual(KINDS)
    store.turn(dropEditing)
    expect(choicesNow(store.getState())).toEqual([])
  })
  it("puts a word in by one step of the history", () => {
    const store = at("D1")
    store.turn(openChoices)
    expect(takeChoice(store, "hail")).toBe(true)
    expect(content(store, "D1")).toBe("hail")
    expect(store.getState()).toMatchObject({editing: null, cell: cellAt("D1")})
    expect(store.getState().undoable).toHaveLength(1)
  })
  it("says so where there is none", () => {
    const store = at("C3")
    store.turn(openChoices)
    expect(store.getState().editing).toBeNull()
    expect(store.getState().said).toBe("There is no list of words for Lost of row 3.")
  })
})

describe("a column that takes listed words alone", () => {
  const type = (text: string) => {
    const store = at("D3")
    store.turn(startTyping(text))
    keepEditing(store, 0, 0)
    return store
  }
  it("takes one in any case, as it is spelt in the list, and nothing at all", () => {
    expect(content(type("slugs"), "D3")).toBe("Slugs")
    expect(content(type(""), "D3")).toBeNull()
  })
  it("refuses another, a number and one behind an apostrophe, and keeps them in the line", () => {
    for (const text of ["snow", "12", "'snow"]) {
      const {editing} = type(text).getState()
      expect(editing).toMatchObject({text})
      expect(editing!.refused).toContain(`“${text}” is not in the list: What takes frost, hail, Slugs`)
    }
  })
  it("leaves alone what stood there before", () => {
    const store = at("D2")
    store.turn(openChoices)
    expect(store.getState().editing!.text).toBe("drought")
    expect(keepEditing(store, 1, 0)).toBe(true)
    expect(content(store, "D2")).toBe("drought")
  })
})
