import {describe, expect, it} from "vitest"
import {enterContent} from "../../src/editor/commands/cells"
import {startEditing, startTyping} from "../../src/editor/editing"
import {showPanel} from "../../src/editor/selection"
import {pressKey, pressPageKey, sheetBindings} from "../../src/editor/sheetKeys"
import {createStore, type Store} from "../../src/editor/store"
import {contentAt} from "../../src/workbook/document"
import {documentOf, sheet} from "../workbook/documents"
import {farm, inPlan, planContent} from "./farm"
import {on, pressOf} from "./pressing"

const PAGE = 1

const press = (store: Store, keys: string, page = PAGE, keepFileCopy = () => {}) =>
  pressKey(store, pressOf(keys), {page, keepFileCopy})

describe("a key beside the sheet", () => {
  const besides = (store: Store, keys: string) =>
    pressPageKey(store, pressOf(keys), {page: PAGE, keepFileCopy: () => {}})
  it("undoes, finds and keeps, and leaves what only the sheet has", () => {
    const store = on("C2")
    const before = store.getState().document
    store.run(enterContent(store.getState().cell, 7))
    expect(store.getState().document).not.toBe(before)
    expect(besides(store, "Ctrl+z")).toBe(true)
    expect(store.getState().document).toBe(before)
    for (const keys of ["ArrowDown", "Delete", "x", "Enter"]) expect(besides(store, keys)).toBe(false)
    expect(store.getState().document).toBe(before)
    expect(besides(store, "Ctrl+f")).toBe(true)
    expect(store.getState().panel).toBe("find")
  })
  it("does nothing while something is typed or asked", () => {
    const store = on("C2")
    store.run(enterContent(store.getState().cell, 7))
    const {document} = store.getState()
    const edit = {type: "enter", cells: []} as const
    store.turn(() => ({question: {asks: "Shall it?", yes: "Yes", edit, links: []}}))
    expect(besides(store, "Ctrl+z")).toBe(false)
    store.turn(() => ({question: null}))
    store.turn(startTyping("1"))
    expect(besides(store, "Ctrl+z")).toBe(false)
    expect(store.getState().document).toBe(document)
  })
})

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
    const bound = sheetBindings.flatMap(({keys}) => keys)
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

  it("Delete empties the cell and says so, or that there is nothing to empty", () => {
    const store = on("C1")
    expect(press(store, "Delete")).toBe(true)
    expect(planContent(store, "C1")).toBeNull()
    expect(store.getState().said).toMatch(/^1 cell emptied\. /)
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

it.each(["Dead", "Alt+Dead", "Process"])(
  "%s goes on to the line, with what the cell holds marked",
  (keys) => {
    const store = on("C1")
    expect(press(store, keys)).toBe(false)
    expect(store.getState().editing).toMatchObject({isMarked: true, caret: 0, arrowsLeave: true})
  },
)

describe("a key of no use here", () => {
  it.each([
    "Escape",
    "F5",
    "Insert",
    "Shift+Enter",
    "Alt+ArrowLeft",
    "Ctrl+p",
    "Ctrl+Dead",
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
  it("Ctrl+S keeps a copy in a file, after what is being typed", () => {
    const store = on("A1")
    let kept = ""
    const keep = () => (kept = String(contentAt(store.getState().document, inPlan("A1"))))
    store.turn(startTyping("Far Acre"))
    expect(press(store, "Ctrl+s", PAGE, keep)).toBe(true)
    expect(kept).toBe("Far Acre")
  })
  it.each(["Ctrl+c", "Ctrl+x", "Ctrl+v"])("%s is left to the browser, which then asks the sheet", (keys) => {
    const store = on("C1")
    expect(press(store, keys)).toBe(false)
    expect(store.getState().document).toBe(farm)
  })
  it("Ctrl+D fills from the row above, and says when a cell is worked out", () => {
    const store = on("C2")
    expect(press(store, "Ctrl+d")).toBe(true)
    expect(planContent(store, "C2")).toBe(6)
    expect(store.getState().said).toMatch(/^1 cell filled\. /)
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
      said: "Nothing was filled: 1 of 1 cell cannot be filled. B1: “Long Acre” is not a date; type 25 Apr or 2026-04-25.",
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
    expect(store.getState().actsAt).toBe("cell")
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
