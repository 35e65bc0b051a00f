import {compareBy} from "../../src/editor/commands/cases"
import type {EditorState} from "../../src/editor/store"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {cellName, editName, movedFrom, rowNames, toldApart, whatMoved} from "../../src/editor/words"
import type {Column} from "../../src/workbook/document"
import type {Edit} from "../../src/workbook/edit"
import {originOf} from "../../src/workbook/trace"
import type {Change, Value} from "../../src/workbook/value"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"
import {farm, inPlan, PLAN} from "./farm"

const day = (text: string) => dayOf(`2026-${text}`)!
const change = (address: string, was: Value, now: Value): Change => ({at: inPlan(address), was, now})
const fault = {code: "#N/A", reason: "", began: null}

describe("the name of a cell", () => {
  it("is its heading and what its row is about", () => {
    expect(cellName(farm, inPlan("D1"))).toBe("Close of Long Acre")
    expect(cellName(farm, inPlan("A1"))).toBe("Planting")
    expect(cellName(farm, inPlan("C3"))).toBe("Weeks of row 3") // the next row to fill
  })

  it("takes the year or the date that the row's first cell works out, but no count and no error", () => {
    const nameIn = (first: string, format: Column["format"]) => {
      const columns = [
        {
          heading: "Key",
          kind: "worked out" as const,
          formula: first,
          ...(format === undefined ? {} : {format}),
        },
        {heading: "Cover", kind: "worked out" as const, formula: "=2*A1"},
      ]
      const rows = [
        ["=", "="],
        ["=", "="],
      ]
      const workbook = new Workbook({name: "x", sheets: [{name: "A", group: "g", columns, rows}]})
      const cover = {sheet: 0, row: 1, col: 1}
      const [used] = originOf(workbook, {...cover, row: 0}, rowNames(workbook)).inputs
      expect(used!.words).toBe("Key")
      return cellName(workbook.document, cover, rowNames(workbook))
    }
    expect(nameIn("=2025+ROW()", "text")).toBe("Cover of 2027")
    expect(nameIn("=DATE(2026,ROW(),1)", "date")).toBe("Cover of 1 Feb 2026")
    expect(nameIn("=INT(ROW()/10)", 0)).toBe("Cover of row 2") // ten rows of one loan have the same number
    expect(nameIn('=""', "text")).toBe("Cover of row 2")
    expect(nameIn("=NA()", "text")).toBe("Cover of row 2")
  })

  it("goes by the word and the year after a count, before the first measure", () => {
    const worked = (heading: string, formula: string, format: Column["format"], unit?: string): Column => ({
      heading,
      kind: "worked out",
      formula,
      ...(format === undefined ? {} : {format}),
      ...(unit === undefined ? {} : {unit}),
    })
    const nameIn = (...columns: Column[]) => {
      const rows = [1, 2].map(() => columns.map(() => "="))
      const workbook = new Workbook({name: "x", sheets: [{name: "A", group: "g", columns, rows}]})
      return cellName(workbook.document, {sheet: 0, row: 1, col: columns.length - 1}, rowNames(workbook))
    }
    const count = worked("Number", "=1", 0)
    const [loan, use] = [worked("Loan", '="Shed loan"', "text"), worked("For", '="shed"', "text")]
    const year = worked("Year", "=2025+ROW()", "text")
    const owed = worked("Owed", "=5", 0, "money")
    expect(nameIn(count, loan, use, year, owed)).toBe("Owed of Shed loan, 2027")
    expect(nameIn(count, year, loan, owed)).toBe("Owed of 2027")
    expect(nameIn(count, loan, worked("Week", "=3", 0), owed)).toBe("Owed of Shed loan")
    expect(nameIn(count, owed, loan, year, owed)).toBe("Owed of row 2")
  })

  it("names the inputs of a formula so too", () => {
    const columns = [
      {heading: "Year", kind: "worked out" as const, formula: "=2025+ROW()", format: "text" as const},
      {heading: "Cash", kind: "typed" as const},
    ]
    const rows = [
      ["=", 5],
      ["=", "=B1+1"],
    ]
    const workbook = new Workbook({name: "x", sheets: [{name: "A", group: "g", columns, rows}]})
    const origin = originOf(workbook, {sheet: 0, row: 1, col: 1}, rowNames(workbook))
    expect(origin.inputs.map(({words}) => words)).toEqual(["Cash of 2026"])
  })
})

describe("what tells rows of the same name apart", () => {
  it("is their second cell, for the columns behind it", () => {
    const workbook = new Workbook(
      documentOf(
        sheet(
          "Samples",
          [column("Planting"), column("Plant", {format: 0}), column("Sugar")],
          [
            ["Long Acre", 1, 400],
            ["Long Acre", null, 410],
            ["Sand Piece", 2, 500],
            ["Long Acre", 3, 420],
          ],
        ),
        sheet(
          "Pickings",
          [column("Planting"), column("Day", {format: "date"}), column("Weight")],
          [
            ["Long Acre", "2026-04-25", 12],
            ["Long Acre", "=B1+2", 15],
          ],
        ),
      ),
    )
    const apart = (address: string) => toldApart(workbook, cellAt(address))
    expect(["C1", "C4"].map(apart)).toEqual([", plant 1", ", plant 3"])
    expect(["A1", "B1", "C2", "C3", "C5"].map(apart)).toEqual(["", "", "", "", ""])
    expect(["1!C1", "1!C2"].map(apart)).toEqual([", 25 Apr 2026", ", 27 Apr 2026"])
  })
})

