import {readFileSync} from "node:fs"
import {unzipSync} from "fflate"
import {describe, expect, it} from "vitest"
import {readBook} from "../../../src/storage/book/bookFile"
import {fullCopy, valuesCopy} from "../../../src/storage/book/bookOf"
import {writeOds} from "../../../src/storage/book/odsOut"
import {writeXlsx} from "../../../src/storage/book/xlsxOut"
import {formulaIn} from "../../../src/workbook/cells"
import type {Document} from "../../../src/workbook/document"
import type {Fault} from "../../../src/workbook/value"
import {notesIn} from "../../../src/workbook/extras"
import {readFile} from "../../../src/workbook/file"
import {namesIn} from "../../../src/workbook/names"
import {isFault} from "../../../src/workbook/value"
import {Workbook} from "../../../src/workbook/workbook"
import {column, documentOf, sheet} from "../../workbook/documents"
import {knows} from "./parts"

const on = new Date("2026-05-25T12:00:00Z")
const forms = [
  ["xlsx", writeXlsx],
  ["ods", writeOds],
] as const

function back(bytes: Uint8Array) {
  const taken = readBook(bytes, "farm.xlsx", knows)
  if ("refused" in taken) throw new Error(taken.refused)
  return taken
}

/** What each cell shows and the formula it has, by sheet, row and column. */
const cellsOf = (workbook: Workbook) =>
  workbook.document.sheets.map(({name, columns, rows}, sheet) => ({
    name,
    headings: columns.map(({heading, unit}) => [heading, unit]),
    cells: rows.map((_, row) =>
      columns.map((_, col) => {
        const at = {sheet, row, col}
        const value = workbook.valueAt(at)
        return [isFault(value) ? value.code : value, formulaIn(workbook.document, at)]
      }),
    ),
  }))

const asIs = {
  number: (_: unknown, stored: number) => stored,
  unit: (stored: string) => stored,
  words: (_: unknown, stored: string | Fault) => (typeof stored === "string" ? stored : stored.code),
  moreDecimals: () => 0,
}

const written = "2026-05-01T10:00:00.000Z"
const small: Document = {
  ...documentOf(
    sheet(
      "Plan & more",
      [
        column("Planting", {format: "text"}),
        column("Day", {format: "date"}),
        column("Area", {unit: "ha", format: 2}),
        column("Share", {format: "share"}),
        column("Twice", {formula: "=C1*2*Rate", unit: "ha", format: 1, width: 8}),
        column("Sum", {formula: "=SUM(C:C)+ROW()"}),
        column("Interest", {format: "share", unit: "share/year"}),
      ],
      [
        ["Long <Acre>", "2026-04-25", 1.5, 0.25, "=", "=", 0.0525],
        [' two\n lines  "x"\t', null, -0.1, 1, "=", 7],
        ["+1", "2026-04-26", 1e-9, null, "=", "="],
        ["_x000A_", null, 3, true, "=1/0", "="],
      ],
      {
        keeps: 2,
        extras: [
          {row: 0, col: 2, note: {text: "Measured\nagain", by: "AB", written}},
          {row: 2, col: 0, note: {text: "no name", written}},
        ],
      },
    ),
    sheet(
      "Named values",
      ["Name", "Value"],
      [
        ["Rate", 0.95],
        ["Last_date", "2026-06-24"],
      ],
      {names: true},
    ),
  ),
  season: "Season 2026",
  about: "Made up & checked",
}

