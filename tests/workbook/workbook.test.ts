import {describe, expect, it} from "vitest"
import type {Content} from "../../src/workbook/document"
import type {Edit} from "../../src/workbook/edit"
import {addressText} from "../../src/workbook/cells"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, column, documentOf, seeded, sheet} from "./documents"
import {
  anyEdit,
  below,
  crowded,
  engineFormulas,
  farm,
  formulasOf,
  plainCopy,
  seeds,
  session,
  valuesOf,
} from "./sessions"

describe("random sessions", () => {
  it.each(seeds(50))(
    "leave the values of the saved workbook opened afresh, and undo to the start (seed %i)",
    (seed) => {
      const {found, wanted} = session(seed)
      expect(found).toEqual(wanted)
    },
  )

  it("make every kind of edit and of reference", () => {
    const random = seeded(1)
    const edits = Array.from({length: 300}, () => anyEdit(random, farm))
    expect(new Set(edits.map(({type}) => type)).size).toBe(19)
    const text = JSON.stringify(edits)
    const forms = [
      /[+=][A-G]\d/,
      /\$[A-G]\$\d/,
      /\([A-G]:[A-G]/,
      /'Root samples'!/,
      /\(\d:\d\)/,
      /Rate/,
      /\([A-G]\d:[A-G]\d\)/,
    ]
    expect(forms.filter((form) => !form.test(text))).toEqual([])
  })
})

describe("rows that move", () => {
  it.each(seeds(20))("leave every formula as the engine itself rewrites it (seed %i)", (seed) => {
    const random = seeded(1000 + seed)
    const document = crowded(random)
    const engine = plainCopy(document)
    const workbook = new Workbook(document)
    const index = below(random, document.sheets.length)
    const count = 1 + below(random, 2)
    const row = below(random, 6)
    const id = engine.getSheetId(document.sheets[index]!.name)!
    const inserts = random() < 0.5
    if (inserts) engine.addRows(id, [row, count])
    else engine.removeRows(id, [row, count])
    const next = workbook.revise(
      inserts
        ? {type: "insertRows", sheet: index, before: row, count}
        : {type: "removeRows", sheet: index, first: row, count},
    )
    const expected = engineFormulas(engine, next)
    const ours = formulasOf(next)
    // New rows have the formulas of their columns, of which the plain copy knows nothing.
    if (inserts)
      for (let added = row; added < row + count; added++)
        for (const col of document.sheets[index]!.columns.keys())
          ours.delete(addressText(next, {sheet: index, row: added, col}))
    expect(expected.size).toBeGreaterThan(10)
    expect([...ours].sort()).toEqual([...expected].sort())
  })
})

describe("what is typed", () => {
  const valueOf = (content: Content, test: string) => {
    const workbook = new Workbook(documentOf(sheet("Plan", ["Typed", "Test"], [[content, test]])))
    return [workbook.valueAt(cellAt("A1")), workbook.valueAt(cellAt("B1"))]
  }

  it.each([
    "007",
    "50%",
    "12:30",
    "1/2",
    "1,5",
    "25.4.2026",
    "04/25/2026",
    "TRUE",
    "false",
    "$5",
    "1e3",
    "-3",
    " 7",
    "'tis",
    "2026-02-30",
    "#REF!",
    "+1",
    "",
  ])("stays the word it is: %j", (word) => expect(valueOf(word, "=ISTEXT(A1)")).toEqual([word, true]))

  it.each([12, -3.5, 0, true, false])("stays the value it is: %j", (value) => {
    expect(valueOf(value, "=ISTEXT(A1)")).toEqual([value, false])
  })

  it("is a date when written as one, and counts as a number", () => {
    // Days from 1899-12-30: 126 years of 365 days to 2025-12-30, 31 leap days from 1904 to 2024, and 116 days more.
    expect(valueOf("2026-04-25", "=A1+1")).toEqual([126 * 365 + 31 + 116, 126 * 365 + 31 + 117])
    const workbook = new Workbook(
      documentOf(sheet("Plan", ["Typed"], [["2026-04-25"], [46137], ["=A1+1"], ["=A3-A1"]])),
    )
    expect(["A1", "A2", "A3", "A4"].map((at) => workbook.isDateAt(cellAt(at)))).toEqual([
      true,
      false,
      true,
      false,
    ])
  })

  it("is kept apart when blank: neither 0 nor an empty word", () => {
    expect(valueOf(null, "=ISBLANK(A1)")).toEqual([null, true])
    expect(valueOf("", "=ISBLANK(A1)")).toEqual(["", false])
  })
})

describe("how it calculates", () => {
  const calculated = (formula: string) =>
    new Workbook(documentOf(sheet("Plan", ["A"], [[4], ["x"]]))).evaluate(formula, 0)

  it("adds tenths without noise", () => {
    expect(calculated("=0.1+0.2")).toBe(0.3)
    expect(calculated("=0.1+0.2=0.3")).toBe(true)
  })

  it.each([123456789.123456, 0.000012345678, 98765.4321, 1e15, -7.000001])(
    "reads %d back as typed",
    (typed) => {
      expect(new Workbook(documentOf(sheet("Plan", ["A"], [[typed]]))).valueAt(cellAt("A1"))).toBe(typed)
    },
  )

  it("carries a third to 14 decimals, and three of them make one", () => {
    expect(calculated("=1/3")).toBeCloseTo(1 / 3, 13)
    expect(calculated("=1/3+1/3+1/3")).toBe(1)
  })

  it("multiplies conditions cell by cell", () => {
    expect(calculated("=SUMPRODUCT((A1:A1=4)*A1:A1)")).toBe(4)
    expect(calculated("={1,2;3,4}*2")).toEqual([
      [2, 4],
      [6, 8],
    ])
  })

  it.each([
    ["=TRUE", true],
    ["=not(FALSE)", true],
  ])("knows %s without brackets", (formula, value) => expect(calculated(formula)).toBe(value))

  it("evaluates as if on the sheet, and leaves the sheet alone", () => {
    const workbook = new Workbook(farm)
    const before = valuesOf(workbook)
    // 412 + 388 + 455 + 430
    expect(workbook.evaluate("=SUM(B:B)", 1)).toBe(1685)
    expect(workbook.evaluate("=SUM('Root samples'!B:B)", 0)).toBe(1685)
    expect(workbook.evaluate("=1/0", 0)).toMatchObject({code: "#DIV/0!", began: null})
    expect(workbook.evaluate("=SUM(", 0)).toMatchObject({
      code: "#ERROR!",
      reason: "This formula cannot be read",
    })
    expect(workbook.evaluate("12", 0)).toMatchObject({code: "#ERROR!"})
    expect(valuesOf(workbook)).toEqual(before)
  })

  it.each([
    ["=sum( a1 , B1 )", "=SUM( A1, B1 )"],
    ["='plan'!a1", "=Plan!A1"],
    ["=SUM(", null],
    ["=", null],
    ["12", null],
  ])("spells %s as %s", (typed, spelt) => {
    const workbook = new Workbook(documentOf(sheet("Plan", ["A"], [[1]])))
    expect(workbook.normalized(typed)).toBe(spelt)
  })

  it.each(["2026", "Root samples", "It's", "Öfen", "Σ", "a.b", "B2", "x-y"])(
    "can look at a sheet named %s",
    (name) => {
      const workbook = new Workbook(documentOf(sheet("Plan", ["A"], [[null]]), sheet(name, ["A"], [[7]])))
      const formula = workbook.normalized(`=${addressText(workbook.document, cellAt("1!A1"))}+1`)!
      workbook.revise({type: "enter", cells: [{at: cellAt("A1"), content: formula}]})
      expect(workbook.valueAt(cellAt("A1"))).toBe(8)
      workbook.revise({type: "insertRows", sheet: 1, before: 0, count: 1})
      expect(workbook.valueAt(cellAt("A1"))).toBe(8)
    },
  )
})

describe("the changes of an edit", () => {
  const chain = documentOf(
    sheet(
      "Plan",
      ["A", "B", "C"],
      [
        [1, "=A1*2", "=B1>100"],
        [5, "=A2*2", "=1/(A1-1)"],
      ],
    ),
  )
  const entering = (at: string, content: Content): Edit => ({
    type: "enter",
    cells: [{at: cellAt(at), content}],
  })

  it("are the worked-out values that became others, each with what it was", () => {
    const workbook = new Workbook(chain)
    workbook.revise(entering("A1", 3))
    // C1 was and is false, B2 is of another row, and C2 was divided by zero.
    expect(workbook.changes).toEqual([
      {at: cellAt("B1"), was: 2, now: 6},
      {at: cellAt("C2"), was: expect.objectContaining({code: "#DIV/0!"}), now: 0.5},
    ])
  })

  it("tell what stood there before the edit where a value is worked out twice: once on what waits, and once more", () => {
    const names = sheet(
      "Names",
      ["Name", "Value"],
      [
        ["Rate", 2],
        ["Both", "=Input!A1+Work!A1"],
      ],
      {names: true},
    )
    // Input rests on Rate alone: Work waits, and Both is worked out first on what Work was.
    const input = sheet("Input", ["A", "B"], [[1, "=Rate"]])
    const workbook = new Workbook(documentOf(input, names, sheet("Work", ["A"], [["=Input!A1*2"]])))
    const both = {sheet: 1, row: 1, col: 1}
    expect(workbook.valueAt(both)).toBe(3)
    workbook.revise(entering("A1", 2), 0)
    expect(workbook.isOwing).toBe(true)
    expect(workbook.changes).toEqual([
      {at: both, was: 3, now: 6},
      {at: {sheet: 2, row: 0, col: 0}, was: 2, now: 4},
    ])
  })

  it("are none where a number stays what it was", () => {
    const workbook = new Workbook(chain)
    workbook.revise(entering("A3", 3))
    expect(workbook.changes).toEqual([])
  })

  it("are those of the last edit alone, undone ones included", () => {
    const workbook = new Workbook(chain)
    workbook.revise(entering("A2", 6))
    workbook.show(chain)
    expect(workbook.changes).toEqual([{at: cellAt("B2"), was: 12, now: 10}])
  })

  it("leave out a formula typed anew", () => {
    const workbook = new Workbook(chain)
    workbook.revise(entering("A3", "=A2*2"))
    expect(workbook.changes).toEqual([])
  })
})

describe("the users of a cell", () => {
  const document = documentOf(
    sheet(
      "Plan",
      ["A", "B", "C"],
      [
        [1, "=A1+SUM(A1:A2)", "=SUM(A1:A3)"],
        [2, "=SUM(A:A)", "=Rate*2"],
        [3, "=SUM('Two words'!A1:B1)", "=B1"],
      ],
    ),
    sheet("Two words", ["A", "B"], [["=Plan!A3", 1]]),
    sheet(
      "Values",
      ["Name", "Value"],
      [
        ["Rate", 5],
        ["Fee", "=rate+1"],
      ],
      {names: true},
    ),
  )
  it.each([
    ["A1", ["B1", "B2", "C1"]], // C1 by a range that the engine builds on that of B1; B1 once, though it uses it twice
    ["A3", ["B2", "C1", "1!A1"]],
    ["B1", ["C3"]],
    ["1!A1", ["B3"]],
    ["2!B1", ["C2", "2!B2"]], // by its name
    ["C3", []],
  ])("%s are %j", (at, users) => {
    const addresses = (list: readonly {sheet: number; row: number; col: number}[]) =>
      list.map((one) => JSON.stringify(one)).sort()
    expect(addresses(new Workbook(document).usersOf(cellAt(at)))).toEqual(addresses(users.map(cellAt)))
  })
})

describe("an error", () => {
  it("carries the cell where it began, through two sheets", () => {
    const workbook = new Workbook(
      documentOf(
        sheet("Plan", ["A", "B"], [["='Two words'!B2*2", "=SUM(A1:A1)"]]),
        sheet(
          "Two words",
          ["A", "B"],
          [
            [null, null],
            [0, "=1/A2"],
          ],
        ),
      ),
    )
    expect(workbook.valueAt(cellAt("B1"))).toEqual({code: "#DIV/0!", reason: "", began: cellAt("1!B2")})
  })

  it("of a function of ours carries its sentence", () => {
    const workbook = new Workbook(documentOf(sheet("Plan", ["A"], [["=SPEAR.HEAT(10,12,7)"]])))
    expect(workbook.valueAt(cellAt("A1"))).toMatchObject({
      code: "#NUM!",
      reason: expect.stringMatching(/10 °C.*12 °C/),
    })
  })
})

describe("another document", () => {
  it("with other sheets is shown like one opened afresh", () => {
    const workbook = new Workbook(farm)
    const other = documentOf(
      sheet("Beds", ["A"], [[2], ["=A1+Rate"]]),
      sheet("V", ["Name", "Value"], [["Rate", 1]], {names: true}),
    )
    workbook.show(other)
    expect(valuesOf(workbook)).toEqual(valuesOf(new Workbook(other)))
    workbook.show(farm)
    expect(valuesOf(workbook)).toEqual(valuesOf(new Workbook(farm)))
  })

  it("without a sheet or a column leaves nothing of them behind", () => {
    const plan = sheet("Plan", ["A"], [["=Beds!B1"], ["=SUM(Beds!1:1)"]])
    const beds = sheet("Beds", ["A", "B"], [[2, 3]])
    const workbook = new Workbook(documentOf(plan, beds))
    workbook.show(documentOf(plan, sheet("Beds", ["A"], [[2]])))
    expect(["A1", "A2"].map((at) => workbook.valueAt(cellAt(at)))).toEqual([null, 2])
    workbook.show(documentOf(plan))
    expect(workbook.valueAt(cellAt("A1"))).toMatchObject({code: "#REF!"})
  })

  it("with fewer rows has no blanks below the last in its whole columns", () => {
    const counts = sheet(
      "Counts",
      ["A"],
      [["=COUNTBLANK(Beds!A:A)"], ["=SUMPRODUCT((Beds!A:A=2)*(Beds!B:B>0))"]],
    )
    const beds = sheet(
      "Beds",
      ["A", "B"],
      [
        [2, 3],
        [2, 4],
        [null, null],
        [2, 5],
      ],
    )
    const workbook = new Workbook(documentOf(counts, beds))
    const counted = () => ["A1", "A2"].map((at) => workbook.valueAt(cellAt(at)))
    expect(counted()).toEqual([1, 3])
    workbook.revise({type: "removeRows", sheet: 1, first: 1, count: 1})
    expect(counted()).toEqual([1, 2])
    workbook.revise({
      type: "enter",
      cells: [0, 1].map((col) => ({at: {sheet: 1, row: 2, col}, content: null})),
    })
    expect(counted()).toEqual([0, 1])
    expect(valuesOf(workbook)).toEqual(valuesOf(new Workbook(workbook.document)))
    workbook.revise({type: "enter", cells: [{at: {sheet: 1, row: 3, col: 0}, content: 2}]})
    expect(counted()).toEqual([2, 1])
  })

  it("sees in its whole columns what a formula spills, below the last row too, like one opened afresh", () => {
    const workbook = new Workbook(
      documentOf(
        sheet("Plan", ["A", "B", "C"], [[1, null, null], [2, null, null], [3, null, null]]), // prettier-ignore
        sheet("Sums", ["A"], [["=SUM(Plan!B:B)"], ["=SUM(Plan!C:C)"], ["=COUNT(Plan!B:C)"]]),
      ),
    )
    const spilt = "=TRANSPOSE({1,2,4,8;16,32,64,128})" // 1 + 2 + 4 + 8 is 15, sixteen times as much is 240
    const after = (edit: Edit) => {
      workbook.revise(edit)
      const sums = (one: Workbook) => ["1!A1", "1!A2", "1!A3"].map((at) => one.valueAt(cellAt(at)))
      expect(sums(workbook)).toEqual(sums(new Workbook(workbook.document)))
      return sums(workbook)
    }
    const enter = (at: string, content: Content) => after({type: "enter", cells: [{at: cellAt(at), content}]})
    expect(enter("B2", spilt)).toEqual([15, 240, 8])
    expect(after({type: "insertRows", sheet: 0, before: 0, count: 2})).toEqual([15, 240, 8])
    expect(after({type: "removeRows", sheet: 0, first: 0, count: 1})).toEqual([15, 240, 8])
    expect(enter("C4", 7)).toMatchObject([{code: "#SPILL!"}, 7, expect.anything()])
    expect(enter("C4", null)).toEqual([15, 240, 8]) // there is room again
    expect(enter("B3", null)).toEqual([0, 0, 0])
  })

  it("with another column formula is worked out anew", () => {
    const plan = (formula: string) => documentOf(sheet("Plan", ["A", column("B", {formula})], [[4, "="]]))
    const workbook = new Workbook(plan("=A1*2"))
    workbook.show(plan("=A1*3"))
    expect(workbook.valueAt(cellAt("B1"))).toBe(12)
  })
})
