import {createRequire} from "node:module"
import {HyperFormula} from "hyperformula"
import {afterEach, describe, expect, it, vi} from "vitest"
import type {Content, Document} from "../../../src/workbook/document"
import {movedDown} from "../../../src/workbook/formula"
import {isFault} from "../../../src/workbook/value"
import {Workbook} from "../../../src/workbook/workbook"

afterEach(() => vi.restoreAllMocks())

// Another instance of the engine than the one the workbook uses: this one is as it was published.
const {HyperFormula: Plain} = createRequire(import.meta.url)("hyperformula") as {
  HyperFormula: typeof HyperFormula
}
const SETTINGS = {
  licenseKey: "gpl-v3",
  dateFormats: ["YYYY-MM-DD"],
  useArrayArithmetic: true,
  precisionRounding: 14,
}

/** A sequence of whole numbers below a bound, the same at each run: the minimal standard generator of Park and Miller. */
function numbersFrom(seed: number) {
  let state = seed
  return (below: number) => (state = (state * 48271) % 2147483647) % below
}

const HELD: Content[] = [
  "Long Acre",
  "long acre",
  "Löng Acre",
  "Sand Piece",
  "",
  null,
  0,
  3,
  3.5,
  -2,
  true,
  "=1/0",
]
const DAYS: Content[] = ["2026-05-04", "2026-05-11", "2026-05-18"]

/** What is asked of the data by one cell, with its own row at hand. */
const FORMULAS = [
  '=COUNTIF(Data!A:A,"Long Acre")',
  "=COUNTIF(Data!A:A,A1)",
  '=COUNTIFS(Data!A:A,"long*",Data!C:C,">1")',
  '=SUMIFS(Data!C:C,Data!A:A,A1,Data!B:B,">="&B1)',
  '=SUMIFS(Data!C:C,Data!B:B,"<="&B1)',
  "=SUMIF(Data!A1:A20,A1,Data!C1:C20)",
  '=MAXIFS(Data!C:C,Data!A:A,"<>"&A1)',
  '=MINIFS(Data!C:C,Data!C:C,">0",Data!B:B,B1)',
  '=AVERAGEIF(Data!C:C,">0")',
  '=SUMIFS(Data!C:C,Data!A1:A2,"x")',
  "=COUNTIFS(Data!A:A,NA())",
  "=MATCH(A1,Data!A:A,0)",
  "=MATCH(C1,Data!C1:C20,0)",
  '=MATCH("l*",Data!A:A,0)',
  "=MATCH(TRUE(),Data!C:C,0)",
  "=VLOOKUP(A1,Data!A:C,3,FALSE())",
  '=XLOOKUP(A1,Data!A:A,Data!C:C,"none")',
  '=XLOOKUP(A1,Data!A:A,Data!C:C,"none",0,-1)',
  "=INDEX(Data!C:C,MATCH(B1,Data!B:B,0))",
  '=SUM(FILTER(Data!C:C,Data!A:A=A1,Data!B:B>"2026-05-05"))',
  "=SUM(FILTER(Data!C:C,Data!A:A=A1,ISNUMBER(Data!C:C)))",
  '=COUNT(FILTER(Data!C:C,Data!A:A<>""))',
  "=COUNTA(FILTER(Data!C:C,Data!C:C>C1))",
  "=COUNTA(FILTER(Data!A:A,Data!B:B<=B1,Data!A:A<>A1))",
  "=COUNTA(FILTER(Data!A1:A9,Data!C1:C9=C1))",
  "=COUNTA(FILTER(Data!A:A,Data!C:C=A1))",
  "=COUNTA(FILTER(Data!A:A,A1=Data!A:A))",
  "=SUM(FILTER(Data!C:C,Data!A:A=NA()))",
  "=SUM(FILTER(Data!C1:C5,Data!A1:A6=A1))",
  "=SUM(FILTER(Data!C:C,Data!A:A))",
  "=SUM(FILTER(Data!C:C,ISNUMBER(Data!C:C),Data!C:C>0,NOT(ISTEXT(Data!A:A))))",
  "=COUNTA(FILTER(Data!C:C,ISTEXT(Data!A:A)))",
  '=SUM(FILTER(Data!C:C,Data!A:A="no planting of ours"))',
  '=IF(C1>2,"more",IF(C1="",NA(),C1))',
  "=IF(C1>2,1)",
  '=IF("word",1,2)',
  "=IF(A1=A1,,5)",
  "=IF(NA(),1,2)",
  "=IF(Data!A1,1,2)",
  "=SUM(IF(Data!C1:C9>0,1,0))",
  "=IFERROR(1/C1,A1)",
  "=IFERROR(MATCH(A1,Data!A1:A3,0),)",
  "=IFNA(MATCH(A1,Data!A1:A3,0),1/0)",
  "=IFNA(1/0,1)",
  "=COUNT(Data!C:C)+COUNTA(Data!A:A)",
  "=SUM(Data!C1:C7)+SUM(Data!C1:C8)",
  "=A1=Data!A2",
  "=A1<Data!A2",
  '=A1=""',
  '=Data!A3<>"LÖNG ÁCRE"',
  '=Data!B3&"">=B1&""',
  '=" 2026-05-11"=Data!B3&""',
  '="5 May">Data!A4',
  '="2026-5-11"="2026-05-11"',
  '="2026-11-05">"2026-5-11"',
  '=IF(Data!B2&"">"mid May",Data!B2&""="2026-5-11",".5"="0.5")',
]

