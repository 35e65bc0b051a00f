import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {closeToFern} from "../../src/editor/commands/season"
import {nextSeason, notClosedYet, samplesLeftBehind} from "../../src/editor/nextSeason"
import {createStore} from "../../src/editor/store"
import type {Document} from "../../src/workbook/document"
import {readFile, writeFile} from "../../src/workbook/file"
import {planOf} from "../../src/workbook/plan"
import {Workbook} from "../../src/workbook/workbook"
import {documentOf, sheet} from "../workbook/documents"

const {document: farm} = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}

const rowsIn = (document: Document, name: string) => document.sheets.find((one) => one.name === name)!.rows

describe("the draft of the next season", () => {
  const store = createStore(farm)
  store.run(closeToFern("Sand Piece", "2026-06-04", "crew short"))
  const next = nextSeason(store.workbook)!

  it("puts what was really picked into the records, with the reason of the close", () => {
    const pickings = rowsIn(farm, "Pickings").filter(([name]) => name === "Sand Piece")
    const kg = pickings.reduce((sum, [, , weight]) => sum + (weight as number), 0)
    const record = rowsIn(next, "Records").find(([name, year]) => name === "Sand Piece" && year === 2026)!
    expect(record.slice(0, 6)).toEqual([
      "Sand Piece",
      2026,
      Math.round(kg / 5), // 5.0 ha
      `${pickings.length} pickings`,
      "2026-04-23",
      "2026-06-04",
    ])
    const note = farm.sheets
      .find(({name}) => name === "Records")!
      .columns.findIndex(({part}) => part === "record note")
    expect(record[note]).toBe("closed: crew short")
    expect(rowsIn(next, "Records").some(([name, year]) => name === "Top Corner" && year === 2026)).toBe(false)
  })

  it("counts pickings whose planting is written without its capitals, as the sheets do", () => {
    const sheet = farm.sheets.findIndex(({name}) => name === "Pickings")
    const small = createStore(farm)
    const cells = rowsIn(farm, "Pickings").flatMap(([name], row) =>
      name === "Well Field" ? [{at: {sheet, row, col: 0}, content: "well field"}] : [],
    )
    small.run(() => ({type: "enter", cells}))
    expect(notClosedYet(small.workbook)).toContain("Well Field")
    const records = rowsIn(nextSeason(small.workbook)!, "Records")
    expect(records.at(-2)).toEqual(rowsIn(nextSeason(createStore(farm).workbook)!, "Records").at(-2))
    expect(records.at(-2)!.slice(0, 2)).toEqual(["Well Field", 2026])
  })

  it("stands on a day of the dormant time of its own half of the world", () => {
    const south = createStore(farm)
    const values = farm.sheets.findIndex(({name}) => name === "Named values")
    const row = farm.sheets[values]!.rows.findIndex(([name]) => name === "Latitude")
    south.run(() => ({type: "enter", cells: [{at: {sheet: values, row, col: 1}, content: -40}]}))
    const named = new Map(
      rowsIn(nextSeason(south.workbook)!, "Named values").map(([name, value]) => [name, value]),
    )
    expect(named.get("As_of")).toBe("2027-07-10")
  })

  it("takes the last picking for the close where none is typed, not the plan's, and says so", () => {
    const record = rowsIn(next, "Records").find(([name, year]) => name === "Well Field" && year === 2026)!
    const days = rowsIn(farm, "Pickings").flatMap(([name, on]) => (name === "Well Field" ? [String(on)] : []))
    expect(record[5]).toBe(days.toSorted().at(-1))
    expect(record).toContain("no close typed: its last picking")
    expect(notClosedYet(store.workbook)).toMatch(
      /^North Bench, Long Acre, Well Field are not closed to fern: /,
    )
    const closing = createStore(farm)
    for (const name of ["North Bench", "Long Acre", "Sand Piece"])
      closing.run(closeToFern(name, "2026-06-04", "over"))
    expect(notClosedYet(closing.workbook)).toMatch(/^Well Field is not closed to fern: what it gave so far/)
    closing.run(closeToFern("Well Field", "2026-06-20", "")) // Home Strip is closed, Top Corner not picked
    expect(notClosedYet(closing.workbook)).toBe("")
    const closed = rowsIn(nextSeason(closing.workbook)!, "Records").at(-2)!
    expect(closed.slice(0, 6)).toEqual(["Well Field", 2026, record[2], record[3], record[4], "2026-06-20"])
  })

  it("moves openings and typed dates a year on, and the season with them", () => {
    expect(rowsIn(next, "Season plan").map((row) => row[4])).toEqual([
      "2027-04-25",
      "2027-04-25",
      "2027-04-23",
      "2027-04-27",
      "2027-04-28",
      null,
    ])
    const named = new Map(rowsIn(next, "Named values").map(([name, value]) => [name, value]))
    expect([named.get("Season"), named.get("As_of"), named.get("Last_date")]).toEqual([
      2027,
      "2027-01-10",
      "2027-06-24",
    ])
    expect(next.season).toBe("season 2027, draft")
  })

  it("leaves no note behind where the rows of the season were", () => {
    const sheet = farm.sheets.findIndex((one) => one.name === "Pickings")
    const note = {text: "wet", written: "2026-05-25T10:00:00.000Z"}
    const noted = createStore(farm)
    noted.run(() => ({type: "changeExtras", changes: [{at: {sheet, row: 3, col: 2}, note}]}))
    expect(nextSeason(noted.workbook)!.sheets[sheet]!.extras).toBeUndefined()
  })

  it("has nothing left of the season that ended, and all else", () => {
    for (const name of ["Pickings", "Spear size", "Agreed plan", "Losses", "Cutters"])
      expect(rowsIn(next, name)).toEqual([])
    expect(rowsIn(next, "Plantings").map((row) => [row[7], row[8]])).toEqual(
      Array.from({length: 6}, () => [null, null]),
    )
  })

  it("leaves the samples of the spring behind and says of which day they are", () => {
    expect(rowsIn(next, "Root samples")).toEqual([])
    expect(samplesLeftBehind(store.workbook)).toBe(
      "50 root samples of the season before, the latest of 5 Mar 2026, stayed behind: sample again while the crowns are dormant.",
    )
    const {workbook} = createStore(next)
    const plan = next.sheets.findIndex(({name}) => name === "Season plan")
    const sugar = next.sheets[plan]!.columns.findIndex(({heading}) => heading === "Sugar")
    expect(workbook.valueAt({sheet: plan, row: 1, col: sugar})).toBe("none")
    expect(samplesLeftBehind(workbook)).toBe("")
  })

  it("starts a planting that was sampled again from those samples alone", () => {
    const sampled = createStore(farm)
    const sheet = farm.sheets.findIndex(({name}) => name === "Root samples")
    const row = farm.sheets[sheet]!.rows.length
    const growing = ["Long Acre", 1, "2026-07-02", null, 190]
    const autumn = ["Long Acre", 1, "2026-11-12", null, 305]
    const cells = [growing, autumn].flatMap((contents, i) =>
      contents.map((content, col) => ({at: {sheet, row: row + i, col}, content})),
    )
    sampled.run(() => ({type: "enter", cells}))
    const after = rowsIn(nextSeason(sampled.workbook)!, "Root samples")
    expect(after.filter(([name]) => name === "Long Acre").map((one) => one[4])).toEqual([305])
    expect(after).toHaveLength(1)
  })

  it("has the new year over dates shown as a day and a month", () => {
    const years = (document: Document) =>
      new Set(
        document.sheets.flatMap(({columns}) =>
          columns.flatMap(({format, unit}) => (format === "day" ? [unit] : [])),
        ),
      )
    expect(years(farm)).toContain("2026")
    expect(years(next)).not.toContain("2026")
    expect(years(next)).toContain("2027")
  })

  it("counts typed margins and leases from a season later", () => {
    const [setback] = rowsIn(farm, "Own margins")
    expect(rowsIn(next, "Own margins")[0]!.slice(1, 13)).toEqual([...setback!.slice(2, 13), null])
    expect(rowsIn(next, "Own margins")[0]!.at(-1)).toBe("invented")
    const leases = (document: Document) =>
      rowsIn(document, "Replant").flatMap((row) => {
        const {columns} = document.sheets.find(({name}) => name === "Replant")!
        return row[columns.findIndex(({heading}) => heading === "Lease")] ?? []
      })
    expect(leases(farm)).toEqual([6])
    expect(leases(next)).toEqual([5])
  })

  it("is a whole workbook, whose plan starts from the new record", () => {
    const reading = readFile(writeFile(next))
    expect("document" in reading).toBe(true)
    const plan = planOf(new Workbook(next))!
    expect(plan.rows.map(({planting, age}) => [planting, age])).toEqual(
      planOf(store.workbook)!.rows.map(({planting, age}) => [planting, age! + 1]),
    )
  })
})

it("is none where no season is named", () =>
  expect(nextSeason(new Workbook(documentOf(sheet("Plan", ["A"], [[1]]))))).toBeNull())
