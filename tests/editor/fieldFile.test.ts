import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {readCsv} from "../../src/editor/csvIn"
import {addPicking, addSample, addSpears} from "../../src/editor/field"
import {fieldBringing, fieldCsv, fieldFileIn, type FieldFile} from "../../src/editor/fieldFile"
import {createStore, type Store} from "../../src/editor/store"
import {documentSchema, type Document, type FieldEntry} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {seeded} from "../workbook/documents"

const {document: farm} = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}

const mark = (n: number, device = "Phone") => ({
  id: n.toString(16).padStart(32, "0"),
  device,
  entered: "2026-05-25T06:12:00.000Z",
})

/** What a phone with a copy of the farm enters in a morning. */
function phone(): Store {
  const store = createStore(farm)
  store.run(addPicking("Sand Piece", "2026-05-25", 1160.5, mark(1)))
  store.run(addSpears("Long Acre", "2026-05-25", 10.676, 28, mark(2)))
  store.run(addSample("Top Corner", "2026-05-20", 1, "sample reading", 18.5, mark(3, "=Phone, the red one")))
  store.run(() => ({type: "addField", entries: [{...mark(4), takesBack: mark(2).id}], name: "taken back"}))
  return store
}

const table = (text: string) => {
  const read = readCsv(new TextEncoder().encode(text))
  if ("refused" in read) throw new Error(read.refused)
  return read
}
const fileOf = (store: Store) => fieldFileIn(table(fieldCsv(store.getState().document)))!

function bring(store: Store, file: FieldFile) {
  const {entries} = fieldBringing(store.workbook, file)
  store.run(() => (entries.length ? {type: "addField", entries, name: "field rows brought in"} : null))
}

const rowsOf = (store: Store, name: string) =>
  store.getState().document.sheets.find((one) => one.name === name)!.rows

