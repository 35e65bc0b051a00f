import * as fc from "fast-check"
import {HyperFormula} from "hyperformula"
import {describe, expect, it} from "vitest"
import {
  cellText,
  columnLetters,
  movedDown,
  referenceOf,
  referenceText,
  renamed,
  sheetText,
  hasCellInBraces,
  isTooIntricate,
  tokens,
  withRowsAsCells,
} from "../../src/workbook/formula"

const pieces = (formula: string) => tokens(formula).map(({kind, text}) => `${kind} ${text}`)
const kindsOf = (formula: string) => tokens(formula).map(({kind}) => kind)

/** Pieces that formulas are made of, in any order, so that most texts are almost formulas. */
const bits =
  `= SUM( IF ) , A1 $B$2 C:C 3:4 'Root_samples'! Plan! 'it''s'! Rate Q10 LOG10( " "a""b" 1.5 1e3 .5 #REF! #N/A ` +
  `<= <> { } ' ; É 名 😀 A1B _x ! : % ZZZ9 AAAA9 $`
const almostFormula = fc.array(fc.constantFrom(" ", "\n", ...bits.split(" "))).map((all) => all.join(""))

/** Any units of UTF-16, halves of a pair among them. */
const anyText = fc.array(fc.nat(0xffff)).map((units) => String.fromCharCode(...units))

describe("tokens", () => {
  it("join back to any text", () => {
    fc.assert(
      fc.property(fc.oneof(almostFormula, anyText), (text) => {
        const found = tokens(text)
        expect(found.map((one) => one.text).join("")).toBe(text)
        expect(found.every((one) => one.text !== "")).toBe(true)
      }),
      {numRuns: 500},
    )
  })

  it("tell references, functions, names, numbers and signs apart", () => {
    expect(pieces("=SUM($B$2:C3)*Rate+1.5e3").join(", ")).toBe(
      "sign =, function SUM, sign (, reference $B$2:C3, sign ), sign *, name Rate, sign +, number 1.5e3",
    )
  })

  it.each([
    ["A1"],
    ["$A1"],
    ["a$1"],
    ["AB12:AC13"],
    ["A:B"],
    ["$A:$A"],
    ["3:4"],
    ["$3:$3"],
    ["Plan!A1"],
    ["'Root samples'!A1:B2"],
    ["'it''s'!C:C"],
    ["Plan!A1:Plan!A3"],
    ["'it''s'!$C:'it''s'!$D"],
  ])("take %s as one reference", (text) => {
    expect(kindsOf(text)).toEqual(["reference"])
    expect(kindsOf(`=SUM(${text},1)`)).toContain("reference")
  })

  it.each([
    ["Q10_rate", "name"],
    ["Year_1", "name"],
    ["A0", "name"],
    ["AAAA1", "name"],
    ["A1B2", "name"],
    ["A1.5", "name"],
    ["1.5", "number"],
    [".5", "number"],
    ['"A1"', "text"],
    ['"say ""A1"""', "text"],
    ['"not closed A1', "text"],
    ["#REF!", "error"],
    ["#N/A", "error"],
    ["#DIV/0!", "error"],
    ["\u00a0\t\n", "space"],
  ])("take %j as one piece, a %s", (text, kind) => {
    expect(tokens(text)).toEqual([{kind, text}])
  })

  it.each(["LOG10(A1)", "LOG10(1)", "SPEAR.HEAT(1)", "sum(A1)"])("begin %s with a function", (text) => {
    expect(kindsOf(text)[0]).toBe("function")
  })

  it("leave what cannot be in a formula as unknown pieces", () => {
    expect(kindsOf("=?$")).toEqual(["sign", "unknown", "unknown"])
  })
})

describe("references", () => {
  it("are read with their sheet, corners and dollar signs", () => {
    expect(referenceOf("'it''s'!$B2:C$3")).toEqual({
      sheet: "it's",
      from: {col: 1, row: 1, colFixed: true, rowFixed: false},
      to: {col: 2, row: 2, colFixed: false, rowFixed: true},
      isRange: true,
    })
  })

  it("have no row in a whole column and no column in a whole row", () => {
    expect(referenceOf("C:$D")).toMatchObject({
      from: {col: 2, row: null, colFixed: false},
      to: {col: 3, row: null, colFixed: true},
    })
    expect(referenceOf("3:$4")).toMatchObject({
      from: {col: null, row: 2, rowFixed: false},
      to: {col: null, row: 3, rowFixed: true, colFixed: false},
    })
  })

  it.each([
    "A1",
    "$A$1",
    "B7:B7",
    "A1:$B$2",
    "A:A",
    "$A:C",
    "2:2",
    "$2:3",
    "Plan!A1",
    "'Root samples'!A1",
    "Été!B2",
    "'Жук'!A1",
    "'2026'!A1:A2",
    "'a.b'!A1",
    "'''x'!A1",
    "'x'''!A1",
  ])("are written as they were read: %s", (text) => {
    expect(referenceText(referenceOf(text))).toBe(text)
  })

  it("name their sheet once", () => {
    expect(referenceText(referenceOf("Plan!A1:Plan!$A$3"))).toBe("Plan!A1:$A$3")
    expect(referenceText(referenceOf("'it''s'!2:'it''s'!3"))).toBe("'it''s'!2:3")
  })

  it("end where another sheet begins", () => {
    expect(pieces("Plan!A1:Beds!A3")).toEqual(["reference Plan!A1", "sign :", "reference Beds!A3"])
  })

  it("are written in capitals", () => {
    expect(referenceText(referenceOf("plan!ab$3:$c4"))).toBe("plan!AB$3:$C4")
  })
})

