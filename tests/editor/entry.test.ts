import {readFileSync} from "node:fs"
import * as fc from "fast-check"
import {describe, expect, it} from "vitest"
import {dayOf, FIRST_DAY, isoOf, LAST_DAY} from "../../functions/calendar"
import {readEntry, readsAs, troublesIn} from "../../src/editor/entry"
import type {Column, Content} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {formulaIn} from "../../src/workbook/cells"
import {Workbook} from "../../src/workbook/workbook"
import {column, documentOf, sheet} from "../workbook/documents"

const area = column("Area", {unit: "ha", format: 1, rule: {least: 0, most: 1000}})
const diameter = column("Mean diameter", {unit: "mm", format: 1, rule: {least: 1, most: 40}})
const air = column("Air", {unit: "°C", format: 1, rule: {least: -60, most: 60}})
const count = column("Spears counted", {format: 0})
const alive = column("Alive", {format: "share", rule: {least: 0, most: 1}})
const rate = column("Rate", {unit: "share/year", rule: {least: 0, most: 1}})
const year = column("Year", {format: "text", rule: {least: 1900, most: 2200}})
const open = column("Open", {format: "date"})
const note = column("Note", {format: "text"})
const plain = column("Value")
const close = column("Close", {formula: "=A1+7", format: "day"})

const workbook = new Workbook(documentOf(sheet("Plan", ["A"], []), sheet("Root (old", ["A"], [])))
const read = (typed: string, where: Column = plain, inYear = 2026) =>
  readEntry(typed, where, inYear, (formula) => workbook.normalized(formula))
const kept = (content: Content) => ({content})
const refused = (sentence: string) => ({refused: sentence})

