import {describe, expect, it} from "vitest"
import {withCellsMoved} from "../../src/workbook/cellsMoved"
import {formulaIn} from "../../src/workbook/cells"
import type {CellAddress, Content, Document} from "../../src/workbook/document"
import {extraAt} from "../../src/workbook/extras"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, column, documentOf, seeded, sheet} from "./documents"
import {
  below,
  crowded,
  engineFormulas,
  farm,
  formulasOf,
  movesOf,
  plainCopy,
  seeds,
  session,
  type Random,
} from "./sessions"

/** Numbers in A1:C8 of a sheet, and another sheet with one formula that looks at them. */
const looking = (formula: string): Document =>
  documentOf(
    sheet(
      "Root samples",
      ["A", "B", "C", "D"],
      Array.from({length: 8}, (_, i) => [i + 1, i + 11, i + 21, null]),
    ),
    sheet("Plan", ["Out", "Free"], [[formula, null]]),
  )

/** The document with a block moved, such as "A2:B3", so that it begins at a cell. */
function moved(document: Document, block: string, to: string): Document {
  const [from, end = from!] = block.split(":")
  const [a, b] = [cellAt(from!), {...cellAt(end)}]
  return withCellsMoved(document, movesOf(document, a, cellAt(to), [b.row - a.row + 1, b.col - a.col + 1]))
}

const contentOf = ({sheets}: Document, text: string): Content | undefined => {
  const {sheet: index, row, col} = cellAt(text)
  return sheets[index]!.rows[row]?.[col]
}

describe("A2:B3 moved to A6 leaves, in a formula of another sheet,", () => {
  it.each([
    ["a moved cell", "='Root samples'!B3", "='Root samples'!B7"],
    ["a fixed one", "='Root samples'!$A$2", "='Root samples'!$A$6"],
    ["a range within", "=SUM('Root samples'!A2:B3)", "=SUM('Root samples'!A6:B7)"],
    ["a range upside down", "=SUM('Root samples'!B3:$A2)", "=SUM('Root samples'!B7:$A6)"],
    ["a range beyond", "=SUM('Root samples'!A2:A4)", "=SUM('Root samples'!A2:A4)"],
    [
      "whole columns and rows",
      "=SUM('Root samples'!A:B,'Root samples'!2:3)",
      "=SUM('Root samples'!A:B,'Root samples'!2:3)",
    ],
    ["a cell written over", "='Root samples'!A6+1", "=#REF!+1"],
    ["a range written over", "=SUM('Root samples'!A6:A7)", "=SUM(#REF!)"],
    ["a range partly written over", "=SUM('Root samples'!A5:A7)", "=SUM('Root samples'!A5:A7)"],
    ["other cells", "='Root samples'!C2+A2", "='Root samples'!C2+A2"],
    ["a sheet in another case", "='root SAMPLES'!A2", "='root SAMPLES'!A6"],
    ["a text that looks like a cell", "=\"'Root samples'!A2\"", "=\"'Root samples'!A2\""],
  ])("%s as it should be", (_, formula, after) => {
    expect(contentOf(moved(looking(formula), "A2:B3", "A6"), "1!A1")).toBe(after)
  })
})

describe("moving cells", () => {
  it("takes their contents along, and leaves blanks", () => {
    const {rows} = moved(looking("=1"), "A2:B3", "A3").sheets[0]!
    expect(rows.slice(0, 4).map((row) => row.slice(0, 3))).toEqual([
      [1, 11, 21],
      [null, null, 22],
      [2, 12, 23],
      [3, 13, 24],
    ])
  })

  it("keeps a blank place that is filled now in the formulas that pointed at it", () => {
    const next = moved(looking("='Root samples'!D2"), "A2", "D2")
    expect(contentOf(next, "1!A1")).toBe("='Root samples'!D2")
  })

  it("keeps a moved formula pointing at what it did, and at what moves with it", () => {
    const document = documentOf(
      sheet(
        "Plan",
        ["A", "B", "C"],
        [
          [1, "=A1+A2+$C$2", "=B1*2"],
          [2, null, 5],
        ],
      ),
      sheet("It's", ["A", "B"], [[null, "=Plan!B1"]]),
    )
    expect(moved(document, "A1:B1", "A4").sheets[0]!.rows[3]).toEqual([1, "=A4+A2+$C$2", null])
    const elsewhere = moved(document, "A1:B1", "1!A2")
    expect(elsewhere.sheets[1]!.rows).toEqual(
      [
        [null, "=B2"],
        [1, "=A2+Plan!A2+Plan!$C$2"],
      ].map((row, i) => (i === 0 ? [null, "='It''s'!B2"] : row)),
    )
    expect(contentOf(elsewhere, "C1")).toBe("='It''s'!B2*2")
    expect(moved(elsewhere, "1!A2:B2", "A1").sheets[0]!.rows[0]).toEqual([
      1,
      "=A1+Plan!A2+Plan!$C$2",
      "=Plan!B1*2",
    ])
  })

  it("adds rows below the last, with the formulas of their columns", () => {
    const document = documentOf(sheet("Plan", ["A", column("Twice", {formula: "=A1*2"})], [[1, "="]]))
    expect(moved(document, "A1", "A3").sheets[0]!.rows).toEqual([
      [null, "="],
      [null, "="],
      [1, "="],
    ])
    expect(moved(document, "A2", "A4").sheets[0]!.rows).toEqual([[1, "="]])
  })

  it("takes notes, formats and cases along; those of a cell that is written over stay where none comes", () => {
    const [note, other] = ["first", "second"].map((text) => ({text, written: "2026-05-25T08:00:00Z"}))
    const document = documentOf(
      sheet(
        "Plan",
        ["A", "B"],
        [
          [1, 2],
          [3, 4],
        ],
        {
          extras: [
            {row: 0, col: 0, note: note!, format: 2},
            {row: 1, col: 1, note: other!, cases: {Frost: 9}},
          ],
        },
      ),
    )
    expect(moved(document, "A1", "B2").sheets[0]!.extras).toEqual([
      {row: 1, col: 1, note, format: 2, cases: {Frost: 9}},
    ])
    expect(extraAt(moved(document, "A1:B1", "A2"), cellAt("B2"))?.note).toEqual(other)
    expect(moved(document, "A1:B2", "A2").sheets[0]!.extras).toHaveLength(2)
  })
})

