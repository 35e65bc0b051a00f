import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {isRefusal} from "../../functions/refusal"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {reserveShown} from "../../src/views/reserveShown"
import {sheetWith, type Content, type Document, type Part} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"

const {document: farm} = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}

/** What the sheet of the reserve shows of the farm, Long Acre, with other rows on one of its sheets. */
function shownWith(part: Part, rows: readonly (readonly Content[])[]) {
  const sheet = sheetWith(farm, part)
  const store = createStore({...farm, sheets: farm.sheets.with(sheet, {...farm.sheets[sheet]!, rows})})
  const reserve = farm.sheets.findIndex(({name}) => name === "Reserve")
  store.turn(choose({sheet: reserve, row: 0, col: 0}))
  const shown = reserveShown(store)
  if (shown === null || isRefusal(shown)) throw new Error("no reserve is shown")
  return shown
}

/** What is left out of the year of Long Acre, cut from 25 April to 10 June, with these rows on Spray waits. */
const leftOut = (...waits: readonly (readonly Content[])[]) =>
  shownWith(
    "wait planting",
    waits.map((row) => [...row, "=", "=", "="]),
  ).leftOut

it("has the samples of all former years of the planting shown, however many", () => {
  const {rows} = farm.sheets[sheetWith(farm, "sample sugar")]!
  const dug = (planting: string, on: string, sugar: number) => [
    planting,
    1,
    on,
    null,
    sugar,
    "=",
    "laboratory",
    "=",
  ]
  const {year} = shownWith("sample sugar", [
    ...rows,
    dug("Long Acre", "2021-03-02", 430),
    dug("Long Acre", "2022-03-02", 440),
    dug("Long Acre", "2023-03-02", 450),
    dug("Long Acre", "2024-03-02", 460),
    dug("Sand Piece", "2025-03-02", 470),
  ])
  expect(year!.former.map(({sugar}) => sugar)).toEqual([430, 440, 450, 460])
})

it("says that cutting went on past the close to which the balance cuts", () => {
  const {rows} = farm.sheets[sheetWith(farm, "picking planting")]!
  const picked = (planting: string, day: string, kg: number) => [planting, day, kg, 9, null, "=", "="]
  const told = (...more: readonly (readonly Content[])[]) =>
    shownWith("picking planting", [...rows, ...more]).leftOut
  expect(told(picked("Long Acre", "2026-06-10", 700), picked("Sand Piece", "2026-06-20", 700))).toBe("")
  expect(told(picked("Long Acre", "2026-06-12", 700), picked("Long Acre", "2026-06-14", 0))).toBe(
    "Picked until 12 Jun, but the balance cuts to 10 Jun, the close of the plan: less is left than it says.",
  )
})

it("says which waits after spraying the balance cuts through", () => {
  expect(
    leftOut(
      ["Long Acre", "trial", "2026-05-04", 7],
      ["long acre", "trial", "2026-06-09", 3], // its last day of cutting is in it
      ["Sand Piece", "trial", "2026-05-04", 7],
    ),
  ).toMatch(/^The balance cuts on through the wait after spraying, 4 May to 10 May, 9 Jun to 11 Jun: /)
})

it("says nothing where no wait falls into the cutting of the planting shown", () =>
  expect(
    leftOut(
      ["Long Acre", "trial", "2026-04-15", 10], // over on the day it opens
      ["Long Acre", "trial", "2026-07-20", 30],
      ["Long Acre", "trial", "2026-05-04", 0],
    ),
  ).toBe(""))
