import {describe, expect, it} from "vitest"
import {reachTo} from "../../src/editor/block"
import {copyChosen, pasteTable, pastingOf, readTable} from "../../src/editor/clipboard"
import {answerRather, answerYes} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {otherDecimal} from "../../src/editor/tableDecimals"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const farm = documentOf(
  sheet(
    "Plan",
    [
      column("Planting", {format: "text"}),
      column("Area", {unit: "ha", format: 1, rule: {least: 0, most: 50}}),
      column("Twice", {formula: "=B1*2"}),
      column("Open", {format: "date"}),
      "Note",
    ],
    [
      ["Long Acre", 6.4, "=", "2026-04-25", "=B1+1"],
      ["Well Field", 7.25, "=", "2026-04-27", 'two\tparts "so"'],
      ["Sand Piece", null, "=", null, null],
    ],
  ),
  sheet("Other", ["A", "B"], [[null, null]]),
)
function at(from: string, to = from) {
  const store = createStore(farm)
  const [a, b] = [cellAt(from), cellAt(to)]
  store.turn(choose(a))
  store.turn(reachTo(b.row, b.col))
  return store
}
const rows = (store: ReturnType<typeof at>, sheet = 0) => store.getState().document.sheets[sheet]!.rows
const elsewhere = (plain: string) => readTable(plain)

describe("copying", () => {
  it("gives numbers in full, dates in ISO form, quotes what holds tabs and quotes", () => {
    expect(copyChosen(at("A1", "E2")).plain).toBe(
      'Long Acre\t6.4\t12.8\t2026-04-25\t7.4\r\nWell Field\t7.25\t14.5\t2026-04-27\t"two\tparts ""so"""',
    )
  })
  it("gives the same as an HTML table", () => {
    expect(copyChosen(at("A1", "B2")).html).toBe(
      "<table><tr><td>Long Acre</td><td>6.4</td></tr><tr><td>Well Field</td><td>7.25</td></tr></table>",
    )
    expect(copyChosen(at("E2")).html).toContain('two\tparts "so"')
  })
  it("gives a blank row for the next row to fill, and an error by its code", () => {
    const store = at("B3", "B4")
    expect(copyChosen(store).plain).toBe("\r\n")
  })
})

describe("a table from the clipboard", () => {
  it.each([
    [
      "a\tb\r\nc\td\r\n",
      [
        ["a", "b"],
        ["c", "d"],
      ],
    ],
    ["a\n\nb", [["a"], [""], ["b"]]],
    ['"two\nlines"\tx', [["two\nlines", "x"]]],
    ['"say ""so"""', [['say "so"']]],
    ["one", [["one"]]],
  ])("is read from text: %j", (plain, read) => {
    expect(readTable(plain)).toEqual({from: "elsewhere", rows: read})
  })
  it("is taken from its HTML where there is a table in it", () => {
    const parse = () => ({table: [["from", "html"]], words: "from html"})
    expect(readTable("plain", "<table>", parse)).toMatchObject({rows: [["from", "html"]]})
  })
  it("is the text where there is no table, the words of the HTML where there is no text either", () => {
    const parse = () => ({table: null, words: "two\nlines"})
    expect(readTable("plain", "<b>two<br>lines</b>", parse).rows).toEqual([["plain"]])
    expect(readTable("", "<b>two<br>lines</b>", parse).rows).toEqual([["two"], ["lines"]])
    const store = at("A1")
    pasteTable(
      store,
      readTable("", "<img>", () => ({table: null, words: ""})),
    )
    expect(store.getState().said).toBe("There is nothing to paste that has words or numbers.")
  })
})