describe("sheetText", () => {
  it.each([
    "Plan",
    "Root samples",
    "Жук",
    "Ω",
    "名",
    "Été",
    "2026",
    "1A",
    "a.b",
    "it's",
    "A1",
    "R1C1",
    "_",
    "x²",
  ])("writes %s so that the engine finds the sheet", (name) => {
    const engine = HyperFormula.buildFromSheets({[name]: [[20.26]]}, {licenseKey: "gpl-v3"})
    expect(engine.calculateFormula(`=${sheetText(name)}!A1`, 0)).toBe(20.26)
    engine.destroy()
  })
})

describe("movedDown", () => {
  it.each([
    ["=A1+$A1", 2, "=A3+$A3"],
    ["=A$1+$A$1", 2, "=A$1+$A$1"],
    ["=SUM(B$1:B1)", 3, "=SUM(B$1:B4)"],
    ["=SUM(B1:B1)", 3, "=SUM(B4:B4)"],
    ["=SUM(B:B)/B2", 1, "=SUM(B:B)/B3"],
    ["=SUM(2:$3)", 1, "=SUM(3:$3)"],
    ["='Root samples'!B2&\"B2\"", 1, "='Root samples'!B3&\"B2\""],
    ["=LOG10(A10)+Q10_rate", 1, "=LOG10(A11)+Q10_rate"],
    ["=B5-B4", -2, "=B3-B2"],
    ["=B3-B1", -1, "=B2-#REF!"],
    ["=SUM(B1:B$5)", -1, "=SUM(#REF!)"],
  ])("gives %s %i rows down as %s", (formula, down, moved) => {
    expect(movedDown(formula, down)).toBe(moved)
  })

  it("and up again is the same formula", () => {
    const row = fc.integer({min: 1, max: 99})
    const dollar = fc.constantFrom("", "$")
    const corner = fc.tuple(dollar, fc.constantFrom("A", "C", "AB"), dollar, row).map((all) => all.join(""))
    const reference = fc.oneof(
      corner,
      fc.tuple(corner, corner).map(([a, b]) => `SUM(${a}:${b})`),
      fc.tuple(fc.constantFrom("Plan", "'Root samples'"), corner).map((all) => all.join("!")),
    )
    const formula = fc.array(reference, {minLength: 1, maxLength: 4}).map((all) => `=${all.join("+")}`)
    fc.assert(
      fc.property(formula, fc.nat(50), (text, down) => {
        expect(movedDown(movedDown(text, down), -down)).toBe(text)
      }),
    )
  })
})

describe("withRowsAsCells", () => {
  // The formula's own sheet ends with column G (6), every other one with AB (27).
  it.each([
    ["=SUM(2:3)", "=SUM(A2:G3)"],
    ["=SUM($2:3)+Plan!4:$4", "=SUM(A$2:G3)+Plan!A4:AB$4"],
    ["=SUM('Root samples'!10:12)", "=SUM('Root samples'!A10:AB12)"],
    ["=SUM(A:B,B2:$C$3)+A1", "=SUM(A:B,B2:$C$3)+A1"],
    ['="2:3"&SUM(1:1)', '="2:3"&SUM(A1:G1)'],
  ])("puts %s as %s", (formula, asCells) => {
    expect(withRowsAsCells(formula, (sheet) => (sheet === null ? 6 : 27))).toBe(asCells)
  })
})

describe("hasCellInBraces", () => {
  it.each([
    ["=SUM({1,2;3,4})+A1", false],
    ['=IF(A1,{"A1","Rate"},Rate)', false],
    ["=SUM({A1,2})", true],
    ["=SUM({1,Rate})", true],
    ["=SUM({1,TRUE()})+{2}", false],
    ["=SUM({1})+SUM({2,(A:A)})", true],
  ])("finds a cell or a name within braces alone: %s", (formula, has) => {
    expect(hasCellInBraces(formula)).toBe(has)
  })
})

describe("isTooIntricate", () => {
  it.each([
    [`=${"(".repeat(64)}1${")".repeat(64)}`, false],
    [`=${"(".repeat(65)}1${")".repeat(65)}`, true],
    [`=${"(1)+".repeat(100)}1`, false],
    [`="${"(".repeat(1000)}"`, false],
    [`=1${"+1".repeat(499)}`, false],
    [`=1${"+1".repeat(500)}`, true],
    [`="${"x".repeat(8200)}"`, true],
  ])("of %.12s…", (formula, is) => expect(isTooIntricate(formula)).toBe(is))
})

describe("renamed", () => {
  it("changes every use of the name, however it is spelt, and nothing else", () => {
    expect(renamed('=Rate*rate+Rate_2+"Rate"+RATE(1,2,3)+Rate!A1', "Rate", "Price")).toBe(
      '=Price*Price+Rate_2+"Rate"+RATE(1,2,3)+Rate!A1',
    )
  })
})

describe("columnLetters", () => {
  it.each([
    [0, "A"],
    [25, "Z"],
    [26, "AA"],
    [51, "AZ"],
    [52, "BA"],
    [701, "ZZ"],
    [702, "AAA"],
    [18277, "ZZZ"],
  ])("calls column %i %s", (col, letters) => {
    expect(columnLetters(col)).toBe(letters)
    expect(referenceOf(`${letters}1`).from.col).toBe(col)
  })

  it("stand before the row, counted from 1", () => {
    expect(cellText(4, 27)).toBe("AB5")
  })
})