function documentOf(rows: readonly (readonly Content[])[]): Document {
  const typed = (heading: string) => ({heading, kind: "typed"}) as const
  const asks = FORMULAS.map((_, i) => ({heading: `Asks ${i}`, kind: "typed"}) as const)
  return {
    name: "Farm",
    sheets: [
      {name: "Data", group: "", columns: ["Planting", "Day", "Weight"].map(typed), rows},
      {
        name: "Asks",
        group: "",
        columns: [...["Planting", "Day", "Weight"].map(typed), ...asks],
        rows: [
          ["LONG ACRE", "2026-05-11", 3, ...FORMULAS],
          [
            "Sand Piece",
            "2026-05-12",
            0,
            ...FORMULAS.map((one) => one.replaceAll(/\b([ABC])1\b(?!:)/g, "$12")),
          ],
        ],
      },
    ],
  }
}

/** What the plain engine says of the same cells, read anew. */
function plainly({sheets}: Document): unknown[] {
  const contents = sheets.map(({name, rows}) => [name, rows.map((row) => row.map(plainContent))])
  const engine = Plain.buildFromSheets(Object.fromEntries(contents), SETTINGS)
  const values = sheets[1]!.rows.flatMap((row, r) =>
    row.map((_, col) => {
      const value: unknown = engine.getCellValue({sheet: 1, row: r, col})
      return typeof value === "object" && value !== null && "value" in value ? value.value : value
    }),
  )
  engine.destroy()
  return values
}

const plainContent = (content: Content) =>
  typeof content === "string" && !content.startsWith("=") && !/^\d{4}-/.test(content)
    ? `'${content}`
    : content

function ours(workbook: Workbook): unknown[] {
  return workbook.document.sheets[1]!.rows.flatMap((row, r) =>
    row.map((_, col) => {
      const value = workbook.valueAt({sheet: 1, row: r, col})
      return isFault(value) ? value.code : value
    }),
  )
}

