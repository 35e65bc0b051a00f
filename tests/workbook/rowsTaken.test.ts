import {describe, expect, it} from "vitest"
import type {Content} from "../../src/workbook/document"
import {rowsTaken} from "../../src/workbook/rowsTaken"
import {originOf} from "../../src/workbook/trace"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, documentOf, sheet} from "./documents"

/** Two loans over three years each, the named value Wanted, and a formula in A1 of the first sheet beside the year in B1. */
function workbookWith(formula: string, year: Content = 2027) {
  return new Workbook(
    documentOf(
      sheet("Out", ["Formula", "Year"], [[formula, year]]),
      sheet(
        "Debt",
        ["Loan", "Year", "Due"],
        [
          ["Shed", 2026, 10],
          ["Shed", 2027, 9],
          ["Shed", 2028, 8],
          ["Planting", 2026, null],
          ["Planting", 2027, 4],
          ["Planting", 2028, 3],
        ],
      ),
      sheet("Named values", ["Name", "Value"], [["Wanted", 2028]], {names: true}),
    ),
  )
}
const taken = (formula: string, year?: Content) =>
  Object.fromEntries(
    [...rowsTaken(workbookWith(formula, year), cellAt("A1"))].map(([text, rows]) => [
      text,
      [...rows].map((row) => row + 1),
    ]),
  )

describe("rowsTaken", () => {
  it.each<[formula: string, text: string, rows: number[]]>([
    ["=SUMIFS(Debt!C:C,Debt!B:B,B1)", "Debt!C:C", [2, 5]],
    ['=SUMIFS(Debt!C:C,Debt!B:B,B1,Debt!A:A,"planting")', "Debt!C:C", [5]],
    ['=MINIFS(Debt!C:C,Debt!B:B,">="&B1,Debt!A:A,"<>Shed")', "Debt!C:C", [5, 6]],
    ['=COUNTIFS(Debt!C:C,">8.5")', "Debt!C:C", [1, 2]],
    ["=COUNTIF(Debt!B:B,Wanted)", "Debt!B:B", [3, 6]],
    ["=INDEX(Debt!C:C,MATCH(Wanted,Debt!B:B,0))", "Debt!C:C", [3]],
    ["=INDEX(Debt!C2:C6,MATCH(B1,Debt!B2:B6,0))", "Debt!C2:C6", [2]],
    ["=INDEX(Debt!C1:C3,MATCH(2030,Debt!B1:B3,1))", "Debt!C1:C3", [3]],
    ["=INDEX(Debt!C:C, 4)", "Debt!C:C", [4]],
    ["=INDEX(Debt!C:C,MATCH(2040,Debt!B:B,0))", "Debt!C:C", []],
    ["=SUMIFS(Debt!C:C,Debt!B:B,2027)+SUMIFS(Debt!C:C,Debt!B:B,2028)", "Debt!C:C", [2, 5, 3, 6]],
  ])("of %s are of %s %j", (formula, text, rows) => {
    expect(taken(formula)[text]).toEqual(rows)
  })

  it.each([
    ["=SUM(Debt!C:C)+SUMIFS(Debt!C:C,Debt!B:B,B1)", "the range is also taken whole"],
    ["=SUMIFS(Debt!C:C,Debt!B:B,B1+1)", "the condition is worked out"],
    ['=SUMIFS(Debt!C:C,Debt!A:A,"<Shed")', "the condition compares words"],
    ["=SUMIFS(Debt!C:C,Debt!B:B*1,B1)", "a range is worked out"],
    ["=INDEX(Debt!A:C,MATCH(B1,Debt!B:B,0),3)", "the table has several columns"],
    ["=INDEX(Debt!C:C,MATCH(B1,Debt!B:B,-1))", "the order falls"],
    ["=INDEX(Debt!C:C,B1-2025)", "the number is worked out"],
    ["=SUMIFS(Debt!C:C", "the formula is not whole"],
  ])("are not known of %s: %s", (formula) => {
    expect(taken(formula)).not.toHaveProperty("Debt!C:C")
    expect(taken(formula)).not.toHaveProperty("Debt!A:C")
  })

  it("are not known where the cell of the condition is blank", () => {
    expect(taken("=SUMIFS(Debt!C:C,Debt!B:B,B1)", null)).toEqual({})
  })

  it("are the cells that the origin of a formula names", () => {
    const workbook = workbookWith("=SUMIFS(Debt!C:C,Debt!B:B,B1)+INDEX(Debt!C:C,MATCH(Wanted,Debt!B1:B6,0))")
    const {inputs} = originOf(workbook, cellAt("A1"), undefined, rowsTaken(workbook, cellAt("A1")))
    expect(inputs.map(({words, cells}) => [words, cells.map(({row}) => row + 1)])).toEqual([
      ["Due, Debt, rows 2, 3 and 5", [2, 3, 5]],
      ["Year, Debt, rows 2 and 5", [2, 5]],
      ["Year", [1]],
      ["Wanted", [1]],
      ["Year of Shed, Debt", [3]],
    ])
  })
})
