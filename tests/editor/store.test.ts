import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {enterContent, putFormulaBack} from "../../src/editor/commands/cells"
import {insertRowsAbove, removeRows} from "../../src/editor/commands/rows"
import {startTyping} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {column, documentOf, sheet} from "../workbook/documents"
import {farm, farmStore, inPlan, PLAN, planContent} from "./farm"

const close = (store: ReturnType<typeof farmStore>) => store.valueAt(inPlan("D1"))

describe("the store", () => {
  it("opens on the first cell of the plan, or of the workbook when it has none", () => {
    expect(farmStore().getState().cell).toEqual(inPlan("A1"))
    expect(createStore(documentOf(sheet("Notes", ["A"], []))).getState().cell).toEqual({
      sheet: 0,
      row: 0,
      col: 0,
    })
  })

  it("opens a reading copy on the page for the lender, where there is one", () => {
    const page = sheet("Lender's page", [column("Line", {part: "page line"})], [])
    const reading = {madeBy: "R.T.", on: "2026-05-25", digest: "", results: ""}
    const copy = {...farm, sheets: [...farm.sheets, page], reading}
    const store = farmStore()
    store.open(copy)
    expect(store.getState().cell).toEqual({sheet: farm.sheets.length, row: 0, col: 0})
    expect(createStore(copy).getState().cell.sheet).toBe(farm.sheets.length)
    store.open({...farm, reading})
    expect(store.getState().cell).toEqual(inPlan("A1"))
  })

  it("runs a command: document, values, history, what changed and what is said", () => {
    const store = farmStore()
    expect(store.run(enterContent(inPlan("C1"), 7))).toBe(true)
    const {document, undoable, changes, said} = store.getState()
    expect(planContent(store, "C1")).toBe(7)
    expect(close(store)).toBe(dayOf("2026-06-06"))
    expect(undoable).toEqual([{document: farm, name: "weeks of Long Acre"}])
    expect(changes).toEqual([
      {at: inPlan("D1"), was: dayOf("2026-05-30"), now: dayOf("2026-06-06")},
      {at: inPlan("E1"), was: dayOf("2026-06-09"), now: dayOf("2026-06-16")},
    ])
    expect(said).toBe("Close of Long Acre moved from 30 May to 6 Jun. 2 values changed.")
    expect(document).toBe(store.workbook.document)
  })

  it("does nothing for a command that gives nothing", () => {
    const store = farmStore()
    const before = store.getState()
    expect(store.run(enterContent(inPlan("C1"), 6))).toBe(false)
    expect(store.canRun(enterContent(inPlan("C1"), 6))).toBe(false)
    expect(store.canRun(enterContent(inPlan("C1"), 7))).toBe(true)
    expect(store.undo()).toBe(false)
    expect(store.redo()).toBe(false)
    expect(store.getState()).toBe(before)
  })

  it("undoes and redoes step by step, to the very same documents", () => {
    const store = farmStore()
    const documents = [farm]
    for (const weeks of [7, 8, 9]) {
      store.run(enterContent(inPlan("C1"), weeks))
      documents.push(store.getState().document)
    }
    for (const before of documents.slice(0, -1).reverse()) {
      expect(store.undo()).toBe(true)
      expect(store.getState().document).toBe(before)
    }
    expect(close(store)).toBe(dayOf("2026-05-30"))
    expect(store.undo()).toBe(false)
    for (const after of documents.slice(1)) {
      expect(store.redo()).toBe(true)
      expect(store.getState().document).toBe(after)
    }
    expect(close(store)).toBe(dayOf("2026-06-20")) // 63 days after 18 Apr
    expect(store.redo()).toBe(false)
  })

  it("says the name of what it undoes and does again, and keeps the name", () => {
    const store = farmStore()
    store.run(enterContent(inPlan("C1"), 7))
    store.undo()
    expect(store.getState()).toMatchObject({said: "Undone: weeks of Long Acre.", undoable: []})
    expect(store.getState().redoable.map(({name}) => name)).toEqual(["weeks of Long Acre"])
    store.redo()
    expect(store.getState()).toMatchObject({said: "Done again: weeks of Long Acre.", redoable: []})
    expect(store.getState().undoable.map(({name}) => name)).toEqual(["weeks of Long Acre"])
  })

  it("shows what an undo changed", () => {
    const store = farmStore()
    store.run(enterContent(inPlan("C1"), 7))
    store.undo()
    expect(store.getState().changes[0]).toEqual({
      at: inPlan("D1"),
      was: dayOf("2026-06-06"),
      now: dayOf("2026-05-30"),
    })
  })

  it("keeps the news of what moved over an act that moves nothing, until rows come or go", () => {
    const store = farmStore()
    store.run(enterContent(inPlan("C1"), 7))
    const {changes} = store.getState()
    store.run(enterContent(inPlan("F2"), "wet corner"))
    expect(store.getState()).toMatchObject({changes: [], moved: changes})
    store.run(() => ({type: "insertRows", sheet: inPlan("A1").sheet, before: 0, count: 1}))
    expect(store.getState().moved).toEqual([])
  })

  it("forgets what was undone once something else is done", () => {
    const store = farmStore()
    store.run(enterContent(inPlan("C1"), 7))
    store.undo()
    store.run(enterContent(inPlan("C2"), 4))
    expect(store.redo()).toBe(false)
    expect(store.getState().undoable.map(({name}) => name)).toEqual(["weeks of Well Field"])
  })

  it("ends editing and questions with every act", () => {
    const store = farmStore()
    const begin = () =>
      store.turn((state) => ({
        ...startTyping("5")(state),
        question: {asks: "Sure?", yes: "Yes", edit: {type: "enter", cells: []}},
      }))
    const acts = [
      () => store.run(enterContent(inPlan("C1"), 7)),
      () => store.undo(),
      () => store.redo(),
      () => store.open(farm),
    ]
    for (const act of acts) {
      begin()
      act()
      expect(store.getState()).toMatchObject({editing: null, question: null})
    }
  })

  it("opens another workbook, and what was open is one undo away", () => {
    const store = farmStore()
    store.run(enterContent(inPlan("C1"), 7))
    store.undo()
    store.turn(choose(inPlan("C2")))
    const other = {...documentOf(sheet("Notes", ["A"], [["=1+1"]])), name: "Other farm"}
    store.open(other)
    expect(store.getState()).toMatchObject({
      document: other,
      cell: {sheet: 0, row: 0, col: 0},
      said: "Other farm is open.",
      redoable: [],
    })
    expect(store.valueAt({sheet: 0, row: 0, col: 0})).toBe(2)
    store.undo()
    expect(store.getState()).toMatchObject({document: farm, said: "Undone: opening Other farm."})
    expect(close(store)).toBe(dayOf("2026-05-30"))
    store.redo()
    expect(store.getState().document).toBe(other)
  })

  it("chooses the nearest cell when the chosen one goes away", () => {
    const store = farmStore()
    store.turn(choose(inPlan("F3"))) // the next row to fill
    store.run(() => ({type: "removeRows", sheet: PLAN, first: 0, count: 2}))
    expect(store.getState().cell).toEqual(inPlan("F1"))
    store.undo()
    store.turn(choose({sheet: 2, row: 1, col: 1}))
    store.open(farm)
    store.turn(choose({sheet: 2, row: 1, col: 1}))
    store.run(() => ({type: "removeRows", sheet: 2, first: 0, count: 1}))
    expect(store.getState().cell).toEqual({sheet: 2, row: 1, col: 1})
  })

  it("tells its listeners, until they leave", () => {
    const store = farmStore()
    let told = 0
    const leave = store.subscribe(() => told++)
    store.turn(choose(inPlan("C2")))
    store.run(enterContent(inPlan("C1"), 7)) // told of the act, then of what it moved
    expect(told).toBe(3)
    leave()
    store.undo()
    expect(told).toBe(3)
  })

  it("shows an act at once, and tells what it moved when there is time", () => {
    const acts: (() => void)[] = []
    const store = createStore(farm, (act) => acts.push(act))
    store.run(enterContent(inPlan("C1"), 7))
    expect(store.getState()).toMatchObject({said: "", changes: []})
    while (acts.length) acts.shift()!()
    const {said, changes} = store.getState()
    expect(said).toContain("changed.")
    expect(changes).not.toEqual([])
  })

  it("leaves the news of an act that a newer one has overtaken", () => {
    const acts: (() => void)[] = []
    const store = createStore(farm, (act) => acts.push(act))
    store.run(enterContent(inPlan("C1"), 7))
    store.undo()
    while (acts.length) acts.shift()!()
    expect(store.getState().said).toMatch(/^Undone/)
  })

  it("says nothing of an undo again over what was said since", () => {
    const acts: (() => void)[] = []
    const store = createStore(farm, (act) => acts.push(act))
    store.run(enterContent(inPlan("C1"), 7))
    store.undo()
    store.turn(() => ({said: "Fern is open, at A1."}))
    while (acts.length) acts.shift()!()
    expect(store.getState().said).toBe("Fern is open, at A1.")
  })
})

