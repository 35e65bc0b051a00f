import {describe, expect, it} from "vitest"
import {fieldBringing} from "../../src/editor/fieldBringing"
import type {FieldFile} from "../../src/editor/fieldFile"
import {addPicking} from "../../src/editor/field"
import {createStore, type Store} from "../../src/editor/store"
import {farm, mark, phone} from "./morning"

const fileOf = (store: Store): FieldFile => ({entries: store.getState().document.field ?? [], left: []})

function bring(store: Store, file: FieldFile) {
  const {entries} = fieldBringing(store.workbook, file)
  store.run(() =>
    entries.length ? {type: "addField", entries, from: "elsewhere", name: "field rows brought in"} : null,
  )
}

const rowsOf = (store: Store, name: string) =>
  store.getState().document.sheets.find((one) => one.name === name)!.rows
const row = (planting: string, kg: number, day = "2026-05-25") => ({
  "picking planting": planting,
  "picking day": day,
  "picking weight": kg,
})

describe("bringing in a file of field rows", () => {
  it("makes the desk hold what the phone holds, once, in one step that can be undone", () => {
    const [store, desk] = [phone(), createStore(farm)]
    bring(desk, fileOf(store))
    bring(desk, fileOf(store))
    for (const name of ["Pickings", "Spear size", "Root samples"])
      expect(rowsOf(desk, name)).toEqual(rowsOf(store, name))
    expect(desk.getState().undoable.map(({name}) => name)).toEqual(["field rows brought in"])
    desk.undo()
    expect(desk.getState().document).toBe(farm)
  })

  it("brings two phones together, whichever comes first", () => {
    const other = createStore(farm)
    other.run(addPicking("Long Acre", "2026-05-25", 988, mark(9, "Tablet")))
    const files = [fileOf(phone()), fileOf(other)]
    const [one, two] = [createStore(farm), createStore(farm)]
    for (const file of files) bring(one, file)
    for (const file of files.toReversed()) bring(two, file)
    const set = (store: Store) => rowsOf(store, "Pickings").map(String).toSorted()
    expect(set(one)).toEqual(set(two))
    expect(set(one)).toHaveLength(rowsOf(createStore(farm), "Pickings").length + 2)
  })

  it("tells before anything is written what is new, what is here and what cannot be taken", () => {
    const desk = createStore(farm)
    bring(desk, {entries: [{...mark(1), row: row("Long Acre", 400)}], left: []})
    const bringing = fieldBringing(desk.workbook, {
      entries: [
        {...mark(1), row: row("Long Acre", 400)},
        {...mark(1), row: row("Long Acre", 401)},
        {...mark(2), row: row("Elsewhere", 400)},
        {...mark(3), row: row("Sand Piece", 400, "2026-04-16")},
        {...mark(5), row: row("Sand Piece", 90)},
      ],
      left: ["line 9: it names no planting"],
    })
    expect(bringing).toEqual({
      entries: [{...mark(5), row: row("Sand Piece", 90)}],
      told: ["Sand Piece, 25 May 2026: 90 kg; Phone"],
      added: 1,
      takenOut: 0,
      here: 1,
      left: [
        "line 9: it names no planting",
        "Long Acre, 25 May 2026: 401 kg; Phone: another act has the same mark, and stays as it is",
        "Elsewhere, 25 May 2026: 400 kg; Phone: “Elsewhere” is no planting of this workbook",
        "Sand Piece, 16 Apr 2026: 400 kg; Phone, 25 May 2026: Sand Piece was sprayed on 14 Apr: by its label it may be picked again from 21 Apr",
      ],
    })
  })

  it("names the row that is taken back, and whether it goes", () => {
    const desk = createStore(farm)
    bring(desk, {entries: [{...mark(1), row: row("Long Acre", 400)}], left: []})
    const {told, added, takenOut} = fieldBringing(desk.workbook, {
      entries: [
        {...mark(2), takesBack: mark(1).id},
        {...mark(3), takesBack: mark(9).id},
        {...mark(4), row: row("Long Acre", 500)},
        {...mark(5), takesBack: mark(4).id},
      ],
      left: [],
    })
    expect(told).toEqual([
      "takes back Long Acre, 25 May 2026: 500 kg; Phone; its row goes",
      "Long Acre, 25 May 2026: 500 kg; Phone",
      "takes a row back; Phone, 25 May 2026; its row has not come yet",
      "takes back Long Acre, 25 May 2026: 400 kg; Phone; its row goes",
    ])
    expect([added, takenOut]).toEqual([0, 1]) // one of them came and goes in the same file
  })

  it("leaves out a number that its sheet does not take, in the words of the sheet", () => {
    const {left} = fieldBringing(createStore(farm).workbook, {
      entries: [{...mark(1), row: row("Long Acre", 60000)}],
      left: [],
    })
    expect(left.map((line) => line.replaceAll(/[\u00a0\u202f]/g, " "))).toEqual([
      "Long Acre, 25 May 2026: 60 000 kg; Phone: Weight 60 000 kg is above 50 000 kg (did you mean 6 000 kg?)",
    ])
  })
})
