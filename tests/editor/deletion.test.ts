import {describe, expect, it} from "vitest"
import {reachTo} from "../../src/editor/block"
import {deleteColumns, deleteRows, deleteSheet, usesOfRows} from "../../src/editor/deletion"
import {answerRather, answerYes} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore, type Store} from "../../src/editor/store"
import type {Document} from "../../src/workbook/document"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const farm = documentOf(
  sheet(
    "Plantings",
    ["Planting", "Area", column("Share", {formula: "=B1/SUM(B:B)"})],
    [
      ["Long Acre", 6, "="],
      ["Sand Piece", 5, "="],
      ["Top Corner", 3, "="],
      [null, null, "="],
    ],
  ),
  sheet(
    "Samples",
    ["Planting", "Sugar"],
    [
      ["Long Acre", 400],
      ["Sand Piece", 410],
      ["Sand Piece", 420],
    ],
  ),
  sheet(
    "Plan",
    ["Planting", "Sum", "Of it"],
    [
      ["Sand Piece", "=SUM(Plantings!B1:B3)", "=Plantings!B2*2"],
      ["Long Acre", "=#REF!+1", "=Plantings!B1"],
    ],
  ),
)
const on = (row: number, to = row) => {
  const store = createStore(farm)
  store.turn(choose(cellAt(`A${row}`)))
  store.turn(reachTo(to - 1, 0))
  return store
}

describe("what uses rows", () => {
  it("is each formula that would lose its only cell, and each sheet that has the name", () => {
    expect(usesOfRows(farm, 0, 1, 1)).toEqual({
      broken: [{sheet: 2, row: 0, col: 2}],
      named: [
        {at: {sheet: 1, row: 1, col: 0}, name: "Sand Piece", count: 2},
        {at: {sheet: 2, row: 0, col: 0}, name: "Sand Piece", count: 1},
      ],
    })
  })
  it("is told by where a formula stands now, below the rows as above them", () => {
    const field = documentOf(
      sheet(
        "Field",
        ["A", "B"],
        [
          [1, null],
          [2, null],
          [3, "=A1+A2"],
        ],
      ),
    )
    expect(usesOfRows(field, 0, 0, 1).broken).toEqual([{sheet: 0, row: 2, col: 1}])
  })
  it("is nothing for a row that only ranges cover", () => {
    expect(usesOfRows(farm, 0, 2, 2)).toEqual({broken: [], named: []})
  })
  it("passes over a name that stays on the sheet in another row", () => {
    expect(usesOfRows(farm, 1, 1, 1).named).toEqual([])
  })
})

describe("deleting rows", () => {
  it("goes on at once where nothing uses them", () => {
    const store = on(3)
    deleteRows(store)
    expect(store.getState()).toMatchObject({question: null})
    expect(store.getState().document.sheets[0]!.rows).toHaveLength(3)
  })
  it("asks where they are used, with a link to each place, and undo brings them back", () => {
    const store = on(2)
    deleteRows(store)
    const {question, document} = store.getState()
    expect(document).toBe(farm)
    expect(question!.asks).toBe(
      "What is in this row goes by its name on other sheets too. 1 formula points at this row alone and would say #REF!. Delete this row all the same?",
    )
    expect(question!.links!.map(({words}) => words)).toEqual([
      "Sand Piece on Samples, 2 rows",
      "Sand Piece on Plan",
      "Plan!C1",
    ])
    answerYes(store)
    expect(store.valueAt({sheet: 2, row: 0, col: 2})).toMatchObject({code: "#REF!"})
    store.undo()
    expect(store.getState().document).toBe(farm)
  })
  it("takes several rows out in one step", () => {
    const store = on(3, 4)
    deleteRows(store)
    expect(store.getState().document.sheets[0]!.rows).toHaveLength(2)
    expect(store.getState().undoable.at(-1)!.name).toBe("2 rows taken out of Plantings")
  })
})

