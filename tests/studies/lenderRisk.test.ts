import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {drawRisk} from "../../src/studies/drawRisk"
import {ASSUMED_RISK, lenderRisk} from "../../src/studies/lenderRisk"
import {risk} from "../../src/studies/risk"
import {readFile} from "../../src/workbook/file"
import {lenderOf} from "../../src/workbook/lender"
import {rowsOf} from "../../src/workbook/season"
import {Workbook} from "../../src/workbook/workbook"

function open(file: string) {
  const reading = readFile(readFileSync(new URL(`../../workbooks/${file}`, import.meta.url), "utf8"))
  if ("refused" in reading) throw new Error(reading.refused)
  return new Workbook(reading.document)
}

const certain = {
  ...ASSUMED_RISK,
  yearSpread: 0,
  fieldSpread: 0,
  doubt: 0,
  priceVariation: 0,
  airSpread: 0,
  sunSpread: 0,
}

describe("a lender's study of risk", () => {
  const workbook = open("hollow-brook-farm.json")

  it("gives the plan and the stress of the sheets where nothing is left to chance", () => {
    const input = lenderRisk(workbook, 1, certain)!
    const {plans} = risk(input, [drawRisk(input, 0, 20)])
    const {years} = lenderOf(workbook)!
    expect(plans.map(({name}) => name)).toEqual(["plan", "stress"])
    for (const [i, {capacity, cover, stressed}] of years.entries()) {
      expect(plans[0]!.years[i]!.capacity.mean).toBeCloseTo(capacity, 4)
      if (cover === null) continue
      expect(plans[0]!.years[i]!.cover!.mean).toBeCloseTo(cover, 9)
      expect(plans[1]!.years[i]!.cover!.mean).toBeCloseTo(stressed!, 9)
    }
  })

  it("finds the stress below the plan in every draw, since both are on the same draws", () => {
    const input = lenderRisk(workbook, 7)!
    const {plans} = risk(input, [drawRisk(input, 0, 400)])
    expect(plans[1]!.against!.better.share).toBe(0)
    for (const {below1} of plans[0]!.years) if (below1) expect(below1.share).toBeGreaterThan(0)
  })

  it("carries the crowns of standing plantings from year to year, and not of those yet to be planted", () => {
    const {fields} = lenderRisk(workbook, 1)!.plans[0]!
    const isCarried = (name: string) =>
      fields.find((one) => one.name === name)!.years.map((year) => "factor" in year)
    expect(isCarried("Long Acre")).toEqual(Array.from({length: 10}, () => true))
    expect(isCarried("North Bench")).toEqual([true, ...Array.from({length: 9}, () => false)]) // grubbed out
    expect(isCarried("North Bench anew")).not.toContain(true)
    expect(isCarried("Top Corner")).not.toContain(true) // no sample, not cut
  })

  it("takes a crop as given where the balance has next to none of it", () => {
    const short = new Workbook(workbook.document)
    const sheet = workbook.document.sheets.findIndex(({name}) => name === "Season plan")
    const {columns, rows} = workbook.document.sheets[sheet]!
    const row = rows.findIndex(([name]) => name === "Long Acre")
    const col = columns.findIndex(({part}) => part === "close")
    short.revise({type: "enter", cells: [{at: {sheet, row, col}, content: "2026-04-26"}]}) // two days of cutting
    const {fields} = lenderRisk(short, 1)!.plans[0]!
    const longAcre = fields.find(({name}) => name === "Long Acre")!
    expect(longAcre.years.every((year) => "kg" in year && year.kg > 0)).toBe(true)
  })

  it("feels the sun of a year in the next one, through what the crowns carry", () => {
    const input = lenderRisk(workbook, 3, {...certain, sunSpread: 0.1})!
    const {kg} = drawRisk(input, 0, 200)
    const crops = (year: number) => kg.slice(year * 200, year * 200 + 200)
    const spread = (values: Float64Array) => {
      const mean = values.reduce((sum, one) => sum + one, 0) / values.length
      return Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / values.length) / mean
    }
    expect(spread(crops(0))).toBeLessThan(1e-6) // sun makes sugar after the cutting
    expect(spread(crops(1))).toBeGreaterThan(0.005)
  })

  it("expects on the mean about what the sheets do", () => {
    const input = lenderRisk(workbook, 5)!
    const {plans} = risk(input, [drawRisk(input, 0, 3000)])
    const crops = rowsOf(workbook, "cash year").map((row) => 1000 * row.number("cash crop")!)
    expect(crops).toHaveLength(10)
    for (const [i, crop] of crops.entries())
      expect(Math.abs(plans[0]!.years[i]!.kg.mean / crop - 1)).toBeLessThan(0.03)
  })

  it("has nothing to run on in a blank workbook", () => {
    expect(lenderRisk(open("blank.json"), 1)).toBeNull()
  })
})
