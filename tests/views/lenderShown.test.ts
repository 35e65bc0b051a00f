import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {cashShown, lenderShown, yieldsShown} from "../../src/views/lenderShown"
import {sheetWith, type Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"

const [farm, blank] = ["hollow-brook-farm", "blank"].map((name) => {
  const text = readFileSync(new URL(`../../workbooks/${name}.json`, import.meta.url), "utf8")
  return (readFile(text) as {document: Document}).document
}) as [Document, Document]

it("has the sentences of the workbook in the measures and with the decimal sign of its region", () => {
  const stress = farm.sheets.findIndex(({name}) => name === "Stress")
  const {rows} = farm.sheets[stress]!
  const yours = rows.map((row) => (row[0] === "yours" ? row.with(1, -0.125) : row))
  const sheets = farm.sheets.with(stress, {...farm.sheets[stress]!, rows: yours})
  const store = createStore({...farm, sheets, region: {measures: "US", decimal: ","}})
  store.turn(choose({sheet: sheetWith(farm, "page line"), row: 0, col: 0}))
  const {page} = lenderShown(store)!
  expect(page.stress).toBe("yields \u221212,5\u202f%, prices \u221210\u202f%")
  // 28 ha of 4046.86 m² to the acre; the mean price of eight weeks, 3.09375 a kg, is 1.4033 a pound.
  expect(page.lines[0]!.text).toMatch(/^69,2 ac of asparagus/)
  expect(page.lines[2]!.text).toMatch(/ per packed lb, with 1,40 per lb planned\./)
})

it("stands above the sheets that its pictures are drawn from, once there is something to draw", () => {
  const shown = (document: Document) => {
    const store = createStore(document)
    const at = (name: string) => {
      store.turn(choose({sheet: document.sheets.findIndex((sheet) => sheet.name === name), row: 0, col: 0}))
      return [cashShown(store) !== null, yieldsShown(store) !== null]
    }
    return ["Cash and debt", "Yield evidence", "Yield by age", "Loans"].map(at)
  }
  const no = [false, false]
  expect(shown(farm)).toEqual([[true, false], [false, true], [false, true], no])
  expect(shown(blank)).toEqual([no, no, no, no])
})
