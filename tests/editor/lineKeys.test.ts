import {describe, expect, it} from "vitest"
import {startTyping} from "../../src/editor/editing"
import {lineBindings, pressLineKey, type NameList} from "../../src/editor/lineKeys"
import {sheetBindings} from "../../src/editor/sheetKeys"
import type {Store} from "../../src/editor/store"
import {farm, inPlan, planContent} from "./farm"
import {on, pressOf} from "./pressing"

describe("a key in the line while something is typed", () => {
  /** A list of names that notes what was asked of it. */
  function list(isOpen = false, isChosen = false, isMarked = true) {
    const asked: string[] = []
    const ask = (what: string) => () => void asked.push(what)
    const step: NameList["step"] = (by) => asked.push(`step ${by}`)
    return {isOpen, isChosen, isMarked, step, take: ask("take"), close: ask("close"), asked}
  }
  const typing = (text: string, address = "C1") => {
    const store = on(address)
    store.turn(startTyping(text))
    return store
  }
  const pressLine = (store: Store, keys: string, names: NameList = list()) =>
    pressLineKey(store, pressOf(keys), names)

  const keeps: [string, string][] = [
    ["Enter", "C3"],
    ["Shift+Enter", "C1"],
    ["Tab", "D2"],
    ["Shift+Tab", "B2"],
    ["ArrowDown", "C3"],
    ["ArrowUp", "C1"],
    ["ArrowLeft", "B2"],
    ["ArrowRight", "D2"],
  ]
  it.each(keeps)("%s keeps it and goes to %s", (keys, to) => {
    const store = typing("7", "C2")
    expect(pressLine(store, keys)).toBe(true)
    expect(planContent(store, "C2")).toBe(7)
    expect(store.getState()).toMatchObject({cell: inPlan(to), editing: null})
  })

  it("leaves the arrows to the caret after F2 and in a formula", () => {
    const store = typing("7")
    expect(pressLine(store, "F2")).toBe(true)
    for (const one of [store, typing("=7")])
      for (const keys of ["ArrowDown", "ArrowUp", "ArrowLeft", "ArrowRight"])
        expect(pressLine(one, keys)).toBe(false)
  })

  const points: [string, string][] = [
    ["Ctrl+ArrowLeft", "=SUM(B2"],
    ["Ctrl+ArrowRight", "=SUM(D2"],
    ["Ctrl+ArrowUp", "=SUM(C1"],
    ["Ctrl+ArrowDown", "=SUM(C3"],
    ["Ctrl+Shift+ArrowLeft", "=SUM(B2"],
    ["Ctrl+Shift+ArrowRight", "=SUM(D2"],
    ["Ctrl+Shift+ArrowUp", "=SUM(C1"],
    ["Ctrl+Shift+ArrowDown", "=SUM(C3"],
    ["Ctrl+Space", "=SUM(C:C"],
    ["Alt+PageDown", "=SUM('Named values'!A1"],
    ["Alt+PageUp", "=SUM('Read me'!A1"],
  ]
  it.each(points)("%s points, where a formula waits for a reference: %s", (keys, text) => {
    const store = typing("=SUM(", "C2")
    expect(pressLine(store, keys)).toBe(true)
    expect(store.getState().editing!.text).toBe(text)
    const other = typing("=SUM(1", "C2")
    expect(pressLine(other, keys)).toBe(false)
    expect(other.getState().editing!.text).toBe("=SUM(1")
  })

  it("widens what was pointed at with Shift", () => {
    const store = typing("=SUM(", "D2")
    for (const keys of ["Ctrl+ArrowLeft", "Ctrl+Shift+ArrowUp", "Cmd+Shift+ArrowLeft"]) pressLine(store, keys)
    expect(store.getState().editing!.text).toBe("=SUM(B1:C2")
  })

  it("F4 fixes the reference at the caret, and is left to the page elsewhere", () => {
    const store = typing("=A1")
    expect(pressLine(store, "F4")).toBe(true)
    expect(store.getState().editing!.text).toBe("=$A$1")
    expect(pressLine(typing("=1"), "F4")).toBe(false)
  })

  it("Escape drops it", () => {
    const store = typing("7")
    expect(pressLine(store, "Escape")).toBe(true)
    expect(store.getState()).toMatchObject({document: farm, editing: null, said: "Unchanged."})
  })

  it.each([
    ["ArrowDown", false, "step 1"],
    ["ArrowUp", false, "step -1"],
    ["Tab", false, "take"],
    ["Enter", true, "take"],
    ["Escape", false, "close"],
  ])("%s goes to the open list of names", (keys, isChosen, what) => {
    const store = typing("=SU")
    const names = list(true, isChosen)
    expect(pressLine(store, keys, names)).toBe(true)
    expect(names.asked).toEqual([what])
    expect(store.getState().editing!.text).toBe("=SU")
  })

  it("Enter keeps it while no name of the list is chosen", () => {
    const store = typing("=SUM(1)")
    const names = list(true, false)
    expect(pressLine(store, "Enter", names)).toBe(true)
    expect(names.asked).toEqual([])
    expect(planContent(store, "C1")).toBe("=SUM(1)")
  })

  it("belongs to the field when it is in no list", () => {
    for (const keys of ["a", "Ctrl+a", "Ctrl+z", "Home", "Shift+ArrowLeft", "Delete", "Space"])
      expect(pressLine(typing("=SUM("), keys)).toBe(false)
  })

  it("has been tried for every binding", () => {
    const tried = [...keeps, ...points].map(([keys]) => keys)
    const bound = lineBindings.flatMap(({keys}) => keys)
    expect([...tried, "Escape", "F2", "F4", "Alt+ArrowDown"].sort()).toEqual([...bound].sort()) // no key is bound twice
  })
})

describe("the keys list", () => {
  it("says what every key does, each in words of its own", () => {
    const words = [...sheetBindings, ...lineBindings].map(({does}) => does)
    expect(new Set(words).size).toBe(words.length)
    for (const does of words) expect(does).toMatch(/^[A-Z].*[a-z]$/)
  })
})
