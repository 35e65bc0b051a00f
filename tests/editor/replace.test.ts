import {describe, expect, it} from "vitest"
import {findIn, type Search} from "../../src/editor/find"
import {inShort, replaceEdit, replacementsOf} from "../../src/editor/replace"
import {createStore} from "../../src/editor/store"
import {Workbook} from "../../src/workbook/workbook"
import {extraAt, withExtras} from "../../src/workbook/extras"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const fields = documentOf(
  sheet(
    "Fields",
    [
      column("Field", {format: "text"}),
      column("Crop", {format: 1, unit: "kg", rule: {least: 0, most: 9000}}),
      column("Day", {format: "day"}),
      "Anything",
      column("Double", {formula: "=B1*2"}),
    ],
    [
      ["Long Acre", 1500, "2026-06-06", "2026-06-06", "="],
      ["Acre by acre", 4.123, "2025-06-06", "12", "=SUM(B1:B2)"],
      [null, null, null, true, "="],
    ],
  ),
)
const book = new Workbook(fields)
const asked = (query: string, more: Partial<Search> = {}): Search => ({
  query,
  where: "all",
  wholeCell: false,
  matchCase: false,
  ...more,
})
const replacements = (query: string, by: string, more: Partial<Search> = {}) => {
  const search = asked(query, more)
  return replacementsOf(book, findIn(book, search), search, by)
}
/** What would become of each: "A1 Long Acre > Long Field", or why not. */
const told = (query: string, by: string, more: Partial<Search> = {}) =>
  replacements(query, by, more).map(({hit: {row, col}, before, after, entry}) => {
    const at = row === null ? "heading" : String.fromCharCode(65 + col!) + (row + 1)
    return "refused" in entry
      ? `${at}: ${entry.refused}`
      : `${at} ${before} > ${after}: ${JSON.stringify("content" in entry ? entry.content : entry.note?.text)}`
  })

describe("what replacing would do", () => {
  it("changes all that is found in words", () => {
    expect(told("acre", "Field")).toEqual([
      'A1 Long Acre > Long Field: "Long Field"',
      'A2 Acre by acre > Field by Field: "Field by Field"',
    ])
  })

  it("keeps a number a number, in the form in which it was found", () => {
    expect(told("1 5", "1 6")[0]).toBe("B1 1\u202f500.0 > 1 600.0: 1600")
    expect(told("1500", "1600", {where: "values"})).toEqual(["B1 1500 > 1600: 1600"])
    expect(told("4.123", "5", {where: "values"})[0]).toBe("B2 4.123 > 5: 5")
  })

  it("does not take what is shown rounded for what the cell holds", () => {
    expect(told("4.1", "4.2", {wholeCell: true})).toEqual(["B2: The cell holds 4.123, which is shown as 4.1"])
    expect(told("4.1", "4.2")[0]).toBe("B2 4.123 > 4.223: 4.223")
  })

  it("keeps a date a date, and its year", () => {
    expect(told("6 Jun", "7 Jul")).toEqual([
      'C1 6 Jun > 7 Jul: "2026-07-07"',
      'D1 6 Jun 2026 > 7 Jul 2026: "2026-07-07"',
      "C2: The cell holds 2025-06-06, which is shown as 6 Jun",
    ])
    expect(told("2025-06", "2025-07")).toEqual(['C2 2025-06-06 > 2025-07-06: "2025-07-06"'])
  })

  it("keeps digits that are words, words", () => {
    expect(told("12", "13", {wholeCell: true})).toEqual(['D2 12 > 13: "13"'])
  })

  it("leaves what cannot stand in the cell, with the reason", () => {
    expect(told("15", "95", {where: "values"})).toContain(
      "B1: Crop 9\u202f500 kg is above 9\u202f000 kg (did you mean 950 kg?)",
    )
    expect(told("1500", "15x00", {where: "values"})[0]).toBe("B1: “15x00” is not one number")
    expect(told("Jun 2026", "June or so")).toEqual([
      "C1: “6 June or so” is not a date; type 25 Apr or 2026-04-25",
      "D1: “6 June or so” is not a date; type 25 Apr or 2026-04-25",
    ])
    expect(told("TRUE", "yes")).toEqual(["D3: “yes” would be words here, and the cell holds a TRUE or FALSE"])
    expect(told("acre by acre", "=B1")).toEqual(["A2: It would become a formula"])
    expect(told("Long Acre", "Long Acre")).toEqual(["A1: It already reads so"])
  })

  it("leaves what a formula works out, and headings", () => {
    expect(told("3000", "1")).toEqual(["E1: The formula of the column works it out"])
    expect(told("*2", "*3")).toEqual([
      "E1: The formula of the column works it out",
      "E3: The formula of the column works it out",
    ])
    // 1500 + 4.123
    expect(told("1504.123", "1")).toEqual(["E2: A formula gives this value; look in formulas to change it"])
    expect(told("Double", "Twice")).toEqual([
      "heading: Headings and names of sheets are not changed from here",
    ])
  })

  it("changes a cell's own formula while it can be read as one", () => {
    expect(told("sum(", "MAX(")).toEqual(['E2 =SUM(B1:B2) > =MAX(B1:B2): "=MAX(B1:B2)"'])
    expect(told("b2)", "B2")).toEqual(["E2: This formula cannot be read: 1 bracket is not closed"])
    expect(told("=sum(b1:b2)", "none")).toEqual(["E2: It would be a formula no more"])
  })

  it("may leave nothing in a cell", () => {
    expect(told("Long Acre", "")).toEqual(["A1 Long Acre > : null"])
  })

  it("takes what is put in as it is written", () => {
    expect(told("Long", "$& $1")).toEqual(['A1 Long Acre > $& $1 Acre: "$& $1 Acre"'])
  })
})