describe("the name of an act", () => {
  const enter = (...cells: readonly [string, number | string][]) =>
    editName(farm, {type: "enter", cells: cells.map(([at, content]) => ({at: inPlan(at), content}))})

  it("says which cell, or how many in which sheet", () => {
    expect(enter(["C2", 7])).toBe("weeks of Well Field")
    expect(enter(["D2", "="])).toBe("formula of close of Well Field")
    expect(enter(["C1", 7], ["C2", 7], ["D1", "="])).toBe("3 cells in Season plan")
  })

  it("calls a row by the year or the planting that its first cell works out", () => {
    const columns = [
      {heading: "Year", kind: "worked out", formula: "=2025+ROW()", format: "text"},
      {heading: "Living", kind: "typed", format: 0},
    ] as const
    const rows = [
      ["=", 5],
      ["=", 6],
    ]
    const workbook = new Workbook({name: "x", sheets: [{name: "A", group: "g", columns, rows}]})
    const at = {sheet: 0, row: 1, col: 1}
    const name = (edit: Edit) => editName(workbook.document, edit, rowNames(workbook))
    expect(name({type: "enter", cells: [{at, content: 7}]})).toBe("living of 2027")
    const note = {text: "less", written: "2026-01-10T00:00:00.000Z"}
    expect(name({type: "changeExtras", changes: [{at, note}]})).toBe("note of living of 2027")
    const compared = compareBy(at, rowNames(workbook))({document: workbook.document} as EditorState)!
    expect(name(compared)).toBe("living of 2027 compared")
  })
  it("says how many rows came or went", () => {
    const rows = {sheet: PLAN, count: 3}
    expect(editName(farm, {type: "insertRows", before: 1, ...rows})).toBe("3 rows put into Season plan")
    expect(editName(farm, {type: "removeRows", first: 0, ...rows})).toBe("3 rows taken out of Season plan")
    expect(editName(farm, {type: "removeRows", first: 0, ...rows, count: 1})).toBe(
      "row taken out of Season plan",
    )
  })

  it("says what was done to columns, to the order of rows, and to sheets", () => {
    const edits: Edit[] = [
      {type: "insertColumns", sheet: PLAN, before: 1, count: 1},
      {type: "removeColumns", sheet: PLAN, first: 1, count: 2},
      {type: "moveRows", sheet: PLAN, order: [1, 0]},
      {type: "moveCells", moves: [{from: inPlan("B1"), to: inPlan("B2"), content: 6.4}]},
      {type: "addSheet", name: "Prices", group: "Money"},
      {type: "renameSheet", sheet: PLAN, name: "Plan"},
      {type: "moveSheet", from: PLAN, to: 0},
      {type: "copySheet", sheet: PLAN, name: "Plan 2"},
      {type: "removeSheet", sheet: PLAN},
    ]
    expect(edits.map((edit) => editName(farm, edit))).toEqual([
      "column put into Season plan",
      "2 columns taken out of Season plan",
      "rows of Season plan sorted",
      "move of open of Long Acre",
      "sheet Prices added",
      "sheet Season plan renamed",
      "sheet Season plan moved",
      "sheet Season plan copied",
      "sheet Season plan taken out",
    ])
  })
})

describe("what an act moved", () => {
  it("is told by the closes first, then the count of all values", () => {
    expect(
      whatMoved(farm, [
        change("E1", day("06-09"), day("06-16")),
        change("D1", day("05-30"), day("06-06")),
        change("F1", 409, 400),
      ]),
    ).toBe("Close of Long Acre moved from 30 May to 6 Jun. 3 values changed.")
  })

  it("is told by the limits when no close moved", () => {
    expect(whatMoved(farm, [change("E2", day("06-04"), day("06-05"))])).toBe(
      "Limit “crew of Well Field” moved from 4 Jun to 5 Jun. 1 value changed.",
    )
  })

  it("names two at most", () => {
    const moved = ["D1", "D2", "D3"].map((at) => change(at, day("05-30"), day("05-29")))
    expect(whatMoved(farm, moved)).toBe(
      "Close of Long Acre moved from 30 May to 29 May. Close of Well Field moved from 30 May to 29 May. 3 values changed.",
    )
  })

  it("does not give a date to a close that is none, before or after", () => {
    const without = [change("D1", fault, day("05-30")), change("D2", day("05-30"), "not cut")]
    expect(whatMoved(farm, without)).toBe("2 values changed.")
  })

  it("may be nothing", () => expect(whatMoved(farm, [])).toBe("Nothing else changed."))
})

describe("what a value was", () => {
  it("is told with its date, or its number to six digits", () => {
    expect(movedFrom(farm, change("D1", day("06-06"), day("05-30")), true)).toBe("moved from 6 Jun 2026")
    expect(movedFrom(farm, change("F1", 1 / 3, 2), false)).toBe("was 0.333333")
    expect(movedFrom(farm, change("F1", 12345.678, 2), false)).toBe("was 12\u202f345.7")
  })

  it("is left out where there is nothing to tell", () => {
    expect(movedFrom(farm, undefined, true)).toBe("")
    expect(movedFrom(farm, change("D1", fault, day("05-30")), true)).toBe("")
    expect(movedFrom(farm, change("F1", null, 2), false)).toBe("")
  })
})
