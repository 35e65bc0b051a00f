import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {dayOf, isoOf} from "../functions/calendar"
import type {Content, Document} from "../src/workbook/document"
import {readFile} from "../src/workbook/file"
import {planOf} from "../src/workbook/plan"
import {Workbook} from "../src/workbook/workbook"
import {valueOf} from "./workbooks/shipped"

const {document: north} = readFile(
  readFileSync(new URL("../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}

/** Half a year later, on the same day of the month. */
function later(day: string): string {
  const [year, month, date] = day.split("-").map(Number) as [number, number, number]
  const moved = month + 6
  return `${moved > 12 ? year + 1 : year}-${String(((moved - 1) % 12) + 1).padStart(2, "0")}-${String(date).padStart(2, "0")}`
}

/** The farm moved to the other half of the world: every date half a year later, the months of the weather turned round. */
function south(): Document {
  const move = (content: Content) =>
    typeof content === "string" && dayOf(content) !== null && content.length === 10 ? later(content) : content
  const sheets = north.sheets.map((sheet) => {
    let rows: readonly (readonly Content[])[] = sheet.rows.map((row) => row.map(move))
    if (sheet.name === "Weather")
      rows = sheet.rows.map(([month, name], i) => [month!, name!, ...sheet.rows[(i + 6) % 12]!.slice(2)])
    // A close that was typed stands on its day of the month; the weeks it followed do not end on the same one there.
    if (sheet.name === "Plantings") rows = rows.map((row) => row.with(7, null))
    if (sheet.name === "Named values")
      rows = rows.map((row) => (row[0] === "Latitude" ? row.with(1, -46.5) : row))
    return {...sheet, rows}
  })
  return {...north, sheets: sheets.map((sheet) => ({...sheet, rows: sheet.rows.map((row) => [...row])}))}
}

it("gives the same plan in the southern half, half a year later", () => {
  const there = planOf(new Workbook(south()))! // its latitude alone says in which month its model year starts
  for (const [i, here] of planOf(new Workbook(north))!.rows.entries()) {
    const row = there.rows[i]!
    expect([row.planting, row.heldBy, row.age]).toEqual([here.planting, here.heldBy, here.age])
    if (here.closes === null) continue
    // Half a year is 181 to 184 days, by its months; the balance's own limits may move by as much.
    const days = row.closes! - here.closes
    expect(days, `${here.planting}: ${isoOf(here.closes)} and ${isoOf(row.closes!)}`).toBeGreaterThanOrEqual(
      181,
    )
    expect(days).toBeLessThanOrEqual(186)
    expect(Math.abs(row.crop! / here.crop! - 1)).toBeLessThan(0.03)
  }
})

it("has the roots of the southern half waste from the start of its own model year", () => {
  const [here, there] = [new Workbook(north), new Workbook(south())].map((workbook) =>
    valueOf(workbook, "Crowns", "Long Acre", "Reserve at opening"),
  )
  expect(Math.abs(Number(there) / Number(here) - 1)).toBeLessThan(0.01)
})
