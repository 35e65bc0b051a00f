import {describe, expect, it} from "vitest"
import {documentSchema, type Document} from "../../src/workbook/document"
import {editRefused} from "../../src/workbook/edit"
import {
  sheetNameRefused,
  withSheetAdded,
  withSheetCopied,
  withSheetMoved,
  withSheetRemoved,
  withSheetRenamed,
} from "../../src/workbook/sheets"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, column, documentOf, seeded, sheet} from "./documents"
import {below, crowded, engineFormulas, formulasOf, plainCopy, seeds, session} from "./sessions"

const document = documentOf(
  sheet(
    "Plan",
    ["Area", column("Cost", {formula: "=A1*Prices!$A$1", total: "=SUM(B:B)+SUM(prices!A:A)"})],
    [
      [2, "="],
      [3, '=Rate+Prices!A1&"Prices!A1"'],
    ],
  ),
  sheet("Prices", ["Price", "Twice"], [[10, "=Prices!A1+A1+Plan!A1"]]),
  sheet("Values", ["Name", "Value"], [["Rate", "=Prices!A1/5"]], {names: true}),
)
const [plan, prices, values] = document.sheets
const namesOf = ({sheets}: Document) => sheets.map(({name}) => name)
/** The column formula, the total, and the formulas typed on the sheets. */
const formulasIn = ({sheets}: Document) => [
  sheets[0]!.columns[1]!.formula,
  sheets[0]!.columns[1]!.total,
  sheets[0]!.rows[1]![1],
  sheets.find(({columns}) => columns[1]!.heading === "Twice")!.rows[0]![1],
  sheets.at(-1)!.rows[0]![1],
]

describe("a sheet called otherwise", () => {
  it("is followed by every formula, but not by texts that look like it", () => {
    const next = withSheetRenamed(document, 1, "Costs")
    expect(namesOf(next)).toEqual(["Plan", "Costs", "Values"])
    expect(formulasIn(next)).toEqual([
      "=A1*Costs!$A$1",
      "=SUM(B:B)+SUM(Costs!A:A)",
      '=Rate+Costs!A1&"Prices!A1"',
      "=Costs!A1+A1+Plan!A1",
      "=Costs!A1/5",
    ])
    expect(next.sheets[0]!.rows[0]).toBe(plan!.rows[0])
  })

  it.each([
    ["Two words", "='Two words'!A1/5"],
    ["It's", "='It''s'!A1/5"],
    ["2026", "='2026'!A1/5"],
    ["PRICES", "=PRICES!A1/5"],
  ])("stands quoted where it has to: %s", (name, formula) => {
    const workbook = new Workbook(document)
    const next = workbook.revise({type: "renameSheet", sheet: 1, name})
    expect(next.sheets[2]!.rows[0]![1]).toBe(formula)
    // The rate is 10 / 5, and the row 2 + 10 followed by the text.
    expect(workbook.valueAt(cellAt("2!B1"))).toBe(2)
    expect(workbook.valueAt(cellAt("B2"))).toBe("12Prices!A1")
  })

  it("still holds the names that formulas use", () => {
    const workbook = new Workbook(document)
    workbook.revise({type: "renameSheet", sheet: 2, name: "What holds"})
    expect(workbook.valueAt(cellAt("B2"))).toBe("12Prices!A1")
  })
})

describe("a new sheet", () => {
  it("stands last in its group, with one column and no row", () => {
    const next = withSheetAdded(document, "Beds", "Land")
    expect(next.sheets.slice(0, 3)).toEqual(document.sheets)
    expect(next.sheets[3]).toEqual({
      name: "Beds",
      group: "Land",
      columns: [{heading: "New column", kind: "typed"}],
      rows: [],
    })
    expect(documentSchema.safeParse(next).success).toBe(true)
  })

  it("can be typed into", () => {
    const workbook = new Workbook(document)
    workbook.revise({type: "addSheet", name: "Beds", group: "Land"})
    workbook.revise({type: "enter", cells: [{at: cellAt("3!A2"), content: "=Plan!A2*2"}]})
    expect(workbook.valueAt(cellAt("3!A2"))).toBe(6)
  })
})

describe("a sheet at another place", () => {
  it.each([
    [0, 2, ["Prices", "Values", "Plan"]],
    [2, 0, ["Values", "Plan", "Prices"]],
    [1, 1, ["Plan", "Prices", "Values"]],
  ])("goes from %i to %i and changes nothing else", (from, to, names) => {
    const next = withSheetMoved(document, from, to)
    expect(namesOf(next)).toEqual(names)
    for (const sheet of document.sheets) expect(next.sheets).toContain(sheet)
  })

  it("is found there by values and by the origin of an error", () => {
    const workbook = new Workbook(
      documentOf(sheet("Plan", ["A"], [["=Beds!A1"]]), sheet("Beds", ["A"], [["=1/0"]])),
    )
    workbook.revise({type: "moveSheet", from: 1, to: 0})
    expect(workbook.valueAt(cellAt("1!A1"))).toMatchObject({code: "#DIV/0!", began: cellAt("A1")})
  })
})

