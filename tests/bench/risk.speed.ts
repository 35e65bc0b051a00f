import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {sheetOn} from "../browser/sheet"
import type {Content, Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {openedWith} from "./openedWith"

const PLANTINGS = 20
const YEARS = 10
const WEEKS = 12

/** The demonstration farm with Well Field many times over, each time opened on another day, and with rows for all its stands. */
function twenty(): Document {
  const {document: farm} = readFile(
    readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
  ) as {document: Document}
  const names = Array.from({length: PLANTINGS - 6}, (_, i) => `Field ${i + 7}`)
  const copied = new Set(["Root samples", "Records", "Pickings", "Stands ahead"])
  const sheets = farm.sheets.map((sheet) => {
    const own = sheet.rows.filter(([key]) => key === "Well Field")
    const opens = sheet.name === "Season plan" ? sheet.columns.findIndex(({part}) => part === "open") : null
    const copies = names.flatMap((name, i) =>
      own.map((row) =>
        row.map((content, col) =>
          col === opens ? `2026-04-${14 + i}` : content === "Well Field" ? name : content,
        ),
      ),
    )
    const many = sheet.rowEach === "planting" || copied.has(sheet.name)
    const rows: (readonly Content[])[] = many ? [...sheet.rows, ...copies] : [...sheet.rows]
    const most =
      {"Crop by year": (PLANTINGS + 4) * YEARS, "Sales by week": PLANTINGS * WEEKS}[sheet.name] ?? 0
    while (rows.length < most) rows.push(rows[0]!)
    return {...sheet, rows}
  })
  return {...farm, sheets}
}

it(`measures 10 000 draws of a farm of ${PLANTINGS} plantings, and how long they keep the page from answering`, async () => {
  const page = await openedWith(twenty())
  await sheetOn(page).open("Lender's page")
  for (let run = 0; run < 3; run++) {
    await page.waitForTimeout(2000)
    await page.evaluate(() => {
      const long: number[] = []
      Object.assign(window, {long})
      new PerformanceObserver((entries) => {
        for (const {duration} of entries.getEntries()) long.push(duration)
      }).observe({type: "longtask"})
    })
    const from = Date.now()
    await page.getByRole("button", {name: "Work out the risk"}).click()
    await page.getByRole("button", {name: "Stop"}).waitFor()
    await page.getByRole("button", {name: "Work out the risk"}).waitFor()
    const took = Date.now() - from
    const long = await page.evaluate(() => (window as unknown as {long: number[]}).long)
    console.log(
      `10 000 draws: ${took} ms; ${long.length} tasks over 50 ms, the longest ${Math.max(0, ...long)} ms`,
    )
    expect(await page.locator(".risk tbody tr").count()).toBeGreaterThan(8)
  }
})
