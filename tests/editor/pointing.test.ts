import {describe, expect, it} from "vitest"
import {keepEditing, dropEditing, openSheetKeeping, startTyping, typeText} from "../../src/editor/editing"
import {
  canPoint,
  isPointing,
  pointAt,
  pointAtColumn,
  pointAtSheet,
  pointStep,
  pointWholeColumn,
} from "../../src/editor/pointing"
import {choose} from "../../src/editor/selection"
import type {Store} from "../../src/editor/store"
import {farm, farmStore, inPlan, PLAN, planContent} from "./farm"

const NAMES = 2

/** A store with this typed in a cell of the plan, the caret at the end or where "|" stands. */
function typing(address: string, marked: string): Store {
  const store = farmStore()
  store.turn(choose(inPlan(address)))
  const text = marked.replace("|", "")
  store.turn(startTyping(text))
  store.turn(typeText(text, marked.includes("|") ? marked.indexOf("|") : text.length))
  return store
}

/** The text with the caret where "|" stands. */
function line(store: Store) {
  const {text, caret} = store.getState().editing!
  return `${text.slice(0, caret)}|${text.slice(caret)}`
}

describe("a reference may be put in", () => {
  it.each([
    "=|",
    "=SUM(|",
    "=SUM(|)",
    "=SUM(A1,|",
    "=SUM(A1, | ,B1)",
    "=A1+|",
    "=A1 - |",
    "=2*|+1",
    "=A1^|",
    "=A1&|",
    "=A1<>|",
    "=A1>=|",
    "=-|",
    "=A1:|",
    "='Crop values'!A1:|",
    '="a"&|',
    "=(|)%",
  ])("at %s", (marked) => expect(canPoint(marked.replace("|", ""), marked.indexOf("|"))).toBe(true))

  it.each([
    "|",
    "|=",
    "12+|",
    "=A1|",
    "=|A1",
    "=SU|M(A1)",
    "=SUM|(A1)",
    "=SUM(A1)|",
    "=1|",
    "=50%|",
    '="a+|',
    '="a+|b"',
    "=SUM({1,|",
    "=A:|",
    "=A1:B2:|",
    "=Rate:|",
    "='Crop values'!|",
    "=A1+|B1",
    "=A1+|(B1)",
    "=A1;|",
  ])("but not at %s", (marked) => expect(canPoint(marked.replace("|", ""), marked.indexOf("|"))).toBe(false))
})

describe("pointing at a cell", () => {
  it("puts its reference at the caret and says what it is", () => {
    const store = typing("F1", "=SUM(|)*2")
    store.turn(pointAt(inPlan("C2")))
    expect(line(store)).toBe("=SUM(C2|)*2")
    expect(store.getState()).toMatchObject({cell: inPlan("F1"), said: "C2, Weeks of Well Field."})
  })

  it("takes the place of the reference just put in, until something else is typed", () => {
    const store = typing("F1", "=")
    store.turn(pointAt(inPlan("C2")))
    store.turn(pointAt(inPlan("B1")))
    expect(line(store)).toBe("=B1|")
    store.turn(typeText("=B1+", 4))
    store.turn(pointAt(inPlan("C1")))
    expect(line(store)).toBe("=B1+C1|")
    store.turn(typeText("=B1+C1", 3)) // the caret was moved
    expect(isPointing(store.getState())).toBe(false)
    const before = store.getState().editing
    store.turn(pointAt(inPlan("A1")))
    expect(store.getState().editing).toBe(before)
  })

  it("makes a range from where it began, whichever way it goes", () => {
    const store = typing("F1", "=SUM(")
    store.turn(pointAt(inPlan("C2")))
    store.turn(pointAt(inPlan("B1"), true))
    expect(line(store)).toBe("=SUM(B1:C2|")
    store.turn(pointAt(inPlan("D2"), true))
    expect(line(store)).toBe("=SUM(C2:D2|")
    store.turn(pointAt(inPlan("C2"), true))
    expect(line(store)).toBe("=SUM(C2|")
  })

  it("is the second corner of a range that is being typed", () => {
    const store = typing("F1", "=SUM(B1:")
    store.turn(pointAt(inPlan("C2")))
    store.turn(pointAt(inPlan("D2"), true))
    expect(line(store)).toBe("=SUM(B1:D2|")
    store.turn(pointAtColumn({sheet: PLAN, col: 1}))
    expect(line(store)).toBe("=SUM(B1:D2|")
    expect(store.getState().said).toBe("A range goes from cell to cell of one sheet.")
    store.turn(pointAtSheet(NAMES))
    expect(store.getState()).toMatchObject({cell: inPlan("F1"), editing: {text: "=SUM(B1:D2"}})
  })

  it("takes whole columns", () => {
    const store = typing("F1", "=SUM(")
    store.turn(pointAtColumn({sheet: PLAN, col: 2}))
    expect(line(store)).toBe("=SUM(C:C|")
    expect(store.getState().said).toBe("C:C, the whole column Weeks.")
    store.turn(pointAtColumn({sheet: PLAN, col: 1}, true))
    expect(line(store)).toBe("=SUM(B:C|")
  })

  it("does nothing while words are typed, or nothing is", () => {
    for (const store of [typing("F1", "12"), farmStore()]) {
      const before = store.getState().editing
      store.turn(pointAt(inPlan("C2")))
      store.turn(pointAtSheet(NAMES))
      expect(store.getState().editing).toBe(before)
    }
  })
})

