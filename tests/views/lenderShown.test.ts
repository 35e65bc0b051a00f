import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {lenderShown} from "../../src/views/lenderShown"
import {sheetWith, type Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"

const {document: farm} = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}

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
