import {readFileSync} from "node:fs"
import type {CellAddress, Content} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {Workbook} from "../../src/workbook/workbook"

/** The demonstration farm, and short ways to read and type in it. */
export function openFarm() {
  const path = new URL("../../workbooks/hollow-brook-farm.json", import.meta.url)
  const reading = readFile(readFileSync(path, "utf8"))
  if ("refused" in reading) throw new Error(reading.refused)
  const workbook = new Workbook(reading.document)
  const {sheets} = workbook.document
  const sheetOf = (name: string) => sheets.findIndex((one) => one.name === name)
  const at = (name: string, row: number, heading: string): CellAddress => {
    const sheet = sheetOf(name)
    const col = sheets[sheet]!.columns.findIndex((column) => column.heading === heading)
    if (col < 0 || !sheets[sheet]!.rows[row]) throw new RangeError(`${name} has no ${heading} in row ${row}`)
    return {sheet, row, col}
  }
  const rowOf = (name: string, key: Content) => sheets[sheetOf(name)]!.rows.findIndex(([one]) => one === key)
  const of = (name: string, row: number, heading: string) => workbook.valueAt(at(name, row, heading))
  const enter = (...cells: [at: CellAddress, content: Content][]) =>
    workbook.revise({type: "enter", cells: cells.map(([at, content]) => ({at, content}))})
  const named = (name: string, value: Content) =>
    enter([at("Named values", rowOf("Named values", name), "Value"), value])
  const values = (name: string, heading: string) =>
    sheets[sheetOf(name)]!.rows.map((_, row) => of(name, row, heading)) as number[]
  return {workbook, sheets, sheetOf, at, rowOf, of, enter, named, values}
}

/** The words of a line of the lender's page. */
export const line = ({of, rowOf}: ReturnType<typeof openFarm>, name: string) =>
  of("Lender's page", rowOf("Lender's page", name), "Text")
