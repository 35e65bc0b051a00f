import {describe, expect, it} from "vitest"
import {fromFile, inFile} from "../../../src/storage/book/bookFormula"
import {namedForOds, namedForXlsx, namedHere} from "../../../src/storage/book/formulaNames"
import {fromOpenFormula, toOpenFormula} from "../../../src/storage/book/openFormula"

const headed = (sheet: string | null) => (sheet === "Gone" ? null : {name: sheet ?? "Own", heads: 1})

describe("a formula in a file, where a row of headings stands above the cells", () => {
  it.each([
    ["=A1+$B$2", "=A2+$B$3"],
    ["=SUM(A1:B3)", "=SUM(A2:B4)"],
    ["=SUM(B:B)", "=SUM(B$2:B$10000)"],
    ["=SUM($B:C)", "=SUM($B$2:C$10000)"],
    ["=SUM(Plan!B:B)", "=SUM(Plan!B$2:B$10000)"],
    ["=SUM(2:3)", "=SUM(3:4)"],
    ["=ROW()", "=(ROW()-1)"],
    ["=ROW(B4)*2", "=(ROW(B5)-1)*2"],
    ['="A1"&Rate', '="A1"&Rate'],
  ])("%s reads %s there, and the same here again", (here, there) => {
    expect(inFile(here, headed, 9_999)).toBe(there)
    expect(fromFile(there, headed)).toBe(here)
  })

  it.each([
    ["=ROW()", "=(ROW()+1)"],
    ["=SUM(B:B)", "=SUM(B:B)"],
    ["=SUM(B1:B1048576)", "=SUM(B:B)"],
    ["=SUM(B2:B100000)", "=SUM(B:B)"],
    ["=SUM(B2:B5000)", "=SUM(B1:B4999)"],
  ])("of elsewhere, %s, reads %s here", (there, here) => expect(fromFile(there, headed)).toBe(here))

  it.each(["=A1", "=SUM(A1:A5)", "=Gone!A2", '=INDIRECT("A2")'])(
    "cannot be moved where it is %s",
    (there) => {
      expect(fromFile(there, headed)).toBeNull()
    },
  )

  it("follows a sheet that is called otherwise there", () => {
    expect(inFile("='A''s'!B1", () => ({name: "As", heads: 1}), 9_999)).toBe("=As!B2")
  })
})

describe("the names of functions in a file", () => {
  const known = new Set(["SPEAR.MEAN", "SUM", "FILTER", "STDEV.S"])

  it("are short for ours in .xlsx, and have a prefix for those that came later", () => {
    expect(namedForXlsx("=SPEAR.MEAN(A1)+sum(A1)+MAXIFS(A1)+FILTER(A1)+STDEV.S(A1)+ERROR.TYPE(A1)")).toBe(
      "=SPEAR.MEAN(A1)+SUM(A1)+_xlfn.MAXIFS(A1)+_xlfn._xlws.FILTER(A1)+_xlfn.STDEV.S(A1)+ERROR.TYPE(A1)",
    )
  })

  it("have the definer before ours in .ods", () => {
    expect(namedForOds("=SPEAR.MEAN(A1)+SUM(A1)")).toBe("=FERNLEDGER.SPEAR.MEAN(A1)+SUM(A1)")
  })

  it.each(["FERNLEDGER.SPEAR.MEAN", "SPEAR.MEAN", "_xlfn.SPEAR.MEAN", "fernledger.spear.mean"])(
    "are read in both forms: %s",
    (name) => expect(namedHere(`=${name}(A1)`, known)).toBe("=SPEAR.MEAN(A1)"),
  )

  it("stay what they are where no known name is left", () => {
    expect(namedHere("=OTHER.MEAN(A1)+A1.SUM", known)).toBe("=OTHER.MEAN(A1)+A1.SUM")
  })
})

// OASIS (2011). Open Document Format for Office Applications (OpenDocument) Version 1.2, Part 2: OpenFormula, 5.8 and 5.13.
describe("OpenFormula", () => {
  it.each([
    ["=SUM(A1:B2,3)", "of:=SUM([.A1:.B2];3)"],
    ["=$B$7*2.5", "of:=[.$B$7]*2.5"],
    ["='Root samples'!D3", "of:=[$'Root samples'.D3]"],
    ["=SUM(Plan!B$2:B$1048576)", "of:=SUM([$'Plan'.B$2:.B$1048576])"],
    ["='It''s'!A1", "of:=[$'It''s'.A1]"],
    ["=SUM({1,2;3,4})", "of:=SUM({1;2|3;4})"],
    ['=IF(A1="a;b,[.C1]","x",Rate)', 'of:=IF([.A1]="a;b,[.C1]";"x";Rate)'],
  ])("of %s is %s, and the other way", (formula, open) => {
    expect(toOpenFormula(formula)).toBe(open)
    expect(fromOpenFormula(open)).toBe(formula)
  })

  it("is read without quotation marks round a sheet, and where both corners name it", () => {
    expect(fromOpenFormula("of:=SUM([Plan.A1:Plan.B2])")).toBe("=SUM(Plan!A1:B2)")
    expect(fromOpenFormula("=[.A1]")).toBe("=A1")
  })

  it.each(["of:=['file:///x.ods'#$Plan.A1]", "of:=[#REF!]", "words", "of:=[.A1:$Other.B2]", "of:=[.A1"])(
    "is not read where it points elsewhere or breaks off: %s",
    (open) => expect(fromOpenFormula(open)).toBeNull(),
  )
})