describe("pasting", () => {
  it("a block from elsewhere, by the rules of each column, leaving worked-out cells", () => {
    const store = at("A2")
    pasteTable(store, elsewhere("North Bench\t4.1 ha\t99\t25 Apr\t'007\nTop Corner\t3\t\t2026-04-28\t1,250"))
    expect(rows(store).slice(1)).toEqual([
      ["North Bench", 4.1, "=", "2026-04-25", "007"],
      ["Top Corner", 3, "=", "2026-04-28", 1250],
    ])
    expect(store.getState().said).toContain("8 cells pasted in A2:E3. 2 worked-out cells stay as they are.")
    expect(store.getState().undoable).toHaveLength(1)
    expect(store.getState().undoable[0]!.name).toBe("paste of 8 cells in Plan")
    store.undo()
    expect(store.getState().document).toBe(farm)
  })

  it("adds rows below the last", () => {
    const store = at("A4")
    pasteTable(store, elsewhere("Home Strip\t2.3\nTop Corner\t3"))
    expect(rows(store)).toHaveLength(5)
    expect(rows(store)[4]).toEqual(["Top Corner", 3, "=", null, null])
  })

  it("one piece into all that is chosen", () => {
    const store = at("B1", "C3")
    pasteTable(store, elsewhere("5"))
    expect(rows(store).map((row) => row[1])).toEqual([5, 5, 5])
  })

  it("asks when some of it cannot stand where it would land, and loses nothing", () => {
    const store = at("B1")
    pasteTable(store, elsewhere("5.125\nmuch\n98"))
    expect(store.getState().document).toBe(farm)
    expect(store.getState().question!.preview).toEqual([
      {at: cellAt("B1"), copied: "5.125", reads: "5.125\u00a0ha", why: null}, // though the column shows one decimal
      {
        at: cellAt("B2"),
        copied: "much",
        reads: null,
        why: "“much” is not a number; Area takes a number in ha",
      },
      {at: cellAt("B3"), copied: "98", reads: null, why: "Area 98 ha is above 50 ha (did you mean 9.8 ha?)"},
    ])
    expect(store.getState().question!.asks).toBe(
      "2 of 3 cells cannot be pasted. B2: “much” is not a number; Area takes a number in ha; " +
        "B3: Area 98 ha is above 50 ha (did you mean 9.8 ha?). Bring in the others?",
    )
    answerYes(store)
    expect(rows(store).map((row) => row[1])).toEqual([5.125, 7.25, null])
  })

  it("tells what lies beside the last column", () => {
    const store = at("E1")
    pasteTable(store, elsewhere("a\tb"))
    expect(store.getState().question!.asks).toContain("F1: there is no column there")
  })

  it("takes no formula from elsewhere", () => {
    const {failed, edit} = pastingOf(at("E1"), elsewhere("=1+1"))
    expect([failed[0]!.why, edit]).toEqual(["“=1+1” is a formula of elsewhere; type it to take it in", null])
  })

  it("takes decimal commas where the block shows what they are, and asks where it does not", () => {
    const store = at("B1")
    pasteTable(store, elsewhere("6,5\n1,250"))
    expect(rows(store).map((row) => row[1])).toEqual([6.5, 1.25, null])
    expect(store.getState().said).toContain("Commas were taken as decimal points.")
    expect(pastingOf(at("B1"), elsewhere("6,5\n2.5")).failed).toHaveLength(1)
  })

  it("takes them in the thousands, units and money of other regions too", () => {
    const pasted = (...lines: string[]) => {
      const store = at("B1")
      pasteTable(store, elsewhere(lines.join("\n")))
      return rows(store)
        .map((row) => row[1])
        .slice(0, lines.length)
    }
    expect(pasted("6,5 ha", "12,25", "1 ha")).toEqual([6.5, 12.25, 1])
    const kg = (...lines: string[]) => {
      const store = at("A1")
      store.turn(choose({sheet: 1, row: 0, col: 0}))
      pasteTable(store, elsewhere(lines.join("\n")))
      return rows(store, 1).map((row) => row[0])
    }
    expect(kg("1\u00a0204,5", "1\u202f310", "12 310,25")).toEqual([1204.5, 1310, 12310.25])
    expect(kg("1'204,5", "1\u2019310", "2,5 %")).toEqual([1204.5, 1310, 0.025])
    expect(otherDecimal([["\u20ac 1 204,50"]], ".")).toBe(",")
    expect(otherDecimal([["1 204,5", "1 204.5"]], ".")).toBeNull()
  })

  it("asks once what a sign is that may part thousands or decimals, where no number tells", () => {
    const pasted = (text: string) => {
      const store = at("A1")
      store.turn(choose({sheet: 1, row: 0, col: 0}))
      pasteTable(store, elsewhere(text))
      return store
    }
    const asks = "Is “1,500” 1\u202f500 or 1.5? The answer holds for all that is pasted now."
    for (const [answer, numbers] of [
      [answerRather, [1500, 2250]],
      [answerYes, [1.5, 2.25]],
    ] as const) {
      const store = pasted("1,500\n2,250")
      expect(store.getState()).toMatchObject({question: {asks}, undoable: []})
      answer(store)
      expect(rows(store, 1).map((row) => row[0])).toEqual(numbers)
      expect(store.getState()).toMatchObject({
        question: null,
        undoable: [{name: "paste of 2 cells in Other"}],
      })
    }
    const clear = ["1,500\n2.5", "1,500\n1,234,567", "1,500\n4.1 ha", "1.500\n2"]
    for (const text of clear) expect(pasted(text).getState().question, text).toBeNull()
  })

  it("takes the other sign for thousands once a number has both", () => {
    const store = at("A1")
    store.turn(choose({sheet: 1, row: 0, col: 0}))
    pasteTable(store, elsewhere("6,5\n1.250,75\n1.204"))
    expect(rows(store, 1).map((row) => row[0])).toEqual([6.5, 1250.75, 1204])
    const none = ["6,5\n1.204", "1.250,75\n1.2"] // what does the point of 1.204 mean? and 1.2 has decimals behind it
    for (const text of none) expect(otherDecimal([text.split("\n")], ".")).toBeNull()
  })

  it("takes the points of dates for no decimals", () => {
    const dated = (...days: string[]) => days.map((day) => [day, "211,5"])
    expect(otherDecimal(dated("25.05.2026", "6.5.26", "25.5."), ".")).toBe(",")
    expect(otherDecimal(dated("25.5"), ".")).toBeNull()
  })
})

