import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {createStore, type Store} from "../../src/editor/store"
import type {Content, Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"

const PLANTINGS = 200
const {document: farm} = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}

const NAMES = farm.sheets
  .find(({rowEach}) => rowEach === "planting")!
  .rows.map(([name]) => name!)
  .concat(Array.from({length: PLANTINGS - 6}, (_, i) => `Field ${i + 7}`))

/** The demonstration farm with Well Field, its samples and its records many times over, and a season of pickings of each. */
function large(): Document {
  const copied = new Set(["Root samples", "Records"])
  const sheets = farm.sheets.map((sheet) => {
    const own = sheet.rows.filter(([key]) => key === "Well Field")
    const copies = NAMES.slice(6).flatMap((name) => own.map((row) => [name, ...row.slice(1)]))
    if (sheet.name === "Pickings") return {...sheet, rows: pickings(sheet.rows[0]!)}
    if (sheet.rowsFor?.each === "pick planting")
      return {...sheet, rows: Array.from({length: PLANTINGS * sheet.rowsFor.count}, () => sheet.rows[0]!)}
    return sheet.rowEach === "planting" || copied.has(sheet.name)
      ? {...sheet, rows: [...sheet.rows, ...copies]}
      : sheet
  })
  return {...farm, sheets}
}

/** 30 days of pickings of every planting, day by day. */
const pickings = (like: readonly Content[]) =>
  Array.from({length: 30}, (_, day) =>
    NAMES.map((name, i): readonly Content[] => {
      const on = new Date(Date.UTC(2026, 3, 22 + day + (i % 3))).toISOString().slice(0, 10)
      return [name, on, 300 + ((i * 37 + day * 91) % 900), ...like.slice(3)]
    }),
  ).flat()

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
  const told = (what: string, act: () => void) => {
    const from = performance.now()
    act()
    void store.workbook.changes
    console.log(`${what}: ${Math.round(performance.now() - from)} ms`)
  }
  const sheet = at("Pickings")
  told("a picking taken out", () => store.run(() => ({type: "removeRows", sheet, first: row >> 1, count: 1})))
  told("and put back", () => store.undo())
  const order = store.getState().document.sheets[sheet]!.rows.map((_, i, {length}) => length - 1 - i)
  told("pickings in another order", () => store.run(() => ({type: "moveRows", sheet, order})))
  told("and back", () => store.undo())
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
