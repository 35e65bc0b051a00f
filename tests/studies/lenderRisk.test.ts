import {readFileSync} from "node:fs"
import {beforeAll, describe, expect, it} from "vitest"
import {drawRisk} from "../../src/studies/drawRisk"
import {ASSUMED_RISK, lenderRisk, whyNoRisk} from "../../src/studies/lenderRisk"
import {risk, type PlanRisk} from "../../src/studies/risk"
import {seasonUnderWay} from "../../src/studies/seasonUnderWay"
import {readFile} from "../../src/workbook/file"
import {lenderOf} from "../../src/workbook/lender"
import {valueNamed} from "../../src/workbook/names"
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
  const unpicked = new Workbook(workbook.document)
  beforeAll(() => {
    const weights = rowsOf(workbook, "picking planting").map(({cells}) => cells["picking weight"]!)
    unpicked.revise({type: "enter", cells: weights.map((at) => ({at, content: null}))})
  }, 60_000)

  it("gives the plan and the stress of the sheets where nothing is left to chance", () => {
    const input = lenderRisk(unpicked, 1, certain)!
    const {plans} = risk(input, [drawRisk(input, 0, 20)])
    const {years} = lenderOf(unpicked)!
    expect(plans.map(({name}) => name)).toEqual(["plan", "stress"])
    for (const [i, {capacity, cover, stressed}] of years.entries()) {
      expect(plans[0]!.years[i]!.capacity.mean).toBeCloseTo(capacity, 4)
      if (cover === null) continue
      expect(plans[0]!.years[i]!.cover!.mean).toBeCloseTo(cover, 9)
      expect(plans[1]!.years[i]!.cover!.mean).toBeCloseTo(stressed!, 9)
    }
  })

  const picked = 4744 + 12787 + 14531 + 20369 + 1419 // the weights of the sheet Pickings before 25 May, planting by planting

  it("knows in every draw what is picked of the season under way, and draws the rest", () => {
    const input = lenderRisk(workbook, 1)!
    const toCome = rowsOf(workbook, "pick planting").reduce(
      (sum, row) => sum + row.number("pick to come")!,
      0,
    )
    const kg = drawRisk(input, 0, 1000).kg.subarray(0, 1000)
    expect(kg.every((one) => one > picked)).toBe(true)
    expect(Math.abs(kg.reduce((sum, one) => sum + one, 0) / 1000 - picked - toCome)).toBeLessThan(
      0.02 * toCome,
    )
    const {kg: before} = drawRisk(lenderRisk(unpicked, 1)!, 0, 1000)
    expect(Math.max(...kg) - Math.min(...kg)).toBeLessThan(
      0.6 * (Math.max(...before.subarray(0, 1000)) - Math.min(...before.subarray(0, 1000))),
    )
  })

  it("counts the season under way by what is picked and what comes, and stresses only that", () => {
    const input = lenderRisk(workbook, 1, certain)!
    const [plan, stress] = risk(input, [drawRisk(input, 0, 2)]).plans as [PlanRisk, PlanRisk]
    const toCome = rowsOf(workbook, "pick planting").reduce(
      (sum, row) => sum + row.number("pick to come")!,
      0,
    )
    expect(plan.years[0]!.kg.mean).toBeCloseTo(picked + toCome, 4)
    // Yields of 20 % less: of what is to come alone. The years after it are as the sheets have them.
    expect(stress.years[0]!.kg.mean).toBeCloseTo(picked + 0.8 * toCome, 4)
    const {years} = lenderOf(workbook)!
    expect(plan.years[1]!.capacity.mean).toBeCloseTo(years[1]!.capacity, 4)
    // By hand: what is sold and what comes at its price, less picking and packing, 1.367 a kg (0.95 + 0.03 + 0.86 x 0.45),
    // less all that does not follow the crop.
    const [row] = rowsOf(workbook, "cash year")
    const other = row!.number("cash sales")! - row!.number("cash picking")! - years[0]!.capacity
    const {sold, price} = seasonUnderWay(
      workbook,
      row!.number("cash sales")! / (1000 * row!.number("cash crop")!),
    )!
    expect(plan.years[0]!.capacity.mean).toBeCloseTo(
      sold.sales + toCome * price - 1.367 * (picked + toCome) - other,
      4,
    )
    const priceUnderStress = price * 0.9
    expect(stress.years[0]!.capacity.mean).toBeCloseTo(
      sold.sales + 0.8 * toCome * priceUnderStress - 1.367 * (picked + 0.8 * toCome) - other,
      4,
    )
  })

  it("puts the stress of costs on what is to come alone: what is picked has been paid for", () => {
    const dear = new Workbook(workbook.document)
    const shown = valueNamed(dear, "Stress_shown")
    const at = rowsOf(dear, "stress set").find((row) => row.word("stress set") === shown)!.cells[
      "stress costs"
    ]!
    const capacityAt = (costs: number) => {
      dear.revise({type: "enter", cells: [{at, content: costs}]})
      const input = lenderRisk(dear, 1, certain)!
      return risk(input, [drawRisk(input, 0, 2)]).plans[1]!.years[0]!.capacity.mean
    }
    const toCome = rowsOf(dear, "pick planting").reduce((sum, row) => sum + row.number("pick to come")!, 0)
    const [row] = rowsOf(dear, "cash year")
    // A tenth more of field and fixed costs, and of 1.367 a kg (see above) of the 80 % that still come.
    const own = row!.number("cash field")! + row!.number("cash fixed")!
    expect(capacityAt(0) - capacityAt(0.1)).toBeCloseTo(0.1 * (own + 1.367 * 0.8 * toCome), 4)
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
    const [season, ...ahead] = longAcre.years
    expect(season).toMatchObject({kg: 0}) // closed a month before the plan stands: nothing more is to come
    expect(ahead.every((year) => "kg" in year && year.kg > 0)).toBe(true)
  })

  it("lets the crowns live through a year without a yield, uncut", () => {
    const rested = new Workbook(workbook.document)
    const row = rowsOf(rested, "stand name").find(
      (one) => one.word("stand name") === "Long Acre" && one.number("stand year") === 2027,
    )!
    rested.revise({type: "enter", cells: [{at: row.cells["stand yield"]!, content: 0}]})
    const input = lenderRisk(rested, 1, certain)!
    const years = input.plans[0]!.fields.find(({name}) => name === "Long Acre")!.years
    const first = years[0] as {open: number; close: number}
    expect(years[1]).toEqual({open: first.open, close: first.open - 1, kg: 0})
    // Rested crowns would bear more by the balance: the planned yield is a smaller share of it than without the rest.
    const factors = (workbook: Workbook) =>
      lenderRisk(workbook, 1, certain)!
        .plans[0]!.fields.find(({name}) => name === "Long Acre")!
        .years.map((year) => ("factor" in year ? year.factor : 0))
    expect(factors(rested)[2]!).toBeLessThan(0.95 * factors(workbook)[2]!)
    // And where nothing is left to chance they bear what is planned.
    const {plans} = risk(input, [drawRisk(input, 0, 2)])
    const crops = rowsOf(rested, "cash year").map((one) => 1000 * one.number("cash crop")!)
    for (const year of [1, 2, 3]) expect(plans[0]!.years[year]!.kg.mean).toBeCloseTo(crops[year]!, 4)
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
    const input = lenderRisk(unpicked, 5)!
    const {plans} = risk(input, [drawRisk(input, 0, 3000)])
    const crops = rowsOf(workbook, "cash year").map((row) => 1000 * row.number("cash crop")!)
    expect(crops).toHaveLength(10)
    for (const [i, crop] of crops.entries())
      expect(Math.abs(plans[0]!.years[i]!.kg.mean / crop - 1)).toBeLessThan(0.03)
  })

  it("has nothing to run on in a blank workbook", () => {
    const blank = open("blank.json")
    expect(lenderRisk(blank, 1)).toBeNull()
    expect(whyNoRisk(blank)).toBe("There are no years of cash and debt yet: the season is not known.")
  })

  it("ends before the first year that cannot be worked out, and moves none of the later ones into its place", () => {
    const gap = new Workbook(workbook.document)
    const capacities = rowsOf(gap, "cash year").map(({cells}) => cells.capacity!)
    const enter = (at: (typeof capacities)[number], content: string) =>
      gap.revise({type: "enter", cells: [{at, content}]})
    enter(capacities[2]!, "=NA()") // 2028
    const input = lenderRisk(gap, 1, certain)!
    const [plan] = risk(input, [drawRisk(input, 0, 2)]).plans
    expect(plan!.years.map(({year}) => year)).toEqual([2026, 2027])
    expect(input.plans.flatMap(({fields}) => fields.map(({years}) => years.length))).not.toContain(10)
    enter(capacities[0]!, "=NA()")
    expect(lenderRisk(gap, 1)).toBeNull()
    expect(whyNoRisk(gap)).toBe(
      "Cash and debt of 2026 cannot be worked out, and the study begins there. Not available yet.",
    )
  })

  it("says that it needs crowns", () => {
    const bare = new Workbook(workbook.document)
    const sheet = bare.document.sheets.findIndex(({name}) => name === "Root samples")
    bare.revise({type: "removeRows", sheet, first: 0, count: bare.document.sheets[sheet]!.rows.length})
    expect(lenderRisk(bare, 1)).toBeNull()
    expect(whyNoRisk(bare)).toMatch(/^The study needs a planting with root samples/)
  })
})
