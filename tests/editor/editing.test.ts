import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {
  answerRather,
  answerYes,
  chooseKeeping,
  dropEditing,
  editAgain,
  keepEditing,
  startEditing,
  startTyping,
  typeText,
} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore, type Store} from "../../src/editor/store"
import {contentAt} from "../../src/workbook/document"
import {extraAt} from "../../src/workbook/extras"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"
import {farm, farmStore, inPlan, planContent} from "./farm"

/** A store on a cell of the plan, with this typed over it. */
function typing(address: string, text: string, store = farmStore()): Store {
  store.turn(choose(inPlan(address)))
  store.turn(startTyping(text))
  return store
}

const editing = (store: Store) => store.getState().editing

describe("beginning to edit", () => {
  it.each([
    ["A1", "Long Acre"],
    ["B1", "2026-04-18"],
    ["C1", "6"],
    ["D2", "=B2+C2*7"], // the formula of the column, as it reads in this row
    ["F2", ""],
    ["A3", ""],
  ])("on purpose shows what %s holds, the caret at its end", (address, text) => {
    const store = farmStore()
    store.turn(choose(inPlan(address)))
    store.turn(startEditing)
    expect(editing(store)).toMatchObject({text, caret: text.length, arrowsLeave: false, refused: null})
  })

  it("by typing takes the place of what the cell holds, and arrow keys leave it", () => {
    expect(editing(typing("C1", "7"))).toMatchObject({text: "7", caret: 1, arrowsLeave: true, refused: null})
  })

  it("puts a question away", () => {
    const store = typing("D1", "20 May")
    keepEditing(store, 1, 0)
    expect(store.getState().question).not.toBeNull()
    store.turn(startEditing)
    expect(store.getState().question).toBeNull()
  })

  it("asks in the next row to fill too, where the column will be worked out", () => {
    const store = typing("D3", "20 May")
    expect(keepEditing(store, 1, 0)).toBe(false)
    expect(store.getState().question).not.toBeNull()
  })

  it("leaves the arrow keys to the caret in a formula, however it began", () => {
    expect(editing(typing("C1", "="))!.arrowsLeave).toBe(false)
    expect(editing(typing("C1", "=S"))!.arrowsLeave).toBe(false)
    const store = typing("C1", "")
    store.turn(typeText("=", 1))
    expect(editing(store)!.arrowsLeave).toBe(false)
    const number = typing("C1", "1")
    number.turn(typeText("12", 2))
    expect(editing(number)).toMatchObject({text: "12", caret: 2, arrowsLeave: true, refused: null})
  })
})

describe("dropping what is typed", () => {
  it("leaves the cell as it was, and says so", () => {
    const store = typing("C1", "7")
    store.turn(dropEditing)
    expect(store.getState()).toMatchObject({
      editing: null,
      document: farm,
      said: "Unchanged.",
      cell: inPlan("C1"),
    })
  })
})

