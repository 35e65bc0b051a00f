import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import type {Content, Document} from "../../src/workbook/document"
import {planOf, planSheet, type Plan} from "../../src/workbook/plan"
import {Workbook} from "../../src/workbook/workbook"
import {cellAt, column, documentOf, sheet} from "./documents"

const day = (text: string) => dayOf(`2026-${text}`)!

const COLUMNS = [
  column("Planting", {part: "planting"}),
  column("Age", {part: "age"}),
  column("Open", {part: "open"}),
  column("Close", {part: "close"}),
  column("Held by", {part: "held by"}),
  column("Crop", {part: "crop", unit: "t"}),
  column("Lowest", {part: "crop low", unit: "kg"}),
  column("Reserve", {part: "limit"}),
  column("Crew", {part: "limit"}),
  "Note",
]

/** A workbook whose second sheet is the season plan, and whose third names the day on which it stands. */
function farm(rows: Content[][], asOf: Content = "2026-04-25", columns = COLUMNS): Document {
  const first = sheet("Plantings", ["Planting"], [["Long Acre"]])
  const names = sheet("Season", ["Name", "Value"], [["As_of", asOf]], {names: true})
  return documentOf(first, sheet("Season plan", columns, rows), names)
}

function planFrom(document: Document): Plan {
  const workbook = new Workbook(document)
  const plan = planOf(workbook)
  if (!plan) throw new Error("no sheet has a close")
  return plan
}

const longAcre = ["Long Acre", 5, "2026-04-27", "2026-04-30", "reserve", 0.4, 300, "2026-04-30", "2026-05-09"]
const wellField = ["Well Field", 2, "2026-04-29", "2026-05-02", "crew", "=0.8", 700, "=NA()", "=C2+3"]

describe("planSheet", () => {
  it("is the first sheet with a close, wherever it stands", () => {
    expect(planSheet(farm([]))).toBe(1)
    expect(planSheet(documentOf(sheet("Beds", [column("Open", {part: "open"})], [])))).toBe(-1)
  })
})

describe("planOf", () => {
  it("is null for a workbook without a season plan", () => {
    expect(planOf(new Workbook(documentOf(sheet("Beds", ["Bed"], [["Long Acre"]]))))).toBeNull()
  })

  it("reads each part of a row, dates as days, and where it stands", () => {
    const {sheet: index, rows} = planFrom(farm([longAcre]))
    expect(index).toBe(1)
    expect(rows).toHaveLength(1)
    expect(rows[0]).toMatchObject({
      row: 0,
      planting: "Long Acre",
      age: 5,
      opens: day("04-27"),
      closes: day("04-30"),
      heldBy: "reserve",
      cropLow: 300,
    })
    expect(rows[0]!.cells).toMatchObject({
      planting: cellAt("1!A1"),
      close: cellAt("1!D1"),
      crop: cellAt("1!F1"),
    })
    expect(rows[0]!.cells).not.toHaveProperty("limit")
  })

  it("gives a part that has no column, or no number, as null", () => {
    const [first, second] = planFrom(farm([longAcre, ["Bush Block", "?", null, "=NA()", null, "=1/0"]])).rows
    expect(first).toMatchObject({slack: null, weeks: null, cropHigh: null})
    expect(second).toMatchObject({
      age: null,
      opens: null,
      closes: null,
      heldBy: "",
      crop: null,
      cropLow: null,
    })
  })

  it("knows what somebody closed: a planting with a day of its end on the sheet of plantings", () => {
    const plan = farm([longAcre, wellField])
    const plantings = sheet(
      "Plantings",
      [column("Planting", {part: "name of planting"}), column("Closed", {format: "date", part: "closed"})],
      [
        ["Long Acre", null],
        ["Well Field", "2026-05-01"],
      ],
    )
    const {rows} = planFrom(documentOf(plantings, ...plan.sheets.slice(1)))
    expect(rows.map(({isClosed}) => isClosed)).toEqual([false, true])
  })

  it("gives crops in kg, from a column in tonnes too", () => {
    // 0.4 t and 0.8 t; the lowest stands in kg already
    expect(planFrom(farm([longAcre, wellField])).rows.map(({crop, cropLow}) => [crop, cropLow])).toEqual([
      [400, 300],
      [800, 700],
    ])
  })

  it("names each limit by its heading, in the order of the columns, unknown ones with no day and why", () => {
    const [, {limits}] = planFrom(farm([longAcre, wellField])).rows as [unknown, Plan["rows"][number]]
    // C2 is 29 April: three days later is 2 May.
    expect(limits).toMatchObject([
      {name: "Reserve", day: null, why: {code: "#N/A"}, at: cellAt("1!H2")},
      {name: "Crew", day: day("05-02"), at: cellAt("1!I2")},
    ])
  })

  it("leaves out rows without a planting and keeps the row numbers of the others", () => {
    const {rows} = planFrom(farm([[null, 3, "2026-04-27"], longAcre, [], ["=A2"], [7]]))
    expect(rows.map(({row, planting}) => [row, planting])).toEqual([
      [1, "Long Acre"],
      [3, "Long Acre"],
      [4, "7"],
    ])
  })

  it("takes the day on which it stands from As_of, in any case of its letters", () => {
    expect(planFrom(farm([longAcre])).asOf).toBe(day("04-25"))
    expect(planFrom(farm([longAcre], "=DATE(2026,4,26)")).asOf).toBe(day("04-26"))
    expect(planFrom(farm([longAcre], null)).asOf).toBeNull()
    const named = farm([longAcre])
    const renamed = named.sheets.with(2, {...named.sheets[2]!, rows: [["as_of", "2026-04-25"]]})
    expect(planFrom({...named, sheets: renamed}).asOf).toBe(day("04-25"))
  })
})

describe("the crop by day", () => {
  it("spreads each planting's crop evenly from opening to close, both counted, and adds them up", () => {
    // Long Acre: 400 kg over 27 to 30 April, 100 a day. Well Field: 800 kg over 29 April to 2 May, 200 a day.
    expect(planFrom(farm([wellField, longAcre])).daily.map(({day, kg}) => [day, Math.round(kg)])).toEqual([
      [day("04-27"), 100],
      [day("04-28"), 100],
      [day("04-29"), 300],
      [day("04-30"), 300],
      [day("05-01"), 200],
      [day("05-02"), 200],
    ])
  })

  it("adds up to the crop of all plantings that are cut", () => {
    const rows = [longAcre, wellField, ["One Day", 9, "2026-05-01", "2026-05-01", "crew", 0.03]]
    const {daily} = planFrom(farm(rows))
    expect(daily.reduce((sum, {kg}) => sum + kg, 0)).toBeCloseTo(400 + 800 + 30, 9)
  })

  it.each([
    ["no opening", [null, "2026-04-30"], 0.4],
    ["no close", ["2026-04-27", null], 0.4],
    ["no crop", ["2026-04-27", "2026-04-30"], null],
    ["a close before its opening", ["2026-04-30", "2026-04-27"], 0.4],
  ])("leaves out a planting with %s", (_, [opens, closes], crop) => {
    const {rows, daily} = planFrom(farm([["Long Acre", 5, opens!, closes!, null, crop]]))
    expect(rows).toHaveLength(1)
    expect(daily).toEqual([])
  })
})
