import {readdirSync, readFileSync} from "node:fs"
import {dayOf} from "../../functions/calendar"
import type {CellAddress, Content, Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import type {Value} from "../../src/workbook/value"
import {Workbook} from "../../src/workbook/workbook"

export const folder = new URL("../../workbooks/", import.meta.url)
export const files = readdirSync(folder).filter((name) => name.endsWith(".json"))
export const textOf = (file: string) => readFileSync(new URL(file, folder), "utf8")

export function documentIn(file: string): Document {
  const reading = readFile(textOf(file))
  if ("refused" in reading) throw new Error(`${file}: ${reading.refused}`)
  return reading.document
}

export const open = (file: string) => new Workbook(documentIn(file))

export const sheetOf = ({sheets}: Document, name: string) => sheets.findIndex((sheet) => sheet.name === name)

/** The cell of a sheet in the row that begins with `key` (or of that number) under a heading. */
export function place({sheets, ...rest}: Document, name: string, key: Content, heading: string): CellAddress {
  const sheet = sheetOf({sheets, ...rest}, name)
  const {columns, rows} = sheets[sheet]!
  const row = rows.findIndex(([first]) => first === key)
  const col = columns.findIndex((column) => column.heading === heading)
  if (row < 0 || col < 0) throw new RangeError(`${name} has no ${key} or no ${heading}`)
  return {sheet, row, col}
}

export const valueOf = (workbook: Workbook, sheet: string, key: Content, heading: string): Value =>
  workbook.valueAt(place(workbook.document, sheet, key, heading))

export const enter = (workbook: Workbook, ...cells: [at: CellAddress, content: Content][]) =>
  workbook.revise({type: "enter", cells: cells.map(([at, content]) => ({at, content}))})

export const day = (iso: string) => dayOf(iso)!

/** The demonstration farm, to be changed, with ways to its cells. */
export function changed() {
  const workbook = open("hollow-brook-farm.json")
  const at = (sheet: string, key: Content, heading: string) => place(workbook.document, sheet, key, heading)
  const cellOf = (sheet: string, key: Content, heading: string) => valueOf(workbook, sheet, key, heading)
  const check = (name: string) => [cellOf("Checks", name, "Found"), cellOf("Checks", name, "To look at")]
  const samples = (planting: string, heading: string) => {
    const first = at("Root samples", planting, heading)
    return Array.from({length: 10}, (_, i) => ({...first, row: first.row + i}))
  }
  const sampleLater = (planting: string, day: string, sugar: number) => {
    const {sheet} = at("Root samples", planting, "Sugar")
    const row = workbook.document.sheets[sheet]!.rows.length
    const put = (col: number, content: Content): [CellAddress, Content] => [{sheet, row, col}, content]
    enter(workbook, put(0, planting), put(2, day), put(4, sugar))
  }
  return {workbook, at, cellOf, check, samples, sampleLater}
}
