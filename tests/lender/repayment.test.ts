import {describe, expect, it} from "vitest"
import type {CellAddress, Content} from "../../src/workbook/document"
import {line, openFarm} from "./farm"

describe("repayment (LE3 to LE6)", () => {
  it("is measured by the published definitions", () => {
    const {at, of, enter} = openFarm()
    // Langemeier, M. (2025). Hoosier Banker 109(1), table 1: capacity 259 006, margin 127 254; cover 259 006/131 752.
    const given = {
      "Net farm income": 78853,
      "Off the farm": 0,
      Taxes: 49769,
      Interest: 72218,
      Depreciation: 263567,
      Living: 105863,
      Principal: 59534,
    }
    enter(
      ...Object.entries(given).map(([heading, content]): [CellAddress, Content] => [
        at("Cash and debt", 0, heading),
        content,
      ]),
    )
    expect(of("Cash and debt", 0, "Capacity")).toBe(259006)
    expect(of("Cash and debt", 0, "Margin")).toBe(127254)
    expect(of("Cash and debt", 0, "Cover")).toBeCloseTo(1.97, 2)
  })

  function tightYears() {
    const farm = openFarm()
    const capacities = [182000, 96000, 118000, 171000, 205000]
    farm.enter(
      ...capacities.flatMap((capacity, row): [CellAddress, Content][] => [
        [farm.at("Cash and debt", row, "Capacity"), capacity],
        [farm.at("Cash and debt", row, "Interest"), 44000],
        [farm.at("Cash and debt", row, "Principal"), 60000],
      ]),
      [farm.at("Cash and debt", 1, "Sold"), 210],
      [farm.at("Cash and debt", 1, "Price"), 2.4],
      [farm.at("Cash and debt", 1, "Picking and packing"), 210_000 * 1.4],
    )
    return farm
  }

  it("names the tight year, what it lacks and why", () => {
    const farm = tightYears()
    const covers = [0, 1, 2, 3, 4].map((row) => (farm.of("Cash and debt", row, "Cover") as number).toFixed(2))
    expect(covers).toEqual(["1.75", "0.92", "1.13", "1.64", "1.97"])
    expect(farm.of("Cash and debt", 1, "Short")).toBe(8000)
    expect(line(farm, "Tight year")).toMatch(
      /^2027: cover 0\.92, short by 8\u202f000, with replanting North Bench and the first payment on Planting loan\./,
    )
  })

  it("names a crop smaller than this season's where nothing else presses", () => {
    const {at, of, enter} = tightYears()
    enter([at("Cash and debt", 0, "Crop"), 100], [at("Cash and debt", 1, "Crop"), 50])
    enter([at("Cash and debt", 2, "Crop"), 77], [at("Cash and debt", 3, "Crop"), 77])
    expect(of("Cash and debt", 1, "Cause")).toMatch(/^replanting North Bench and the first payment on [^%]*$/)
    expect(of("Cash and debt", 2, "Cause")).toBe("a crop 23\u202f% under that of 2026") // cover 1.13, 1.25 wanted
    expect(of("Cash and debt", 3, "Cause")).toBe("") // cover 1.64
    enter([at("Cash and debt", 2, "Crop"), 100])
    expect(of("Cash and debt", 2, "Cause")).toBe("")
  })

  it("writes a cover below zero with the sign of all other numbers", () => {
    const farm = tightYears()
    farm.enter([farm.at("Cash and debt", 1, "Capacity"), -52000])
    expect(line(farm, "Tight year")).toMatch(/^2027: cover \u22120\.50, short by 156\u202f000,/)
  })

  it("keeps the tight year where a cover is typed over, as the heading does", () => {
    const farm = tightYears()
    const before = line(farm, "Tight year")
    farm.enter([farm.at("Cash and debt", 1, "Cover"), 1.9], [farm.at("Cash and debt", 3, "Cover"), 0.2])
    expect(line(farm, "Tight year")).toBe(before)
    expect(farm.of("Stress", 0, "Cover in plan")).toBeCloseTo(96 / 104, 12)
    // The earliest of two years that are equally tight.
    farm.enter([farm.at("Cash and debt", 2, "Capacity"), 96000])
    expect(line(farm, "Tight year")).toMatch(/^2027: cover 0\.92/)
  })

  it("gives the price at which the cover is 1", () => {
    const farm = tightYears()
    expect(farm.of("Cash and debt", 1, "Break price")).toBeCloseTo(2.4 + 8000 / 210_000, 9)
    expect(line(farm, "Tight year")).toContain("just pays at 2.44 per packed kg, with 2.40 per kg planned")
  })

  it("shows a shock beside the plan and leaves the plan what it was", () => {
    const {of, rowOf, values, workbook, at, enter} = tightYears()
    const plan = values("Cash and debt", "Capacity")
    const row = rowOf("Stress", "yours")
    enter([at("Stress", row, "Yield"), -0.2], [at("Stress", row, "Price"), -0.1])
    // Sales 504 000·(.8·.9 - 1) = -141 120, picking and packing 294 000·(.8 - 1) = -58 800: 82 320 less.
    expect(of("Stress", row, "Capacity in plan")).toBe(96000)
    expect(of("Stress", row, "Falls by")).toBeCloseTo(82320, 6)
    expect(of("Stress", row, "Capacity")).toBeCloseTo(13680, 6)
    expect(of("Stress", row, "Cover")).toBeCloseTo(0.13, 2)
    expect(of("Cash and debt", 1, "Cover under stress")).toBeCloseTo(13680 / 104000, 9)
    enter([at("Stress", row, "Yield"), -0.5])
    expect(values("Cash and debt", "Capacity")).toEqual(plan)
    expect(workbook.document.sheets.length).toBeGreaterThan(0)
    // In words no quarter of a point is rounded away.
    enter([at("Stress", row, "Yield"), -0.125], [at("Stress", row, "Rates"), 0.0075])
    expect(of("Stress", row, "In words")).toBe("yields −12.5\u202f%, prices −10\u202f%, rates +0.75 points")
    enter([at("Stress", row, "Rates"), 0.01])
    expect(of("Stress", row, "In words")).toMatch(/, rates \+1 point$/)
  })
})
