import {describe, expect, it} from "vitest"
import {readBook} from "../../../src/storage/book/bookFile"
import {knows, words, xlsxOf} from "./parts"

function taken(bytes: Uint8Array) {
  const read = readBook(bytes, "yields.xlsx", knows)
  if ("refused" in read) throw new Error(read.refused)
  return read
}

const refusedOf = (bytes: Uint8Array) => {
  const read = readBook(bytes, "yields.xlsx", knows)
  return "refused" in read ? read.refused : null
}

const head = `<row r="1">${words("A1", "Planting")}${words("B1", "Yield (t/ha)")}</row>`

describe("readBook of .xlsx", () => {
  it("reads headings with units, values of each kind, and gaps as blanks", () => {
    const {document, left} = taken(
      xlsxOf({
        Yields: `<sheetData>${head}<row r="2">${words("A2", "Long Acre")}<c r="B2"><v>4.5</v></c></row><row r="4"><c r="B4" t="b"><v>1</v></c></row></sheetData>`,
      }),
    )
    expect(document.name).toBe("yields")
    expect(document.sheets[0]).toMatchObject({
      name: "Yields",
      columns: [{heading: "Planting"}, {heading: "Yield", unit: "t/ha"}],
      rows: [
        ["Long Acre", 4.5],
        [null, null],
        [null, true],
      ],
    })
    expect(left).toEqual([])
  })

  it("reads shared words without how they are spoken, and the signs that XML cannot hold", () => {
    const shared =
      "<sst><si><r><t>Long </t></r><r><t>Acre</t></r><rPh><t>no</t></rPh></si><si><t>a_x000A_b_x005F_x000A_</t></si></sst>"
    const {document} = taken(
      xlsxOf(
        {
          Yields: `<sheetData>${head}<row r="2"><c r="A2" t="s"><v>0</v></c></row><row r="3"><c r="A3" t="s"><v>1</v></c><c r="B3" t="s"><v>99</v></c></row></sheetData>`,
        },
        {parts: {"xl/sharedStrings.xml": shared}},
      ),
    )
    expect(document.sheets[0]!.rows.map(([first]) => first)).toEqual(["Long Acre", "a\nb_x000A_"])
  })

  it("moves a formula that cells share to each of them, and makes it that of the column", () => {
    const cell = (row: number, f: string) =>
      `<row r="${row}"><c r="A${row}"><v>${row}</v></c><c r="B${row}"><f t="shared" si="0">${f}</f><v>0</v></c></row>`
    const {document, formulas} = taken(
      xlsxOf({Yields: `<sheetData>${head}${cell(2, "A2*2")}${cell(3, "")}${cell(4, "")}</sheetData>`}),
    )
    expect(document.sheets[0]!.columns[1]).toMatchObject({kind: "worked out", formula: "=A1*2"})
    expect(document.sheets[0]!.rows.map(([, second]) => second)).toEqual(["=", "=", "="])
    expect(formulas).toBe(3)
  })

  it("keeps the value of a formula that cannot be read here, and says which and why", () => {
    const {document, left, asValues} = taken(
      xlsxOf({
        Yields: `<sheetData>${head}<row r="2"><c r="B2"><f>NOSUCH(A2)</f><v>7</v></c></row><row r="3"><c r="B3"><f>[1]Other!A1</f><v>8</v></c></row><row r="4"><c r="B4"><f>A1</f><v>9</v></c></row></sheetData>`,
      }),
    )
    expect(document.sheets[0]!.rows.map(([, second]) => second)).toEqual([7, 8, 9])
    expect(asValues).toBe(3)
    expect(left[0]).toBe("Yields, B2: there is no function NOSUCH here, so its value is kept")
    expect(left).toHaveLength(3)
  })

  it("reads days by the formats of their cells, from 1900 and from 1904", () => {
    const styles = `<styleSheet><numFmts><numFmt numFmtId="164" formatCode="d mmm"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="164"/></cellXfs></styleSheet>`
    const sheet = {
      Days: `<sheetData>${words("A1", "Day").replace(/^/, '<row r="1">')}</row><row r="2"><c r="A2" s="1"><v>46137</v></c></row><row r="3"><c r="A3" s="1"><v>46138</v></c></row></sheetData>`,
    }
    const parts = {"xl/styles.xml": styles}
    // 46137 is 2026-04-25 (functions/calendar.ts); from 1904-01-01 it is 1462 days later, 2030-04-26.
    expect(taken(xlsxOf(sheet, {parts})).document.sheets[0]).toMatchObject({
      columns: [{format: "date"}],
      rows: [["2026-04-25"], ["2026-04-26"]],
    })
    const later = taken(xlsxOf(sheet, {parts, workbook: '<workbookPr date1904="1"/>'}))
    expect(later.document.sheets[0]!.rows[0]).toEqual(["2030-04-26"])
  })

  it("puts a name that stands nowhere as what it stands for, and says so", () => {
    const {document, left} = taken(
      xlsxOf(
        {
          Yields: `<sheetData>${head}<row r="2"><c r="A2"><v>1</v></c><c r="B2"><f>SUM(Areas)</f><v>1</v></c></row></sheetData>`,
        },
        {workbook: '<definedNames><definedName name="Areas">Yields!$A$2:$A$3</definedName></definedNames>'},
      ),
    )
    expect(document.sheets[0]!.rows[0]![1]).toBe("=SUM(Yields!$A$1:$A$2)")
    expect(left).toEqual(["The name Areas is put as what it stands for, Yields!$A$2:$A$3"])
  })

  it("lists names of one sheet alone and names beyond the most, which are left out", () => {
    const many = Array.from({length: 5003}, (_, i) => `<definedName name="N_${i}">1</definedName>`).join("")
    const own = `<definedName name="Beds" localSheetId="0">Yields!$A$2</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">Yields!$A$1</definedName>`
    const {left} = taken(
      xlsxOf(
        {Yields: `<sheetData>${head}</sheetData>`},
        {workbook: `<definedNames>${own}${many}</definedNames>`},
      ),
    )
    expect(left.slice(0, 3)).toEqual([
      "The name Beds belongs to one sheet alone, so it is left out",
      "3 more of its names are left out: 5000 are the most",
      "The name N_0 does not stand for cells alone, so it is left out",
    ])
    expect(left.join()).not.toContain("Print_Area")
  })

  const cells = `<sheetData>${head}<row r="2">${words("A2", "x")}<c r="B2"><v>4</v></c></row><row r="9"><c r="B9"><v>5</v></c></row></sheetData>`
  const ruled = (type: string, cells = "B2:B50", more = "") =>
    `type="${type}" showErrorMessage="1"${more} sqref="${cells}"`
  const limits = {least: 1, most: 9}
  it.each([
    ["takes limits of a column", ruled("decimal"), ["1", "9"], limits, null],
    ["says that numbers need not be whole", ruled("whole", "B1:B9"), ["1", "9"], limits, "whole"],
    [
      "leaves out what only warns",
      ruled("decimal", "B2:B50", ' errorStyle="warning"'),
      ["1", "9"],
      undefined,
      "other",
    ],
    ["leaves out what only offers words", `type="list" sqref="B2:B50"`, ['"a,b"'], undefined, "other"],
    ["leaves out a part of a column", ruled("decimal", "B2:B8"), ["1", "9"], undefined, "other"],
    ["leaves out limits that are worked out", ruled("decimal"), ["A1", "9"], undefined, "other"],
    ["leaves out limits that let nothing through", ruled("decimal"), ["9", "1"], undefined, "column"],
    ["leaves out days for a column without", ruled("date"), ["46137", "46150"], undefined, "column"],
  ] as const)("%s, of the rules for entry", (_, kind, written, rule, told) => {
    const formulas = written.map((limit, i) => `<formula${i + 1}>${limit}</formula${i + 1}>`).join("")
    const {document, left} = taken(
      xlsxOf({
        Yields: `${cells}<dataValidations><dataValidation ${kind}>${formulas}</dataValidation></dataValidations>`,
      }),
    )
    expect(document.sheets[0]!.columns.map((column) => column.rule)).toEqual([undefined, rule])
    const sentences = {
      other: "Yields: rules for entry that are not limits or words for a whole column are left out",
      column: "Yields, B1: the rule for entry of its column is left out",
      whole: "Yields: rules that numbers be whole are left out",
    }
    expect(left).toEqual(told === null ? [] : [sentences[told]])
  })

  it("leaves out a name that grows, and formulas that lie too deep in themselves or are too long", () => {
    const grows = Array.from(
      {length: 30},
      (_, i) => `<definedName name="N_${i}">N_${i + 1}+N_${i + 1}</definedName>`,
    )
    const deep = `${"(".repeat(4000)}1${")".repeat(4000)}`
    const long = `1${"+1".repeat(20_000)}`
    const cells = ["N_0+N_0", deep, long, `${"-".repeat(3000)}1`].map(
      (formula, i) => `<row r="${i + 2}"><c r="A${i + 2}"><f>${formula}</f><v>${i}</v></c></row>`,
    )
    const {document, left, asValues} = taken(
      xlsxOf(
        {Yields: `<sheetData>${head}${cells.join("")}</sheetData>`},
        {workbook: `<definedNames>${grows.join("")}</definedNames>`},
      ),
    )
    expect(document.sheets[0]!.rows.map(([first]) => first)).toEqual([0, 1, 2, 3])
    expect(asValues).toBe(4)
    expect(left).toContain("Yields, A2: there is no name N_0 here, so its value is kept")
    expect(left).toContain("Yields, A3: it is too long, or lies too deep in itself, so its value is kept")
  })

  it("never takes words for a formula, and leaves scripts in words as words", () => {
    const {document} = taken(
      xlsxOf({
        Yields: `<sheetData>${head}<row r="2">${words("A2", "=1+1")}${words("B2", "&lt;script&gt;alert(1)&lt;/script&gt;")}</row></sheetData>`,
      }),
    )
    expect(document.sheets[0]!.rows[0]).toEqual(["'=1+1", "<script>alert(1)</script>"])
  })

  it("gives sheets of one name, of none, or of signs that no name may hold, names of their own", () => {
    const sheet = `<sheetData>${head}</sheetData>`
    const bytes = xlsxOf({
      Plan: sheet,
      plan: sheet,
      "": sheet,
      "a/b:c[d]e?": sheet,
      [`${"x".repeat(40)}`]: sheet,
    })
    expect(taken(bytes).document.sheets.map(({name}) => name)).toEqual([
      "Plan",
      "plan 2",
      "Sheet",
      "a b c d e",
      "x".repeat(31),
    ])
  })

  it("refuses ten thousand sheets, and cells too far out or too many, each with a sentence", () => {
    const many = Object.fromEntries(Array.from({length: 900}, (_, i) => [`S${i}`, ""]))
    expect(refusedOf(xlsxOf(many))).toBe("It has 900 sheets, and 200 are the most")
    const tenThousand = Object.fromEntries(Array.from({length: 10_000}, (_, i) => [`S${i}`, ""]))
    expect(refusedOf(xlsxOf(tenThousand))).toBe("It has 10003 parts, and 1000 are the most")
    expect(refusedOf(xlsxOf({Far: `<sheetData>${words("A1048576", "x")}</sheetData>`}))).toBe(
      "Far has more than 100000 rows that hold something",
    )
    expect(refusedOf(xlsxOf({Wide: `<sheetData>${words("XFD1", "x")}</sheetData>`}))).toBe(
      "Wide has more than 500 columns that hold something",
    )
    const cells = Array.from({length: 1001}, (_, r) => {
      const line = Array.from({length: 200}, (_, c) => `<c><v>${(r * 7919 + c * 104_729) % 99_991}</v></c>`)
      return `<row>${line.join("")}</row>`
    }).join("")
    expect(refusedOf(xlsxOf({Full: `<sheetData>${cells}</sheetData>`}))).toBe(
      "It has more than 200000 cells that hold something",
    )
  })

  it("reads past a million blank rows", () => {
    const blank = Array.from({length: 1_000_000}, (_, r) => `<row r="${r + 3}" ht="${r % 97}"/>`).join("")
    const {document} = taken(
      xlsxOf({Blank: `<sheetData>${head}<row r="2">${words("A2", "x")}</row>${blank}</sheetData>`}),
    )
    expect(document.sheets[0]!.rows).toEqual([["x", null]])
  })

  it.each([
    [new Uint8Array(), "It is empty"],
    [new TextEncoder().encode("name,day"), "It is neither .xlsx nor .ods"],
    [new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0]), /older form/],
    [new Uint8Array([0x50, 0x4b, 3, 4]), "It is no workbook of this kind, or its end is missing"],
    [xlsxOf({}), "It has no sheets"],
    [xlsxOf({}, {parts: {"xl/workbook.bin": ""}}), "It is of the form .xlsb: save it as .xlsx first"],
  ])("refuses what is no such file", (bytes, refused) => {
    expect(refusedOf(bytes)).toEqual(typeof refused === "string" ? refused : expect.stringMatching(refused))
  })
})