describe("rows", () => {
  it("are put in above the chosen one, and undone", () => {
    const store = farmStore()
    store.turn(choose(inPlan("A2")))
    store.run(insertRowsAbove)
    expect(store.getState().document.sheets[PLAN]!.rows.map(([name]) => name)).toEqual([
      "Long Acre",
      null,
      "Well Field",
    ])
    expect(planContent(store, "D2")).toBe("=") // a blank row follows the formulas of its columns
    expect(store.getState().undoable.at(-1)!.name).toBe("row put into Season plan")
    store.undo()
    expect(store.getState().document).toBe(farm)
  })

  it("are taken out, except the one that is not there yet", () => {
    const store = farmStore()
    store.turn(choose(inPlan("A1")))
    store.run(removeRows)
    expect(store.getState().document.sheets[PLAN]!.rows.map(([name]) => name)).toEqual(["Well Field"])
    expect(store.getState().undoable.at(-1)!.name).toBe("row taken out of Season plan")
    store.turn(choose(inPlan("A2")))
    expect(store.run(removeRows)).toBe(false)
  })
})

describe("a typed-over cell", () => {
  it("takes the formula of its column back", () => {
    const store = farmStore()
    store.turn(choose(inPlan("D1")))
    expect(store.canRun(putFormulaBack)).toBe(false)
    store.run(enterContent(inPlan("D1"), "2026-05-20"))
    expect(close(store)).toBe(dayOf("2026-05-20"))
    expect(store.run(putFormulaBack)).toBe(true)
    expect(close(store)).toBe(dayOf("2026-05-30"))
    expect(store.getState().undoable.map(({name}) => name)).toEqual([
      "close of Long Acre",
      "formula of close of Long Acre",
    ])
  })
})

describe("what is told after rows moved", () => {
  it("names the act and calls no value changed", () => {
    const store = createStore(farm)
    store.turn(() => ({cell: {sheet: 0, row: 0, col: 0}}))
    store.run(insertRowsAbove)
    expect(store.getState().changes).toEqual([])
    expect(store.getState().said).toMatch(/^Done: row put into /)
  })
})
