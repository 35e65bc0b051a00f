import {describe, expect, it} from "vitest"
import {canBeNamed, namesWithUse, nameRefused, nameValue} from "../../src/editor/commands/names"
import {keepEditing, startTyping} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const farm = documentOf(
  sheet("Plan", ["Planting", column("Weight", {unit: "kg"}), "Crates"], [["Long Acre", 5, "=Rate*B1+Rate"]]),
  sheet(
    "Named values",
    ["Name", "Value", "Unit", "What it is"],
    [
      ["Rate", 0.95, "money/kg", "Picking"],
      ["Idle", 3, null, null],
    ],
    {names: true},
  ),
)

describe("naming a value", () => {
  it("moves it to the named values with its unit and what it is, in one step, and nothing else changes", () => {
    const store = createStore(farm)
    const before = store.valueAt(cellAt("C1"))
    expect(store.run(nameValue(cellAt("B1"), "Crate_weight"))).toBe(true)
    const {document, undoable} = store.getState()
    expect(document.sheets[1]!.rows[2]).toEqual(["Crate_weight", 5, "kg", "Weight of Long Acre"])
    expect(document.sheets[0]!.rows[0]![1]).toBe("=Crate_weight")
    expect([store.valueAt(cellAt("B1")), store.valueAt(cellAt("C1"))]).toEqual([5, before])
    expect(undoable.map(({name}) => name)).toEqual(["name Crate_weight"])
  })

  it("is for typed values alone, and not for those that have a name", () => {
    expect(["A1", "B1", "C1", "1!B1"].map((at) => canBeNamed(farm, cellAt(at)))).toEqual([
      true,
      true,
      false,
      false,
    ])
    expect(canBeNamed(documentOf(sheet("Plan", ["A"], [[1]])), cellAt("A1"))).toBe(false) // nowhere to keep names
  })

  it.each([
    ["", "A named value needs a name, such as Crate_weight"],
    [
      "Q10",
      "“Q10” cannot be a name: use letters, digits and “_”, begin with a letter, and not like a cell such as B2",
    ],
    ["rate", "There is a value called Rate already: choose another name"],
    ["sum", "SUM is a function: choose another name"],
    ["Crate_weight", null],
  ])("refuses “%s”: %s", (name, refused) => expect(nameRefused(farm, name, ["SUM", "IF"])).toBe(refused))
})

describe("renaming a value in its row", () => {
  const type = (text: string) => {
    const store = createStore(farm)
    store.turn(choose(cellAt("1!A1")))
    store.turn(startTyping(text))
    return {store, isKept: keepEditing(store, 1, 0)}
  }

  it.each(["two words", "B2", "TRUE", "12", "Idle", "Sum"])(
    "stays in the line where it cannot be “%s”",
    (text) => {
      const {store, isKept} = type(text)
      expect(isKept).toBe(false)
      expect(store.getState().editing!.refused).toBe(
        nameRefused(farm, text, store.workbook.standardFunctions) ?? "nothing",
      )
      expect(store.getState().document).toBe(farm)
    },
  )

  it.each(["Wage", "rate"])("is followed by its formulas: %s", (text) => {
    const {store, isKept} = type(text)
    expect(isKept).toBe(true)
    expect(store.getState().document.sheets[0]!.rows[0]![2]).toBe(`=${text}*B1+${text}`)
    expect(store.getState().undoable.at(-1)!.name).toBe(`Rate called ${text}`)
    expect(store.getState().said).toContain(`Rate is called ${text}: 1 formula follows.`)
  })
})

it("lists names with what their rows say and how many formulas use them", () => {
  expect(namesWithUse(farm).map(({name, unit, about, uses}) => [name, unit, about, uses])).toEqual([
    ["Rate", "money/kg", "Picking", 1],
    ["Idle", "", "", 0],
  ])
})