describe("keeping what is typed", () => {
  it.each([
    [1, 0, "C2"],
    [-1, 0, "C1"],
    [0, 1, "D1"],
    [0, -1, "B1"],
    [0, 0, "C1"],
  ])("moves %d down and %d right", (down, right, to) => {
    const store = typing("C1", "7")
    expect(keepEditing(store, down, right)).toBe(true)
    expect(planContent(store, "C1")).toBe(7)
    expect(store.getState()).toMatchObject({editing: null, cell: inPlan(to), undoable: [{document: farm}]})
    expect(store.getState().said).toBe("Close of Long Acre moved from 30 May to 6 Jun. 2 values changed.")
  })

  it("makes no step of what did not change, and moves all the same", () => {
    for (const address of ["A1", "C1", "D1", "F2"]) {
      const store = farmStore()
      store.turn(choose(inPlan(address)))
      store.turn(startEditing)
      expect(keepEditing(store, 1, 0)).toBe(true)
      expect(store.getState()).toMatchObject({
        editing: null,
        document: farm,
        undoable: [],
        said: "Unchanged.",
      })
      expect(store.getState().cell.row).toBe(inPlan(address).row + 1)
    }
    const store = typing("C1", "6")
    expect(keepEditing(store, 1, 0)).toBe(true)
    expect(store.getState().undoable).toEqual([])
  })

  it("does nothing while nothing is typed", () => {
    const store = farmStore()
    const before = store.getState()
    expect(keepEditing(store, 1, 0)).toBe(true)
    expect(store.getState()).toBe(before)
  })

  it("holds what cannot stand there in the line, with the reason", () => {
    const store = typing("C1", "13")
    expect(keepEditing(store, 1, 0)).toBe(false)
    const refused = "Weeks 13 is above 12 (did you mean 1.3?)"
    expect(store.getState()).toMatchObject({document: farm, cell: inPlan("C1"), said: `${refused}.`})
    expect(editing(store)).toMatchObject({text: "13", caret: 2, arrowsLeave: true, refused})
    store.turn(typeText("12", 2)) // mended, so no longer at fault
    expect(editing(store)!.refused).toBeNull()
    expect(keepEditing(store, 1, 0)).toBe(true)
    expect(planContent(store, "C1")).toBe(12)
  })

  it("fills the next row, which takes the formulas of its columns", () => {
    const store = typing("A3", "Sand Piece")
    expect(keepEditing(store, 0, 1)).toBe(true)
    expect(store.getState().document.sheets[1]!.rows[2]).toEqual(["Sand Piece", null, null, "=", "=", null])
    expect(store.getState().cell).toEqual(inPlan("B3"))
  })

  it("completes a date with the year of the season, or this year where none is named", () => {
    const store = typing("B1", "25 Apr")
    keepEditing(store, 1, 0)
    expect(planContent(store, "B1")).toBe("2026-04-25")
    const later = typing("B1", "25 Apr", createStore({...farm, season: "Winter 2031 to 2032"}))
    keepEditing(later, 1, 0)
    expect(planContent(later, "B1")).toBe("2031-04-25")
    const {season: _, ...unnamed} = farm
    const now = typing("B1", "25 Apr", createStore(unnamed))
    keepEditing(now, 1, 0)
    expect(planContent(now, "B1")).toBe(`${new Date().getFullYear()}-04-25`)
  })

  it("reads dates in all their forms in a cell that holds one, where a column takes anything", () => {
    const asOf = {sheet: 2, row: 0, col: 1}
    const keep = (text: string) => {
      const store = farmStore()
      store.turn(choose(asOf))
      store.turn(startTyping(text))
      keepEditing(store, 0, 0)
      return store
    }
    expect(keep("5 May").valueAt(asOf)).toBe(dayOf("2026-05-05"))
    expect(keep("03/04").getState().question!.asks).toContain("3 Apr 2026 or 4 Mar 2026")
    expect(keep("=TODAY()").getState().editing).toBeNull()
    const rate = {...asOf, row: 1}
    const store = farmStore()
    store.turn(choose(rate))
    store.turn(startTyping("0.9"))
    keepEditing(store, 0, 0)
    expect(store.valueAt(rate)).toBe(0.9)
  })
})

describe("typing over a worked-out cell", () => {
  const asked = () => {
    const store = typing("D1", "20 May")
    expect(keepEditing(store, 1, 0)).toBe(false)
    return store
  }

  it("is asked about first", () => {
    const asks = "Close of Long Acre is worked out. Type over it?"
    expect(asked().getState()).toMatchObject({
      document: farm,
      editing: null,
      said: asks,
      cell: inPlan("D1"),
      question: {asks, yes: "Type over it"},
    })
  })

  it("is done at a yes, as one step", () => {
    const store = asked()
    expect(answerYes(store)).toBe(true)
    expect(planContent(store, "D1")).toBe("2026-05-20")
    expect(store.getState()).toMatchObject({question: null, undoable: [{name: "close of Long Acre"}]})
    expect(answerYes(store)).toBe(false)
  })

  it("is not done without one", () => {
    const store = asked()
    store.turn(choose(inPlan("C1")))
    expect(store.getState()).toMatchObject({question: null, document: farm})
  })

  it("is not asked about again", () => {
    const store = asked()
    answerYes(store)
    expect(keepEditing(typing("D1", "21 May", store), 1, 0)).toBe(true)
    expect(planContent(store, "D1")).toBe("2026-05-21")
  })
})

