import {describe, expect, it} from "vitest"
import {createStore} from "../../src/editor/store"
import type {Content, Document, FieldEntry} from "../../src/workbook/document"
import {actOf, landed, lastEntered} from "../../src/workbook/fieldActs"
import type {FieldContents} from "../../src/workbook/fieldRows"
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

const brought = (document: Document, ...entries: FieldEntry[]) =>
  landed(document, entries, "elsewhere").document
const entered = (document: Document, ...entries: FieldEntry[]) => landed(document, entries, "here").document
const typed = (document: Document, row: number, col: number, content: Content) =>
  revised(document, {type: "enter", cells: [{at: {sheet: 0, row, col}, content}]})
/** With a row that was typed by hand. */
const withTyped = (document: Document, kg: number) =>
  ["Long Acre", "2026-05-25", kg].reduce<Document>(
    (next, content, col) => typed(next, document.sheets[0]!.rows.length, col, content),
    document,
  )

const rows = ({sheets}: Document) => sheets[0]!.rows
const weights = (document: Document) => rows(document).map((row) => row[2])
const rising = (some: readonly unknown[]) => some.toSorted((a, b) => Number(a) - Number(b))

describe("what was entered last", () => {
  const last = (document: Document, moment = "2026-05-25T07:00:00.000Z") => lastEntered(document, moment)?.id
  const two = entered(farm, added(1, picking(400)), added(2, picking(90)))

  it("is the last row that was not taken back, one after the other", () => {
    expect(last(farm)).toBeUndefined()
    expect(last(two)).toBe(id(2))
    expect(last(entered(two, takenBack(3, 2)))).toBe(id(1))
    expect(last(entered(two, takenBack(3, 2), takenBack(4, 1)))).toBeUndefined()
  })

  it("is none of another device, none older than a shift, and none that was changed on its sheet", () => {
    expect(last(brought(two, added(3, picking(50))))).toBe(id(2))
    expect(last(two, "2026-05-25T18:12:00.000Z")).toBe(id(2))
    expect(last(two, "2026-05-25T18:13:00.000Z")).toBeUndefined()
    expect(last(typed(two, 1, 2, 95))).toBeUndefined()
  })
})

