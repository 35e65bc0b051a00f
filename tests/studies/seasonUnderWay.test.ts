import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {seasonUnderWay} from "../../src/studies/seasonUnderWay"
import type {Content} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {namesIn, numberNamed} from "../../src/workbook/names"
import {rowsOf} from "../../src/workbook/season"
import {Workbook} from "../../src/workbook/workbook"

function open(file: string) {
  const reading = readFile(readFileSync(new URL(`../../workbooks/${file}`, import.meta.url), "utf8"))
  if ("refused" in reading) throw new Error(reading.refused)
  return new Workbook(reading.document)
}

const farm = open("hollow-brook-farm.json")

/** The farm with these pickings of Sand Piece alone, which opens on 23 April. */
function picked(...pickings: readonly [day: string, kg: number][]) {
  const workbook = new Workbook(farm.document)
  const cells = rowsOf(workbook, "picking planting").flatMap(
    (row, i): {at: (typeof row.cells)["picking day"]; content: Content}[] => {
      const [day, kg] = pickings[i] ?? [null, null]
      return [
        {at: row.cells["picking planting"], content: kg === null ? null : "Sand Piece"},
        {at: row.cells["picking day"], content: day},
        {at: row.cells["picking weight"], content: kg},
      ]
    },
  )
  workbook.revise({type: "enter", cells: cells.map(({at, content}) => ({at: at!, content}))})
  return workbook
}

/** Mean price of a kg of the season in the plan. */
const meanPrice = (workbook: Workbook) => {
  const [year] = rowsOf(workbook, "cash year")
  return year!.number("cash sales")! / (1000 * year!.number("cash crop")!)
}

describe("the season under way", () => {
  it("sells what is picked at the price of its week, of what is packed, and has the rest to come", () => {
    const workbook = picked(["2026-04-29", 1000], ["2026-04-30", 500], ["2026-05-25", 9000])
    const {sold, toCome} = seasonUnderWay(workbook, meanPrice(workbook))!
    // Weeks 1 and 2 at 3.65 and 3.50, of which 0.86 is packed; the picking of 25 May, As_of, is still to come.
    expect(sold.kg).toBe(1500)
    expect(sold.sales).toBeCloseTo(0.86 * (1000 * 3.65 + 500 * 3.5), 4)
    const row = rowsOf(workbook, "pick planting").find((one) => one.word("pick planting") === "Sand Piece")!
    expect([...toCome]).toEqual([["Sand Piece", row.number("pick to come")]])
  }, 60_000)

  it("has a lower price still to come, as prices fall through the season", () => {
    const mean = meanPrice(farm)
    const {sold, price} = seasonUnderWay(farm, mean)!
    expect(price).toBeLessThan(mean)
    expect(sold.sales / sold.kg).toBeGreaterThan(mean)
  })

  it("has to come, of the week that runs, the days from As_of on", () => {
    const asOf = numberNamed(farm, "As_of")!
    let [crop, left, planned, sold] = [0, 0, 0, 0]
    for (const row of rowsOf(farm, "sale planting")) {
      const [from, price] = [row.number("sale from"), row.number("sale price")]
      if (from === null || price === null) continue
      const kg = row.number("sale crop") ?? 0
      crop += kg
      planned += kg * price
      for (let day = from; day < from + 7; day++)
        if (day >= asOf) {
          left += kg / 7
          sold += (kg / 7) * price
        }
    }
    expect(left).toBeGreaterThan(0)
    const mean = meanPrice(farm)
    expect(seasonUnderWay(farm, mean)!.price).toBeCloseTo((sold / left / (planned / crop)) * mean, 9)
  })

  it("moves the prices of its weeks with a price that was typed over", () => {
    const mean = meanPrice(farm)
    const [plain, dear] = [seasonUnderWay(farm, mean)!, seasonUnderWay(farm, 1.1 * mean)!]
    expect(dear.price / plain.price).toBeCloseTo(1.1, 12)
    expect(dear.sold.sales / plain.sold.sales).toBeCloseTo(1.1, 12)
  })

  it("is not there without the day on which the plan stands", () => {
    const dayless = new Workbook(farm.document)
    const {at} = namesIn(farm.document).find(({name}) => name === "As_of")!
    dayless.revise({type: "enter", cells: [{at, content: null}]})
    expect(seasonUnderWay(dayless, 2.7)).toBeNull()
  })
})