describe.each(forms)("a workbook sent out as .%s and brought in again", (form, write) => {
  it("has the same values, formulas, headings, units, names and properties", () => {
    const workbook = new Workbook(small)
    const {document, asValues, left} = back(write(fullCopy(workbook).book, on))
    expect(cellsOf(new Workbook(document))).toEqual(cellsOf(workbook))
    expect({...document, sheets: []}).toEqual({...small, sheets: []})
    expect(document.sheets[0]).toMatchObject({
      keeps: 2,
      columns: [
        {format: "text"},
        {format: "date"},
        {format: 2},
        {format: "share"},
        {kind: "worked out", format: 1},
        {kind: "worked out"},
        {format: "share", unit: "share/year"},
      ],
    })
    expect(document.sheets[0]!.columns[4]!.width).toBe(8)
    const [, row] = fullCopy(workbook).book.sheets[0]!.rows
    expect(row!.map((cell) => cell?.look)).toEqual(["words", "date", 2, "share", 1, "plain", "rate"]) // 5.25 %, not 5 %
    expect(document.sheets[1]!.names).toBe(true)
    expect(namesIn(document)).toEqual(namesIn(small))
    expect([asValues, left]).toEqual([0, []])
  })

  it("has the same notes, in .ods with the time they were written", () => {
    const {document} = back(write(fullCopy(new Workbook(small)).book, on))
    const own = notesIn(small).map(({at, found: {written, ...note}}) => ({
      at,
      found: form === "ods" ? {written, ...note} : note,
    }))
    const found = notesIn(document).map(({at, found: {written, ...note}}) => ({
      at,
      found: form === "ods" ? {written, ...note} : note,
    }))
    expect(found).toEqual(own)
  })

  it("has the same limits and words for entry, without what is only questioned", () => {
    const day = 46_137 // 2026-04-25 (functions/calendar.ts)
    const ruled = documentOf(
      sheet(
        "Plan",
        [
          column("Crop", {rule: {words: ["green", 'wh"i;te & <b>']}}),
          column("Area", {format: 1, rule: {least: 0.25, most: 400, usual: [1, 40]}}),
          column("Count", {rule: {least: -3}}),
          column("Share", {format: "share", rule: {most: 1}}),
          column("Day", {format: "date", rule: {least: day, most: day + 60}}),
          column("Free"),
        ],
        [
          ["green", 2.5, 4, 0.5, "2026-05-01", 1],
          [null, null, null, null, null, 2],
        ],
      ),
    )
    const {document, left} = back(write(fullCopy(new Workbook(ruled), form).book, on))
    expect(document.sheets[0]!.columns.map(({rule}) => rule)).toEqual([
      {words: ["green", 'wh"i;te & <b>']},
      {least: 0.25, most: 400},
      {least: -3},
      {most: 1},
      {least: day, most: day + 60},
      undefined,
    ])
    expect(left).toEqual([])
    const values = back(write(valuesCopy(new Workbook(ruled), asIs, form).book, on))
    expect(values.document.sheets[0]!.columns.some(({rule}) => rule)).toBe(false)
  })

  it("guards what is worked out, and lets blank cells beside it be typed into", () => {
    const files = unzipSync(write(fullCopy(new Workbook(small)).book, on))
    const part = (name: string) => new TextDecoder().decode(files[name])
    if (form === "ods") {
      const content = part("content.xml")
      expect(content).toMatch(/table:name="Plan &amp; more" table:protected="true"/)
      expect(content.match(/<table:table-column[^>]*>/g)).toHaveLength(9)
      expect(
        content.match(/<table:table-column[^>]* table:default-cell-style-name="plain-open"/g),
      ).toHaveLength(9)
      expect(content).toMatch(
        /style:name="plain-open"[^>]*><style:table-cell-properties style:cell-protect="none"/,
      )
    } else {
      expect(part("xl/worksheets/sheet1.xml")).toMatch(/<sheetProtection sheet="1"/)
      expect(part("xl/worksheets/sheet1.xml").match(/<col [^>]*>/g)).toHaveLength(7)
      expect(part("xl/worksheets/sheet1.xml").match(/<col [^>]*style="0"/g)).toHaveLength(7)
      expect(part("xl/styles.xml")).toMatch(/<cellXfs[^>]*><xf (?:(?!<\/xf>).)*<protection locked="0"\/>/)
    }
  })

  it("keeps each number and formula of the demonstration farm, from one form to the other and back", () => {
    const reading = readFile(
      readFileSync(`${import.meta.dirname}/../../../workbooks/hollow-brook-farm.json`, "utf8"),
    )
    if ("refused" in reading) throw new Error(reading.refused)
    const farm = new Workbook(reading.document)
    const first = back(write(fullCopy(farm).book, on))
    expect(first.asValues).toBe(0)
    const own = cellsOf(farm)
    expect(own.flatMap(({cells}) => cells.flat()).length).toBeGreaterThan(5000)
    const again = new Workbook(first.document)
    expect(cellsOf(again)).toEqual(own)
    const other = form === "xlsx" ? writeOds : writeXlsx
    const second = back(other(fullCopy(again).book, on))
    expect(second.document.sheets.map(({rows}) => rows)).toEqual(first.document.sheets.map(({rows}) => rows))
  })

  it("holds values alone in a copy for others, and says in words how each column was worked out", () => {
    const {book} = valuesCopy(new Workbook(small), asIs)
    const {document, formulas} = back(write(book, on))
    expect(formulas).toBe(0)
    expect(document.sheets.map(({name}) => name)).toEqual([
      "Plan & more",
      "Named values",
      "How it was worked out",
    ])
    // 1.5 ha × 2 × 0.95; an error is words, so that nothing works it out anew.
    expect(document.sheets[0]!.rows.map((row) => row[4])).toEqual([2.85, -0.19, 1.9e-9, "#DIV/0!"])
    expect(document.sheets[2]!.rows[0]).toEqual([
      "Plan & more",
      "Twice (ha)",
      "‹Area›*2*‹Rate›",
      "E2",
      expect.any(String),
    ])
  })

  it("turns numbers and units of a copy for others as they are shown", () => {
    const words = (_: unknown, stored: string | Fault) => (typeof stored === "string" ? stored : "not yet")
    const shown = {...asIs, words, number: (_: unknown, stored: number) => stored * 10, unit: () => "ac"}
    const {document} = back(write(valuesCopy(new Workbook(small), shown).book, on))
    expect(document.sheets[0]!.columns[2]).toMatchObject({heading: "Area", unit: "ac"})
    expect(document.sheets[0]!.rows[0]!.slice(1, 3)).toEqual(["2026-04-25", 15])
    expect(document.sheets[0]!.rows.at(-1)![4]).toBe("not yet")
  })
})

