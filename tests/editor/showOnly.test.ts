import {describe, expect, it} from "vitest"
import {chooseBlock, chooseColumns, chosenCells, reachStep} from "../../src/editor/block"
import {copyChosen, pasteTable, pastingOf, readTable} from "../../src/editor/clipboard"
import {clearCells, enterContent} from "../../src/editor/commands/cells"
import {fillDown, fillSeries} from "../../src/editor/commands/fill"
import {insertRowsAbove} from "../../src/editor/commands/rows"
import {markCut} from "../../src/editor/cut"
import {deleteRows} from "../../src/editor/deletion"
import {startTyping} from "../../src/editor/editing"
import {pointStep} from "../../src/editor/pointing"
import {blockEdge, choose, chosenStep, tabTarget} from "../../src/editor/selection"
import {showAllRows, showOnlyLikeThis} from "../../src/editor/showOnly"
import {sortRows} from "../../src/editor/sortRows"
import {createStore} from "../../src/editor/store"
import {summaryOf} from "../../src/editor/summary"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const samples = documentOf(
  sheet(
    "Samples",
    [column("Planting", {format: "text"}), column("Sugar", {unit: "mg/g"})],
    [
      ["Long Acre", 400],
      ["Sand Piece", 500],
      ["Long Acre", 410],
      ["Sand Piece", 510],
      ["Long Acre", 420],
    ],
  ),
  sheet("Sum", ["A"], [["=SUM(Samples!B:B)"]]),
)
/** Only the three rows of Long Acre are shown, and the first of them is chosen. */
function longAcre() {
  const store = createStore(samples)
  store.turn(choose(cellAt("A1")))
  showOnlyLikeThis(store)
  store.turn(choose(cellAt("B1")))
  return store
}
function showOnlyLike(store: ReturnType<typeof longAcre>, address: string) {
  showAllRows(store)
  store.turn(choose(cellAt(address)))
  showOnlyLikeThis(store)
}
const sugars = (store: ReturnType<typeof longAcre>) =>
  store.getState().document.sheets[0]!.rows.map((row) => row[1])