describe("acts of the field", () => {
  it("land below the last row, with the formulas of the sheet", () =>
    expect(rows(brought(farm, added(1, picking(400))))).toEqual([["Long Acre", "2026-05-25", 400, "="]]))

  it("land once, however often they come", () => {
    const once = brought(farm, added(1, picking(400)), added(2, picking(90)))
    expect(brought(once, added(2, picking(90)), added(1, picking(400)))).toBe(once)
  })

  it("are two where two hold the same: two loads of one weight", () =>
    expect(weights(brought(farm, added(1, picking(200)), added(2, picking(200))))).toEqual([200, 200]))

  it("go when they are taken back, before or after they come", () => {
    const [row, back] = [added(1, picking(400)), takenBack(2, 1)]
    expect(weights(brought(farm, row, back))).toEqual([])
    expect(weights(brought(farm, back, row))).toEqual([])
  })

  it("take their own row along when they are taken back, wherever it was sorted to", () => {
    const both = brought(farm, added(1, picking(200)), added(2, picking(200)), added(3, picking(90)))
    const moved = revised(both, {type: "moveRows", sheet: 0, order: [2, 1, 0]})
    const noted = revised(moved, {
      type: "changeExtras",
      changes: [{at: {sheet: 0, row: 2, col: 2}, note: {text: "wet", written: "2026-05-25T10:00:00Z"}}],
    })
    const left = brought(noted, takenBack(4, 2))
    expect(weights(left)).toEqual([90, 200])
    expect(actOf(left, 0, 1)?.entry.id).toBe(id(1))
    expect(left.sheets[0]!.extras).toContainEqual({
      row: 1,
      col: 2,
      note: {text: "wet", written: "2026-05-25T10:00:00Z"},
    })
  })

  it("stay when they were changed by hand before they are taken back", () => {
    const changed = typed(brought(farm, added(1, picking(400))), 0, 2, 410)
    expect(weights(brought(changed, takenBack(2, 1)))).toEqual([410])
  })

  it("leave the row of another act of the same weight alone when they are taken back after that", () => {
    const changed = typed(brought(farm, added(1, picking(200))), 0, 2, 210)
    const [other, back] = [added(2, picking(200)), takenBack(3, 1)]
    expect(weights(brought(changed, other, back))).toEqual([210, 200])
    expect(weights(brought(changed, back, other))).toEqual([210, 200])
  })

  it("do not come again after they were taken out by hand", () => {
    const gone = revised(brought(farm, added(1, picking(400))), {
      type: "removeRows",
      sheet: 0,
      first: 0,
      count: 1,
    })
    expect(weights(brought(gone, added(1, picking(400))))).toEqual([])
  })

  it("take a row that stands there for theirs when they come from elsewhere, and one only", () => {
    const once = brought(withTyped(farm, 400), added(1, picking(400)))
    expect(weights(once)).toEqual([400])
    expect(weights(brought(once, added(2, picking(400))))).toEqual([400, 400])
  })

  it("leave that row when they are taken back", () => {
    const stands = withTyped(farm, 400)
    const [row, back] = [added(1, picking(400)), takenBack(2, 1)]
    expect(weights(brought(stands, row, back))).toEqual([400])
    expect(weights(brought(stands, back, row))).toEqual([400])
  })

  it("leave a note on that row when they are taken back", () => {
    const note = {text: "wet", written: "2026-05-25T10:00:00.000Z"}
    const at = {sheet: 0, row: 0, col: 0}
    const noted = revised(withTyped(farm, 400), {type: "changeExtras", changes: [{at, note}]})
    const back = brought(noted, added(1, picking(400)), takenBack(2, 1))
    expect(back.sheets[0]!.extras).toEqual([{row: 0, col: 0, note}])
  })

  it("never do so when they are entered here: it is a second load", () => {
    const second = entered(withTyped(farm, 400), added(1, picking(400)))
    expect(weights(second)).toEqual([400, 400])
    expect(weights(entered(second, takenBack(2, 1)))).toEqual([400])
  })

  it("wait for a workbook that has a column for all they hold", () => {
    const columns = farm.sheets[0]!.columns.filter(({part}) => part !== "picking weight")
    const without = {...farm, sheets: [{...farm.sheets[0]!, columns}]}
    expect(brought(without, added(1, picking(400)))).toBe(without)
  })

  it("come by thousands at once", () => {
    const many = Array.from({length: 5000}, (_, i) => added(i, picking(i % 700)))
    expect(rows(brought(brought(farm, ...many), ...many))).toHaveLength(5000)
  })

  it("are saved and read with the workbook", () => {
    const document = brought(
      withTyped(farm, 90),
      added(1, picking(400)),
      added(3, picking(90)),
      takenBack(2, 1),
    )
    expect(readFile(writeFile(document))).toEqual({document})
  })

  it("tell who entered a row, and that it was changed", () => {
    const both = brought(farm, added(1, picking(400)), added(2, picking(90)))
    expect(actOf(both, 0, 1)).toEqual({
      entry: {...added(2, picking(90)), brought: true},
      isChanged: false,
    })
    expect(actOf(typed(both, 1, 2, 91), 0, 1)).toMatchObject({entry: {id: id(2)}, isChanged: true})
    expect(actOf(withTyped(both, 5), 0, 2)).toBeNull()
  })

  it.each(seeds(80))("make the same rows in any order, parts and repetition, seed %i", (seed) => {
    const random = seeded(seed)
    const weight = () => oneOf(random, [100, 200, 300])
    const stands = Array.from({length: below(random, 3)}, weight)
    const start = stands.reduce(withTyped, farm)
    const entries = Array.from({length: 12}, (_, i): FieldEntry => {
      if (i > 0 && random() < 0.3) return takenBack(i, below(random, 14))
      return added(i, picking(weight(), oneOf(random, ["Long Acre", "Sand Piece"])))
    })
    // What stood there is taken for as many acts of the same; whatever is more of either comes to stand.
    const counts = new Map<string, [stood: number, come: number]>()
    const count = (key: string, stood: number, come: number) => {
      const [a, b] = counts.get(key) ?? [0, 0]
      counts.set(key, [a + stood, b + come])
    }
    for (const kg of stands) count(`Long Acre ${kg}`, 1, 0)
    for (const {id, row} of entries)
      if (row && !entries.some(({takesBack}) => takesBack === id))
        count(`${row["picking planting"]} ${row["picking weight"]}`, 0, 1)
    const wanted = [...counts].flatMap(([key, [stood, come]]) =>
      Array.from({length: Math.max(stood, come)}, () => key),
    )
    const anyWay = () => anyOrder(random, entries.length).map((i) => entries[i]!)
    let document = brought(start, ...anyWay().slice(0, 1 + below(random, 12)))
    for (let i = 0; i < 3; i++) document = brought(document, ...anyWay().slice(0, below(random, 13)))
    document = brought(document, ...anyWay())
    expect(
      rows(document)
        .map(([planting, , kg]) => `${planting as string} ${kg as number}`)
        .toSorted(),
    ).toEqual(wanted.toSorted())
    expect(document.field).toHaveLength(entries.length)
  })
})

