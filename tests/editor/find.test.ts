import {describe, expect, it} from "vitest"
import {excerpt, findIn, hitBeside, hitName, type Hit, type Search} from "../../src/editor/find"
import {withExtras} from "../../src/workbook/extras"
import {Workbook} from "../../src/workbook/workbook"
import {column, documentOf, sheet} from "../workbook/documents"
import {farm, inPlan} from "./farm"

const book = new Workbook(
  documentOf(
    sheet(
      "Fields",
      [column("Field", {format: "text"}), column("Crop", {format: 0}), column("Alive", {format: "share"})],
      [
        ["Long Acre", 12345, 0.864],
        ["Mill Piece (long)", -7.25, 1],
        ["Tom’s Corner", "=B1+B2", true],
      ],
    ),
    sheet("Dates", [column("Day", {format: "day"}), "Anything"], [["2026-06-06", "2026-06-06"]]),
    sheet(
      "Long view",
      [column("Year", {format: "text"}), column("Double", {formula: "=A1*2"})],
      [[2026, "="]],
    ),
  ),
)
const find = (query: string, more: Partial<Search> = {}, workbook = book) =>
  findIn(workbook, {query, where: "all", wholeCell: false, matchCase: false, ...more})

/** Each hit as its address and the words found in their text: "0!A1 [Long] Acre". */
const told = (hits: readonly Hit[]) =>
  hits.map(({sheet, row, col, inFormula, text, from, to}) => {
    const at = col === null ? "" : String.fromCharCode(65 + col) + (row === null ? "" : row + 1)
    const marked = `${text.slice(0, from)}[${text.slice(from, to)}]${text.slice(to)}`
    return `${sheet}!${at} ${marked}${inFormula ? " in the formula" : ""}`
  })

describe("finding", () => {
  it("goes by sheets, rows and columns, the name of a sheet and its headings first", () => {
    expect(told(find("long"))).toEqual(["0!A1 [Long] Acre", "0!A2 Mill Piece ([long])", "2! [Long] view"])
    expect(told(find("e"))).toEqual([
      "0! Fi[e]lds",
      "0!A Fi[e]ld",
      "0!C Aliv[e]",
      "0!A1 Long Acr[e]",
      "0!A2 Mill Pi[e]ce (long)",
      "0!A3 Tom’s Corn[e]r",
      "0!C3 TRU[E]",
      "1! Dat[e]s",
      "2! Long vi[e]w",
      "2!A Y[e]ar",
      "2!B Doubl[e]",
    ])
  })

  it("finds a date by what is seen, with its year, and in ISO form", () => {
    expect(told(find("6 Jun"))).toEqual(["1!A1 [6 Jun]", "1!B1 [6 Jun] 2026"])
    expect(told(find("Jun 2026"))).toEqual(["1!A1 6 [Jun 2026]", "1!B1 6 [Jun 2026]"])
    expect(told(find("2026-06"))).toEqual(["1!A1 [2026-06]-06", "1!B1 [2026-06]-06"])
  })

  it("finds a number by what is seen and by its digits", () => {
    expect(told(find("12 345"))).toEqual(["0!B1 [12\u202f345]"])
    expect(told(find("2345"))).toEqual(["0!B1 1[2345]"])
    expect(told(find("-7"))).toEqual(["0!B2 [\u22127]"])
    expect(told(find("7.25"))).toEqual(["0!B2 -[7.25]"])
    expect(told(find("86 %"))).toEqual(["0!C1 [86\u202f%]"])
    expect(told(find("86.4%"))).toEqual(["0!C1 [86.4%]"])
    expect(told(find("0.864"))).toEqual(["0!C1 [0.864]"])
    expect(told(find("4052"))).toEqual(["2!B1 [4052]"])
  })

  it("finds a date of a column that a formula works out, as the sheet shows it", () => {
    const hits = find("30 May", {}, new Workbook(farm)) // Long Acre closes 42 days after 18 April
    expect(told(hits)).toEqual(["1!D1 [30 May]"])
  })

  it("looks in formulas, those of columns too, or leaves them out", () => {
    expect(told(find("B1+"))).toEqual(["0!B3 =[B1+]B2 in the formula"])
    expect(told(find("*2", {where: "formulas"}))).toEqual(["2!B1 =A1[*2] in the formula"])
    expect(find("B1+", {where: "values"})).toEqual([])
    expect(find("Long", {where: "formulas"})).toEqual([])
  })

  it("may ask for the whole cell, the same capitals, or one sheet", () => {
    expect(told(find("long acre", {wholeCell: true}))).toEqual(["0!A1 [Long Acre]"])
    expect(find("Acre", {wholeCell: true})).toEqual([])
    expect(told(find("long", {matchCase: true}))).toEqual(["0!A2 Mill Piece ([long])"])
    expect(told(find("long", {sheet: 2}))).toEqual(["2! [Long] view"])
  })

  it("takes every sign as it is, and a plain apostrophe for a printed one", () => {
    expect(told(find("(long)"))).toEqual(["0!A2 Mill Piece [(long)]"])
    expect(find("L.ng")).toEqual([])
    expect(told(find("Tom's"))).toEqual(["0!A3 [Tom’s] Corner"])
    expect(find("[\\^$.*+?()[]{}|/-")).toEqual([])
  })

  it("finds nothing for nothing", () => expect(find("")).toEqual([]))
})

