import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {sizeShare} from "../../functions/pack/sizeShare"
import {bringSizeTable} from "../../src/editor/commands/sizeTable"
import {chosenWord} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {readFile} from "../../src/workbook/file"

const read = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
)
if ("refused" in read) throw new Error(read.refused)
const {document} = read
const at = (name: string) => document.sheets.findIndex((sheet) => sheet.name === name)
const store = createStore(document)

function use(table: string) {
  const row = document.sheets[at("Size tables")]!.rows.findIndex(([name]) => name === table)
  store.turn(() => ({cell: {sheet: at("Size tables"), row, col: 0}}))
  expect(chosenWord(store.getState(), "size table")).toBe(table)
  return store.run(bringSizeTable)
}
const sizes = () => store.getState().document.sheets[at("Sizes")]!.rows.map((row) => [row[0], row[1]])
const prices = () => store.getState().document.sheets[at("Sizes")]!.rows.map((row) => row[4])
const packed = (heading: string) => {
  const sheet = at("Week plan")
  const {columns} = store.getState().document.sheets[sheet]!
  return store.valueAt({sheet, row: 1, col: columns.findIndex((one) => one.heading === heading)})
}

describe("a published table of sizes", () => {
  it("has nothing to do where its classes are in use", () => {
    expect(use("US standards")).toBe(false)
  })

  it("takes the place of the classes in use, in the weights of the weeks too, in one step", () => {
    expect(use("Canada")).toBe(true)
    // Handbook 6: medium 8-14 mm, large 13-21 mm, jumbo from 19 mm.
    expect(sizes()).toEqual([
      ["medium", 8],
      ["large", 13],
      ["jumbo", 19],
      [null, null],
      [null, null],
    ])
    expect(prices()).toEqual([null, null, null, null, null]) // they were paid for other classes
    const [all, median] = [Number(packed("Packed")), Number(packed("Median"))]
    const share = (from: number, to: number) => all * Number(sizeShare(median, 0.3, from, to, "weight"))
    expect(packed("medium")).toBeCloseTo(share(8, 13), 6)
    expect(packed("large")).toBeCloseTo(share(13, 19), 6)
    expect(packed("jumbo")).toBeCloseTo(share(19, 60), 6)
    expect([packed("no class 4"), packed("no class 5")]).toEqual(["", ""])
    store.undo()
    expect(store.getState().document).toBe(document)
  })

  it("holds a spear of 13.5 mm in two classes, as Canada allows", () => {
    const rows = document.sheets[at("Size tables")]!.rows.filter(([table]) => table === "Canada")
    const holding = rows.filter(([, , from, to]) => Number(from) <= 13.5 && 13.5 <= Number(to ?? Infinity))
    expect(holding.map(([, name]) => name)).toEqual(["medium", "large"])
  })

  it("comes with its source and its tag", () => {
    use("UNECE, white and violet")
    const [first] = store.getState().document.sheets[at("Sizes")]!.rows
    expect(first!.slice(0, 4)).toEqual(["Class II", 8, expect.stringMatching("FFV-04"), "memory"])
    store.undo()
  })

  it("is chosen by a row of a sheet of tables alone", () => {
    store.turn(() => ({cell: {sheet: at("Sizes"), row: 0, col: 0}}))
    expect(chosenWord(store.getState(), "size table")).toBeNull()
    expect(store.canRun(bringSizeTable)).toBe(false)
  })
})