describe("a number", () => {
  it.each([
    ["6.4", 6.4],
    [" 6.4 ", 6.4],
    [".5", 0.5],
    ["5.", 5],
    ["+3", 3],
    ["-3", -3],
    ["\u22123", -3],
    ["2e3", 2000],
    ["2.5E-2", 0.025],
    ["1,500", 1500],
    ["1 500", 1500],
    ["12\u202f345\u00a0678.5", 12345678.5],
    ["1,234,567", 1234567],
    ["1'234'567.5", 1234567.5],
    ["1\u2019234", 1234],
    ["3 %", 0.03],
    ["12.3%", 0.123], // 12.3 / 100 would be 0.12300000000000001
    ["-2.5%", -0.025],
  ])("is read from %s", (typed, value) => {
    expect(read(typed)).toEqual(kept(value))
    expect(read(typed, count)).toEqual(kept(value))
  })

  it("is never a zero below zero, which no file could keep", () => {
    expect(read("-0")).toEqual(kept(0))
    expect(read("-0%")).toEqual(kept(0))
  })

  it.each([
    ["9,8", "9.8 or 98"],
    ["-9,8", "9.8 or 98"],
    ["1500,50", "1500.50 or 150050"],
    ["1,50", "1.50 or 150"],
    ["0,500", "0.500 or 500"], // no group of thousands begins with nought
  ])("with a comma is refused with both readings: %s", (typed, readings) => {
    const digits = typed.replace("-", "")
    const sentence = `“${digits}” could be ${readings}; type a point for decimals, or leave the comma out`
    expect(read(typed, count)).toEqual(refused(sentence))
    expect(read(typed)).toEqual(refused(sentence))
    expect(read(`${typed} ha`, area)).toEqual(refused(sentence))
  })

  it.each(["1.2.3", "12 34", "1 500,000", "1,234.5,6", "1.500,5", "0 500", "5-6", "3, 4", "2026-04-25"])(
    "is not made of %s",
    (typed) => expect(read(typed, area)).toEqual(refused(`“${typed}” is not one number`)),
  )

  it("may carry the unit of its column, and no other", () => {
    expect(read("12ha", area)).toEqual(kept(12))
    expect(read("1 000 ha", area)).toEqual(kept(1000))
    expect(read("14 °C", air)).toEqual(kept(14))
    const unit = "is not the unit here: Area takes a number in ha"
    expect(read("12 acres", area)).toEqual(refused(`“acres” ${unit}`))
    expect(read("12 kg", area)).toEqual(refused(`“kg” ${unit}`))
    expect(read("50 %", area)).toEqual(refused(`“%” ${unit}`))
    expect(read("86 %", column("Moisture", {unit: "%", format: 0}))).toEqual(kept(86))
  })

  it("is a share with or without its sign", () => {
    expect(read("86 %", alive)).toEqual(kept(0.86))
    expect(read("0.86", alive)).toEqual(kept(0.86))
    expect(read("86 ha", alive)).toEqual(
      refused("“ha” is not the unit here: Alive takes a share such as 86 % or 0.86"),
    )
  })

  it("is a share of a time with or without the sign of a percentage", () => {
    expect(read("0.068", rate)).toEqual(kept(0.068))
    expect(read("6.8 %", rate)).toEqual(kept(0.068))
    expect(read("6.8%/year", rate)).toEqual(kept(0.068))
    expect(read("1 %", column("Loss", {unit: "share/h"}))).toEqual(kept(0.01))
    const takes = "is not the unit here: Rate takes a number in share/year, such as 0.068 or 6.8 %"
    expect(read("6.8 %/day", rate)).toEqual(refused(`“%/day” ${takes}`))
    expect(read("5 %", column("Shared", {unit: "shares"}))).toEqual(
      refused("“%” is not the unit here: Shared takes a number in shares"),
    )
  })

  it("too large to be kept is refused", () => {
    expect(read("1e999")).toEqual(refused("“1e999” is too large"))
  })

  it.each([
    ["0", "Mean diameter 0 mm is below 1 mm", diameter],
    ["41", "Mean diameter 41 mm is above 40 mm (did you mean 4.1 mm?)", diameter],
    ["98", "Mean diameter 98 mm is above 40 mm (did you mean 9.8 mm?)", diameter],
    ["400", "Mean diameter 400 mm is above 40 mm (did you mean 40 mm?)", diameter],
    ["401", "Mean diameter 401 mm is above 40 mm", diameter],
    ["-61", "Air \u221261 °C is below \u221260 °C", air],
    ["12 345", "Area 12\u202f345 ha is above 1\u202f000 ha", area],
    ["86", "Alive 8\u202f600 % is above 100 % (did you mean 86 %?)", alive],
    ["860 %", "Alive 860 % is above 100 % (did you mean 8.6 %?)", alive],
    ["6.8", "Rate 6.8 share/year is above 1 share/year (did you mean 0.068 share/year?)", rate],
    ["1850", "Year 1850 is below 1900", year],
  ])("outside least and most is refused: %s", (typed, sentence, where) =>
    expect(read(typed, where)).toEqual(refused(sentence)),
  )

  it("at least or at most is kept", () => {
    expect(read("1", diameter)).toEqual(kept(1))
    expect(read("40", diameter)).toEqual(kept(40))
  })

  it("stays a number in a column of years, which are shown without groups", () => {
    expect(read("2024", year)).toEqual(kept(2024))
    expect(read("last year", year)).toEqual(refused("“last year” is not a number; Year takes a number"))
  })
})

