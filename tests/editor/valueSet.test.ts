import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {bringValueSet} from "../../src/editor/commands/valueSet"
import {chosenWord} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import type {Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"

const {document} = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}
const sheetOf = (name: string) => document.sheets.findIndex((sheet) => sheet.name === name)

function onRow(row: number) {
  const store = createStore(document)
  store.turn(() => ({cell: {sheet: sheetOf("Value sets"), row, col: 0}}))
  return store
}
const values = (store: ReturnType<typeof onRow>) =>
  Object.fromEntries(
    store
      .getState()
      .document.sheets[sheetOf("Crop values")]!.rows.map(([name, value, , low, high]) => [
        name,
        [value, low, high],
      ]),
  )

describe("a set of crop values", () => {
  const rows = document.sheets[sheetOf("Value sets")]!.rows
  const white = rows.findIndex(([set]) => set === "white")

  it("goes into the sheet Crop values with its likely ranges, in one step that can be undone", () => {
    const store = onRow(white)
    expect(chosenWord(store.getState(), "set")).toBe("white")
    const crop = store.valueAt({sheet: 0, row: 1, col: 9})
    expect(store.run(bringValueSet)).toBe(true)
    // Physiology 4: white spears hold 0.065 dry matter (0.055 to 0.07), leave 0.25 of it as stubs (0.15 to 0.35), and
    // stand under a ridge that is 3 °C warmer (8.1).
    expect(values(store)).toMatchObject({
      Spear_dry: [0.065, 0.055, 0.07],
      Stub_share: [0.25, 0.15, 0.35],
      Ridge_gain: [3, null, null],
      Unsold_share: [0.12, 0.08, 0.25],
    })
    expect(store.valueAt({sheet: 0, row: 1, col: 9})).not.toBe(crop)
    store.undo()
    expect(store.getState().document).toBe(document)
    expect(store.valueAt({sheet: 0, row: 1, col: 9})).toBe(crop)
  })

  it("has nothing to do where its numbers stand there already", () => {
    expect(onRow(0).canRun(bringValueSet)).toBe(false)
  })

  it("is chosen by a row of a sheet of sets alone", () => {
    expect(chosenWord(onRow(rows.length).getState(), "set")).toBeNull()
    expect(chosenWord(createStore(document).getState(), "set")).toBeNull()
  })
})