describe("a copy of a sheet", () => {
  it("stands after it and points at itself where the sheet did, while others go on pointing at the first", () => {
    const next = withSheetCopied(document, 1, "Prices 2")
    expect(namesOf(next)).toEqual(["Plan", "Prices", "Prices 2", "Values"])
    expect(next.sheets[2]!.rows).toEqual([[10, "='Prices 2'!A1+A1+Plan!A1"]])
    expect([next.sheets[0], next.sheets[1], next.sheets[3]]).toEqual([plan, prices, values])
  })

  it("has values of its own", () => {
    const workbook = new Workbook(document)
    workbook.revise({type: "copySheet", sheet: 1, name: "Prices 2"})
    workbook.revise({type: "enter", cells: [{at: cellAt("2!A1"), content: 100}]})
    // 10 + 10 + 2, and 100 + 100 + 2
    expect(["1!B1", "2!B1"].map((at) => workbook.valueAt(cellAt(at)))).toEqual([22, 202])
  })

  it("of named values leaves each name with its first row", () => {
    const workbook = new Workbook(document)
    workbook.revise({type: "copySheet", sheet: 2, name: "Other values"})
    workbook.revise({type: "enter", cells: [{at: cellAt("3!B1"), content: 1000}]})
    expect(workbook.evaluate("=Rate", 0)).toBe(2)
  })
})

describe("a sheet taken out", () => {
  it("leaves #REF! where formulas pointed at it, and the rest what it was", () => {
    const next = withSheetRemoved(document, 1)
    expect(namesOf(next)).toEqual(["Plan", "Values"])
    expect(next.sheets[0]!.columns[1]).toMatchObject({formula: "=A1*#REF!", total: "=SUM(B:B)+SUM(#REF!)"})
    expect(next.sheets[0]!.rows).toEqual([
      [2, "="],
      [3, '=Rate+#REF!&"Prices!A1"'],
    ])
    expect(next.sheets[1]!.rows).toEqual([["Rate", "=#REF!/5"]])
  })

  it("takes its names with it", () => {
    const workbook = new Workbook(document)
    workbook.revise({type: "removeSheet", sheet: 2})
    expect(workbook.valueAt(cellAt("B2"))).toMatchObject({code: "#NAME?"})
    workbook.show(document)
    expect(workbook.valueAt(cellAt("B2"))).toBe("12Prices!A1")
  })

  it("is never the last one", () => {
    const single = documentOf(plan!)
    const edit = {type: "removeSheet", sheet: 0} as const
    expect(editRefused(document, edit)).toBeNull()
    expect(editRefused(single, edit)).toBe(
      "Plan is the only sheet, and a workbook needs one: add another first",
    )
    expect(() => new Workbook(single).revise(edit)).toThrow("Plan is the only sheet")
  })
})

describe("the name of a sheet", () => {
  it.each([
    ["", "A sheet needs a name, so that formulas can point at it: type a word or two"],
    ["  ", "A sheet needs a name, so that formulas can point at it: type a word or two"],
    [
      "A sheet of very many words in it",
      "“A sheet of very many words in it” has 32 characters, and a sheet's name has 31 at most: shorten it",
    ],
    ["Crop/ha", "“Crop/ha” holds a sign that no sheet's name may hold: leave out \\ / ? * [ ] :"],
    [
      "pRICES",
      "Another sheet is called “Prices”, and a formula could not tell the two apart: choose another name",
    ],
  ])("%j is refused in a sentence", (name, sentence) => {
    expect(sheetNameRefused(document, name)).toBe(sentence)
    for (const edit of [
      {type: "addSheet", name, group: "Land"},
      {type: "copySheet", sheet: 1, name},
      {type: "renameSheet", sheet: 0, name},
    ] as const) {
      expect(editRefused(document, edit)).toBe(sentence)
      expect(() => new Workbook(document).revise(edit)).toThrow(RangeError)
    }
  })

  it("may be its own in other letters", () => {
    expect(sheetNameRefused(document, "pRICES", 1)).toBeNull()
  })

  it("may be whatever a saved workbook may hold", () => {
    for (const name of [
      "A sheet of very many words, in it",
      "a:b",
      "It's 100 % (new)",
      "x".repeat(31),
      "Ω",
    ]) {
      const isSaved = documentSchema.safeParse(documentOf(sheet(name, ["A"], []))).success
      expect(sheetNameRefused(document, name) === null).toBe(isSaved)
    }
  })

  it("comes with that of a group", () => {
    expect(editRefused(document, {type: "addSheet", name: "Beds", group: " "})).toBe(
      "A sheet stands under a group in the contents: type the group's name",
    )
  })
})

describe("sheets that come and go", () => {
  it.each(seeds(10))(
    "and are renamed leave every formula as the engine itself rewrites it (seed %i)",
    (seed) => {
      const random = seeded(3000 + seed)
      const document = crowded(random)
      const engine = plainCopy(document)
      const index = below(random, document.sheets.length)
      engine.renameSheet(engine.getSheetId(document.sheets[index]!.name)!, "It's new")
      const next = withSheetRenamed(document, index, "It's new")
      const expected = engineFormulas(engine, next)
      expect(expected.size).toBeGreaterThan(10)
      expect([...formulasOf(next)].sort()).toEqual([...expected].sort())
    },
  )

  it.each(seeds(10))("keep the values true through a session (seed %i)", (seed) => {
    const kinds = ["addSheet", "renameSheet", "moveSheet", "copySheet", "removeSheet"] as const
    const {found, wanted} = session(200 + seed, kinds)
    expect(found).toEqual(wanted)
  })
})