describe("fullCopy", () => {
  it("ends whole columns on one row for all sheets, twice as far down as the longest needs", () => {
    const formulasOf = (rows: number) => {
      const many = Array.from({length: rows}, (_, row) => [row])
      const two = documentOf(
        sheet("Short", ["A"], [["=SUM(Long!A:A)"], ["=SUM(Short!A3:A4)"]]),
        sheet("Long", ["A"], many),
      )
      return fullCopy(new Workbook(two))
        .book.sheets[0]!.rows.map(([cell]) => cell?.formula)
        .filter(Boolean)
    }
    expect(formulasOf(3)).toEqual(["=SUM(Long!A$2:A$10000)", "=SUM(Short!A4:A5)"])
    expect(formulasOf(5000)).toEqual(["=SUM(Long!A$2:A$100000)", "=SUM(Short!A4:A5)"])
  })

  it("calls sheets so that other programs take them, and says so", () => {
    const odd = documentOf(
      sheet("'Plan'", ["A"], [["='History'!A1"]]),
      sheet("Plan", ["A"], [["='''Plan'''!A1"]]),
      sheet("History", ["A"], [[7]]),
    )
    const {book, left} = fullCopy(new Workbook(odd))
    expect(book.sheets.map(({name}) => name)).toEqual(["Plan 2", "Plan", "History sheet"])
    expect(book.sheets[0]!.rows[1]![0]).toMatchObject({formula: "='History sheet'!A2", value: 7})
    expect(book.sheets[1]!.rows[1]![0]).toMatchObject({formula: "='Plan 2'!A2", value: 7})
    expect(left.slice(0, 2)).toEqual([
      "The sheet “'Plan'” is called “Plan 2” in it",
      "The sheet “History” is called “History sheet” in it",
    ])
  })
})