describe("walking over what was found", () => {
  const hits = find("e") // the heading C of the first sheet is the third, A1 the fourth
  const at = (sheet: number, row: number, col: number) => ({sheet, row, col})
  it("begins at the chosen cell or the next, and goes round the end", () => {
    expect(hitBeside(hits, at(0, 0, 0), 1)).toBe(3)
    expect(hitBeside(hits, at(0, 0, 1), 1)).toBe(4)
    expect(hitBeside(hits, at(2, 0, 1), 1)).toBe(0)
  })
  it("begins backwards at the chosen cell or the one before", () => {
    expect(hitBeside(hits, at(0, 0, 0), -1)).toBe(3)
    expect(hitBeside(hits, at(0, 1, 2), -1)).toBe(4)
    expect(hitBeside(hits.slice(4), at(0, 0, 0), -1)).toBe(hits.length - 5)
  })
})

describe("the words for a hit", () => {
  it("say where it is", () => {
    const [name, heading, formula] = [find("Fields")[0]!, find("Crop")[0]!, find("B1+")[0]!]
    expect(hitName(book.document, name)).toBe("Name of a sheet")
    expect(hitName(book.document, heading)).toBe("Heading in Fields")
    expect(hitName(book.document, formula)).toBe("Fields B3, Crop of Tom’s Corner, formula")
    const [close] = find("30 May", {}, new Workbook(farm))
    expect(close).toMatchObject(inPlan("D1"))
    expect(hitName(farm, close!)).toBe("Season plan D1, Close of Long Acre")
  })

  it("leave out what stands far from it", () => {
    const text = `${"a".repeat(60)}found${"b".repeat(60)}`
    expect(excerpt({text, from: 60, to: 65})).toEqual({
      before: `…${"a".repeat(40)}`,
      found: "found",
      after: `${"b".repeat(40)}…`,
    })
    expect(excerpt({text: "so it is", from: 3, to: 5})).toEqual({before: "so ", found: "it", after: " is"})
  })
})

describe("notes", () => {
  const noted = new Workbook(
    withExtras(book.document, [
      {at: {sheet: 0, row: 0, col: 0}, note: {text: "Stony on the rise", written: "2026-05-25T08:00:00Z"}},
    ]),
  )
  it("are found, named as notes, and left out where only values are looked at", () => {
    const [hit] = find("rise", {}, noted)
    expect([hit!.inNote, hitName(noted.document, hit!).endsWith(", note")]).toEqual([true, true])
    expect(find("rise", {where: "notes"}, noted)).toHaveLength(1)
    expect(find("rise", {where: "values"}, noted)).toHaveLength(0)
  })
})
