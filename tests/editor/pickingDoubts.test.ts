import {describe, expect, it} from "vitest"
import {pasteTable} from "../../src/editor/clipboard"
import {answerYes, keepEditing, startTyping} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore, type Store} from "../../src/editor/store"
import {contentAt, type CellAddress} from "../../src/workbook/document"
import {column, documentOf, sheet} from "../workbook/documents"

const [PICKINGS, PLANTINGS] = [0, 1]

const farm = () =>
  createStore(
    documentOf(
      sheet(
        "Pickings",
        [
          column("Planting", {format: "text", part: "picking planting"}),
          column("Day", {format: "date", part: "picking day"}),
          column("Weight", {format: 0, part: "picking weight"}),
        ],
        [
          ["Long Acre", "2026-06-02", 900],
          ["Long Acre", "2026-06-10", 700],
          ["Well Field", "2026-06-12", 800],
        ],
      ),
      sheet(
        "Plantings",
        [
          column("Planting", {format: "text", part: "name of planting"}),
          column("Closed", {format: "date", part: "closed"}),
        ],
        [
          ["Long Acre", null],
          ["Well Field", "2026-06-14"],
          ["Home Strip", null],
        ],
      ),
      sheet(
        "Spray waits",
        [
          column("Planting", {format: "text", part: "wait planting"}),
          column("Sprayed", {format: "date", part: "sprayed"}),
          column("Again", {format: "date", part: "pick again"}),
        ],
        [["Long Acre", "2026-05-04", "2026-05-11"]],
      ),
      sheet(
        "Plan",
        [
          column("Planting", {format: "text", part: "planting"}),
          column("Open", {format: "date", part: "open"}),
        ],
        [["Home Strip", "2026-04-28"]],
      ),
    ),
  )

function typed(store: Store, at: CellAddress, text: string) {
  store.turn(choose(at))
  store.turn(startTyping(text))
  return keepEditing(store, 0, 0)
}

function pasted(store: Store, text: string) {
  store.turn(choose({sheet: PICKINGS, row: 3, col: 0}))
  const rows = text.split("\n").map((row) => row.split("\t"))
  pasteTable(store, {from: "elsewhere", rows})
  return store.getState().question
}

describe("a close typed before pickings that are there", () => {
  const closed = {sheet: PLANTINGS, row: 0, col: 1}

  it("is asked about, with the last of them, and kept with a reason", () => {
    const store = farm()
    expect(typed(store, closed, "2026-06-01")).toBe(false) // before both pickings
    expect(store.getState().question).toMatchObject({
      asks: "Long Acre was picked on 10 Jun, later than that. Did cutting end on 1 Jun?",
      links: [{at: {sheet: PICKINGS, row: 1, col: 1}, words: "the picking of Long Acre"}],
    })
    answerYes(store, "the later pickings were of the headland")
    expect(contentAt(store.getState().document, closed)).toBe("2026-06-01")
  })

  it("is asked about before the opening too, where nothing was picked", () => {
    const [store, strip] = [farm(), {sheet: PLANTINGS, row: 2, col: 1}]
    expect(typed(store, strip, "2026-04-27")).toBe(true) // nothing is cut
    expect(typed(store, strip, "2026-04-11")).toBe(false)
    expect(store.getState().question).toMatchObject({
      asks: "Home Strip opens on 28 Apr, later than that. Did cutting end on 11 Apr?",
      links: [{at: {sheet: 3, row: 0, col: 1}, words: "the opening of Home Strip"}],
    })
  })

  it("is not asked about on the day of the last picking, nor for another planting's pickings", () => {
    expect(typed(farm(), closed, "2026-06-10")).toBe(true)
  })
})

describe("a picking", () => {
  it("inside a wait after spraying is asked about, and kept with a reason", () => {
    const store = farm()
    const at = {sheet: PICKINGS, row: 0, col: 1}
    expect(typed(store, at, "2026-05-10")).toBe(false)
    expect(store.getState().question?.asks).toBe(
      "Long Acre was sprayed on 4 May: by its label it may be picked again from 11 May. Was it picked on 10 May?",
    )
    answerYes(store, "the spray book was wrong")
    expect(contentAt(store.getState().document, at)).toBe("2026-05-10")
  })

  it("is asked about too where its planting is typed after the day", () => {
    const store = farm()
    expect(typed(store, {sheet: PICKINGS, row: 2, col: 1}, "2026-05-10")).toBe(true)
    expect(typed(store, {sheet: PICKINGS, row: 2, col: 0}, "Long Acre")).toBe(false)
  })

  it("is not asked about on the first day allowed", () =>
    expect(typed(farm(), {sheet: PICKINGS, row: 0, col: 1}, "2026-05-11")).toBe(true))

  it("after its planting's close is asked about", () => {
    const store = farm()
    const at = {sheet: PICKINGS, row: 2, col: 1}
    expect(typed(store, at, "2026-06-14")).toBe(true)
    expect(typed(store, at, "2026-06-15")).toBe(false)
    expect(store.getState().question?.asks).toBe(
      "Well Field was closed to fern on 14 Jun. Was it picked on 15 Jun?",
    )
  })

  it("of which only the weight is typed is not asked about again", () => {
    const store = farm()
    const day = {sheet: PICKINGS, row: 2, col: 1}
    typed(store, day, "2026-06-15")
    answerYes(store, "a last look")
    expect(typed(store, {...day, col: 2}, "120")).toBe(true)
  })
})

describe("pasting pickings", () => {
  it("into a wait or after a close asks before anything is brought in", () => {
    const store = farm()
    const before = store.getState().document
    const question = pasted(
      store,
      "long acre\t2026-05-10\t400\nWell Field\t2026-06-15\t90\nLong Acre\t2026-05-04\t300\nLong Acre\t2026-05-11\t300",
    )
    expect(store.getState().document).toBe(before)
    expect(question).toMatchObject({
      asks:
        "Long Acre was sprayed on 4 May: by its label it may be picked again from 11 May. Was it picked on 10 May? " +
        "2 more rows are in doubt in the same way. Paste all the same?",
      yes: "Paste",
    })
    answerYes(store)
    expect(store.getState().document.sheets[PICKINGS]!.rows).toHaveLength(7)
    store.undo()
    expect(store.getState().document).toBe(before)
  })

  it("that nothing speaks against does not ask", () =>
    expect(pasted(farm(), "Long Acre\t2026-05-11\t400\nWell Field\t2026-05-05\t90")).toBeNull())
})