describe("words", () => {
  it.each([
    "Long Acre",
    "3rd row",
    "3,4 and 5 need weeding",
    "12:30",
    "+A1",
    "1.2.3",
    "12 34",
    "5 ha of sand",
    "2026-02-30",
  ])("are kept as typed in a column that takes anything: %s", (typed) =>
    expect(read(typed)).toEqual(kept(typed)),
  )

  it("stay words in a column of words, whatever they look like", () => {
    for (const typed of ["007", "9,8", "50%", "true", "two words"])
      expect(read(typed, note)).toEqual(kept(typed))
  })

  it("lose spaces round them, so that names that look alike are alike; an apostrophe keeps them", () => {
    expect(read(" Long Acre ", note)).toEqual(kept("Long Acre"))
    expect(read("' Long Acre", note)).toEqual(kept(" Long Acre"))
  })

  it("in a column of spears by size are diameters with their counts", () => {
    const sizes = column("By size", {format: "text", part: "spears by size"})
    expect(read("8x3 9x12", sizes)).toEqual(kept("8x3 9x12"))
    expect(read("8x3 thin", sizes)).toEqual(
      refused("“thin” is no spears of a diameter; “8×3 9×12” is three of 8 mm and twelve of 9"),
    )
  })
  it("cannot stand among numbers", () => {
    expect(read("many", count)).toEqual(refused("“many” is not a number; Spears counted takes a number"))
    expect(read("true", count)).toEqual(refused("“true” is not a number; Spears counted takes a number"))
    expect(read("wide", area)).toEqual(refused("“wide” is not a number; Area takes a number in ha"))
  })

  it("behind an apostrophe are kept anywhere", () => {
    expect(read("'007")).toEqual(kept("007"))
    expect(read("'not counted", count)).toEqual(kept("not counted"))
    expect(read("'not yet", open)).toEqual(kept("not yet"))
    expect(read("''tis")).toEqual(kept("'tis"))
    expect(read(" ' spaced ")).toEqual(kept(" spaced "))
  })

  it("cannot be made of a formula, which the file could not tell apart", () => {
    expect(read("'=A1")).toEqual(refused("“=A1” would be a formula; words begin with another sign than “=”"))
    expect(read("'=", close)).toHaveProperty("refused")
  })

  it("true and false are truth values, and nothing is a blank", () => {
    expect(read("TRUE")).toEqual(kept(true))
    expect(read("false")).toEqual(kept(false))
    for (const where of [plain, count, open, note]) expect(read("  ", where)).toEqual(kept(null))
  })
})

describe("a formula", () => {
  it("is kept as the engine spells it", () => {
    expect(read("=sum(a1:a3)")).toEqual(kept("=SUM(A1:A3)"))
    expect(read(" =a1*2 ", area)).toEqual(kept("=A1*2"))
  })

  it("of the column comes back with the lone sign", () => {
    expect(read("=", close)).toEqual(kept("="))
    expect(read("=")).toEqual(refused("A formula is missing after “=”"))
  })

  it.each([
    ["=SUM(A1", "1 bracket is not closed"],
    ["=SUM((A1", "2 brackets are not closed"],
    ["=A1)", "1 bracket too many"],
    ["=A1))", "2 brackets too many"],
    ['="(" & (A1', "1 bracket is not closed"],
    ['=IF(A1,"yes,2)', "a quotation mark is not closed"],
    ["=SUM(A1;B1)", "arguments are parted by commas here, not by “;” (did you mean =SUM(A1,B1)?)"],
    ["=A1+", "something is missing after “+”"],
    ["=A1<>", "something is missing after “<>”"],
    ["=SUM({A1,2})", "an array in braces takes numbers and words, not cells or names"],
    ["=A1 B1 C", "check its signs and commas"],
  ])("that cannot be read is refused with the reason: %s", (typed, reason) =>
    expect(read(typed)).toEqual(refused(`This formula cannot be read: ${reason}`)),
  )
})

describe("a formula while it is typed", () => {
  const functions = new Set(workbook.standardFunctions)
  /** What is said of a formula, with the pieces of it that are marked. */
  const troubles = (text: string) =>
    troublesIn(text, (formula) => workbook.normalized(formula), functions, workbook.document).map(
      ({words, places}) => [words, ...places.map(({start, end}) => `${start}: ${text.slice(start, end)}`)],
    )

  it.each([
    ["=SUM(A1", ["1 bracket is not closed", "4: ("]],
    ["=SUM((A1", ["2 brackets are not closed", "4: (", "5: ("]],
    ["=(1))*2)", ["2 brackets too many", "4: )", "7: )"]],
    ["=)(", ["1 bracket is not closed", "2: ("]],
    ["='Root (old'!A1*(2", ["1 bracket is not closed", "16: ("]],
    ['=IF(A1,"yes,2)', ["A quotation mark is not closed", '7: "yes,2)']],
    ["=SUM(A1;B1)", ["Arguments are parted by commas here, not by “;” (did you mean =SUM(A1,B1)?)", "7: ;"]],
    ["=A1+ ", ["Something is missing after “+”", "3: +"]],
    [
      "=SPEAR.AVERAGE(A1)",
      ["There is no function SPEAR.AVERAGE (did you mean SPEAR.MEAN?)", "1: SPEAR.AVERAGE"],
    ],
    ["=A1*Rete", ["There is no named value Rete", "4: Rete"]],
    ["='Root samples'!B2+Plan!A1", ["There is no sheet Root samples", "1: 'Root samples'!B2"]],
    ["=spear.heet(1,2,3)", ["There is no function SPEAR.HEET (did you mean SPEAR.HEAT?)", "1: spear.heet"]],
  ])("is told what is off, and where: %s", (text, expected) => expect(troubles(text)).toEqual([expected]))

  it("is told both of a function that does not exist and of a bracket", () => {
    expect(troubles("=ASPARAGUS(1").map(([words]) => words)).toEqual([
      "There is no function ASPARAGUS",
      "1 bracket is not closed",
    ])
  })

  it.each(["=", "= ", "=SUM(A1)", "=spear.heat(20,9,5)", "=TRUE()", "12", "words (like these"])(
    "is told nothing at %s",
    (text) => expect(troubles(text)).toEqual([]),
  )
})