describe("a worked-out column", () => {
  const plan = documentOf(
    sheet(
      "Plan",
      [
        "Area",
        "Other",
        column("Twice", {formula: "=A1*2"}),
        column("Of first", {formula: "=A1/$A$1"}),
        column("So far", {formula: "=SUM(A$1:A1)"}),
      ],
      [1, 2, 3].map((area) => [area, area * 10, "=", "=", "="]),
    ),
    sheet("Notes", ["Words"], [[null]]),
  )
  const formulas = (document: Document, col: number) =>
    [0, 1, 2].map((row) => formulaIn(document, {sheet: 0, row, col}))

  it("reads its own rows where cells come to other rows", () => {
    const next = moved(plan, "A1", "A4")
    expect(next.sheets[0]!.columns.map(({formula}) => formula)).toEqual([
      undefined,
      undefined,
      "=A1*2",
      "=A1/$A$4",
      "=SUM(A$1:A1)",
    ])
    const workbook = new Workbook(plan)
    workbook.revise({type: "moveCells", moves: movesOf(plan, cellAt("A1"), cellAt("A3"), [1, 1])})
    expect([1, 2, 3].map((row) => workbook.valueAt(cellAt(`C${row}`)))).toEqual([0, 4, 2])
  })

  it("follows cells that stay in their rows, as one formula where all of them come along", () => {
    const all = moved(plan, "A1:A3", "1!A1")
    expect(all.sheets[0]!.columns[2]!.formula).toBe("=Notes!A1*2")
    expect(all.sheets[0]!.rows.map((row) => row[2])).toEqual(["=", "=", "="])
    const one = moved(plan, "A2", "B2")
    expect(formulas(one, 2)).toEqual(["=A1*2", "=B2*2", "=A3*2"])
    expect(one.sheets[0]!.rows.map((row) => row[2])).toEqual(["=", "=B2*2", "="])
    expect(formulas(moved(plan, "B2", "A2"), 2)).toEqual(["=A1*2", "=A2*2", "=A3*2"]) // though A2 is written over
  })
})

/** Formulas of every form in typed columns, and numbers alone where cells come to. */
function freely(random: Random, to: CellAddress, [height, width]: number[]): Document {
  const free = crowded(random)
  const isReached = (sheet: number, row: number, col: number) =>
    sheet === to.sheet && row >= to.row && row < to.row + height! && col >= to.col && col < to.col + width!
  const sheets = free.sheets.map((one, sheet) => ({
    ...one,
    columns: one.columns.map(({heading}) => column(heading)),
    rows: one.rows.map((contents, row) =>
      contents.map((content, col) =>
        isReached(sheet, row, col) ? 1 : (formulaIn(free, {sheet, row, col}) ?? content),
      ),
    ),
  }))
  return {...free, sheets}
}

it.each(seeds(40))("moved cells are followed as the engine itself does, seed %i", (seed) => {
  const random = seeded(3000 + seed)
  const index = below(random, farm.sheets.length)
  const {columns} = farm.sheets[index]!
  const size = [1 + below(random, 3), 1 + below(random, 2)]
  const any = () => ({sheet: index, row: below(random, 4), col: below(random, columns.length + 1 - size[1]!)})
  const [from, to] = [any(), any()]
  const document = freely(random, to, size)
  const engine = plainCopy(document)
  const start = {...from, sheet: engine.getSheetId(document.sheets[index]!.name)!}
  const end = {...start, row: start.row + size[0]! - 1, col: start.col + size[1]! - 1}
  engine.moveCells({start, end}, {...to, sheet: start.sheet})
  const next = withCellsMoved(document, movesOf(document, from, to, size))
  const ours = [...formulasOf(next)].filter(([, formula]) => !formula.includes("#REF!")) // it leaves those as they were
  const theirs = engineFormulas(engine, next)
  expect(ours.length).toBeGreaterThan(10)
  expect(ours).toEqual(ours.map(([at]) => [at, theirs.get(at)]))
})

it.each(seeds(12))("random session %i of moves leaves what the saved workbook says afresh", (seed) => {
  const {found, wanted} = session(400 + seed, ["moveCells"])
  expect(found).toEqual(wanted)
})
