import {describe, expect, it} from "vitest"
import {sizeShare} from "../../functions/pack/sizeShare"
import {agreePlan} from "../../src/editor/commands/season"
import type {CellAddress, Content} from "../../src/workbook/document"
import {planOf} from "../../src/workbook/plan"
import {isFault, type Value} from "../../src/workbook/value"
import type {Workbook} from "../../src/workbook/workbook"
import {changed, sheetOf, enter, day} from "./shipped"

/** The values under a heading, row by row. */
function sheetValues(workbook: Workbook, name: string, heading: string): readonly Value[] {
  const sheet = sheetOf(workbook.document, name)
  const {columns, rows} = workbook.document.sheets[sheet]!
  const col = columns.findIndex((column) => column.heading === heading)
  return rows.map((_, row) => workbook.valueAt({sheet, row, col}))
}

const faultsOn = (workbook: Workbook, name: string) =>
  workbook.document.sheets[sheetOf(workbook.document, name)]!.columns.flatMap(({heading}) =>
    sheetValues(workbook, name, heading).filter(isFault),
  )

describe("a change in the week, the crew and the shed of hollow-brook-farm.json", () => {
  it("packs by the planting's own spears where two were measured on one day", () => {
    const {workbook, at, cellOf} = changed()
    const {sheet} = at("Spear size", "Sand Piece", "Date")
    const row = workbook.document.sheets[sheet]!.rows.length
    enter(
      workbook,
      ...["Long Acre", "2026-05-25", 14.3].map((content, col): [CellAddress, Content] => [
        {sheet, row, col},
        content,
      ]),
    )
    expect(cellOf("Packing list", "Sand Piece", "Diameter")).toBe(10.9)
    expect(cellOf("Packing list", "Long Acre", "Diameter")).toBe(14.3)
  })

  it("says that the day on which the plan stands is missing, and foretells the days of cutting by the plan", () => {
    const {workbook, at, cellOf} = changed()
    const asOf = at("Named values", "As_of", "Value")
    enter(workbook, [asOf, "2026-04-01"]) // before the first picking: nothing of the pace is known
    const heaviest = sheetValues(workbook, "Crew and cooler", "Heaviest")
    enter(workbook, [asOf, null])
    expect(cellOf("This week", "Well Field", "What to do")).toBe("Type As_of")
    expect(cellOf("This week", "Well Field", "Why")).toMatch(/the plan stands is not typed/)
    for (const name of ["This week", "Picking plan"]) expect(faultsOn(workbook, name)).toEqual([])
    expect(sheetValues(workbook, "Crew and cooler", "Heaviest")).toEqual(heaviest)
  })

  it.each([
    ["Shed_day", "Packing list", "In", ""],
    ["Other_load", "Days of cutting", "Load", "#N/A"],
    ["Walk_area", "Picking plan", "An hour brings", "#N/A"],
    ["Pack_length", "Crates", "Head space", "#N/A"],
    ["Yield_spread", "Season plan", "Low", "#N/A"],
    ["Long_wait", "Cold chain", "The wait", ""],
    ["Full_age", "Years ahead", "As planned", "#N/A"],
    ["Full_age", "Records", "By the balance", "#N/A"],
  ])("takes a blank %s for not known, never for nought", (name, sheet, heading, shown) => {
    const {workbook, at} = changed()
    const before = sheetValues(workbook, sheet, heading)
    enter(workbook, [at("Named values", name, "Value"), null])
    const after = sheetValues(workbook, sheet, heading)
    const told = after.filter((value, row) => before[row] !== value)
    expect(told).not.toEqual([])
    expect(new Set(told.map((value) => (isFault(value) ? value.code : value)))).toEqual(new Set([shown]))
  })

  it("plans without the end of the fern: its own limit alone is not known", () => {
    const {workbook, at, cellOf} = changed()
    const close = cellOf("Season plan", "Sand Piece", "Close")
    enter(workbook, [at("Named values", "Fern_end_date", "Value"), null])
    expect(cellOf("Season plan", "Sand Piece", "Close")).toBe(close)
    expect(cellOf("Season plan", "Sand Piece", "fern days")).toMatchObject({code: "#N/A"})
  })

  it("says when a planting opens until it does, and asks for no spears before", () => {
    const {workbook, at, cellOf} = changed()
    const asOf = at("Named values", "As_of", "Value")
    enter(workbook, [asOf, "2026-04-26"]) // Well Field opens on 27 April, and no spears were measured there
    expect(cellOf("This week", "Well Field", "What to do")).toBe("Opens on 27 Apr")
    enter(workbook, [asOf, "2026-04-27"])
    expect(cellOf("This week", "Well Field", "What to do")).toBe("Count spears")
  })

  it("packs by the median that goes with the mean of spears measured, or with their week", () => {
    // Of a lognormal the mean is the median times exp(spread²/2) (Abramowitz & Stegun, 26.1, from memory).
    const {workbook, at, cellOf} = changed()
    const apart = Math.exp(0.3 ** 2 / 2)
    const share = (median: number) => sizeShare(median, 0.3, 12.7, 17.4625, "weight") as number
    const medium = (planting: string) =>
      Number(cellOf("Packing list", planting, "medium")) / Number(cellOf("Packing list", planting, "Packed"))
    expect(cellOf("Packing list", "Well Field", "Diameter")).toBeCloseTo(12.5 * apart, 9) // in its fifth week
    expect(medium("Well Field")).toBeCloseTo(share(12.5), 9)
    enter(workbook, [at("Named values", "Shed_day", "Value"), "2026-05-27"])
    expect(medium("Sand Piece")).toBeCloseTo(share(10.9 / apart), 9) // measured on 25 May
    enter(workbook, [at("Named values", "Shed_day", "Value"), "2026-05-24"])
    expect(cellOf("Packing list", "Sand Piece", "Diameter")).toBe(11.6) // on 18 May: the list of a day knows no later spears
  })

  it("neither asks to pick nor packs what the wait of a label still holds", () => {
    const {workbook, at, cellOf} = changed()
    expect(cellOf("Packing list", "Well Field", "In")).toBeGreaterThan(1000)
    const sprayed = at("Spray waits", "Sand Piece", "Planting")
    enter(
      workbook,
      ...["Well Field", "trial", "2026-05-24", 12].map((content, col): [CellAddress, Content] => [
        {...sprayed, row: sprayed.row + 1, col},
        content,
      ]),
    )
    expect(cellOf("This week", "Well Field", "What to do")).toBe("Pick again from 5 Jun")
    expect(cellOf("This week", "Well Field", "Why")).toMatch(
      /^sprayed, the wait of its label is not over; held by/,
    )
    expect(cellOf("This week", "Sand Piece", "What to do")).toBe("Keep")
    expect(cellOf("Packing list", "Well Field", "In")).toBe(0)
    // Sprayed later too: the wait in force is the first one, until the day of the second spraying.
    enter(
      workbook,
      ...["Well Field", "another", "2026-06-10", 7].map((content, col): [CellAddress, Content] => [
        {...sprayed, row: sprayed.row + 2, col},
        content,
      ]),
    )
    expect(cellOf("Packing list", "Well Field", "Pick again from")).toBe(day("2026-06-05"))
    enter(workbook, [{...sprayed, row: sprayed.row + 1, col: 2}, "2026-05-10"]) // over since 22 May
    expect(cellOf("This week", "Well Field", "What to do")).toBe("Count spears")
    expect(cellOf("Packing list", "Well Field", "In")).toBeGreaterThan(1000)
  })

  it("says why a picking should be skipped", () => {
    const {workbook, at, cellOf} = changed()
    enter(
      workbook,
      [at("Named values", "Next_year_cost", "Value"), 400],
      [at("Season plan", "Sand Piece", "Close"), "2026-06-12"],
    )
    expect(cellOf("This week", "Sand Piece", "Worth of a day")).toBeLessThan(0)
    expect(cellOf("This week", "Sand Piece", "What to do")).toBe("Skip a picking, or close")
    expect(cellOf("This week", "Sand Piece", "Why")).toMatch(/^a day costs more than it brings; held by you/)
  })

  it("says where a price is carried on past the last week of Prices", () => {
    const {workbook, at, cellOf, check} = changed()
    expect(check("Weeks past the end of Prices")).toEqual([0, "none"])
    expect(cellOf("This week", "Long Acre", "Why")).not.toMatch(/Prices/)
    const third = at("Prices", 3, "Week from opening")
    enter(
      workbook,
      ...Array.from({length: 7}, (_, i): [CellAddress, Content] => [
        {...third, row: third.row + 1 + i},
        null,
      ]),
      ...Array.from({length: 7}, (_, i): [CellAddress, Content] => [
        {...third, row: third.row + 1 + i, col: third.col + 1},
        null,
      ]),
      // Without a price the plan would end with the third week: a close of one's own goes past it.
      [at("Season plan", "Long Acre", "Close"), "2026-05-27"],
    )
    // Opened on 25 April: the fourth and the fifth week begin on 16 and 23 May; As_of is in the fifth.
    expect(check("Weeks past the end of Prices")).toEqual([2, "Long Acre"])
    expect(cellOf("This week", "Long Acre", "Why")).toMatch(
      /; Prices has no such week, its last price is carried on$/,
    )
  })

  it("tells one story of what a wait loses, on every sheet and in the days of the plan", () => {
    const {workbook, at, cellOf} = changed()
    const number = (sheet: string, heading: string, key: Content = "Well Field") =>
      cellOf(sheet, key, heading) as number
    const grown = number("Season plan", "Crop") * 1000
    const farmOf = () => planOf(workbook)!.rows.reduce((sum, {crop}) => sum + (crop ?? 0), 0)
    const farm = farmOf()
    const lostByOthers = () =>
      planOf(workbook)!.rows.flatMap((one) => (one.planting === "Well Field" ? [] : [one.lostInWaits]))
    const others = lostByOthers()
    const sprayed = at("Spray waits", "Sand Piece", "Planting")
    const wait = (row: number, from: string, days: number) =>
      enter(
        workbook,
        ...["Well Field", "trial", from, days].map((content, col): [CellAddress, Content] => [
          {...sprayed, row: sprayed.row + row, col},
          content,
        ]),
      )
    wait(1, "2026-05-04", 7)
    wait(2, "2026-06-01", 5)
    const lost = number("Spray waits", "Lost")
    // Some 41 t in 55 days: twelve days lose less than twelve days' crop, and more than half of it.
    expect(lost).toBeGreaterThan((6 * grown) / 55)
    expect(lost).toBeLessThan((12 * grown) / 55)
    const crop = number("Season plan", "Crop") * 1000
    expect(crop).toBeCloseTo(grown - lost, 6)
    expect(number("Picking plan", "Crop")).toBeCloseTo(grown, 6)
    expect(number("Agreed plan", "Crop now") * 1000).toBeCloseTo(crop, 6)
    const {columns, rows} = workbook.document.sheets[sheetOf(workbook.document, "Sales by week")]!
    const [name, kg] = ["Planting", "Crop"].map((one) => columns.findIndex(({heading}) => heading === one))
    const sold = rows.flatMap((_, row) => {
      const value = (col: number) =>
        workbook.valueAt({sheet: sheetOf(workbook.document, "Sales by week"), row, col})
      return value(name!) === "Well Field" ? [value(kg!) as number] : []
    })
    expect(sold.reduce((sum, one) => sum + one)).toBeCloseTo(crop, 6)
    expect(farmOf()).toBeCloseTo(farm - lost, 6)
    const {daily, rows: planned} = planOf(workbook)!
    expect(daily.reduce((sum, one) => sum + one.kg, 0)).toBeCloseTo(farm - lost, 6)
    expect(planned.find(({planting}) => planting === "Well Field")!.lostInWaits).toBeCloseTo(lost, 6)
    expect(lostByOthers()).toEqual(others)
    // Agreed with the waits known: what was planned by a day is what it was before it was agreed.
    workbook.revise(agreePlan(planOf(workbook)!, "2026-05-25")({document: workbook.document} as never)!)
    expect(number("Agreed plan", "Lost in waits")).toBeCloseTo(lost / 1000, 3)
    const plannedBy = number("Picking plan", "Planned by then")
    enter(workbook, [at("Agreed plan", "Well Field", "Planting"), null])
    expect(number("Picking plan", "Planned by then") / plannedBy).toBeCloseTo(1, 4)
  })

  it("says of people, cold and crates that they are not known, where what they rest on is blank", () => {
    for (const [name, sheet, row, ...headings] of [
      ["Pick_rate", "Crew and cooler", 4, "Cutters needed", "Short"],
      ["Field_heat", "Crew and cooler", 4, "Load", "Over"],
      ["Fitted_load", "Crew and cooler", 4, "Fitted", "Over"],
      ["Packout", "Packing list", 1, "Out", "Packed", "Crates", "Cartons", "large"],
      ["Hold_days", "Days of cutting", 40, "In store"],
    ] as const) {
      const {workbook, at} = changed()
      const first = {
        ...at(sheet, workbook.document.sheets[sheetOf(workbook.document, sheet)]!.rows[0]![0]!, headings[0]),
        row,
      }
      const values = () =>
        headings.map((heading) => {
          const {columns} = workbook.document.sheets[first.sheet]!
          return workbook.valueAt({...first, col: columns.findIndex((one) => one.heading === heading)})
        })
      expect(values().filter(isFault), name).toEqual([])
      enter(workbook, [at("Named values", name, "Value"), null])
      expect(values().every(isFault), name).toBe(true)
    }
  })

  it("finds the price of a week in whatever order the weeks stand, and takes no blank for 0", () => {
    const {workbook, at, cellOf} = changed()
    const prices = () => [
      cellOf("Season plan", "Well Field", "One more day"),
      ...["Long Acre", "Well Field"].map((planting) => cellOf("This week", planting, "Price")),
    ]
    const was = prices()
    expect(was.filter(isFault)).toEqual([])
    const first = at("Prices", 1, "Week from opening")
    const {rows} = workbook.document.sheets[first.sheet]!
    for (const [row, contents] of rows.toReversed().entries())
      enter(workbook, ...[0, 1].map((col): [CellAddress, Content] => [{...first, row, col}, contents[col]!]))
    expect(prices()).toEqual(was)
    // As of 25 May Well Field, open since 27 April, is in its week 5: without a price, week 4's 3.15 holds.
    enter(workbook, [at("Prices", 5, "Price"), null])
    expect(cellOf("This week", "Well Field", "Price")).toBe(3.15)
  })

  it("has a row for every week and day of a season as long as a mild coast's", () => {
    const {workbook, at} = changed()
    const sixteen = at("Yield by age", 0, "Weeks allowed") // the most that the column takes
    for (const age of [5, 7, 9, 14]) enter(workbook, [{...sixteen, row: age}, 16])
    for (const name of ["Last_date", "Crew_last"])
      enter(workbook, [at("Named values", name, "Value"), "2026-08-31"])
    for (const planting of ["North Bench", "Long Acre", "Sand Piece", "Well Field"])
      enter(workbook, [at("Season plan", planting, "Close"), "2026-08-15"])
    const sum = (sheet: string, heading: string) => {
      const {col, sheet: index} = at(
        sheet,
        workbook.document.sheets[sheetOf(workbook.document, sheet)]!.rows[0]![0]!,
        heading,
      )
      return Number(workbook.evaluate(workbook.document.sheets[index]!.columns[col]!.total!, index))
    }
    expect(sum("Week plan", "Crop")).toBeCloseTo(sum("Picking plan", "Crop at this pace"), 3)
    const days = at("Days of cutting", "=", "Day")
    const held = workbook.document.sheets[days.sheet]!.rows.map((_, row) => workbook.valueAt({...days, row}))
    expect(held).toContain(day("2026-08-15"))
  })

  it("needs no truck to count crates", () => {
    const {workbook, at} = changed()
    const {sheet, col} = at("Crew and cooler", "=", "Loads")
    for (const crates of [0, null]) {
      enter(workbook, [at("Named values", "Truck_crates", "Value"), crates])
      expect(workbook.valueAt({sheet, row: 4, col})).toBe("")
      expect(workbook.valueAt({sheet, row: 4, col: col - 1})).toBeGreaterThan(100)
    }
  })

  it("has the cutters of a day from the latest row before it, in whatever order they stand", () => {
    const {workbook, at} = changed()
    const cutters = at("Cutters", "2026-04-20", "From")
    const {rows} = workbook.document.sheets[cutters.sheet]!
    const days = at("Days of cutting", "=", "Booked")
    const booked = () => Array.from({length: 60}, (_, i) => workbook.valueAt({...days, row: i}))
    const was = booked()
    expect(new Set(was).size).toBe(2)
    for (const [i, contents] of rows.toReversed().entries())
      enter(
        workbook,
        ...[0, 1].map((col): [CellAddress, Content] => [{...cutters, row: i, col}, contents[col]!]),
      )
    expect(booked()).toEqual(was)
    for (const row of rows.keys()) enter(workbook, [{...cutters, row, col: 1}, null])
    expect(booked().every(isFault)).toBe(true) // not typed is not nobody
  })

  it("says what to do with a planting whose area or whose prices are not typed", () => {
    const {workbook, at, cellOf} = changed()
    enter(workbook, [at("Plantings", "Well Field", "Area"), null])
    expect(cellOf("This week", "Well Field", "What to do")).toBeTypeOf("string")
    const low = at("Week plan", "=", "Low")
    expect(workbook.valueAt({...low, row: 4})).toBeGreaterThan(0) // of the other plantings
    enter(workbook, [at("Plantings", "Well Field", "Area"), 7.2])
    const prices = at("Prices", 1, "Price")
    workbook.revise({
      type: "removeRows",
      sheet: prices.sheet,
      first: 0,
      count: workbook.document.sheets[prices.sheet]!.rows.length,
    })
    for (const planting of ["Long Acre", "Well Field"])
      expect(cellOf("This week", planting, "What to do")).toBeTypeOf("string")
  })
})
