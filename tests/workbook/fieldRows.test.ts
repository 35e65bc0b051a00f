import {describe, expect, it} from "vitest"
import type {Document, FieldEntry} from "../../src/workbook/document"
import {fieldEntryOf, withFieldEntries, type FieldContents} from "../../src/workbook/fieldRows"
import {readFile, writeFile} from "../../src/workbook/file"
import {revised} from "../../src/workbook/revised"
import {column, documentOf, seeded, sheet} from "./documents"
import {anyOrder, below, oneOf, seeds} from "./sessions"

const farm = documentOf(
  sheet(
    "Pickings",
    [
      column("Planting", {part: "picking planting"}),
      column("Day", {part: "picking day", format: "date"}),
      column("Weight", {part: "picking weight", unit: "kg"}),
      column("Twice", {formula: "=C1*2"}),
    ],
    [],
  ),
)

const id = (n: number) => n.toString(16).padStart(32, "0")
const picking = (kg: number, planting = "Long Acre"): FieldContents => ({
  "picking planting": planting,
  "picking day": "2026-05-25",
  "picking weight": kg,
})
const mark = (n: number) => ({id: id(n), device: "Phone", entered: "2026-05-25T06:12:00.000Z"})
const added = (n: number, row: FieldContents): FieldEntry => ({...mark(n), row})
const takenBack = (n: number, of: number): FieldEntry => ({...mark(n), takesBack: id(of)})

const rows = ({sheets}: Document) => sheets[0]!.rows
const weights = (document: Document) => rows(document).map((row) => row[2])
const sorted = (document: Document) => weights(document).toSorted((a, b) => Number(a) - Number(b))

describe("rows of the field", () => {
  it("land below the last row, with the formulas of the sheet", () =>
    expect(rows(withFieldEntries(farm, [added(1, picking(400))]))).toEqual([
      ["Long Acre", "2026-05-25", 400, "="],
    ]))

  it("land once, however often they come", () => {
    const once = withFieldEntries(farm, [added(1, picking(400)), added(2, picking(90))])
    expect(withFieldEntries(once, [added(2, picking(90)), added(1, picking(400))])).toBe(once)
  })

  it("are two where two acts hold the same: two loads of one weight", () =>
    expect(weights(withFieldEntries(farm, [added(1, picking(200)), added(2, picking(200))]))).toEqual([
      200, 200,
    ]))

  it("go when they are taken back, before or after they come", () => {
    const [row, back] = [added(1, picking(400)), takenBack(2, 1)]
    expect(weights(withFieldEntries(farm, [row, back]))).toEqual([])
    expect(weights(withFieldEntries(farm, [back, row]))).toEqual([])
  })

  it("stay when they were changed by hand before they are taken back", () => {
    const landed = withFieldEntries(farm, [added(1, picking(400))])
    const at = {sheet: 0, row: 0, col: 2}
    const changed = revised(landed, {type: "enter", cells: [{at, content: 410}]})
    expect(weights(withFieldEntries(changed, [takenBack(2, 1)]))).toEqual([410])
  })

  it("leave the row of another act of the same weight alone when they are taken back after a change by hand", () => {
    const landed = withFieldEntries(farm, [added(1, picking(200))])
    const at = {sheet: 0, row: 0, col: 2}
    const changed = revised(landed, {type: "enter", cells: [{at, content: 210}]})
    const [other, back] = [added(2, picking(200)), takenBack(3, 1)]
    expect(weights(withFieldEntries(changed, [other, back]))).toEqual([210, 200])
    expect(weights(withFieldEntries(changed, [back, other]))).toEqual([210, 200])
  })

  it("leave a row that was typed before they came, in whatever order they are taken back", () => {
    const typed = revised(farm, {
      type: "enter",
      cells: ["Long Acre", "2026-05-25", 400].map((content, col) => ({at: {sheet: 0, row: 0, col}, content})),
    })
    const [row, back] = [added(1, picking(400)), takenBack(2, 1)]
    expect(weights(withFieldEntries(typed, [row, back]))).toEqual([400])
    expect(weights(withFieldEntries(typed, [back, row]))).toEqual([400])
  })

  it("wait for a workbook that has a column for all they hold", () => {
    const columns = farm.sheets[0]!.columns.filter(({part}) => part !== "picking weight")
    const without = {...farm, sheets: [{...farm.sheets[0]!, columns}]}
    expect(withFieldEntries(without, [added(1, picking(400))])).toBe(without)
  })

  it("come by thousands at once", () => {
    const many = Array.from({length: 5000}, (_, i) => added(i, picking(i % 700)))
    expect(rows(withFieldEntries(withFieldEntries(farm, many), many))).toHaveLength(5000)
  })

  it("do not come again after they were changed or taken out by hand", () => {
    const landed = withFieldEntries(farm, [added(1, picking(400))])
    const gone = revised(landed, {type: "removeRows", sheet: 0, first: 0, count: 1})
    expect(weights(withFieldEntries(gone, [added(1, picking(400))]))).toEqual([])
  })

  it("are found in a copy that has them without knowing of the act", () => {
    const typed = revised(farm, {
      type: "enter",
      cells: ["Long Acre", "2026-05-25", 400].map((content, col) => ({at: {sheet: 0, row: 0, col}, content})),
    })
    const once = withFieldEntries(typed, [added(1, picking(400))])
    expect(weights(once)).toEqual([400])
    expect(weights(withFieldEntries(once, [added(2, picking(400))]))).toEqual([400, 400])
  })

  it("are saved and read with the workbook", () => {
    const landed = withFieldEntries(farm, [added(1, picking(400)), takenBack(2, 1)])
    expect(readFile(writeFile(landed))).toEqual({document: landed})
  })

  it("tell who entered them, as long as they hold what was entered", () => {
    const landed = withFieldEntries(farm, [added(1, picking(400)), added(2, picking(90))])
    expect(fieldEntryOf(landed, 0, 1)?.id).toBe(id(2))
    const at = {sheet: 0, row: 1, col: 2}
    const changed = revised(landed, {type: "enter", cells: [{at, content: 91}]})
    expect(fieldEntryOf(changed, 0, 1)).toBeNull()
  })

  it.each(seeds(60))("make the same set in any order, parts and repetition, seed %i", (seed) => {
    const random = seeded(seed)
    const entries = Array.from({length: 12}, (_, i): FieldEntry => {
      if (i > 0 && random() < 0.3) return takenBack(i, below(random, 14))
      return added(i, picking(oneOf(random, [100, 200, 300]), oneOf(random, ["Long Acre", "Sand Piece"])))
    })
    const wanted = entries.flatMap((one) =>
      one.row && !entries.some(({takesBack}) => takesBack === one.id) ? [one.row["picking weight"]] : [],
    )
    const anyWay = () => anyOrder(random, entries.length).map((i) => entries[i]!)
    let document = withFieldEntries(farm, anyWay().slice(0, 1 + below(random, 12)))
    for (let i = 0; i < 3; i++) document = withFieldEntries(document, anyWay().slice(0, below(random, 13)))
    document = withFieldEntries(document, anyWay())
    expect(sorted(document)).toEqual(wanted.toSorted((a, b) => Number(a) - Number(b)))
    expect(document.field).toHaveLength(entries.length)
  })
})
