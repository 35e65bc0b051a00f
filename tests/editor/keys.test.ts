import {describe, expect, it} from "vitest"
import {enterContent} from "../../src/editor/commands/cells"
import {startEditing, startTyping} from "../../src/editor/editing"
import {bindings, lineBindings, pressKey, pressLineKey, type NameList} from "../../src/editor/keys"
import {choose, showPanel} from "../../src/editor/selection"
import {createStore, type Store} from "../../src/editor/store"
import {documentOf, sheet} from "../workbook/documents"
import {farm, farmStore, inPlan, planContent} from "./farm"

const PAGE = 1

/** Presses a key written as in the keys list, "Ctrl+Shift+z"; "Cmd" is the key that stands for Ctrl on some machines. */
const press = (store: Store, keys: string, page = PAGE) => pressKey(store, pressOf(keys), page)

function pressOf(keys: string) {
  const parts = keys.split("+")
  const held = (name: string) => parts.slice(0, -1).includes(name)
  const key = parts.at(-1) === "Space" ? " " : parts.at(-1) || "+"
  const event = {shiftKey: held("Shift"), ctrlKey: held("Ctrl"), metaKey: held("Cmd"), altKey: held("Alt")}
  return {key: event.shiftKey && key.length === 1 ? key.toUpperCase() : key, ...event}
}

function on(address: string, store = farmStore()): Store {
  store.turn(choose(inPlan(address)))
  return store
}

describe("a key that moves", () => {
  // The plan has six columns and two rows, with the next to fill as a third. F2 is blank.
  const moves: [string, string, string][] = [
    ["ArrowLeft", "C2", "B2"],
    ["ArrowRight", "C2", "D2"],
    ["ArrowUp", "C2", "C1"],
    ["ArrowDown", "C2", "C3"],
    ["ArrowDown", "C3", "C3"],
    ["ArrowRight", "F1", "F1"],
    ["PageUp", "C2", "C1"],
    ["PageDown", "C2", "C3"],
    ["Home", "C2", "A2"],
    ["End", "C2", "F2"],
    ["Ctrl+Home", "C2", "A1"],
    ["Ctrl+End", "A3", "F2"],
    ["Ctrl+ArrowLeft", "E1", "A1"],
    ["Ctrl+ArrowRight", "A2", "E2"],
    ["Ctrl+ArrowUp", "C2", "C1"],
    ["Ctrl+ArrowDown", "C1", "C2"],
    ["Tab", "F1", "A2"],
    ["Shift+Tab", "A2", "F1"],
  ]
  it.each(moves)("%s goes from %s to %s", (keys, from, to) => {
    const store = on(from)
    expect(press(store, keys)).toBe(true)
    expect(store.getState()).toMatchObject({cell: inPlan(to), editing: null, document: farm})
    const onMac = on(from)
    expect(press(onMac, keys.replace("Ctrl", "Cmd"))).toBe(true)
    expect(onMac.getState().cell).toEqual(inPlan(to))
  })

  it("goes a screenful of rows, whatever that is", () => {
    const long = createStore(
      documentOf(
        sheet(
          "Long",
          ["A"],
          Array.from({length: 40}, () => [1]),
        ),
      ),
    )
    press(long, "PageDown", 12)
    press(long, "PageDown", 12)
    press(long, "PageUp", 5)
    expect(long.getState().cell.row).toBe(19)
    press(long, "PageDown", 100)
    expect(long.getState().cell.row).toBe(40)
  })

  it("is left to the page where Tab leaves the sheet", () => {
    const end = on("F3")
    expect(press(end, "Tab")).toBe(false)
    expect(end.getState().cell).toEqual(inPlan("F3"))
    expect(press(on("A1"), "Shift+Tab")).toBe(false)
  })

  it("has been tried for every binding that moves alone", () => {
    const bound = bindings.flatMap(({keys}) => keys)
    const tried = moves.map(([keys]) => keys)
    expect(
      bound.filter((keys) => /^(Ctrl\+)?(Arrow|Page|Home|End)|^(Shift\+)?Tab$/.test(keys)).sort(),
    ).toEqual([...new Set(tried)].sort())
    expect(new Set(bound).size).toBe(bound.length) // no key is bound twice
  })
})