describe("rows shown alone", () => {
  it("are those that have the same in the chosen column, and say so", () => {
    const {only, said} = (() => {
      const store = createStore(samples)
      showOnlyLikeThis(store)
      return store.getState()
    })()
    expect(only).toEqual({sheet: 0, rows: [0, 2, 4], words: "Planting is Long Acre"})
    expect(said).toBe("3 of 5 rows shown: Planting is Long Acre.")
  })
  it("are walked from one to the next", () => {
    const store = longAcre()
    const walked = [1, 1, 1, -1].map((down) => {
      store.turn(chosenStep(down, 0))
      return store.getState().cell.row
    })
    expect(walked).toEqual([2, 4, 4, 2])
    expect(tabTarget(store.getState(), true)).toMatchObject({row: 4, col: 0})
    store.turn(choose(cellAt("A4")))
    expect(store.getState().cell.row).toBe(2)
  })
  it("are those that edges of filled cells and pointing go by", () => {
    const store = longAcre()
    store.run(enterContent(cellAt("B4"), null))
    expect(blockEdge(store.getState(), 1, 0)).toEqual(cellAt("B5"))
    store.run(enterContent(cellAt("B3"), null))
    expect(blockEdge(store.getState(), 1, 0)).toEqual(cellAt("B5"))
    store.run(enterContent(cellAt("B5"), null))
    store.turn(choose(cellAt("B3")))
    expect(blockEdge(store.getState(), -1, 0)).toEqual(cellAt("B1"))
    store.turn(startTyping("="))
    store.turn(pointStep(1, 0))
    expect(store.getState().editing?.text).toBe("=B5")
  })
  it("are the only ones that an act on a block reaches", () => {
    const store = longAcre()
    store.turn(reachStep(2, 0))
    expect(store.getState().said).toBe("B1:B5 chosen, 3 cells.")
    expect([...chosenCells(store.getState())].map(({row}) => row)).toEqual([0, 2, 4])
    expect(summaryOf(store)).toContain("3 of 3 filled; 3 numbers: sum 1\u202f230")
    expect(copyChosen(store).plain).toBe("400\r\n410\r\n420")
    store.run((state) => fillDown(state).edit)
    expect(sugars(store)).toEqual([400, 500, 400, 510, 400])
    store.run(clearCells)
    expect(sugars(store)).toEqual([null, 500, null, 510, null])
  })
  it("take the rows of a paste one by one, and leave the hidden ones between", () => {
    const store = longAcre()
    pasteTable(store, readTable("1\n2\n3"))
    expect(sugars(store)).toEqual([1, 500, 2, 510, 3])
    expect(store.getState().said).toContain(
      "3 cells pasted in B1:B5: into 3 shown rows, 2 hidden rows between left as they were.",
    )
    expect(store.getState()).toMatchObject({cell: cellAt("B1"), reach: {row: 4, col: 1}})
    store.undo()
    expect(store.getState().document).toBe(samples)
    store.turn(reachStep(2, 0))
    pasteTable(store, readTable("7"))
    expect(sugars(store)).toEqual([7, 500, 7, 510, 7])
  })
  it("take no more rows of a paste than there are", () => {
    const store = longAcre()
    store.turn(choose(cellAt("B3")))
    const {failed, edit} = pastingOf(store, readTable("1\n2\n3"))
    expect(failed).toEqual([{at: cellAt("B6"), why: "no further row is shown"}])
    expect(edit).toMatchObject({cells: [{at: cellAt("B3")}, {at: cellAt("B5")}]})
  })
  it("are cut and moved alone, each to the next row that is shown", () => {
    const store = longAcre()
    store.turn(reachStep(1, 0))
    const {plain, cells} = copyChosen(store)
    store.turn(markCut(cells))
    showAllRows(store)
    store.turn(choose({sheet: 1, row: 1, col: 0}))
    pasteTable(store, readTable(plain))
    expect(sugars(store)).toEqual([null, 500, null, 510, 420])
    expect(store.getState().document.sheets[1]!.rows.slice(1)).toEqual([[400], [410]])
  })
  it("leave formulas and totals as they are", () => {
    expect(longAcre().valueAt({sheet: 1, row: 0, col: 0})).toBe(2240)
  })
  it("are those of a block that is chosen by its address, or as whole columns", () => {
    const store = longAcre()
    const chosen = () => [store.getState().cell.row, store.getState().reach?.row]
    store.turn(chooseBlock({sheet: 0, rows: [1, 3], cols: [1, 1]}))
    expect(chosen()).toEqual([2, undefined])
    store.turn(choose(cellAt("B3")))
    store.turn(chooseBlock({sheet: 0, rows: [1, 1], cols: [1, 1]}))
    expect(chosen()).toEqual([0, undefined])
    showOnlyLike(store, "A2")
    store.turn(chooseColumns)
    expect(chosen()).toEqual([1, 3])
  })
  it("are filled from each other, and counted alone", () => {
    const store = longAcre()
    store.turn(choose(cellAt("B3")))
    store.run((state) => fillDown(state).edit)
    expect(sugars(store)).toEqual([400, 500, 400, 510, 420])
    store.turn(choose(cellAt("B1")))
    store.run((state) => fillDown(state).edit)
    expect(sugars(store)).toEqual([400, 500, 400, 510, 420])
    store.turn(reachStep(2, 0))
    store.run((state) => fillSeries(1, "number", "rows")(state).edit)
    expect(sugars(store)).toEqual([400, 500, 401, 510, 402])
    store.run(insertRowsAbove)
    expect(store.getState().document.sheets[0]!.rows).toHaveLength(8)
  })
  it("are followed when rows are sorted, and when that is undone and done again", () => {
    const store = longAcre()
    store.turn(choose(cellAt("A3")))
    const shown = () => {
      const {only, document} = store.getState()
      return only!.rows.map((row) => document.sheets[0]!.rows[row]!.join(" "))
    }
    sortRows(store, true)
    expect(store.getState().only!.rows).toEqual([2, 3, 4])
    const all = ["Long Acre 400", "Long Acre 410", "Long Acre 420"]
    expect(shown()).toEqual(all)
    store.turn(choose(cellAt("A4")))
    store.undo()
    expect([store.getState().only!.rows, shown()]).toEqual([[0, 2, 4], all])
    expect([0, 2, 4]).toContain(store.getState().cell.row)
    store.redo()
    expect([store.getState().only!.rows, shown()]).toEqual([[2, 3, 4], all])
  })
  it("are not deleted together with hidden ones", () => {
    const store = longAcre()
    store.turn(reachStep(1, 0))
    deleteRows(store)
    expect(store.getState().document).toBe(samples)
    expect(store.getState().said).toContain("some that are not shown")
  })
  it("end when rows come or go, or when asked", () => {
    const store = longAcre()
    store.run(insertRowsAbove)
    expect(store.getState().only).toBeNull()
    const other = longAcre()
    showAllRows(other)
    expect(other.getState().only).toBeNull()
  })
})
