import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {readFile} from "../../src/workbook/file"
import {lenderOf, type LenderPage} from "../../src/workbook/lender"
import {Workbook} from "../../src/workbook/workbook"

function open(file: string, changed: (text: string) => string = (text) => text) {
  const text = readFileSync(new URL(`../../workbooks/${file}`, import.meta.url), "utf8")
  const reading = readFile(changed(text))
  if ("refused" in reading) throw new Error(reading.refused)
  return new Workbook(reading.document)
}

/** The rows of the sheet Records in the text of a workbook. */
const RECORDS = /(?<="name": "Records",[\s\S]*?"rows": )\[[\s\S]*?\n {6}\]/

describe("the page for the lender", () => {
  it("reads years, yields, curve and lines by the parts of their columns", () => {
    const page = lenderOf(open("hollow-brook-farm.json"))!
    expect(page.lines.map(({name}) => name)).toEqual(["What", "Which", "Tight year", "Yields", "To know"])
    expect(page.years.map(({year}) => year)).toEqual(Array.from({length: 10}, (_, i) => 2026 + i))
    for (const {capacity, due, cover} of page.years)
      if (due > 0) expect(cover).toBeCloseTo(capacity / due, 9)
      else expect(cover).toBeNull()
    const longAcre = page.yields.find(({planting}) => planting === "Long Acre")!
    expect(longAcre.record.map(({age, kg}) => [age, kg])).toEqual([
      [6, 5150],
      [7, 5320],
      [8, 5610],
    ])
    const read = (page: LenderPage) => {
      const one = page.yields.find(({planting}) => planting === "Long Acre")!
      return one.record.map(({at, ...rest}) => ({...rest, row: at!.row}))
    }
    const lastFirst = lenderOf(
      open("hollow-brook-farm.json", (text) =>
        text.replace(RECORDS, (rows) => JSON.stringify(JSON.parse(rows).toReversed())),
      ),
    )!
    const turned = read(page).map(({row, ...rest}) => ({...rest, row: 11 - row})) // of twelve rows
    expect(read(lastFirst)).toEqual(turned)
    expect(longAcre.mean).toBe(5360)
    expect(longAcre.reason).toMatch(/^spared/)
    expect(page.yields.find(({planting}) => planting === "Top Corner")).toMatchObject({
      record: [],
      mean: null,
      gap: null,
    })
    expect(page.curve[5]).toEqual({age: 5, share: 0.95})
    // The twelve records at full bearing, worked by hand in the test of the workbooks: 4 931.7.
    expect(page.fullBearing).toBeCloseTo(4931.7, 1)
    expect(page.stress).toBe("yields −20\u202f%, prices −10\u202f%")
    expect(page.wanted).toBe(1.25)
    expect(page.published).toEqual({place: "Michigan, peak years", low: 3923, high: 4483})
  })

  it("has nothing to show in a blank workbook but its lines", () => {
    const page = lenderOf(open("blank.json"))!
    expect(page).toMatchObject({years: [], unknown: [], yields: [], fullBearing: null})
    expect(page.lines.map(({text}) => text)).toEqual([
      "Nothing is planted yet.",
      "No day is typed on which the plan stands.",
      "No loan falls due.",
      "No planting has three years on record.",
      "Nothing is known of the money yet.",
    ])
  })

  it("says which years cannot be worked out where no crop is on record, and not that they pay", () => {
    const page = lenderOf(open("hollow-brook-farm.json", (text) => text.replace(RECORDS, "[]")))!
    expect(page.years.map(({year}) => year)).toEqual([2026])
    expect(page.unknown).toEqual([2027, 2028, 2029, 2030, 2031, 2032, 2033, 2034]) // nothing is due in 2035
    expect(page.lines[2]!.text).toBe(
      "Not known: with no crop on record those of the years to come cannot be worked out.",
    )
  })

  it("says how many of the plantings have three years on record", () => {
    const sandPiece = (text: string) =>
      text.replace(RECORDS, (all) => `[${all.match(/\["Sand Piece".*\]/g)!.join(",")}]`)
    expect(lenderOf(open("hollow-brook-farm.json", sandPiece))!.lines[3]!.text).toContain(
      "With three years on record, 1 of 6 plantings: ",
    )
  })

  it("is not there without its sheet", () => {
    const sheets = [{name: "A", group: "g", columns: [{heading: "A", kind: "typed" as const}], rows: []}]
    expect(lenderOf(new Workbook({name: "x", sheets}))).toBeNull()
  })
})
