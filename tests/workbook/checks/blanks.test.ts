import {expect, it} from "vitest"
import type {Content} from "../../../src/workbook/document"
import {column, documentOf, sheet} from "../documents"
import {kindAt} from "../../../src/workbook/trace"
import {inWords, told} from "./looking"

const samples = (...rows: Content[][]) =>
  documentOf(
    sheet(
      "Root samples",
      [
        column("Planting", {format: "text"}),
        column("Sugar", {kind: "measured", unit: "mg/g", format: 0}),
        column("Reading", {unit: "°Brix", format: 1}),
      ],
      rows,
    ),
  )

it("says how many of a planting's samples are used and how many are blank (AG3)", () => {
  const ten = [412, 388, null, 430, 367, 441, null, 398, 420, 376].map((sugar) => ["Long Acre", sugar, null])
  const document = samples(...ten, ["Well Field", 400, null])
  expect(inWords(document, "blank in a range")).toEqual([
    "B3: Sugar of Long Acre: 8 of 10 used, 2 blank; the first is in row 3",
  ])
  expect(told(document, "blank in a range")[0]!.cells.map(({row}) => row + 1)).toEqual([3, 7])
})

it("takes a planting that is not measured at all, or by another column, for no slip", () => {
  expect(inWords(samples(["Top Corner", null, 18], ["Top Corner", null, 19]), "blank in a range")).toEqual([])
})

it("asks of a root sample for its sugar or its reading, not for both", () => {
  const document = documentOf(
    sheet(
      "Root samples",
      [
        column("Planting", {format: "text"}),
        column("Sugar", {kind: "measured", part: "sample sugar"}),
        column("Reading", {kind: "measured", part: "sample reading"}),
      ],
      [
        ["Long Acre", 412, null],
        ["Long Acre", null, 18],
        ["Long Acre", 430, 19],
        ["Long Acre", null, null],
      ],
    ),
  )
  expect(inWords(document, "blank in a range")).toEqual([
    "B4: Sugar of Long Acre: 2 of 3 used, 1 blank; it is in row 4",
    "C4: Reading of Long Acre: 2 of 3 used, 1 blank; it is in row 4",
  ])
  const kinds = document.sheets[0]!.rows.map((_, row) =>
    [1, 2].map((col) => kindAt(document, {sheet: 0, row, col})),
  )
  expect(kinds.slice(0, 2).flat()).toEqual(Array(4).fill("measured"))
  expect(kinds[3]).toEqual(["missing", "missing"])
})
