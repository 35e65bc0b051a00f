import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {movesApart} from "../../src/studies/movesApart"
import {readFile} from "../../src/workbook/file"
import {pickedOn} from "../../src/workbook/pickingPlan"
import {rowsOf} from "../../src/workbook/season"
import {namesIn} from "../../src/workbook/names"
import {Workbook} from "../../src/workbook/workbook"

const read = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
)
if ("refused" in read) throw new Error(read.refused)
const farm = read.document
const workbook = new Workbook(farm)
const asOf = dayOf("2026-05-25")!

describe("the plantings picked on a day", () => {
  it("add up to what the sheet of days plans, day by day", () => {
    expect(compared(workbook)).toBeGreaterThan(30)
  })

  it("leave out one that waits after spraying, as the sheet of days does", () => {
    const waits = farm.sheets.findIndex(({name}) => name === "Spray waits")
    const sprayed = new Workbook(farm)
    const cells = ["Well Field", "any", "2026-05-28", 9].map((content, col) => ({
      at: {sheet: waits, row: 0, col},
      content,
    }))
    sprayed.revise({type: "enter", cells})
    const days = Array.from({length: 12}, (_, i) => dayOf("2026-05-26")! + i)
    const picked = (of: Workbook) =>
      days.filter((day) => pickedOn(of, day).some(({planting}) => planting === "Well Field"))
    const [from, until] = [dayOf("2026-05-28")!, dayOf("2026-06-06")!]
    expect(picked(workbook).some((day) => from <= day && day < until)).toBe(true)
    expect(picked(sprayed).some((day) => from <= day && day < until)).toBe(false)
    expect(picked(sprayed)).toContain(until)
    expect(compared(sprayed)).toBeGreaterThan(30)
  })

  /** Compares both for each day, and says how many have a picking. */
  function compared(of: Workbook) {
    const days = farm.sheets.findIndex(({name}) => name === "Days of cutting")
    const {columns, rows} = farm.sheets[days]!
    const col = columns.findIndex(({heading}) => heading === "Planned")
    let count = 0
    for (const row of rows.keys()) {
      const day = of.valueAt({sheet: days, row, col: 0})
      if (typeof day !== "number") continue
      const sum = pickedOn(of, day).reduce((kg, one) => kg + one.kg, 0)
      expect(sum).toBeCloseTo(Number(of.valueAt({sheet: days, row, col})), 6)
      if (sum > 0) count++
    }
    return count
  }
})

describe("moving plantings apart", () => {
  const before = JSON.stringify(farm)
  const found = movesApart(farm)!

  it("finds the worst day to come and who is picked on it", () => {
    const worst = rowsOf(workbook, "cutting day")
      .map((row) => ({day: row.number("cutting day") ?? 0, short: row.number("day short") ?? 0}))
      .filter(({day}) => day >= asOf)
      .toSorted((a, b) => b.short - a.short || a.day - b.day)[0]!
    expect(found.day).toBe(worst.day)
    expect(found.asPlanned).toMatchObject({short: worst.short, shortOn: worst.day})
    expect(found.together.length).toBeGreaterThan(1)
    const weights = found.together.map(({kg}) => kg)
    expect(weights).toEqual(weights.toSorted((a, b) => b - a)) // the heaviest are moved first
    expect(JSON.stringify(farm)).toBe(before)
  })

  it("tells for every move what the sheets give when its date is typed", () => {
    expect(found.moves.length).toBeGreaterThan(1)
    const tried = new Workbook(farm)
    for (const {planting, what, to, at, short, over, crop} of found.moves) {
      tried.show(farm)
      const plan = farm.sheets.findIndex(({name}) => name === "Season plan")
      const row = farm.sheets[plan]!.rows.findIndex(([name]) => name === planting)
      const col = farm.sheets[plan]!.columns.findIndex(({part}) => part === what)
      expect(at).toEqual({sheet: plan, row, col})
      tried.revise({type: "enter", cells: [{at, content: to}]})
      const days = rowsOf(tried, "cutting day").filter((one) => (one.number("cutting day") ?? 0) >= asOf)
      const most = (part: "day short" | "day over") => Math.max(...days.map((one) => one.number(part) ?? 0))
      expect([short, over]).toEqual([most("day short"), most("day over")])
      const tonnes = rowsOf(tried, "close").reduce((sum, one) => sum + (one.number("crop") ?? 0), 0)
      expect(crop).toBeCloseTo(tonnes * 1000, 6)
    }
    const needs = found.moves.map(({short}) => short!)
    expect(needs).toEqual(needs.toSorted((a, b) => a - b))
  }, 60_000)

  it("moves the opening of a planting that is not begun, and never to a day that has passed", () => {
    const early = new Workbook(farm)
    const at = namesIn(farm).find(({name}) => name === "As_of")!.at
    early.revise({type: "enter", cells: [{at, content: "2026-04-24"}]})
    const ahead = movesApart(early.document)!
    const opens = ahead.moves.filter(({what}) => what === "open")
    expect(opens.length).toBeGreaterThan(0)
    for (const {was, to, what} of ahead.moves) {
      expect(to).toBeGreaterThanOrEqual(dayOf("2026-04-24")!)
      expect(to).not.toBe(was)
      if (what === "close") expect(to).toBeLessThan(was)
    }
  }, 60_000)

  it("moves no close to yesterday where the worst day is the day on which the plan stands", () => {
    const today = new Workbook(farm)
    const at = namesIn(farm).find(({name}) => name === "As_of")!.at
    today.revise({type: "enter", cells: [{at, content: "2026-06-07"}]})
    const {day, moves} = movesApart(today.document)!
    expect(day).toBe(dayOf("2026-06-07"))
    expect(moves.length).toBeGreaterThan(0)
    for (const {to} of moves) expect(to).toBeGreaterThanOrEqual(day)
  }, 60_000)

  it("does not take cutters that nobody booked for enough", () => {
    const unbooked = new Workbook(farm)
    const sheet = farm.sheets.findIndex(({name}) => name === "Cutters")
    const cells = farm.sheets[sheet]!.rows.map((_, row) => ({at: {sheet, row, col: 1}, content: null}))
    unbooked.revise({type: "enter", cells})
    const {asPlanned, moves} = movesApart(unbooked.document)! // of its cold alone
    expect([asPlanned.short, asPlanned.shortOn]).toEqual([null, null])
    expect(asPlanned.over).toBeGreaterThan(0)
    expect(new Set(moves.map(({short}) => short))).toEqual(new Set([null]))
  }, 60_000)

  it("has nothing to move where no day is short", () => {
    const calm = new Workbook(farm)
    const cells = (["Fitted_load", "Pick_rate", "Walk_area"] as const).map((one) => ({
      at: namesIn(farm).find(({name}) => name === one)!.at,
      content: 900,
    }))
    calm.revise({type: "enter", cells})
    expect(movesApart(calm.document)).toBeNull()
  }, 60_000)
})