describe("pasting what was copied here", () => {
  const copied = (from: string, to: string) => readTable(copyChosen(at(from, to)).plain)
  it("moves formulas along", () => {
    const store = at("E3")
    pasteTable(store, copied("E1", "E1"))
    expect(rows(store)[2]![4]).toBe("=B3+1")
  })
  it("offers values alone afterwards, as one step in the place of the paste", () => {
    const store = at("E3")
    pasteTable(store, copied("E1", "E1"))
    const {offer, undoable} = store.getState()
    offer!.act(store)
    expect(rows(store)[2]![4]).toBe(7.4)
    expect(store.getState()).toMatchObject({offer: null, undoable: {length: undoable.length}})
  })
  it("offers nothing where no formula came along", () => {
    const store = at("B3")
    pasteTable(store, copied("B1", "B1"))
    expect(store.getState().offer).toBeNull()
  })
  it("puts values alone where asked", () => {
    const store = at("E3")
    pasteTable(store, copied("E1", "E1"), {valuesOnly: true})
    expect(rows(store)[2]![4]).toBe(7.4)
  })
  it("takes the formula of a column elsewhere, and a date as a date", () => {
    const store = at("A1")
    store.turn(choose({sheet: 1, row: 0, col: 0}))
    pasteTable(store, copied("C1", "D1"))
    expect(rows(store, 1)[0]).toEqual(["#REF!*2".replace(/^/, "="), "2026-04-25"])
  })
  it("keeps the rules of the column it lands in", () => {
    expect(pastingOf(at("B1"), copied("A1", "A1")).failed[0]!.why).toBe(
      "“Long Acre” is not a number; Area takes a number in ha",
    )
  })
  it("holds from one copy to the next alone", () => {
    const first = copyChosen(at("E1")).plain
    copyChosen(at("A1"))
    expect(readTable(first).from).toBe("elsewhere")
  })
})