describe("deleting a planting", () => {
  const plantings = documentOf(
    sheet(
      "Plantings",
      [column("Planting", {part: "name of planting"})],
      [["Long Acre"], ["Sand Piece"], ["Top Corner"]],
    ),
    sheet("Plan", ["Planting"], [["Sand Piece"], ["Long Acre"], ["Top Corner"], ["Sand Piece"]]),
    sheet(
      "Stands",
      ["Stand", "Planting", "Note"],
      [
        ["Long Acre", "Long Acre", 1],
        ["Sand Piece anew", "Sand Piece", 2],
        ["Top Corner", "Top Corner", "Sand Piece"],
      ],
    ),
    sheet("Sums", ["Sum"], [["=SUM(Stands!C:C)"]]),
  )
  const keys = (store: Store) => store.getState().document.sheets.map(({rows}) => rows.map(([key]) => key))
  const deleting = (document: Document, row: number, to = row) => {
    const store = createStore(document)
    store.turn(choose(cellAt(`A${row}`)))
    store.turn(reachTo(to - 1, 0))
    deleteRows(store)
    return store
  }

  it("takes every row that goes by its name, in one step", () => {
    const store = deleting(plantings, 2)
    expect(store.getState().question).toMatchObject({
      asks: "Sand Piece stands in 3 other rows on 2 sheets, which find it by its name. Delete it there too, with all that was measured and recorded of it?",
      yes: "Here alone",
      rather: {words: "Delete it everywhere"},
    })
    answerRather(store)
    const left = ["Long Acre", "Top Corner"]
    expect(keys(store).slice(0, 3)).toEqual([left, left, left])
    expect(store.valueAt({sheet: 3, row: 0, col: 0})).toBe(1)
    expect(store.getState().undoable.map(({name}) => name)).toEqual(["Sand Piece deleted"])
    store.undo()
    expect(store.getState().document).toBe(plantings)
  })

  it("takes the row alone where that is said, and several plantings at once", () => {
    const alone = deleting(plantings, 2)
    answerYes(alone)
    expect(keys(alone).slice(0, 2)).toEqual([["Long Acre", "Top Corner"], keys(createStore(plantings))[1]])
    const both = deleting(plantings, 1, 2)
    expect(both.getState().question!.asks).toMatch(/^2 plantings stand in 5 other rows on 2 sheets/)
    answerRather(both)
    expect(keys(both).slice(0, 3)).toEqual([["Top Corner"], ["Top Corner"], ["Top Corner"]])
  })

  it("goes by the name as formulas do, without regard to capitals", () => {
    const named = (one: string) => [["Long Acre"], [one], ["Top Corner"], ["sand piece"]]
    const written = (one: string) => ({
      ...plantings,
      sheets: plantings.sheets.with(1, sheet("Plan", ["Planting"], named(one))),
    })
    const store = deleting(written("SAND PIECE"), 2)
    expect(store.getState().question!.asks).toMatch(/^Sand Piece stands in 3 other rows on 2 sheets/)
    answerRather(store)
    expect(keys(store)[1]).toEqual(["Long Acre", "Top Corner"])
  })

  it("does not offer it where a formula would lose its cell, or on another sheet", () => {
    const pointing = {
      ...plantings,
      sheets: plantings.sheets.with(3, sheet("Sums", ["Sum"], [["=Stands!C2"]])),
    }
    expect(deleting(pointing, 2).getState().question).not.toHaveProperty("rather")
    expect(deleting(pointing, 1).getState().question).toHaveProperty("rather")
    const store = createStore(plantings)
    store.turn(choose({sheet: 1, row: 1, col: 0}))
    deleteRows(store)
    expect(store.getState().question).not.toHaveProperty("rather")
  })
})

describe("deleting a column or a sheet", () => {
  const last = () => on(1).getState()
  it("goes on at once where nothing rests on the column", () => {
    const store = createStore(farm)
    store.turn(choose({sheet: 2, row: 0, col: 1}))
    deleteColumns(store)
    expect(store.getState().question).toBeNull()
    expect(store.getState().document.sheets[2]!.columns.map(({heading}) => heading)).toEqual([
      "Planting",
      "Of it",
    ])
  })
  it("asks where formulas rest on it, with a link to each", () => {
    const store = on(1)
    store.turn(choose(cellAt("B1")))
    deleteColumns(store)
    const {question} = store.getState()
    expect(question!.asks).toMatch(
      /^\d formulas point at column Area and would say #REF!\. Delete column Area all the same\?$/,
    )
    expect(question!.links!.map(({words}) => words)).toContain("Plan!C1")
    answerYes(store)
    expect(store.valueAt({sheet: 2, row: 0, col: 2})).toMatchObject({code: "#REF!"})
    store.undo()
    expect(store.getState().document).toBe(farm)
  })
  it("asks before a sheet goes, and says what rests on it", () => {
    const store = on(1)
    deleteSheet(store)
    expect(store.getState().question!.asks).toBe(
      "Sheet Plantings goes, with its 4 rows. 3 formulas point at it and would say #REF!. Delete it?",
    )
    answerYes(store)
    expect(store.getState().document.sheets.map(({name}) => name)).toEqual(["Samples", "Plan"])
    store.undo()
    expect(store.getState().document).toBe(farm)
    expect(last().document).toBe(farm)
  })
})