describe("a key that edits", () => {
  it.each(["Enter", "F2"])("%s begins with what the cell holds", (keys) => {
    const store = on("C1")
    expect(press(store, keys)).toBe(true)
    expect(store.getState().editing).toMatchObject({text: "6", caret: 1, arrowsLeave: false, refused: null})
  })

  it("Delete empties the cell, and says when there is nothing to empty", () => {
    const store = on("C1")
    expect(press(store, "Delete")).toBe(true)
    expect(planContent(store, "C1")).toBeNull()
    for (const address of ["D1", "F2", "A3"]) {
      const kept = on(address)
      expect(press(kept, "Delete")).toBe(true)
      expect(kept.getState()).toMatchObject({
        document: farm,
        said: "Nothing to empty here: what is chosen is blank or worked out.",
      })
    }
  })

  it("Backspace begins with nothing, and changes nothing yet", () => {
    const store = on("C1")
    expect(press(store, "Backspace")).toBe(true)
    expect(store.getState()).toMatchObject({document: farm, editing: {text: "", caret: 0, arrowsLeave: true}})
  })

  it.each(["7", "x", "=", "+", "-", ".", "'", "\u0142", "\u{1F331}"])(
    "%s takes the place of what the cell holds",
    (keys) => {
      const store = on("C1")
      expect(press(store, keys)).toBe(true)
      expect(store.getState()).toMatchObject({document: farm, editing: {text: keys, caret: keys.length}})
    },
  )

  it("writes capitals, and the letters that other keyboards write with Alt", () => {
    for (const [keys, text] of [
      ["Shift+s", "S"],
      ["Alt+\u00f8", "\u00f8"],
      ["Ctrl+Alt+\u0142", "\u0142"],
      ["Ctrl+Alt+@", "@"],
    ] as const) {
      const store = on("A1")
      expect(press(store, keys)).toBe(true)
      expect(store.getState().editing!.text).toBe(text)
    }
  })
})

describe("the keys of the history", () => {
  const changed = () => {
    const store = on("C1")
    store.run(enterContent(inPlan("C1"), 7))
    return store
  }

  it.each(["Ctrl+z", "Cmd+z", "Ctrl+Z"])("%s undoes", (keys) => {
    const store = changed()
    expect(press(store, keys)).toBe(true)
    expect(store.getState().document).toBe(farm)
    expect(press(store, keys)).toBe(true) // used, though there is nothing more to undo
  })

  it.each(["Ctrl+y", "Ctrl+Shift+z", "Cmd+Shift+z", "Cmd+y"])("%s does it again", (keys) => {
    const store = changed()
    store.undo()
    expect(press(store, keys)).toBe(true)
    expect(planContent(store, "C1")).toBe(7)
  })
})

describe("the key that finds", () => {
  it.each(["Ctrl+f", "Cmd+f"])("%s opens the panel for it, and asks again while it is open", (keys) => {
    const store = on("C1")
    expect(store.getState().panel).toBe("where from")
    expect(press(store, keys)).toBe(true)
    expect(store.getState()).toMatchObject({panel: "find", asksToFind: 1, cell: inPlan("C1")})
    press(store, keys)
    expect(store.getState()).toMatchObject({panel: "find", asksToFind: 2})
    store.turn(showPanel("help"))
    expect(store.getState()).toMatchObject({panel: "help", asksToFind: 2})
  })

  it("keeps what is typed first, or stays with what cannot be kept", () => {
    const store = on("C1")
    store.turn(startTyping("7"))
    press(store, "Ctrl+f")
    expect(planContent(store, "C1")).toBe(7)
    expect(store.getState()).toMatchObject({panel: "find", editing: null})
    const stuck = on("C1")
    stuck.turn(startTyping("13"))
    press(stuck, "Ctrl+f")
    expect(stuck.getState()).toMatchObject({panel: "where from", editing: {text: "13"}})
  })
})