describe("choosing another cell", () => {
  it("keeps what is typed", () => {
    const store = typing("C1", "7")
    expect(chooseKeeping(store, inPlan("F2"))).toBe(true)
    expect(planContent(store, "C1")).toBe(7)
    expect(store.getState().cell).toEqual(inPlan("F2"))
  })

  it("is held by what cannot be kept, and by a question", () => {
    const refused = typing("C1", "many")
    expect(chooseKeeping(refused, inPlan("F2"))).toBe(false)
    expect(refused.getState()).toMatchObject({cell: inPlan("C1"), editing: {text: "many"}})
    const guarded = typing("D1", "20 May")
    expect(chooseKeeping(guarded, inPlan("F2"))).toBe(false)
    expect(guarded.getState().cell).toEqual(inPlan("D1"))
  })

  it("just chooses when nothing is typed", () => {
    const store = farmStore()
    expect(chooseKeeping(store, inPlan("F2"))).toBe(true)
    expect(store.getState()).toMatchObject({cell: inPlan("F2"), said: "", undoable: []})
  })
})

describe("an unlikely number", () => {
  const records = documentOf(
    sheet(
      "Records",
      [
        "Planting",
        column("Crop", {unit: "kg/ha", format: 0, rule: {least: 0, most: 90000, usual: [100, 12000]}}),
        column("Marked", {format: 0, rule: {usual: [1, 9], onlyMarks: true}}),
      ],
      [
        ["Long Acre", 4150, 5],
        ["Long Acre", 3820, 5],
      ],
    ),
  )
  const asked = () => {
    const store = createStore(records)
    store.turn(choose(cellAt("B2")))
    store.turn(startTyping("44 000"))
    keepEditing(store, 1, 0)
    return store
  }
  const crop = (store: Store) => contentAt(store.getState().document, cellAt("B2"))

  it("is asked about, with what was probably meant, and nothing is kept yet", () => {
    const store = asked()
    expect(store.getState().question?.asks).toBe(
      "Crop of Long Acre 44\u202f000\u00a0kg/ha is outside the usual 100\u00a0kg/ha to 12\u202f000\u00a0kg/ha. Did you mean 4\u202f400\u00a0kg/ha?",
    )
    expect(crop(store)).toBe(3820)
  })

  it("gives way to what was meant, and the person goes on below", () => {
    const store = asked()
    answerRather(store)
    expect(crop(store)).toBe(4400)
    expect(store.getState().cell.row).toBe(2)
  })

  it("is kept with its reason as a note, in one step", () => {
    const store = asked()
    answerYes(store, "two years in one", new Date("2026-05-25T08:00:00Z"))
    expect(crop(store)).toBe(44000)
    expect(extraAt(store.getState().document, cellAt("B2"))?.note).toEqual({
      text: "Kept: two years in one",
      written: "2026-05-25T08:00:00.000Z",
    })
    store.undo()
    expect(store.getState().document).toBe(records)
  })

  it("can be changed as it was typed", () => {
    const store = asked()
    store.turn(editAgain(store.getState().question!.typed!))
    expect(store.getState()).toMatchObject({question: null, editing: {text: "44 000", arrowsLeave: false}})
  })

  it("is only marked where its column does not ask", () => {
    const store = createStore(records)
    store.turn(choose(cellAt("C1")))
    store.turn(startTyping("12"))
    expect(keepEditing(store, 0, 0)).toBe(true)
    expect(contentAt(store.getState().document, cellAt("C1"))).toBe(12)
  })
})