describe("a date", () => {
  it.each([
    "2026-04-25",
    "2026-4-25",
    "2026/04/25",
    "2026.4.25",
    "2026-04-25 00:00:00",
    "2026-04-25T00:00:00.000",
    "25.04.2026 0:00",
    "25 Apr",
    "25 Apr 2026",
    "25 Apr 26",
    "25-Apr-2026",
    "25apr26",
    "25. April 2026",
    "25 APRIL",
    "25 Apr, 2026",
    "Apr 25",
    "April 25, 2026",
    "Apr 25 26",
    "25.4.",
    "25.4",
    "25.04.2026",
    "25. 4. 26",
    "25/4",
    "25/04/2026",
    "4/25",
    "04/25/26",
    "25-04-2026",
    "04-25-2026",
  ])("is read from %s", (typed) => expect(read(typed, open)).toEqual(kept("2026-04-25")))

  it("reads every month, by three letters and in full", () => {
    const months = "January February March April May June July August September October November December"
    for (const [i, name] of months.split(" ").entries()) {
      const iso = `2026-${String(i + 1).padStart(2, "0")}-05`
      expect(read(`5 ${name}`, open)).toEqual(kept(iso))
      expect(read(`5 ${name.slice(0, 3)}.`, open)).toEqual(kept(iso))
    }
    expect(read("5 Sept", open)).toEqual(kept("2026-09-05"))
  })

  it("with two meanings is refused with both", () => {
    const both = "could be 3 Apr 2026 or 4 Mar 2026; type the month in letters"
    for (const typed of ["03/04", "3/4/2026", "03/04/26", "03-04-2026", "3-4"])
      expect(read(typed, open)).toMatchObject(refused(`“${typed}” ${both}`))
    expect(read("4/4", open)).toEqual(kept("2026-04-04")) // one meaning, whichever comes first
  })

  it("knows leap days", () => {
    expect(read("29 Feb 2028", open)).toEqual(kept("2028-02-29"))
    expect(read("29/2", open, 2028)).toEqual(kept("2028-02-29"))
    expect(read("29 Feb 2000", open)).toEqual(kept("2000-02-29"))
    for (const typed of ["29 Feb 2026", "29 Feb", "29/2", "29.2.2026", "2100-02-29"])
      expect(read(typed, open)).toEqual(refused(`“${typed}” is not a date; type 25 Apr or 2026-04-25`))
  })

  it("without a year lies in the year of the season; two digits mean this century", () => {
    expect(read("25 Apr", open, 2031)).toEqual(kept("2031-04-25"))
    expect(read("25 Apr 99", open)).toEqual(kept("2099-04-25"))
    expect(read("25 Apr 1999", open)).toEqual(kept("1999-04-25"))
    expect(read("25.4.07", open)).toEqual(kept("2007-04-25"))
  })

  it.each([
    "Apr 2026", // not the 20th of April 26
    "April",
    "12.112026",
    "5 Mayor",
    "5 decoy",
    "31 Apr",
    "32/1",
    "26-04-25", // the year may stand first or last
    "0000-01-01",
    "2026-13-01",
    "46137",
    "soon",
    "TRUE",
  ])("is not guessed from %s", (typed) =>
    expect(read(typed, open)).toEqual(refused(`“${typed}” is not a date; type 25 Apr or 2026-04-25`)),
  )

  it("must lie where days are counted, and inside the rule of its column", () => {
    expect(read("1904-01-01", open)).toEqual(kept("1904-01-01"))
    expect(read("1903-12-31", open)).toEqual(refused("Open 31 Dec 1903 is outside 1 Jan 1904 to 31 Dec 9999"))
    const rule = {least: dayOf("2026-03-01")!, most: dayOf("2026-06-30")!}
    const ruled = column("Open", {format: "day", rule})
    expect(read("30 Jun", ruled)).toEqual(kept("2026-06-30"))
    expect(read("1 Jul", ruled)).toEqual(refused("Open 1 Jul 2026 is outside 1 Mar 2026 to 30 Jun 2026"))
  })
})