describe("a key of no use here", () => {
  it.each([
    "Escape",
    "F5",
    "Insert",
    "Dead",
    "Shift+Enter",
    "Alt+ArrowLeft",
    "Ctrl+p",
    "Cmd+s",
    "Ctrl+Shift+y",
    "Alt+f",
    "Alt+ ",
    "Ctrl+Alt+t",
    "Cmd+Alt+\u0142",
  ])("is left to the page: %s", (keys) => {
    const store = on("C1")
    const before = store.getState()
    expect(press(store, keys)).toBe(false)
    expect(store.getState()).toBe(before)
  })
})

describe("a key that copies, fills or opens", () => {
  it.each(["Ctrl+c", "Ctrl+x", "Ctrl+v"])("%s is left to the browser, which then asks the sheet", (keys) => {
    const store = on("C1")
    expect(press(store, keys)).toBe(false)
    expect(store.getState().document).toBe(farm)
  })
  it("Ctrl+D fills from the row above, and says when a cell is worked out", () => {
    const store = on("C2")
    expect(press(store, "Ctrl+d")).toBe(true)
    expect(planContent(store, "C2")).toBe(6)
    const guarded = on("D2")
    press(guarded, "Ctrl+d")
    expect(guarded.getState()).toMatchObject({
      document: farm,
      said: "Nothing was filled: 1 worked-out cell stays as it is.",
    })
  })
  it("Ctrl+R fills from the cell to the left, but not with what cannot stand there", () => {
    const store = on("B1")
    press(store, "Ctrl+r")
    expect(store.getState()).toMatchObject({
      document: farm,
      said: "Nothing was filled: it stands there already, or cannot stand there.",
    })
  })
  it("Ctrl+; types today's date", () => {
    const store = on("B1")
    press(store, "Ctrl+;")
    const now = new Date()
    expect(store.getState().editing!.text).toBe(
      `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, "0")}-${String(now.getDate()).padStart(2, "0")}`,
    )
  })
  it.each(["Shift+F10", "ContextMenu"])("%s opens the list of more acts", (keys) => {
    const store = on("B1")
    expect(press(store, keys)).toBe(true)
    expect(store.getState().showsActs).toBe(true)
  })
})

describe("a key on the sheet while something is typed", () => {
  const typing = (text: string) => {
    const store = on("C1")
    store.turn(startTyping(text))
    return store
  }

  it("goes on with it", () => {
    const store = typing("1")
    press(store, "2")
    expect(store.getState().editing).toMatchObject({text: "12", caret: 2, arrowsLeave: true, refused: null})
    press(store, "Backspace")
    expect(store.getState().editing!.text).toBe("1")
    store.turn(startEditing)
    press(store, "5")
    expect(store.getState().editing).toMatchObject({text: "65", arrowsLeave: false})
  })

  it.each([
    ["Enter", "C2"],
    ["ArrowDown", "C2"],
    ["ArrowRight", "D1"],
    ["Tab", "D1"],
    ["Shift+Tab", "B1"],
    ["End", "F1"],
  ])("keeps it before it moves: %s to %s", (keys, to) => {
    const store = typing("7")
    expect(press(store, keys)).toBe(true)
    expect(planContent(store, "C1")).toBe(7)
    expect(store.getState()).toMatchObject({cell: inPlan(to), editing: null})
  })

  it("moves nowhere with what cannot be kept", () => {
    const store = typing("13")
    for (const keys of ["ArrowDown", "Enter", "Tab", "Ctrl+End"]) expect(press(store, keys)).toBe(true)
    expect(store.getState()).toMatchObject({cell: inPlan("C1"), document: farm, editing: {text: "13"}})
  })
})

describe("a key in the line while something is typed", () => {
  /** A list of names that notes what was asked of it. */
  function list(isOpen = false, isChosen = false) {
    const asked: string[] = []
    const ask = (what: string) => () => void asked.push(what)
    const step: NameList["step"] = (by) => asked.push(`step ${by}`)
    return {isOpen, isChosen, step, take: ask("take"), close: ask("close"), asked}
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
    expect([...tried, "Escape", "F2", "F4"].sort()).toEqual([...bound].sort()) // no key is bound twice
  })
})

describe("the keys list", () => {
  it("says what every key does, each in words of its own", () => {
    const words = [...bindings, ...lineBindings].map(({does}) => does)
    expect(new Set(words).size).toBe(words.length)
    for (const does of words) expect(does).toMatch(/^[A-Z].*[a-z]$/)
  })
})