describe("the edit", () => {
  it("changes the chosen ones in one act with a name of its own, and is undone in one", () => {
    const store = createStore(fields)
    const all = replacements("acre", "Field")
    expect(store.run(() => replaceEdit(all, "acre", "Field"))).toBe(true)
    const {document, undoable} = store.getState()
    expect(document.sheets[0]!.rows.map(([name]) => name)).toEqual(["Long Field", "Field by Field", null])
    expect(undoable.map(({name}) => name)).toEqual(["2 cells replaced, “acre” by “Field”"])
    store.undo()
    expect(store.getState().document).toBe(fields)
    store.run(() => replaceEdit(all.slice(1), "acre", ""))
    expect(store.getState().document.sheets[0]!.rows[0]![0]).toBe("Long Acre")
    expect(store.getState().undoable.at(-1)!.name).toBe("1 cell replaced, “acre” by nothing")
  })

  it("is none where nothing can be replaced", () => {
    expect(replaceEdit(replacements("3000", "1"), "3000", "1")).toBeNull()
  })

  it("changes notes too, and keeps who wrote them", () => {
    const note = {text: "an acre by tape", by: "AB", written: "2026-05-25T08:00:00Z"}
    const store = createStore(withExtras(fields, [{at: cellAt("A3"), note}]))
    const search = asked("acre", {where: "notes"})
    const made = replacementsOf(store.workbook, findIn(store.workbook, search), search, "field")
    store.run(() => replaceEdit(made, "acre", "field"))
    expect(extraAt(store.getState().document, cellAt("A3"))?.note).toEqual({
      ...note,
      text: "an field by tape",
    })
    expect(store.getState().undoable.at(-1)!.name).toBe("1 note replaced, “acre” by “field”")
  })

  it("renames a named value in its row and in every formula at once", () => {
    const named = documentOf(
      sheet("Plan", ["A"], [["=Rate*2"]]),
      sheet("Named values", ["Name", "Value"], [["Rate", 3]], {names: true}),
    )
    const store = createStore(named)
    const search = asked("Rate")
    const made = replacementsOf(store.workbook, findIn(store.workbook, search), search, "Wage")
    store.run(() => replaceEdit(made, "Rate", "Wage"))
    expect(store.valueAt({sheet: 0, row: 0, col: 0})).toBe(6)
    expect(store.getState().document.sheets.map(({rows}) => rows[0]![0])).toEqual(["=Wage*2", "Wage"])
  })
})

it("shows a change without what both texts have in common far from it", () => {
  const [a, b] = ["a".repeat(60), "b".repeat(60)]
  expect(inShort({before: `${a}old${b}`, after: `${a}new${b}`})).toEqual({
    before: `…${"a".repeat(40)}old${"b".repeat(40)}…`,
    after: `…${"a".repeat(40)}new${"b".repeat(40)}…`,
  })
  expect(inShort({before: "aa", after: "aaa"})).toEqual({before: "aa", after: "aaa"})
})