describe("pointing by steps", () => {
  it("goes from the cell being edited, then from the reference last put in, and stops at the edges", () => {
    const store = typing("D2", "=")
    store.turn(pointStep(0, -1))
    expect(line(store)).toBe("=C2|")
    store.turn(pointStep(-1, 0))
    expect(line(store)).toBe("=C1|")
    store.turn(pointStep(-1, 0))
    expect(line(store)).toBe("=C1|")
    for (let i = 0; i < 5; i++) store.turn(pointStep(1, 0))
    expect(line(store)).toBe("=C3|") // the next row to fill
    store.turn(typeText("=C3+", 4))
    store.turn(pointStep(0, 1))
    expect(line(store)).toBe("=C3+E2|")
  })

  it("widens to a range, and to the whole column", () => {
    const store = typing("D2", "=SUM(")
    store.turn(pointStep(0, -1))
    store.turn(pointStep(-1, 0, true))
    store.turn(pointStep(0, -1, true))
    expect(line(store)).toBe("=SUM(B1:C2|")
    store.turn(pointWholeColumn)
    expect(line(store)).toBe("=SUM(B:B|")
    store.turn(pointStep(0, 1, true))
    expect(line(store)).toBe("=SUM(B:C|")
    store.turn(pointStep(0, -1))
    expect(line(store)).toBe("=SUM(B1|")
  })
})

describe("pointing on another sheet", () => {
  it("keeps the formula, puts in the first cell there, then what is pointed at, with the sheet's name", () => {
    const store = typing("F1", "=2*")
    openSheetKeeping(store, NAMES)
    expect(line(store)).toBe("=2*'Named values'!A1|")
    expect(store.getState().cell).toEqual({sheet: NAMES, row: 0, col: 0})
    store.turn(pointStep(1, 1))
    expect(line(store)).toBe("=2*'Named values'!B2|")
    store.turn(pointAt({sheet: NAMES, row: 0, col: 1}, true))
    expect(line(store)).toBe("=2*'Named values'!B1:B2|")
  })

  it("comes back to the cell when it is kept, and when it is dropped", () => {
    const store = typing("F1", "=2*")
    openSheetKeeping(store, NAMES)
    store.turn(pointStep(1, 1))
    expect(keepEditing(store, 1, 0)).toBe(true)
    expect(planContent(store, "F1")).toBe("=2*'Named values'!B2")
    expect(store.valueAt(inPlan("F1"))).toBe(1.9) // twice the rate of 0.95
    expect(store.getState()).toMatchObject({cell: inPlan("F2"), editing: null})
    const dropped = typing("F1", "=2*")
    openSheetKeeping(dropped, NAMES)
    dropped.turn(dropEditing)
    expect(dropped.getState()).toMatchObject({cell: inPlan("F1"), editing: null, document: farm})
  })

  it("puts nothing in when the sheet of the formula is opened again", () => {
    const store = typing("F1", "=2*")
    openSheetKeeping(store, NAMES)
    openSheetKeeping(store, PLAN)
    expect(line(store)).toBe("=2*'Named values'!A1|")
    expect(store.getState().cell).toEqual(inPlan("F1"))
    store.turn(pointAt(inPlan("C1")))
    expect(line(store)).toBe("=2*C1|")
  })

  it("is no pointing while something else is typed: that is kept first, or holds the person where they are", () => {
    const store = typing("C1", "7")
    openSheetKeeping(store, NAMES)
    expect(planContent(store, "C1")).toBe(7)
    expect(store.getState()).toMatchObject({cell: {sheet: NAMES, row: 0, col: 0}, editing: null})
    const refused = typing("C1", "many")
    openSheetKeeping(refused, NAMES)
    expect(refused.getState()).toMatchObject({cell: inPlan("C1"), editing: {text: "many"}})
  })
})
