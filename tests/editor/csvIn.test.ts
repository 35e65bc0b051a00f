import * as fc from "fast-check"
import {describe, expect, it} from "vitest"
import {bringingOf, matchesOf, readCsv, type CsvTable, type UnitSaid} from "../../src/editor/csvIn"
import {csvOf} from "../../src/editor/csvOut"
import {createStore} from "../../src/editor/store"
import type {Document} from "../../src/workbook/document"
import {column, documentOf, sheet} from "../workbook/documents"

const pickings = documentOf(
  sheet(
    "Pickings",
    [
      column("Planting", {format: "text"}),
      column("Day", {format: "date"}),
      column("Weight", {unit: "kg", format: 1, rule: {least: 0, most: 5000}}),
      column("Double", {formula: "=C1*2", unit: "kg", format: 0}),
    ],
    [["Long Acre", "2026-04-18", 148.5, "="]],
  ),
)

const bytesOf = (text: string) => new TextEncoder().encode(text)

function tableOf(text: string): CsvTable {
  const table = readCsv(bytesOf(text))
  if ("refused" in table) throw new Error(table.refused)
  return table
}

const bringing = (text: string, said: UnitSaid[] = [], document: Document = pickings) => {
  const table = tableOf(text)
  return bringingOf(document, 0, table, matchesOf(document, 0, table), said)
}

const contentsOf = (bringing: ReturnType<typeof bringingOf>) =>
  bringing.edit?.type === "enter" ? bringing.edit.cells.map(({content}) => content) : []

