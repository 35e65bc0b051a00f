import {describe, expect, it} from "vitest"
import type {CellAddress, Content} from "../../src/workbook/document"
import {isFault} from "../../src/workbook/value"
import {changed, sheetOf, enter, day} from "./shipped"

describe("a change in hollow-brook-farm.json", () => {
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

  it("does not know how many plants are left of an older count without Plant_loss", () => {
    const {workbook, at, cellOf} = changed()
    enter(
      workbook,
      [at("Plantings", "North Bench", "Counted"), "2024-03-10"],
      [at("Plantings", "Long Acre", "Counted"), "2026-03-10"],
    )
    expect(cellOf("Plantings", "North Bench", "Alive this season")).toBeCloseTo(13600 * 0.98 ** 2, 6)
    enter(workbook, [at("Named values", "Plant_loss", "Value"), null])
    expect(cellOf("Plantings", "North Bench", "Alive this season")).toMatchObject({code: "#N/A"})
    expect(cellOf("Plantings", "Long Acre", "Alive this season")).toBe(18400) // counted this season
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

  it("cuts no weeks of a planting that was closed before it opened", () => {
    const {workbook, at, cellOf} = changed()
    enter(workbook, [at("Plantings", "Well Field", "Closed"), "2026-04-02"]) // it opens on 27 April
    const plan = (heading: string) => cellOf("Season plan", "Well Field", heading)
    expect([plan("Weeks"), plan("Crop"), plan("Pickings")]).toEqual([0, 0, 0])
    expect(isFault(plan("One more day"))).toBe(false)
  })

  it("does not close a planting that has no opening day", () => {
    const {workbook, at, cellOf} = changed()
    enter(workbook, [at("Season plan", "Well Field", "Open"), null])
    expect(cellOf("Season plan", "Well Field", "Close")).toBe("not cut")
    expect(cellOf("Season plan", "Well Field", "Held by")).toBe("no opening date")
    expect(cellOf("Season plan", "Well Field", "Crop")).toBe(0)
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

  it("counts the crop of every planting once there are more than ten", () => {
    const {workbook, at, cellOf, check} = changed()
    const {sheet, row} = at("Plantings", "Sand Piece", "Planting")
    const ground = workbook.document.sheets[sheet]!.rows[row]!
    const open = at("Season plan", "Sand Piece", "Open")
    const added = Array.from({length: 8}, (_, i) => `Far Field ${i + 1}`)
    const put = (name: string, row: number, col: number, content: Content): [CellAddress, Content] => [
      {sheet: sheetOf(workbook.document, name), row, col},
      content,
    ]
    enter(
      workbook,
      ...added.flatMap((name, i) => [
        ...ground.map((content, col) => put("Plantings", 6 + i, col, col ? content : name)),
        ...["Season plan", "Crowns", "Expected crop", "Picking plan"].map((each) =>
          put(each, 6 + i, 0, name),
        ),
        put("Season plan", 6 + i, open.col, "2026-04-24"),
        ...[0, 1].map((col) => put("Stands ahead", 7 + i, col, name)),
      ]),
    )
    const sum = (range: string) => workbook.evaluate(`=SUM(${range})`, 0) as number
    expect(cellOf("Season plan", added[7]!, "Crop")).toBeGreaterThan(10)
    expect(sum("'Sales by week'!E:E")).toBeCloseTo(sum("'Season plan'!K:K") * 1000, 6)
    expect(workbook.evaluate("=SUMIFS('Crop by year'!I:I,'Crop by year'!D:D,Season)", 0)).toBeCloseTo(
      sum("'Season plan'!K:K"),
      9,
    )
    expect(check("Rows past the end of the yearly sheets")).toEqual([0, "none"])
    expect(check("Cut plantings past the end of Sales by week")).toEqual([0, "none"])
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
