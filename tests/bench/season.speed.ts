import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {createStore, type Store} from "../../src/editor/store"
import type {Content, Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"

const PLANTINGS = 200
const {document: farm} = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}

/** The demonstration farm with Well Field, its samples and its records many times over. */
function large(): Document {
  const names = Array.from({length: PLANTINGS - 6}, (_, i) => `Field ${i + 7}`)
  const copied = new Set(["Root samples", "Records", "Pickings"])
  const sheets = farm.sheets.map((sheet) => {
    const own = sheet.rows.filter(([key]) => key === "Well Field")
    const many = sheet.rowEach === "planting" || copied.has(sheet.name)
    const rows: (readonly Content[])[] = many
      ? [...sheet.rows, ...names.flatMap((name) => own.map((row) => [name, ...row.slice(1)]))]
      : [...sheet.rows]
    return {...sheet, rows}
  })
  return {...farm, sheets}
}

function enter(store: Store, sheet: number, row: number, weight: number) {
  const cells = ["Well Field", "2026-05-24", weight].map((content, col) => ({at: {sheet, row, col}, content}))
  store.run(() => ({type: "enter", cells}))
}

it(`tells what one picking costs on a farm of ${PLANTINGS} plantings`, () => {
  const started = performance.now()
  const store = createStore(large())
  console.log(`opened in ${Math.round(performance.now() - started)} ms`)
  const {sheets} = store.getState().document
  const at = (name: string) => sheets.findIndex((one) => one.name === name)
  const row = sheets[at("Pickings")]!.rows.length
  const first = performance.now()
  enter(store, at("Pickings"), row, 1499)
  void store.workbook.changes
  console.log(`the first picking, in a new row: ${Math.round(performance.now() - first)} ms`)
  for (const open of ["Pickings", "This week", "Crew and cooler", "Season plan"]) {
    store.turn(() => ({cell: {sheet: at(open), row: 0, col: 0}}))
    const times = Array.from({length: 6}, (_, i) => {
      const from = performance.now()
      enter(store, at("Pickings"), row, 1500 + i)
      const shown = performance.now() - from
      void store.workbook.changes
      return [shown, performance.now() - from]
    }).slice(1)
    const middle = (i: 0 | 1) =>
      times
        .map((one) => one[i]!)
        .sort((a, b) => a - b)[2]!
        .toFixed(0)
    expect(store.workbook.changes.length).toBeGreaterThan(0)
    console.log(`${open} open: shown after ${middle(0)} ms, all worked out after ${middle(1)} ms`)
  }
}, 300_000)