describe("readCsv and bringingOf", () => {
  it("matches columns by heading and adds the lines below the last row", () => {
    const found = bringing("Weight (kg),day,Planting\r\n12.5,2026-05-01,Well Field\r\n")
    expect(found.edit).toMatchObject({
      type: "enter",
      name: "1 row brought into Pickings",
      cells: [
        {at: {row: 1, col: 2}, content: 12.5},
        {at: {row: 1, col: 1}, content: "2026-05-01"},
        {at: {row: 1, col: 0}, content: "Well Field"},
      ],
    })
    expect(found.left).toEqual([])
  })

  it("lists the lines that cannot be brought in, each with its reason, and brings in the others", () => {
    const weights = ["148,5", "92,1", "n/a", "101,7"]
    const found = bringing(`Planting;Weight (kg)\n${weights.map((one) => `Well Field;${one}`).join("\n")}`)
    expect(contentsOf(found)).toEqual(["Well Field", 148.5, "Well Field", 92.1, "Well Field", 101.7])
    expect(found.left).toEqual(["line 4: “n/a” is not a number; Weight takes a number in kg"])
    expect(found.taken).toBe(",")
  })

  it("leaves out lines with more fields than headings, and lines that stand on the sheet already", () => {
    const found = bringing(
      "Planting,Day,Weight (kg)\nLong Acre,2026-04-18,148.5\na,2026-04-19,1,2\nb,2026-04-19,3",
    )
    expect(found.twins).toBe(1)
    expect(found.left).toEqual(["line 3: it has 4 fields, and the headings are 3"])
    expect(contentsOf(found)).toEqual(["b", "2026-04-19", 3])
  })

  it("asks where a heading names another unit, and turns it when that is said", () => {
    const text = "Planting,Weight (lb)\nWell Field,100"
    expect(matchesOf(pickings, 0, tableOf(text))[1]).toMatchObject({to: 2, named: "lb", turns: true})
    expect(contentsOf(bringing(text))).toEqual(["Well Field"]) // nothing is guessed before the answer
    expect(contentsOf(bringing(text, [null, "turn"]))).toEqual(["Well Field", 45.359237]) // NIST Handbook 44
    expect(contentsOf(bringing(text, [null, "as shown"]))).toEqual(["Well Field", 100])
  })

  it("asks where a heading names no unit, unless its fields do or there is no other", () => {
    const text = "Planting,Weight\nWell Field,100"
    expect(matchesOf(pickings, 0, tableOf(text))[1]).toMatchObject({to: 2, named: "lb", turns: true})
    expect(contentsOf(bringing(text))).toEqual(["Well Field"])
    expect(contentsOf(bringing(text, [null, "as shown"]))).toEqual(["Well Field", 100])
    expect(contentsOf(bringing(text, [null, "turn"]))).toEqual(["Well Field", 45.359237])
    const us = {...pickings, region: {measures: "US"}} as const
    expect(matchesOf(us, 0, tableOf(text))[1]).toMatchObject({named: "kg", turns: true})
    expect(contentsOf(bringing("Planting,Weight\nWell Field,100 lb"))).toEqual(["Well Field", 45.359237])
    const shares = documentOf(sheet("Shares", [column("Share", {unit: "%"})], []))
    expect(matchesOf(shares, 0, tableOf("Share\n5"))[0]).toMatchObject({to: 0, named: null})
  })

  it("never offers to turn a unit of another kind", () => {
    expect(matchesOf(pickings, 0, tableOf("Planting,Weight (ha)\na,1"))[1]).toMatchObject({
      named: "ha",
      turns: false,
    })
  })

  it("leaves worked-out columns and headings that no column has", () => {
    expect(matchesOf(pickings, 0, tableOf("Double,Colour\n1,2")).map(({why}) => why)).toEqual([
      "it is worked out here",
      "no column of the sheet is called so",
    ])
  })

  it("takes words that begin with a formula's sign as words, and no formula", () => {
    expect(contentsOf(bringing("Planting\n'+1\n'-2\n''tis"))).toEqual(["+1", "-2", "'tis"])
    expect(bringing("Planting\n=1+1").left).toEqual(["line 2: “=1+1” is a formula of elsewhere"])
    expect(bringing("Planting\n'=1+1").left).toEqual([
      "line 2: “=1+1” would be a formula; words begin with another sign than “=”",
    ])
  })

  it.each([
    [new Uint8Array(), "It is empty"],
    [bytesOf(" \r\n"), "It is empty"],
    [
      bytesOf('{"fernledger": 1}'),
      "It is no table; a copy of a workbook of this program is opened by “Open a file copy”",
    ],
    [bytesOf("a,b"), "It has one line alone: headings were expected in the first, and lines below"],
    [new Uint8Array([0x50, 0x4b, 3, 4, 0, 0]), "It is no table in text: it holds signs that no text has"],
    [bytesOf(`a\n${"1\n".repeat(20_001)}`), "It has more than 20000 lines: bring it in by parts"],
    [bytesOf(`${"a,".repeat(300)}b\n1`), "Its first line has 301 fields, and a sheet takes 200"],
    [new Uint8Array(20_000_001), "It is 20.1 MB; the most for a table is 20 MB"],
  ])("refuses what is no table or too large", (bytes, refused) => {
    expect(readCsv(bytes)).toEqual({refused})
  })

  it("reads UTF-16 by its mark, and tells when letters are neither", () => {
    const utf16 = new Uint8Array([0xff, 0xfe, ...[..."Ä\n1"].flatMap((one) => [one.charCodeAt(0), 0])])
    expect(readCsv(utf16)).toMatchObject({headings: ["Ä"], notice: ""})
    const old = readCsv(new Uint8Array([0xc4, 0x0a, 0x31]))
    expect(old).toMatchObject({headings: ["Ä"], lines: [["1"]]})
    expect(old).toHaveProperty("notice", expect.stringMatching(/^It is not UTF-8/))
  })

  it("brings back every row that was sent out, in other units and with decimal commas too", () => {
    const words = fc.oneof(
      fc.stringMatching(/^[A-Za-z,;"'+@\- ]{1,12}$/),
      fc.constantFrom("+1", "-x", "@a", "'b", 'a"b', "é, ö"),
    )
    const row = fc.tuple(words, fc.constantFrom("2026-05-01", null), fc.integer({min: 1, max: 40000}))
    fc.assert(
      fc.property(
        fc.array(row, {minLength: 1, maxLength: 5}),
        fc.constantFrom({}, {decimal: ","} as const, {measures: "US"} as const),
        (made, region) => {
          const trimmed = made.map(([name, day, tenths]) => [name.trim() || "x", day, tenths / 10] as const)
          const unique = [...new Map(trimmed.map((one) => [JSON.stringify(one), one])).values()]
          const document = {
            ...pickings,
            region,
            sheets: [{...pickings.sheets[0]!, rows: unique.map((one) => [...one, "="])}],
          }
          const {text} = csvOf(createStore(document), 0)
          const empty = {...document, sheets: [{...document.sheets[0]!, rows: []}]}
          const found = bringing(text, [], empty)
          expect(found.left).toEqual([])
          const expected = unique.flatMap((one) => one.filter((content) => content !== null))
          // Numbers are shown to twelve digits in other units.
          const rounded = (one: unknown) => (typeof one === "number" ? one.toPrecision(11) : one)
          expect(contentsOf(found).map(rounded)).toEqual(expected.map(rounded))
        },
      ),
      {seed: 20260525, numRuns: 60},
    )
  })

  it("never throws on any bytes", () => {
    const property = fc.property(fc.uint8Array({maxLength: 300}), (bytes) => {
      const table = readCsv(bytes)
      if ("refused" in table) return
      bringingOf(pickings, 0, table, matchesOf(pickings, 0, table), [])
    })
    expect(() => fc.assert(property, {seed: 20260525, numRuns: 300})).not.toThrow()
  })
})
