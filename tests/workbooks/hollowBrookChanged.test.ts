import {describe, expect, it} from "vitest"
import {sizeShare} from "../../functions/pack/sizeShare"
import {agreePlan} from "../../src/editor/commands/season"
import type {CellAddress, Content} from "../../src/workbook/document"
import {planOf} from "../../src/workbook/plan"
import {isFault} from "../../src/workbook/value"
import {open, sheetOf, place, valueOf, enter, day} from "./shipped"

describe("a change in hollow-brook-farm.json", () => {
  const changed = () => {
    const workbook = open("hollow-brook-farm.json")
    const at = (sheet: string, key: Content, heading: string) => place(workbook.document, sheet, key, heading)
    const cellOf = (sheet: string, key: Content, heading: string) => valueOf(workbook, sheet, key, heading)
    const check = (name: string) => [cellOf("Checks", name, "Found"), cellOf("Checks", name, "To look at")]
    const samples = (planting: string, heading: string) => {
      const first = at("Root samples", planting, heading)
      return Array.from({length: 10}, (_, i) => ({...first, row: first.row + i}))
    }
    const sampleLater = (planting: string, day: string, sugar: number) => {
      const {sheet} = at("Root samples", planting, "Sugar")
      const row = workbook.document.sheets[sheet]!.rows.length
      const put = (col: number, content: Content): [CellAddress, Content] => [{sheet, row, col}, content]
      enter(workbook, put(0, planting), put(2, day), put(4, sugar))
    }
    return {workbook, at, cellOf, check, samples, sampleLater}
  }

  it("leaves a blank sample out and takes a typed 0 as 0", () => {
    const {workbook, cellOf, check, samples} = changed()
    const [first, second] = samples("Long Acre", "Sugar") as [CellAddress, CellAddress]
    enter(workbook, [first, null])
    // (4 089 - 412)/9
    expect(cellOf("Crowns", "Long Acre", "Sugar")).toBeCloseTo(408.556, 3)
    expect(cellOf("Crowns", "Long Acre", "Used")).toBe(9)
    expect(check("Blank samples")).toEqual([1, "Long Acre"])
    enter(workbook, [second, 0])
    expect(cellOf("Crowns", "Long Acre", "Sugar")).toBeCloseTo((4089 - 412 - 388) / 9, 9)
    expect(check("Samples outside the usual range")).toEqual([1, "Long Acre"])
  })

  it("turns readings into sugar where there is no laboratory's", () => {
    const {workbook, cellOf, samples} = changed()
    enter(
      workbook,
      ...samples("Long Acre", "Sugar").map((at): [CellAddress, Content] => [at, null]),
      ...samples("Long Acre", "Reading").map((at, i): [CellAddress, Content] => [at, 18 + (i % 2)]),
    )
    // Five readings of 18 and five of 19: mean 18.5, so 15 + 20·18.5; spread 20·√(10·.25/9).
    expect(cellOf("Crowns", "Long Acre", "Used")).toBe(10)
    expect(cellOf("Crowns", "Long Acre", "Sugar")).toBeCloseTo(385, 9)
    expect(cellOf("Crowns", "Long Acre", "Spread")).toBeCloseTo(10.541, 3)
  })

  it("takes of each plant the laboratory's sugar, or else its reading", () => {
    const {workbook, cellOf, check, samples} = changed()
    const [sugars, readings] = [samples("Long Acre", "Sugar"), samples("Long Acre", "Reading")]
    enter(workbook, [sugars[8]!, null], [sugars[9]!, null], [readings[8]!, 18], [readings[0]!, 5])
    // The last two gave 420 and 376. A reading of 18 is 15 + 20·18 = 375; the first has both, and its 412 stands.
    expect(cellOf("Crowns", "Long Acre", "Taken")).toBe(10)
    expect(cellOf("Crowns", "Long Acre", "Used")).toBe(9)
    expect(cellOf("Crowns", "Long Acre", "Sugar")).toBeCloseTo((4089 - 420 - 376 + 375) / 9, 9)
    enter(workbook, [readings[9]!, 22]) // 455
    expect(cellOf("Crowns", "Long Acre", "Used")).toBe(10)
    expect(cellOf("Crowns", "Long Acre", "Sugar")).toBeCloseTo((4089 - 420 - 376 + 375 + 455) / 10, 9)
    // 412 388 455 430 367 441 402 398 375 455, in order 367 375 388 398 402 412 430 441 455 455.
    expect(cellOf("Crowns", "Long Acre", "Middle")).toBe(407)
    // Distances from 412.3: .3 24.3 42.7 17.7 45.3 28.7 10.3 14.3 37.3 42.7; their squares add up to 9 128.1.
    expect(cellOf("Crowns", "Long Acre", "Spread")).toBeCloseTo(Math.sqrt(9128.1 / 9), 9)
    expect(check("Blank samples")).toEqual([0, "none"])
  })

  it("leaves a reading out, and says so, while there is no calibration", () => {
    const {workbook, at, cellOf, check, samples} = changed()
    const [sugars, readings] = [samples("Long Acre", "Sugar"), samples("Long Acre", "Reading")]
    enter(
      workbook,
      [at("Named values", "Sugar_slope", "Value"), null],
      [sugars[0]!, null],
      [readings[0]!, 18],
    )
    expect(cellOf("Crowns", "Long Acre", "Used")).toBe(9)
    expect(cellOf("Crowns", "Long Acre", "Sugar")).toBeCloseTo((4089 - 412) / 9, 9)
    expect(check("Blank samples")).toEqual([1, "Long Acre"])
  })

  it("takes the samples of the last dormant time alone, and says of the others that they take no part", () => {
    const {workbook, at, cellOf} = changed()
    const first = at("Root samples", "Long Acre", "Planting")
    const rows = workbook.document.sheets[first.sheet]!.rows.length
    const before = ["Sugar", "Spread", "Lower", "Upper", "Middle", "Sampled", "Store at start"]
    const ofLongAcre = () => before.map((heading) => cellOf("Crowns", "Long Acre", heading))
    const was = ofLongAcre()
    const dug = (row: number, day: string | null, sugar: number): [CellAddress, Content][] =>
      ["Long Acre", 1, day, null, sugar].map((content, col) => [{...first, row: rows + row, col}, content])
    const countsAs = (row: number) => workbook.valueAt({...first, row: rows + row, col: 7})
    enter(workbook, ...dug(0, "2025-03-05", 150), ...dug(1, "2025-10-14", 160))
    expect([countsAs(0), countsAs(1)]).toEqual(["former", "former"])
    expect(ofLongAcre()).toEqual(was)
    expect(cellOf("Crowns", "Long Acre", "Dormant from")).toBe(day("2025-10-15"))
    expect([cellOf("Crowns", "Long Acre", "Taken"), cellOf("Crowns", "Long Acre", "Used")]).toEqual([12, 10])
    enter(workbook, ...dug(2, "2025-11-02", 430), ...dug(3, null, 440), ...dug(4, "2026-04-25", 999))
    expect([2, 3, 4].map(countsAs)).toEqual(["dormant", "dormant", "later"])
    expect(cellOf("Crowns", "Long Acre", "Sugar")).toBeCloseTo((4089 + 430 + 440) / 12, 9)
    // Before this winter's samples are in, those of the last one stand, and are too old.
    for (let row = first.row; row < first.row + 10; row++) enter(workbook, [{...first, row, col: 0}, null])
    for (const row of [2, 3, 4]) enter(workbook, [{...first, row: rows + row, col: 0}, null])
    expect([0, 1].map(countsAs)).toEqual(["dormant", "dormant"])
    expect(cellOf("Crowns", "Long Acre", "Dormant from")).toBe(day("2024-10-15"))
    expect(isFault(cellOf("Season plan", "Long Acre", "reserve"))).toBe(true)
  })

  it("says by an autumn sample whether the store has refilled", () => {
    const {workbook, at, cellOf} = changed()
    expect(cellOf("Crowns", "Long Acre", "Refilled")).toBe("")
    const row = workbook.document.sheets[at("Root samples", "Long Acre", "Sugar").sheet]!.rows.length
    const put = (col: number, content: Content): [CellAddress, Content] => [
      {sheet: at("Root samples", "Long Acre", "Sugar").sheet, row, col},
      content,
    ]
    enter(workbook, put(0, "Long Acre"), put(2, "2026-10-20"), put(4, 480))
    // A dormant sample of 408.9 on 5 March stands a little lower on 25 April: the balance, checked by itself elsewhere.
    const opening = workbook.evaluate(
      "=ROOT.SEASON(\"sugar at opening\",Crowns!O2,Crowns!P2,Weather!C:E,Crowns!M2,Crowns!M2-1,1,'Crop values'!A:B)",
      0,
    ) as number
    expect(opening).toBeGreaterThan(390)
    expect(opening).toBeLessThan(409)
    expect(cellOf("Crowns", "Long Acre", "Refilled")).toBeCloseTo(480 / opening, 9)
  })

  it("corrects a planting by its own loss of fern, not by that of the planting shown on Reserve", () => {
    const {workbook, at, cellOf, sampleLater} = changed()
    enter(workbook, [at("Plantings", "Sand Piece", "Closed"), "2026-06-07"])
    sampleLater("Sand Piece", "2026-08-20", 380)
    const store = cellOf("Crowns", "Sand Piece", "Store at start")
    // Long Acre is the planting that the sheet Reserve shows; its leaf disease is no matter of Sand Piece.
    enter(
      workbook,
      [at("Crowns", "Long Acre", "Fern loss from"), "2026-07-20"],
      [at("Crowns", "Long Acre", "Fern left"), 0.3],
    )
    expect(cellOf("Crowns", "Sand Piece", "Store at start")).toBe(store)
    enter(
      workbook,
      [at("Crowns", "Sand Piece", "Fern loss from"), "2026-07-20"],
      [at("Crowns", "Sand Piece", "Fern left"), 0.3],
    )
    expect(cellOf("Crowns", "Sand Piece", "Store at start")).toBeGreaterThan(store as number)
  })

  it("takes cutting to have ended with the pickings where a sample comes long after them", () => {
    const {workbook, at, cellOf, sampleLater} = changed()
    const until = () => cellOf("Crowns", "Sand Piece", "Cut until")
    expect(until()).toBe("")
    sampleLater("Sand Piece", "2026-05-28", 420)
    expect(until()).toBe(day("2026-05-28")) // five days after the last picking: still cutting
    sampleLater("Sand Piece", "2026-11-10", 520)
    expect(until()).toBe(day("2026-05-23")) // its last picking; no one cuts until November
    const reserve = cellOf("Season plan", "Sand Piece", "reserve")
    enter(workbook, [at("Plantings", "Sand Piece", "Closed"), "2026-05-23"])
    expect(until()).toBe(day("2026-05-23"))
    expect(cellOf("Season plan", "Sand Piece", "reserve")).toBe(reserve)
    enter(workbook, [at("Plantings", "Sand Piece", "Closed"), null])
    for (const row of workbook.document.sheets[at("Pickings", "Sand Piece", "Day").sheet]!.rows.keys())
      enter(workbook, [{...at("Pickings", "Sand Piece", "Day"), row}, null])
    expect(until()).toBe(day("2026-06-24")) // Last_date
  })

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

  it("moves the close with the fourth diameter", () => {
    const {workbook, at, cellOf} = changed()
    const fourth = at("Spear size", "Sand Piece", "Mean diameter")
    enter(workbook, [{...fourth, row: fourth.row + 3}, null])
    // The line through the first three meets 9.5 mm 33.8 days after 4 May.
    expect(cellOf("Season plan", "Sand Piece", "Close")).toBe(day("2026-06-06"))
  })

  it("closes by the share of thin spears where it is set and comes first, and counts by size alone", () => {
    const {workbook, at, cellOf} = changed()
    const share = at("Named values", "Spear_share", "Value")
    // Shares 0.15, 0.20, 0.225 and 0.325 a week apart: mean 0.225 at 10.5 days, slope 0.055/7 a day; 0.4 after
    // 10.5 + 0.175·7/0.055 = 32.8 days, on 5 June; the mean would close it on 7 June.
    enter(workbook, [share, 0.4])
    expect(cellOf("Season plan", "Sand Piece", "spear size")).toBe(day("2026-06-05"))
    enter(workbook, [share, 0.75])
    expect(cellOf("Season plan", "Sand Piece", "spear size")).toBe(day("2026-06-07"))
    // Without sizes there are no shares, and the mean stands alone; without a mean, the sizes give it.
    const first = at("Spear size", "Sand Piece", "By size")
    const rows = [0, 1, 2, 3].map((below) => first.row + below)
    enter(workbook, [share, 0.4], ...rows.map((row): [CellAddress, Content] => [{...first, row}, null]))
    expect(cellOf("Season plan", "Sand Piece", "spear size")).toBe(day("2026-06-07"))
    const mean = at("Spear size", "Sand Piece", "Mean diameter")
    enter(workbook, [{...mean, row: rows[3]!}, null], [{...mean, row: rows[3]!, col: mean.col + 1}, null])
    expect(cellOf("Season plan", "Sand Piece", "spear size")).toBe(day("2026-06-06"))
    enter(workbook, [{...first, row: rows[3]!}, "10×1 11×8 12×1"]) // 11.0 mm: a little later than with 10.9
    expect(cellOf("Season plan", "Sand Piece", "spear size")).toBe(day("2026-06-08"))
  })

  it("says “you” of a close typed over and counts the days to the earliest limit", () => {
    const {workbook, at, cellOf, check} = changed()
    enter(workbook, [at("Season plan", "Long Acre", "Close"), "2026-06-18"])
    expect(cellOf("Season plan", "Long Acre", "Held by")).toBe("you")
    expect(cellOf("Season plan", "Long Acre", "Slack")).toBe(-8)
    expect(check("Closes typed over")).toEqual([1, "Long Acre"])
    expect(cellOf("Season plan", "Long Acre", "Weeks")).toBeCloseTo(55 / 7, 9)
  })

  it("leaves a limit out that it cannot know, and never takes a blank as 0", () => {
    const {workbook, at, cellOf, check} = changed()
    enter(
      workbook,
      [at("Plantings", "Long Acre", "Reserve floor"), null],
      [at("Plantings", "Home Strip", "Area"), null],
    )
    expect(cellOf("Season plan", "Long Acre", "reserve")).toMatchObject({code: "#N/A"})
    expect(cellOf("Season plan", "Long Acre", "Held by")).toBe("weeks for its age")
    expect(check("Cut plantings without a reserve floor")).toEqual([1, "Long Acre"])
    expect(cellOf("Season plan", "Home Strip", "Crop")).toMatchObject({code: "#N/A"})
    expect(check("Plantings without an area")).toEqual([1, "Home Strip"])
  })

  it("spreads a record over the days on which it was cut, where there is no root sample", () => {
    const {workbook, at, cellOf, samples} = changed()
    enter(
      workbook,
      ...samples("Sand Piece", "Sugar").map((at): [CellAddress, Content] => [at, null]),
      ...["Opened", "Closed"].map((heading): [CellAddress, Content] => {
        const first = at("Records", "Sand Piece", heading)
        return [{...first, row: first.row + 2}, null]
      }),
    )
    // At full bearing 4 480/.8, 5 260/.95 and 5 540/1 kg/ha; without days on record in all of the 8 weeks allowed.
    const full = (4480 / 0.8 + 5260 / 0.95 + 5540) / 3
    expect(cellOf("Expected crop", "Sand Piece", "Season crop")).toBeCloseTo(full, 9)
    expect(cellOf("Expected crop", "Sand Piece", "Season days")).toBe(56)
    const stop = Number(cellOf("Season plan", "Sand Piece", "Stop price"))
    // Half of the 6, 8 and 8 weeks allowed at the ages of those years: 21, 28 and 28 days.
    const first = at("Records", "Sand Piece", "Opened")
    for (const [i, closed] of ["2023-05-14", "2024-05-21", "2025-05-21"].entries()) {
      const opened = {...first, row: first.row + i}
      enter(workbook, [opened, `${2023 + i}-04-24`], [{...opened, col: opened.col + 1}, closed])
    }
    expect(cellOf("Expected crop", "Sand Piece", "Season crop")).toBeCloseTo(full, 9)
    expect(cellOf("Expected crop", "Sand Piece", "Season days")).toBeCloseTo(28, 9)
    expect(cellOf("Expected crop", "Sand Piece", "A day")).toBeCloseTo(full / 28, 9)
    // 60 a hectare and day next year weigh half as much on a packed kg, of 0.86 of the harvest.
    expect(stop - Number(cellOf("Season plan", "Sand Piece", "Stop price"))).toBeCloseTo(
      60 / (full / 28) / 0.86,
      9,
    )
    enter(workbook, [at("Season plan", "Sand Piece", "Close"), "2026-05-20"]) // 28 days from 23 April
    expect(cellOf("Season plan", "Sand Piece", "Yield")).toBeCloseTo(full, 9)
  })

  it("takes off the plants lost since they were counted", () => {
    const {workbook, at, cellOf} = changed()
    const structure = Number(cellOf("Crowns", "North Bench", "Structure"))
    expect(cellOf("Plantings", "North Bench", "Alive this season")).toBe(13_600)
    enter(workbook, [at("Plantings", "North Bench", "Counted"), "2014-05-20"])
    // 2 % a year for twelve years leave 78.5 %: an assumption, no yearly table is published.
    expect(Number(cellOf("Plantings", "North Bench", "Alive this season")) / 13_600).toBeCloseTo(0.785, 3)
    expect(Number(cellOf("Crowns", "North Bench", "Structure")) / structure).toBeCloseTo(0.785, 3)
    enter(workbook, [at("Plantings", "North Bench", "Counted"), "2026-03-05"])
    expect(cellOf("Plantings", "North Bench", "Alive this season")).toBe(13_600)
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

  it("takes the last row of Yield by age for a planting older than it, and works the farm's money out", () => {
    const {workbook, at, cellOf} = changed()
    enter(workbook, [at("Plantings", "North Bench", "Planted"), "2003-04-18"])
    expect(cellOf("Expected crop", "North Bench", "Age")).toBe(23)
    expect(cellOf("Expected crop", "North Bench", "Age factor")).toBe(0.3322) // of age 20
    expect(cellOf("Records", "North Bench", "Age factor")).toBe(0.3322) // of 2023, at age 20
    expect(isFault(cellOf("Lender's page", "Tight year", "Text"))).toBe(false)
    expect(isFault(cellOf("Replant", "Long Acre", "Replant after"))).toBe(false)
  })

  it("does not close a planting that has no opening day", () => {
    const {workbook, at, cellOf} = changed()
    enter(workbook, [at("Season plan", "Well Field", "Open"), null])
    expect(cellOf("Season plan", "Well Field", "Close")).toBe("not cut")
    expect(cellOf("Season plan", "Well Field", "Held by")).toBe("no opening date")
    expect(cellOf("Season plan", "Well Field", "Crop")).toBe(0)
  })

  it("notices old samples, later measurements and names that do not meet", () => {
    const {workbook, at, check, samples} = changed()
    const spears = at("Spear size", "Sand Piece", "Date")
    enter(
      workbook,
      // 20 February 2025 to 25 April 2026: 429 days, with 300 allowed
      ...samples("North Bench", "Sampled").map((at): [CellAddress, Content] => [at, "2025-02-20"]),
      [{...spears, row: spears.row + 3}, "2026-05-26"],
      [at("Plantings", "Home Strip", "Planting"), "Brook End"],
    )
    expect(check("Samples too old at opening")).toEqual([1, "North Bench"])
    expect(check("Spear sizes dated after the plan")).toEqual([1, "Sand Piece"])
    for (const sheet of ["Season plan", "Crowns", "Expected crop", "Fern"])
      expect(check(`Plantings missing from ${sheet}`)).toEqual([1, "Brook End"])
    expect(check("Names on Season plan that are no planting")).toEqual([1, "Home Strip"])
    enter(workbook, [at("Plantings", "Brook End", "Planting"), "Long Acre"])
    expect(check("Planting names used twice")).toEqual([1, "Long Acre, Long Acre"])
  })

  it("does not refill a store whose fern is all lost before it is full", () => {
    const {workbook, at, cellOf, check} = changed()
    enter(
      workbook,
      [at("Season plan", "Long Acre", "Close"), "2026-06-10"],
      [at("Crowns", "Long Acre", "Fern loss from"), "2026-07-10"],
      [at("Crowns", "Long Acre", "Fern left"), 0],
    )
    // Closed on 10 June it would be full on 10 August; without green from 10 July there is no sugar to gain.
    expect(cellOf("One week more", "Long Acre", "Refill as planned")).toMatchObject({code: "#N/A"})
    expect(check("Stores that do not refill in time")).toEqual([1, "Long Acre"])
  })

  it("never drops a limit that not even a season without cutting can keep", () => {
    const {workbook, at, cellOf} = changed()
    enter(
      workbook,
      [at("Crowns", "Long Acre", "Fern loss from"), "2026-05-01"],
      [at("Crowns", "Long Acre", "Fern left"), 0],
      [at("Plantings", "Sand Piece", "Reserve floor"), 9000], // more than its store ever holds
    )
    expect(cellOf("Season plan", "Long Acre", "fern days")).toBe(day("2026-04-24"))
    expect(cellOf("Season plan", "Sand Piece", "reserve")).toBe(day("2026-04-22"))
    expect(cellOf("Season plan", "Sand Piece", "Close")).toBe(day("2026-04-22"))
    expect(cellOf("Season plan", "Sand Piece", "Held by")).toBe("reserve")
    expect(cellOf("Season plan", "Sand Piece", "Yield")).toBe(0)
  })

  it("takes a row without a name in its stride", () => {
    const {workbook, at, cellOf} = changed()
    const {sheet, row} = at("Season plan", "Sand Piece", "Close")
    workbook.revise({type: "insertRows", sheet, before: row, count: 1})
    const {columns} = workbook.document.sheets[sheet]!
    expect(columns.filter((_, col) => isFault(workbook.valueAt({sheet, row, col})))).toEqual([])
    expect(cellOf("Season plan", "Sand Piece", "Close")).toBe(day("2026-06-07"))
    for (const {heading, total} of columns)
      if (total) expect(workbook.evaluate(total, sheet), heading).toBeTypeOf("number")
  })

  it("checks as before where a row without a name stands among the others", () => {
    const {workbook} = changed()
    const checks = sheetOf(workbook.document, "Checks")
    const found = () =>
      workbook.document.sheets[checks]!.rows.flatMap((_, row) =>
        [1, 2].map((col) => workbook.valueAt({sheet: checks, row, col})),
      )
    const was = found()
    expect(was.filter(isFault)).toEqual([])
    for (const name of ["Plantings", "Season plan", "Pickings", "Crowns", "Picking plan"])
      workbook.revise({
        type: "insertRows",
        sheet: sheetOf(workbook.document, name),
        before: 2,
        count: 1,
      })
    expect(found()).toEqual(was)
  })
})