describe("undoing what was entered in the field", () => {
  let next = 100
  const phone = () => createStore(farm, undefined, () => mark(next++))
  const enter = (store: ReturnType<typeof phone>, entry: FieldEntry) =>
    store.run(() => ({type: "addField", entries: [entry], from: "here", name: "picking"}))
  const fieldOf = (store: ReturnType<typeof phone>) => store.getState().document.field!
  const weightsOf = (store: ReturnType<typeof phone>) => weights(store.getState().document)

  it("is a further act, so that another device that has the first hears of it", () => {
    const store = phone()
    enter(store, added(1, picking(405)))
    const desk = brought(farm, ...fieldOf(store))
    store.undo()
    enter(store, added(2, picking(450)))
    expect(weightsOf(store)).toEqual([450])
    expect(weights(brought(desk, ...fieldOf(store)))).toEqual([450])
  })

  it("can be done again and undone again, and both devices agree each time", () => {
    const store = phone()
    enter(store, added(1, picking(405)))
    enter(store, takenBack(2, 1))
    let desk = farm
    const ways = [store.undo, store.undo, store.redo, store.redo, store.undo, store.undo, store.redo]
    const seen = ways.map((way) => {
      way()
      desk = brought(desk, ...fieldOf(store))
      expect(rising(weights(desk))).toEqual(rising(weightsOf(store)))
      return weightsOf(store)
    })
    expect(seen).toEqual([[405], [], [405], [], [405], [], [405]])
    const takenBacks = fieldOf(store).flatMap(({takesBack}) => takesBack ?? [])
    expect(new Set(takenBacks).size).toBe(takenBacks.length) // none is taken back twice
  })

  it("forgets what was brought in, so that it can be brought in again", () => {
    const store = phone()
    const bring = () =>
      store.run(() => ({
        type: "addField",
        entries: [added(1, picking(405))],
        from: "elsewhere",
        name: "rows",
      }))
    bring()
    store.undo()
    expect(store.getState().document).toBe(farm)
    bring()
    expect(weightsOf(store)).toEqual([405])
  })

  it("leaves other documents of the history what they were", () => {
    const store = phone()
    store.run(() => ({type: "enter", cells: [{at: {sheet: 0, row: 0, col: 0}, content: "Well Field"}]}))
    store.undo()
    expect(store.getState().document).toBe(farm)
  })

  it("does not carry acts from one workbook into another", () => {
    const store = phone()
    store.open(documentOf(...farm.sheets))
    enter(store, added(1, picking(405)))
    store.undo()
    store.undo()
    expect(store.getState().document).toBe(farm)
    store.redo()
    expect(fieldOf(store)).toHaveLength(2) // the act and its undoing
    store.undo()
    expect(store.getState().document).toBe(farm)
  })
})