describe("what stands in the entry line", () => {
  it("is what a person would type", () => {
    expect(readsAs(null, plain, null)).toBe("")
    expect(readsAs(6.4, area, null)).toBe("6.4")
    expect(readsAs(true, plain, null)).toBe("TRUE")
    expect(readsAs(0.07, alive, null)).toBe("7%") // 0.07 * 100 would be 7.000000000000001
    expect(readsAs("Long Acre", plain, null)).toBe("Long Acre")
    expect(readsAs("007", plain, null)).toBe("'007")
    expect(readsAs("007", note, null)).toBe("007")
    expect(readsAs("not yet", open, null)).toBe("'not yet")
    expect(readsAs("=", close, "=A3+7")).toBe("=A3+7")
  })

  const numbers = fc.oneof(fc.double({noNaN: true, noDefaultInfinity: true}), fc.integer())
  const words = fc
    .oneof(
      fc.string({unit: "binary"}),
      fc.constantFrom(
        "007",
        "9,8",
        "1 500",
        "50%",
        "TRUE",
        "'tis",
        "''",
        "",
        "  ",
        " 5",
        "5\n6",
        "2026-4-25",
        "x ",
      ),
      fc.stringMatching(/^[ '\d.,%/e+-]{0,8}$/),
    )
    .filter((text) => !text.startsWith("="))
  const dates = fc.integer({min: FIRST_DAY, max: LAST_DAY}).map(isoOf)

  it.each<[string, Column, fc.Arbitrary<Content>]>([
    ["that takes anything", plain, fc.oneof(numbers, words, dates, fc.boolean(), fc.constant(null))],
    ["of numbers", column("Area", {unit: "ha"}), fc.oneof(numbers, words)],
    [
      "of shares",
      column("Alive", {format: "share"}),
      fc.oneof(numbers, fc.double({min: 0, max: 1, noNaN: true}), words),
    ],
    ["of dates", open, fc.oneof(dates, words)],
    ["of words", note, words],
  ])("reads back as the content in a column %s", (_, where, contents) =>
    fc.assert(
      fc.property(
        contents.map((one) => (one === 0 ? 0 : one)),
        (content) => {
          expect(read(readsAs(content, where, null), where)).toEqual(kept(content))
        },
      ),
    ),
  )

  it("reads back for every cell of the demonstration farm", () => {
    const farm = readFile(readFileSync("workbooks/hollow-brook-farm.json", "utf8"))
    if ("refused" in farm) throw new Error(farm.refused)
    const {document} = farm
    const opened = new Workbook(document)
    let cells = 0
    for (const [s, {columns, rows}] of document.sheets.entries())
      for (const [row, contents] of rows.entries())
        for (const [col, content] of contents.entries()) {
          const formula = formulaIn(document, {sheet: s, row, col})
          const entry = readEntry(readsAs(content, columns[col], formula), columns[col]!, 2026, (text) =>
            opened.normalized(text),
          )
          expect(entry, `${document.sheets[s]!.name} ${row + 1}, ${columns[col]!.heading}`).toEqual(
            kept(formula ?? content),
          )
          cells++
        }
    expect(cells).toBeGreaterThan(1000)
  })
})
