import {HyperFormula} from "hyperformula"
import {describe, expect, it} from "vitest"
import {type Content, type Document} from "../../src/workbook/document"
import {formulaIn} from "../../src/workbook/cells"
import {isUsableName, namesIn} from "../../src/workbook/names"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, column, documentOf, sheet} from "./documents"

describe("named values", () => {
  const named = (...rows: Content[][]) =>
    documentOf(
      sheet("Plan", ["Out"], [["=Rate*2"], ["=rate+Fee"]]),
      sheet("Values", ["Name", "Value"], rows, {names: true}),
    )
  const of = (document: Document) => namesIn(document).map(({name, expression}) => `${name}${expression}`)

  it("are the rows of a naming sheet, blank and unusable names left out", () => {
    expect(of(named(["Rate", 2], [null, 3], ["Q10", 4], ["Fee", 5]))).toEqual([
      "Rate=Values!$B$1",
      "Fee=Values!$B$4",
    ])
  })

  it.each(["Rate", "rate_2", "_x", "Été", "Year_1", "As_of", "R", "C"])("may be called %s", (name) => {
    expect(new Workbook(named([name, 1])).evaluate(`=${name}+1`, 0)).toBe(2)
  })

  // OpenFormula 5.11: not like a cell in either notation, not True or False; the engine has Latin letters alone.
  it.each([
    "Q10",
    "Year1",
    "RC",
    "R1C1",
    "r2c",
    "TRUE",
    "false",
    "1st",
    "a b",
    "a.b",
    "Ω",
    "Жук",
    "名",
    "",
    "x²",
  ])("may not be called %j, which does no harm", (name) => {
    expect(isUsableName(name)).toBe(false)
    const workbook = new Workbook(named(["Fee", 1]))
    workbook.revise({type: "enter", cells: [{at: cellAt("1!A1"), content: name}]})
    expect(of(workbook.document)).toEqual([])
  })

  const entered = (document: Document, ...entries: [string, Content][]) =>
    new Workbook(document).revise({
      type: "enter",
      cells: entries.map(([at, content]) => ({at: cellAt(at), content})),
    })

  it("are there for formulas as soon as they are typed, and gone once emptied", () => {
    const workbook = new Workbook(named(["Rate", 2], [null, 5]))
    expect(workbook.valueAt(cellAt("A2"))).toMatchObject({code: "#NAME?"})
    workbook.revise({type: "enter", cells: [{at: cellAt("1!A2"), content: "Fee"}]})
    expect(workbook.valueAt(cellAt("A2"))).toBe(7)
    workbook.revise({type: "enter", cells: [{at: cellAt("1!A1"), content: null}]})
    expect(workbook.valueAt(cellAt("A1"))).toMatchObject({code: "#NAME?"})
  })

  it("go with their row when rows move, and go away with it", () => {
    const workbook = new Workbook(named(["Rate", 2], ["Fee", 5]))
    workbook.revise({type: "insertRows", sheet: 1, before: 0, count: 2})
    expect(workbook.valueAt(cellAt("A2"))).toBe(7)
    workbook.revise({type: "removeRows", sheet: 1, first: 2, count: 1})
    expect(workbook.valueAt(cellAt("A2"))).toMatchObject({code: "#NAME?"})
  })

  it("take their formulas along when renamed, in cells, columns and totals, but not in texts or calls", () => {
    const document = documentOf(
      sheet(
        "Plan",
        ["Out", column("More", {formula: "=A1+rate", total: "=SUM(B:B)*Rate"})],
        [
          ['=RATE*2&"Rate"', "="],
          ["=Rate_2+Rate()", 3],
        ],
      ),
      sheet(
        "Values",
        ["Name", "Value"],
        [
          ["Rate", 2],
          ["Rate_2", 3],
        ],
        {names: true},
      ),
    )
    const [plan] = entered(document, ["1!A1", "Price"]).sheets
    expect(plan!.rows).toEqual([
      ['=Price*2&"Rate"', "="],
      ["=Rate_2+Rate()", 3],
    ])
    expect(plan!.columns[1]).toMatchObject({formula: "=A1+Price", total: "=SUM(B:B)*Price"})
  })

  it("leave formulas alone when a twin is renamed: the first of two rows of one name counts", () => {
    const document = named(["Rate", 2], ["rate", 100])
    expect(new Workbook(document).valueAt(cellAt("A1"))).toBe(4)
    const next = entered(document, ["1!A2", "Price"])
    expect(formulaIn(next, cellAt("A1"))).toBe("=Rate*2")
    expect(new Workbook(next).valueAt(cellAt("A1"))).toBe(4)
  })

  it("leave formulas alone when renamed to a name that another row has, so that none reads another value", () => {
    const next = entered(named(["Rate", 2], ["Fee", 5]), ["1!A2", "rate"])
    expect(formulaIn(next, cellAt("A2"))).toBe("=rate+Fee")
    expect(new Workbook(next).valueAt(cellAt("A2"))).toMatchObject({code: "#NAME?"})
  })

  it("may change the case of their letters", () => {
    const workbook = new Workbook(named(["Rate", 2], ["Fee", 5]))
    workbook.revise({type: "enter", cells: [{at: cellAt("1!A1"), content: "RATE"}]})
    expect(formulaIn(workbook.document, cellAt("A1"))).toBe("=RATE*2")
    expect(workbook.valueAt(cellAt("A1"))).toBe(4)
  })

  it("are usable only where the engine takes them", () => {
    const engine = HyperFormula.buildEmpty({licenseKey: "gpl-v3"})
    const letters = Array.from({length: 0x3000}, (_, code) => String.fromCharCode(code))
    const names = letters.flatMap((letter) => [letter, `A${letter}`, `${letter}1`, `R1${letter}`])
    const refused = names.filter(
      (name) => isUsableName(name) && !engine.isItPossibleToAddNamedExpression(name, 1),
    )
    expect(refused).toEqual([])
    expect(names.filter(isUsableName).length).toBeGreaterThan(1000)
  })
})