describe("the engine as it is used", () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])("gives the values of the plain one after any edits, seed %i", (seed) => {
    const below = numbersFrom(seed)
    const any = (contents: readonly Content[]) => contents[below(contents.length)]!
    const content = (col: number) => any(col === 1 ? [...DAYS, null] : HELD)
    const rows = Array.from({length: 12}, () => [content(0), content(1), content(2)])
    const workbook = new Workbook(documentOf(rows))
    expect(ours(workbook)).toEqual(plainly(workbook.document))
    for (let step = 0; step < 12; step++) {
      const [data] = workbook.document.sheets
      const isInData = below(4) > 0
      const [row, col] = [isInData ? below(data!.rows.length + 1) : below(2), below(3)]
      const at = {sheet: isInData ? 0 : 1, row, col}
      workbook.revise({type: "enter", cells: [{at, content: content(col)}]})
      expect(ours(workbook), `step ${step}`).toEqual(plainly(workbook.document))
    }
  })

  // The engine's reader is asked once for formulas that differ in their rows alone.
  it.each([
    ["a range whose one end stays, which turns round further down", "=SUM(A$3:A1)"],
    ["and the other way about", "=SUM(A1:A$3)&COUNT(A2:A$2)"],
    ["words that look like cells, before and after one", '="A1 ""B1"" "&A1&"A1"'],
    ["words that run on as cells would", (row: number) => `="A${row + 1}"`],
    ["sheets that do", (row: number) => `=AB${(row % 2) + 2}!A$1`],
    ["sheets that do in quotes", (row: number) => `='AB${(row % 2) + 2}'!A$1`],
    ["functions that look like cells", "=LOG10(A1)+AB2!A1+'AB3'!A1+AB3!$A1"],
    ["cells that stay", "=A1+A$1+$A1+$A$1+1E1+A2"],
    ["numbers that look like rows", "=A1*1+A1*2+SUM(A1:A2)"],
  ])("reads for each row %s", (_, formula) => {
    const shown = (name: string, start: number, extra: readonly Content[]) => ({
      name,
      group: "",
      columns: ["A", "B", "C"].map((heading) => ({heading, kind: "typed"}) as const),
      rows: Array.from({length: 6}, (_, row): readonly Content[] => [start + row, ...extra]),
    })
    const inRow = (row: number) => (typeof formula === "string" ? movedDown(formula, row) : formula(row))
    const asks = shown("Asks", 3, [])
    const workbook = new Workbook({
      name: "Farm",
      sheets: [
        shown("AB2", 10, []),
        {...asks, rows: asks.rows.map((row, i) => [...row, inRow(i), inRow(2)])},
        shown("AB3", 20, []),
      ],
    })
    expect(ours(workbook)).toEqual(plainly(workbook.document))
  })

  it("reads a sheet that does not exist anew each time it is named", () => {
    const columns = ["A", "B"].map((heading) => ({heading, kind: "typed"}) as const)
    const workbook = new Workbook({
      name: "Farm",
      sheets: [{name: "Asks", group: "", columns, rows: [[1, 2]]}],
    })
    // An engine that throws in an edit is built anew, which would hide it.
    const built = vi.spyOn(HyperFormula, "buildFromSheets")
    const at = {sheet: 0, row: 0, col: 0}
    for (const content of ["=Plan!A1", 1, "=Other!A1", "=Plan!A1"])
      workbook.revise({type: "enter", cells: [{at, content}]})
    expect(workbook.valueAt(at)).toMatchObject({code: "#REF!"})
    expect(built).not.toHaveBeenCalled()
  })

  // As of longer columns: a cell with an error is not above 0, and what is lost or summed is an error still.
  it("takes the column of a sheet with one row for a range, whatever stands there", () => {
    const asks = ['=COUNTIF(Data!A:A,">0")', '=COUNTIFS(Data!A:A,">0")', '=SUMIFS(Data!A:A,Data!B:B,"no")']
    const lost = ['=COUNTIF(#REF!,">0")', '=SUMIFS(Data!A:A,Data!B:B,"yes")']
    const headed = (name: string, rows: readonly (readonly Content[])[]) => ({
      name,
      group: "",
      columns: ["A", "B"].map((heading) => ({heading, kind: "typed"}) as const),
      rows,
    })
    const workbook = new Workbook({
      name: "Farm",
      sheets: [
        headed("Data", [["=NA()", "yes"]]),
        headed(
          "Asks",
          [...asks, ...lost].map((one) => [one]),
        ),
      ],
    })
    const values = [...asks, ...lost].map((_, row) => workbook.valueAt({sheet: 1, row, col: 0}))
    expect(values).toMatchObject([0, 0, 0, {code: "#REF!"}, {code: "#N/A"}])
  })

  it("reads a column anew where only a column beside it has grown", () => {
    const workbook = new Workbook({
      name: "Farm",
      sheets: [
        {
          name: "Pickings",
          group: "",
          columns: ["Planting", "Day", "Weight"].map((heading) => ({heading, kind: "typed"})),
          rows: [
            ["Long Acre", "2026-05-04", 400],
            ["Long Acre", "2026-05-06", 60],
          ],
        },
        {
          name: "Asks",
          group: "",
          columns: ["Picked", "In", "Last", "Without", "First"].map((heading) => ({heading, kind: "typed"})),
          rows: [
            [
              '=SEASON.PICKED(Pickings!A:A,Pickings!B:B,Pickings!C:C,"2026-05-01","2026-05-31")',
              '=SUM(FILTER(Pickings!C:C,Pickings!A:A="Long Acre"))',
              "=INDEX(Pickings!C:C,COUNTA(Pickings!A:A))",
              '=COUNTIFS(Pickings!A:A,"Long Acre",Pickings!C:C,"")',
              "=IFNA(MATCH(90,Pickings!C:C,0)+0*COUNTA(Pickings!A:A),0)",
            ],
          ],
        },
      ],
    })
    // An engine that throws in an edit is built anew, which would hide that it read too little.
    const built = vi.spyOn(HyperFormula, "buildFromSheets")
    const asked = () => [0, 1, 2, 3, 4].map((col) => workbook.valueAt({sheet: 1, row: 0, col}))
    expect(asked()).toEqual([460, 460, 60, 0, 0])
    workbook.revise({type: "enter", cells: [{at: {sheet: 0, row: 2, col: 0}, content: "Long Acre"}]})
    expect(asked()).toEqual([460, 460, null, 1, 0])
    workbook.revise({type: "enter", cells: [{at: {sheet: 0, row: 2, col: 1}, content: "2026-05-05"}]})
    workbook.revise({type: "enter", cells: [{at: {sheet: 0, row: 2, col: 2}, content: 90}]})
    expect(asked()).toEqual([550, 550, 90, 0, 3])
    expect(built).not.toHaveBeenCalled()
  })
})
