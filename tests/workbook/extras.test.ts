import {describe, expect, it} from "vitest"
import {withColumnsInserted, withColumnsRemoved} from "../../src/workbook/columns"
import {columnAt, extraAt, notesIn, withExtras} from "../../src/workbook/extras"
import {readFile, writeFile} from "../../src/workbook/file"
import {withRowsInserted, withRowsRemoved} from "../../src/workbook/rows"
import {withSheetCopied} from "../../src/workbook/sheets"
import {withRowsMoved} from "../../src/workbook/sorting"
import {cellAt, column, documentOf, sheet} from "./documents"

const note = (text: string) => ({text, written: "2026-05-25T08:00:00.000Z"})
const plain = documentOf(
  sheet(
    "Plan",
    ["Planting", column("Area", {format: 1}), "Remark"],
    [
      ["Long Acre", 6.4, null],
      ["Well Field", 7.2, null],
      ["Sand Piece", 5, null],
    ],
  ),
)
const document = withExtras(plain, [
  {at: cellAt("B1"), note: note("surveyed")},
  {at: cellAt("C3"), note: note("stony"), format: "text"},
])
const places = (of: typeof document) => notesIn(of).map(({at, found}) => [at.row, at.col, found.text])

describe("notes and formats of single cells", () => {
  it.each([
    [
      "a row put in before",
      withRowsInserted(document, 0, 0, 1),
      [
        [1, 1, "surveyed"],
        [3, 2, "stony"],
      ],
    ],
    [
      "a row put in between",
      withRowsInserted(document, 0, 2, 2),
      [
        [0, 1, "surveyed"],
        [4, 2, "stony"],
      ],
    ],
    ["its row taken out", withRowsRemoved(document, 0, 0, 1), [[1, 2, "stony"]]],
    [
      "a column put in before",
      withColumnsInserted(document, 0, 2, 1),
      [
        [0, 1, "surveyed"],
        [2, 3, "stony"],
      ],
    ],
    ["its column taken out", withColumnsRemoved(document, 0, 1, 1), [[2, 1, "stony"]]],
    [
      "the rows in another order",
      withRowsMoved(document, 0, [2, 0, 1]),
      [
        [0, 2, "stony"],
        [1, 1, "surveyed"],
      ],
    ],
  ])("stay with their cells: %s", (_, after, expected) => expect(places(after)).toEqual(expected))

  it("go along into a copy of the sheet", () =>
    expect(notesIn(withSheetCopied(document, 0, "Copy")).map(({at}) => at.sheet)).toEqual([0, 0, 1, 1]))

  it("are kept in a file and read back", () => {
    const reading = readFile(writeFile(document))
    expect("document" in reading && reading.document).toEqual(document)
  })

  it("leave nothing behind when they are taken away", () => {
    const without = withExtras(document, [
      {at: cellAt("B1"), note: null},
      {at: cellAt("C3"), note: null, format: null},
    ])
    expect(writeFile(without)).toBe(writeFile(plain))
  })

  it("change one and keep the other", () => {
    const changed = withExtras(document, [{at: cellAt("C3"), note: null}])
    expect(extraAt(changed, cellAt("C3"))).toEqual({row: 2, col: 2, format: "text"})
  })

  it("show one cell otherwise than its column", () => {
    const shown = withExtras(document, [{at: cellAt("B2"), format: 3}])
    expect(columnAt(shown, cellAt("B2"))?.format).toBe(3)
    expect(columnAt(shown, cellAt("B1"))?.format).toBe(1)
  })
})

describe("columns kept in view", () => {
  const kept = documentOf(sheet("Plan", ["A", "B", "C", "D"], [[1, 2, 3, 4]], {keeps: 2}))
  it.each([
    ["one put in among them", withColumnsInserted(kept, 0, 1, 1), 3],
    ["one put in behind them", withColumnsInserted(kept, 0, 2, 1), 2],
    ["one of them taken out", withColumnsRemoved(kept, 0, 1, 2), 1],
    ["one behind them taken out", withColumnsRemoved(kept, 0, 3, 1), 2],
  ])("stay the same ones: %s", (_, after, expected) => expect(after.sheets[0]!.keeps).toBe(expected))
})