describe("a file of field rows", () => {
  it("holds every act with its mark, and is read as it was written", () => {
    const store = phone()
    expect(fileOf(store)).toEqual({entries: store.getState().document.field, left: []})
  })

  it("is a table that shows what was entered, and no formula to another program", () =>
    expect(fieldCsv(phone().getState().document).split("\r\n").slice(0, 4)).toEqual([
      "\ufeffFernledger field row,Device,Entered,Takes back,Planting,Day,Weight (kg),Diameter (mm),Spears,Plant,Reading (°Brix),Sugar (mg/g)",
      `${mark(1).id},Phone,2026-05-25T06:12:00.000Z,,Sand Piece,2026-05-25,1160.5,,,,,`,
      `${mark(2).id},Phone,2026-05-25T06:12:00.000Z,,Long Acre,2026-05-25,,10.68,28,,,`,
      `${mark(3).id},"'=Phone, the red one",2026-05-25T06:12:00.000Z,,Top Corner,2026-05-20,,,,1,18.5,`,
    ]))

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
      told: ["Sand Piece, 25 May 2026: 90 kg; Phone, 25 May 2026"],
      added: 1,
      takenOut: 0,
      here: 1,
      left: [
        "line 9: it names no planting",
        "Long Acre, 25 May 2026: 401 kg; Phone, 25 May 2026: another act has the same mark, and stays as it is",
        "Elsewhere, 25 May 2026: 400 kg; Phone, 25 May 2026: “Elsewhere” is no planting of this workbook",
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
      "takes back Long Acre, 25 May 2026: 500 kg; Phone, 25 May 2026; its row goes",
      "Long Acre, 25 May 2026: 500 kg; Phone, 25 May 2026",
      "takes a row back; Phone, 25 May 2026; its row has not come yet",
      "takes back Long Acre, 25 May 2026: 400 kg; Phone, 25 May 2026; its row goes",
    ])
    expect([added, takenOut]).toEqual([0, 1]) // one of them came and goes in the same file
  })

  it("leaves out a number that its sheet does not take", () => {
    const rule = {least: 0, most: 50000}
    const sheets = farm.sheets.map((sheet) => ({
      ...sheet,
      columns: sheet.columns.map((one) => (one.part === "picking weight" ? {...one, rule} : one)),
    }))
    const desk = createStore({...farm, sheets})
    const {left} = fieldBringing(desk.workbook, {
      entries: [{...mark(1), row: row("Long Acre", 60000)}],
      left: [],
    })
    expect(left).toEqual([
      expect.stringMatching(/^Long Acre, 25 May 2026: .*: Weight must be at most 50000$/) as string,
    ])
  })

  it.each([
    ["no mark", "x,Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,400,,,,,", "it has no mark of its own"],
    ["no device", `${mark(1).id},,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,400,,,,,`, /on which device/],
    [
      "no time",
      `${mark(1).id},Phone,25/5,,Long Acre,2026-05-25,400,,,,,`,
      /“25\/5”, which is no day and time/,
    ],
    ["no day", `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-02-30,400,,,,,`, /“2026-02-30”/],
    [
      "no number",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,4e2,,,,,`,
      /“4e2”, which is no number/,
    ],
    ["nothing", `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,,,,,,`, /it holds no number/],
    ["two kinds", `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,400,9,,,,`, /two kinds/],
    ["no planting", `${mark(1).id},Phone,2026-05-25T06:12:00Z,,,2026-05-25,400,,,,,`, /no planting/],
    [
      "a day to come",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,9999-12-31,400,,,,,`,
      /its day is 9999/,
    ],
    [
      "half a plant",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,,,,1.5,18,`,
      /no whole number/,
    ],
    [
      "a plant alone",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,,,,1,,`,
      /holds no reading/,
    ],
    [
      "spears uncounted",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,,9.5,,,,`,
      /no count of spears/,
    ],
    ["a wrong mark taken back", `${mark(1).id},Phone,2026-05-25T06:12:00Z,abc,,,,,,,,`, /has no mark/],
  ])("says why a line with %s is none", (_, line, why) => {
    const [head] = fieldCsv(farm).split("\r\n")
    const {entries, left} = fieldFileIn(table(`${head}\r\n${line}\r\n`))!
    expect(entries).toEqual([])
    expect(left).toEqual([
      expect.stringMatching(typeof why === "string" ? new RegExp(`^line 2: ${why}$`) : why) as string,
    ])
  })

  it("is another table where its first heading is another", () =>
    expect(fieldFileIn(table("Planting,Day\r\nLong Acre,2026-05-25\r\n"))).toBeNull())

  it("says which columns are missing", () =>
    expect(fieldFileIn(table("Fernledger field row,Device\r\na,b\r\n"))!.left[0]).toMatch(
      /^the first line lacks “Entered”, “Takes back”/,
    ))

  it("gives only acts that a workbook can hold, however it is damaged", () => {
    const whole = fieldCsv(phone().getState().document)
    const random = seeded(7)
    let read = 0
    for (let i = 0; i < 400; i++) {
      const at = Math.floor(random() * whole.length)
      const damaged = [
        () => whole.slice(0, at),
        () => whole.slice(0, at) + String.fromCharCode(32 + Math.floor(random() * 400)) + whole.slice(at + 1),
        () => whole.slice(0, at) + whole.slice(at + Math.floor(random() * 60)),
        () => whole.slice(0, at) + whole.slice(Math.floor(random() * whole.length)),
      ][i % 4]!()
      const found = readCsv(new TextEncoder().encode(damaged))
      const file = "refused" in found ? null : fieldFileIn(found)
      if (!file) continue
      read++
      expect(documentSchema.shape.field.safeParse(file.entries as FieldEntry[]).success).toBe(true)
      const {entries} = fieldBringing(createdOnce.workbook, file)
      expect(new Set(entries.map(({id}) => id)).size).toBe(entries.length)
    }
    expect(read).toBeGreaterThan(200)
  })
})

const createdOnce = createStore(farm)
const row = (planting: string, kg: number, day = "2026-05-25") => ({
  "picking planting": planting,
  "picking day": day,
  "picking weight": kg,
})
