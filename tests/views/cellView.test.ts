import {expect, it} from "vitest"
import {reachTo} from "../../src/editor/block"
import {enterContent} from "../../src/editor/commands/cells"
import {dropEditing, startTyping} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {cellViewAt} from "../../src/views/cellView"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

it("draws the line round the chosen block on its outer sides alone", () => {
  const store = createStore(
    documentOf(
      sheet(
        "Plan",
        ["A", "B", "C", "D"],
        Array.from({length: 5}, () => [1, 2, 3, 4]),
      ),
    ),
  )
  store.turn(choose(cellAt("B2")))
  store.turn(reachTo(3, 3))
  const edges = (address: string) => cellViewAt(store, cellAt(address)).edges
  expect(["B2", "C2", "D2", "B3", "C3", "D3", "B4", "C4", "D4"].map(edges)).toEqual([
    "t l",
    "t",
    "t r",
    "l",
    "",
    "r",
    "b l",
    "b",
    "b r",
  ])
  expect([edges("A2"), edges("B5"), cellViewAt(store, cellAt("C3")).chosen]).toEqual(["", "", "block"])
})

it("is another where its row is called otherwise, so that it is drawn and heard anew", () => {
  const store = createStore(documentOf(sheet("Beds", ["Bed", "Plant", "Sugar"], [["East", 1, 400]])))
  const name = () => cellViewAt(store, cellAt("C1")).name
  expect(name()).toBe("Sugar of East")
  store.run(enterContent(cellAt("A2"), "East"))
  expect(name()).toBe("Sugar of East, plant 1")
  store.run(enterContent(cellAt("A1"), "West"))
  expect(name()).toBe("Sugar of West")
})

it("says of a limit without data that it is not measured yet, of a measured one that it has no day; of other errors their code", () => {
  const store = createStore(
    documentOf(
      sheet(
        "Plan",
        [
          column("spear size", {part: "limit", formula: "=NA()"}),
          column("Yield", {formula: "=NA()"}),
          column("no spears", {part: "limit", formula: "=FILTER({1;2},{FALSE();FALSE()})"}),
          column("thicker", {
            part: "limit",
            formula: '=SPEAR.DATE_AT({"2026-05-04";"2026-05-11"},{12;13},9.5)',
          }),
        ],
        [["=", "=", "=", "="]],
      ),
    ),
  )
  const [limit, other] = ["A1", "B1"].map((address) => cellViewAt(store, cellAt(address)))
  expect([limit!.text, limit!.full]).toEqual(["not measured yet", "not measured yet: Not available yet."])
  expect([other!.text, other!.isFault]).toEqual(["#N/A", true])
  const [none, thicker] = ["C1", "D1"].map((address) => cellViewAt(store, cellAt(address)))
  expect(none!.text).toBe("not measured yet")
  expect(thicker!.full).toBe("no day yet: Not thinning: the line through the diameters does not fall.")
  expect(thicker!.text).toBe("no day yet")
})

it("shows what is being typed in its place, and what it holds once that is dropped", () => {
  const store = createStore(documentOf(sheet("Beds", ["Bed", "Sugar"], [["East", 400]])))
  const view = () => cellViewAt(store, cellAt("B1"))
  store.turn(choose(cellAt("B1")))
  expect(view()).toMatchObject({text: "400", full: "400", typing: false})
  store.turn(startTyping("41"))
  expect(view()).toMatchObject({text: "41", full: "41", typing: true, align: "left"})
  store.turn(dropEditing)
  expect(view()).toMatchObject({text: "400", full: "400", typing: false})
})
