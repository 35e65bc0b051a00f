import {readdirSync, readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {dayOf} from "../functions/calendar"
import type {CropValue} from "../functions/cropValue"
import {cropValues} from "../functions/cropValues"
import {sources} from "../functions/sources"
import type {CellAddress, Content, Document} from "../src/workbook/document"
import {readFile, writeFile} from "../src/workbook/file"
import {tokens} from "../src/workbook/formula"
import {planOf} from "../src/workbook/plan"
import {originOf} from "../src/workbook/trace"
import {isFault, type Value} from "../src/workbook/value"
import {namesIn, Workbook} from "../src/workbook/workbook"

const folder = new URL("../workbooks/", import.meta.url)
const files = readdirSync(folder).filter((name) => name.endsWith(".json"))
const textOf = (file: string) => readFileSync(new URL(file, folder), "utf8")

function documentIn(file: string): Document {
  const reading = readFile(textOf(file))
  if ("refused" in reading) throw new Error(`${file}: ${reading.refused}`)
  return reading.document
}

const open = (file: string) => new Workbook(documentIn(file))

const sheetOf = ({sheets}: Document, name: string) => sheets.findIndex((sheet) => sheet.name === name)

/** The cell of a sheet in the row that begins with `key` (or of that number) under a heading. */
function place({sheets, ...rest}: Document, name: string, key: Content, heading: string): CellAddress {
  const sheet = sheetOf({sheets, ...rest}, name)
  const {columns, rows} = sheets[sheet]!
  const row = rows.findIndex(([first]) => first === key)
  const col = columns.findIndex((column) => column.heading === heading)
  if (row < 0 || col < 0) throw new RangeError(`${name} has no ${key} or no ${heading}`)
  return {sheet, row, col}
}

const valueOf = (workbook: Workbook, sheet: string, key: Content, heading: string): Value =>
  workbook.valueAt(place(workbook.document, sheet, key, heading))

const enter = (workbook: Workbook, ...cells: [at: CellAddress, content: Content][]) =>
  workbook.revise({type: "enter", cells: cells.map(([at, content]) => ({at, content}))})

const day = (iso: string) => dayOf(iso)!

/** What stays without an answer in a shipped workbook, by sheet, row and columns, and why. */
const UNANSWERED: Record<string, {why: string; sheet: string; rows: string[]; columns: string[]}[]> = {
  "blank.json": [],
  "hollow-brook-farm.json": [
    {
      why: "only Sand Piece has been measured so far: a limit without data takes no part",
      sheet: "Season plan",
      rows: ["North Bench", "Long Acre", "Well Field", "Home Strip"],
      columns: ["spear size"],
    },
    {
      why: "Top Corner is not sampled, not opened, and has no floor yet",
      sheet: "Reserve",
      rows: ["Top Corner"],
      columns: [
        "Sampled",
        "Sugar",
        "Spread",
        "Lower",
        "Upper",
        "Plants to sample",
        "Structure",
        "Reserve when sampled",
        "Opens",
        "Days to opening",
        "Soil till opening",
        "Reserve at opening",
        "Soil while cutting",
        "Draw a day",
        "Your floor",
        "Floor at close",
        "Above it",
        "Days to it",
      ],
    },
    {
      why: "the fern days of Top Corner rest on its reserve and floor",
      sheet: "Fern",
      rows: ["Top Corner"],
      columns: ["To come back to", "Your floor", "Room to refill", "Days needed", "Last close"],
    },
  ],
}

describe("every workbook in the folder", () => {
  it("is one of those that the README tells about", () => {
    const told = [...readFileSync(new URL("README.md", folder), "utf8").matchAll(/\*\*(.*?\.json)\*\*/g)]
    expect(told.map(([, file]) => file).toSorted()).toEqual(files.toSorted())
    expect(files.length).toBe(2)
  })

  it.each(files)("%s is in the form the planner saves", (file) => {
    expect(writeFile(documentIn(file))).toBe(textOf(file))
  })

  it.each(files)("%s calculates without an error but for what is not known yet", (file) => {
    const workbook = open(file)
    const faults: string[] = []
    let formulas = 0
    for (const [sheet, {name, columns, rows}] of workbook.document.sheets.entries()) {
      for (const [row, contents] of rows.entries())
        for (const [col, {heading}] of columns.entries()) {
          if (workbook.formulaAt({sheet, row, col}) !== null) formulas++
          const value = workbook.valueAt({sheet, row, col})
          if (isFault(value)) faults.push(`${name}, ${contents[0]}, ${heading}: ${value.code}`)
        }
      for (const {heading, total} of columns)
        if (total && isFault(workbook.evaluate(total, sheet))) faults.push(`${name}, total of ${heading}`)
    }
    const known = UNANSWERED[file]!.flatMap(({sheet, rows, columns}) =>
      rows.flatMap((row) => columns.map((column) => `${sheet}, ${row}, ${column}: #N/A`)),
    )
    expect(faults.toSorted()).toEqual(known.toSorted())
    expect(formulas).toBeGreaterThan(30)
  })

  it.each(files)("%s names each sheet's columns apart and says what they mean", (file) => {
    for (const {name, about, columns} of documentIn(file).sheets) {
      const headings = columns.map(({heading}) => heading)
      expect(new Set(headings).size, name).toBe(headings.length)
      expect(about, name).toBeTruthy()
      for (const {heading, kind, about} of columns)
        if (kind === "worked out") expect(about, `${name}, ${heading}`).toBeTruthy()
    }
  })

  it.each(files)("%s uses every named value, and says for each what it is and where it is from", (file) => {
    const document = documentIn(file)
    const formulas = document.sheets.flatMap(({columns, rows}) => [
      ...columns.flatMap(({formula = "", total = ""}) => [formula, total]),
      ...rows.flat().filter((content) => typeof content === "string" && content.startsWith("=")),
    ]) as string[]
    const used = new Set(
      formulas.flatMap(tokens).flatMap(({kind, text}) => (kind === "name" && text !== "TRUE" ? [text] : [])),
    )
    const {rows} = document.sheets[sheetOf(document, "Named values")]!
    expect([...used].toSorted()).toEqual(rows.map(([name]) => name).toSorted())
    expect(namesIn(document)).toHaveLength(rows.length)
    const keys = document.sheets[sheetOf(document, "Sources")]!.rows.map(([key]) => key)
    for (const [name, value, unit, what, source, tag] of rows) {
      for (const said of [unit, what, tag]) expect(said, String(name)).toBeTruthy()
      expect(value === null || value === undefined ? ["yours to type"] : keys, String(name)).toContain(source)
    }
  })

  it.each(files)("%s lists the crop values as functions/cropValues.ts has them", (file) => {
    const document = documentIn(file)
    const listed = Object.entries<CropValue>(cropValues).map(
      ([name, {value, unit, limits, label, tag, from}]) => {
        const [least = null, most = null] = [limits.min ?? limits.above, limits.max ?? limits.below]
        return [name, value, unit, least, most, label, tag, from]
      },
    )
    expect(document.sheets[sheetOf(document, "Crop values")]!.rows).toEqual(listed)
  })

  it.each(files)("%s lists the works as functions/sources.ts has them, beside the farm's own", (file) => {
    const document = documentIn(file)
    const listed = Object.entries(sources).map(([key, {work, tag}]) => [key, work, tag])
    const {rows} = document.sheets[sheetOf(document, "Sources")]!
    expect(rows.filter(([key]) => key !== "farm" && key !== "laboratory")).toEqual(listed)
  })

  it.each(files)("%s gives its limits to the close in the order of their columns", (file) => {
    const document = documentIn(file)
    const {columns} = document.sheets[sheetOf(document, "Season plan")]!
    const limits = columns.filter(({part}) => part === "limit").map(({heading}) => heading)
    const names = `{${limits.map((name) => `"${name}"`).join(",")}}`
    expect(limits).toHaveLength(7)
    for (const part of ["close", "held by", "slack"]) {
      const {formula = ""} = columns.find((column) => column.part === part)!
      const lists = formula.match(/\{[^}]*\}/g)!
      expect(new Set(lists), part).toEqual(new Set([names]))
    }
  })
})

describe("hollow-brook-farm.json", () => {
  const workbook = open("hollow-brook-farm.json")
  const cellOf = (sheet: string, key: Content, heading: string) => valueOf(workbook, sheet, key, heading)

  // Worked by hand. A tolerance is half of the last digit that the hand calculation carries.
  const dates: [planting: string, close: string, heldBy: string, slack: number][] = [
    // Price. Record at full bearing: 3420/.8574, 3010/.7716, 2780/.6945, mean 3964.2; times .6250 in 56 days: 44.24 kg/ha
    // a day. Stop price (.95 + .03 + .86·.45 + 60/44.24)/.86 = 3.17: week 3 brings 3.30, week 4 3.15. 25 April and 3
    // weeks: 15 May. Next is the age: 25 April and 8 weeks, 19 June.
    ["North Bench", "2026-05-15", "price", 35],
    // Reserve. 52 days after 25 April, see below. Next is the age, 19 June.
    ["Long Acre", "2026-06-16", "reserve", 3],
    // Spear size: the line through the four means meets 9.5 mm 34.1 days after 4 May. Next is the fern, 16 June:
    // 610 g · 18 900 · .531 = 6 122 kg/ha, less 2 300, at 58 a day 65.9 + 25, rounded up 91, + 30 = 121 days before 15 October.
    ["Sand Piece", "2026-06-07", "spear size", 9],
    // Fern days: 560 g · 19 300 · .538 = 5 815 kg/ha, less 2 100, at 58 a day 64.05 + 25, rounded up 90, + 30 = 120 days
    // before 15 October. Next is the crew, 20 June; the age allows 21 June.
    ["Well Field", "2026-06-17", "fern days", 3],
    // Two weeks at age 2, from 28 April. Next is the price: 3.00 in week 5 is the last above 2.91, so 1 June.
    ["Home Strip", "2026-05-11", "weeks for its age", 21],
  ]
  it.each(dates)("closes %s on %s, held by %s", (planting, close, heldBy, slack) => {
    expect(cellOf("Season plan", planting, "Close")).toBe(day(close))
    expect(cellOf("Season plan", planting, "Held by")).toBe(heldBy)
    expect(cellOf("Season plan", planting, "Slack")).toBe(slack)
  })

  it("does not cut the planting of last year", () => {
    const row = ["Sugar", "Close", "Held by", "Slack", "Weeks", "Yield", "Crop", "Low", "High"]
    expect(row.map((heading) => cellOf("Season plan", "Top Corner", heading))).toEqual([
      "none",
      "not cut",
      "young",
      "",
      "",
      0,
      0,
      0,
      0,
    ])
  })

  const cells: [sheet: string, key: Content, heading: string, expected: number, tolerance: number][] = [
    // Season 2026 less the planting year.
    ["Season plan", "North Bench", "Age", 14, 0],
    ["Season plan", "Top Corner", "Age", 1, 0],
    // The ten samples of Long Acre: mean 408.9, standard deviation 28.2, 80 % interval 396.6 to 421.2 (t, 9 degrees of
    // freedom: 1.383·28.2/√10 = 12.3).
    ["Reserve", "Long Acre", "Taken", 10, 0],
    ["Reserve", "Long Acre", "Used", 10, 0],
    ["Reserve", "Long Acre", "Sugar", 408.9, 1e-9],
    ["Reserve", "Long Acre", "Spread", 28.2, 0.05],
    ["Reserve", "Long Acre", "Lower", 396.6, 0.05],
    ["Reserve", "Long Acre", "Upper", 421.2, 0.05],
    // Normal quantile of 90 %: (1.645·28.2/15)² = 9.6, rounded up.
    ["Reserve", "Long Acre", "Plants to sample", 10, 0],
    // 600 g · 18 400 = 11 040 kg/ha of dry root, of which .4089 is sugar.
    ["Reserve", "Long Acre", "Structure", 6525.7, 0.05],
    ["Reserve", "Long Acre", "Reserve when sampled", 4514.3, 0.05],
    // 5 March to 25 April; soil (4.2 + 7.0)/2.
    ["Reserve", "Long Acre", "Days to opening", 51, 0],
    ["Reserve", "Long Acre", "Soil till opening", 5.6, 1e-9],
    // Upkeep .0022·2^((5.6 - 20)/10)·6525.7 = 5.291 a day, 269.9 in 51 days.
    ["Reserve", "Long Acre", "Reserve at opening", 4244.4, 0.05],
    // 90.93 kg/ha a day (below) · .20832 = 18.94, and upkeep at (7.0 + 10.6 + 14.0)/3 = 10.53 °C, 7.45.
    ["Reserve", "Long Acre", "Draw a day", 26.39, 0.005],
    // 1 600/.56; (4244.4 - 2857.1)/26.39 = 52.6 days.
    ["Reserve", "Long Acre", "Floor at close", 2857.1, 0.05],
    ["Reserve", "Long Acre", "Days to it", 52, 0],
    ["Season plan", "Long Acre", "reserve", day("2026-06-16"), 0],
    // (5 150 + 5 320 + 5 610)/3, all at full bearing; times .95 at age 9; in 56 days.
    ["Expected crop", "Long Acre", "At full bearing", 5360, 1e-9],
    ["Expected crop", "Long Acre", "Season crop", 5092, 1e-9],
    ["Expected crop", "Long Acre", "A day", 90.93, 0.005],
    ["Expected crop", "Long Acre", "Low", 63.65, 0.005],
    ["Expected crop", "Long Acre", "High", 118.21, 0.005],
    // No record: mean of the farm's twelve at full bearing, (3988.8 + 3901.0 + 4002.9 + 5150 + 5320 + 5610 + 5600 +
    // 5536.8 + 5540 + 4133.3 + 4960 + 5437.5)/12 = 4931.7; times .15.
    ["Expected crop", "Home Strip", "At full bearing", 4931.7, 0.05],
    ["Season plan", "Home Strip", "Yield", 739.8, 0.05],
    // 620 at age 2, 2 480 at age 3, 4 350 at age 4: divided by .15, .5, .8.
    ["Expected crop", "Well Field", "At full bearing", 4843.6, 0.05],
    // Limits that do not hold: 25 April and 8 weeks; 3.05 a kg in the last week is not reached by any price below.
    ["Season plan", "Long Acre", "weeks for its age", day("2026-06-19"), 0],
    // Stop price (.98 + .387 + 60/90.93)/.86 = 2.36: even the last week (2.40) pays, so the end of the sheet Prices.
    ["Season plan", "Long Acre", "Stop price", 2.357, 0.0005],
    ["Season plan", "Long Acre", "price", day("2026-07-03"), 0],
    // 25 April to 16 June: 53 days. Air (9.1 + 13.9 + 17.6)/3 = 13.53 °C: a gap of ln(30/16)/(.05·8.53) = 1.47, rounded
    // up 2 days: 52/2 and the first.
    ["Season plan", "Long Acre", "Weeks", 53 / 7, 1e-9],
    ["Season plan", "Long Acre", "Pickings", 27, 0],
    // 90.93 · 53 · 6.4 ha.
    ["Season plan", "Long Acre", "Crop", 30.84, 0.005],
    // 16 May lies in week 4: 44.24·.86·(3.15 - .98/.86 - .45) - 60.
    ["Season plan", "North Bench", "One more day", -0.63, 0.005],
    ["Fern", "Well Field", "Days needed", 120, 0],
    ["Fern", "Long Acre", "Last close", day("2026-07-01"), 0], // (4 514.3 - 1 600)/58 = 50.2 + 25, up 76, + 30 = 106 days
    ["Records", "North Bench", "At full bearing", 3420 / 0.8574, 1e-9],
    // ×.95 from age 9 to 11, ×.90 after: .95³·.9³ = .6250.
    ["Yield by age", 14, "Age factor", 0.625, 0.00005],
    ["Yield by age", 20, "Age factor", 0.95 ** 3 * 0.9 ** 9, 0.00005],
  ]
  it.each(cells)("has in %s, %s, %s: %d", (sheet, key, heading, expected, tolerance) => {
    expect(Math.abs((cellOf(sheet, key, heading) as number) - expected)).toBeLessThanOrEqual(tolerance)
  })

  it("adds up the area and the crop of the farm", () => {
    const {document} = workbook
    const sheet = sheetOf(document, "Season plan")
    const totals = document.sheets[sheet]!.columns.flatMap(({heading, total}) =>
      total ? [[heading, workbook.evaluate(total, sheet) as number] as const] : [],
    )
    // 44.24·21·4.1 + 90.93·53·6.4 + 99.27·46·5.0 + 82.17·52·7.2 + 739.8·2.3 kg; the range is three tenths either way.
    const crop = 89.95
    const expected: Record<string, number> = {Area: 28, Crop: crop, Low: 0.7 * crop, High: 1.3 * crop}
    expect(totals.map(([heading]) => heading)).toEqual(Object.keys(expected))
    for (const [heading, total] of totals) expect(total, heading).toBeCloseTo(expected[heading]!, 1)
  })

  it("leads from a close to its ten samples and the calibration in three steps", () => {
    const {document} = workbook
    const used = (at: CellAddress) => originOf(workbook, at).inputs.flatMap(({cells}) => cells)
    const holds = (found: readonly CellAddress[], at: CellAddress) =>
      expect(found).toContainEqual({sheet: at.sheet, row: at.row, col: at.col})
    const at = (sheet: string, heading: string) => place(document, sheet, "Long Acre", heading)
    holds(used(at("Season plan", "Close")), at("Season plan", "reserve"))
    holds(used(at("Season plan", "reserve")), at("Reserve", "Reserve at opening"))
    holds(used(at("Reserve", "Reserve at opening")), at("Reserve", "Sugar"))
    const found = used(at("Reserve", "Sugar"))
    const {sheet, col} = at("Root samples", "Sugar")
    const samples = found.filter((cell) => cell.sheet === sheet && cell.col === col)
    const rows = [...new Set(samples.map(({row}) => row))]
    expect(rows.map((row) => document.sheets[sheet]!.rows[row]![0])).toEqual(Array(10).fill("Long Acre"))
    for (const name of ["Sugar_slope", "Sugar_offset"])
      holds(found, place(document, "Named values", name, "Value"))
  })

  it("gives the season calendar its parts", () => {
    const plan = planOf(workbook)!
    expect(plan.asOf).toBe(day("2026-05-25"))
    expect(plan.rows.map(({planting, heldBy}) => [planting, heldBy])).toEqual([
      ...dates.map(([planting, , heldBy]) => [planting, heldBy]),
      ["Top Corner", "young"],
    ])
    for (const row of plan.rows)
      for (const part of ["age", "crop", "cropLow", "cropHigh"] as const)
        expect(row[part], `${row.planting}, ${part}`).not.toBeNull()
    const kg = plan.daily.reduce((sum, {kg}) => sum + kg, 0)
    expect(kg).toBeCloseTo(
      plan.rows.reduce((sum, {crop}) => sum + crop!, 0),
      6,
    )
    expect(plan.rows[0]!.limits.find(({name}) => name === "spear size")!.day).toBeNull()
  })

  it("has nothing in Checks but what its story leaves open", () => {
    const {document} = workbook
    const {rows} = document.sheets[sheetOf(document, "Checks")]!
    const found = rows.flatMap(([check = null]) => {
      const count = cellOf("Checks", check, "Found")
      return count === 0 ? [] : [[check, count, cellOf("Checks", check, "To look at")]]
    })
    expect(found).toEqual([
      ["Plantings without root samples", 1, "Top Corner"],
      ["Plantings cut without spear sizes", 4, "North Bench, Long Acre, Well Field, Home Strip"],
      ["Limits not known yet", 4, "weeks 0, reserve 0, fern days 0, spear size 4, price 0"],
      ["Plantings without a record", 2, "Home Strip, Top Corner"],
    ])
  })
})

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
    return {workbook, at, cellOf, check, samples}
  }

  it("leaves a blank sample out and takes a typed 0 as 0", () => {
    const {workbook, cellOf, check, samples} = changed()
    const [first, second] = samples("Long Acre", "Sugar") as [CellAddress, CellAddress]
    enter(workbook, [first, null])
    // (4 089 - 412)/9
    expect(cellOf("Reserve", "Long Acre", "Sugar")).toBeCloseTo(408.556, 3)
    expect(cellOf("Reserve", "Long Acre", "Used")).toBe(9)
    expect(check("Blank samples")).toEqual([1, "Long Acre"])
    enter(workbook, [second, 0])
    expect(cellOf("Reserve", "Long Acre", "Sugar")).toBeCloseTo((4089 - 412 - 388) / 9, 9)
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
    expect(cellOf("Reserve", "Long Acre", "Used")).toBe(10)
    expect(cellOf("Reserve", "Long Acre", "Sugar")).toBeCloseTo(385, 9)
    expect(cellOf("Reserve", "Long Acre", "Spread")).toBeCloseTo(10.541, 3)
  })

  it("moves the close with the fourth diameter", () => {
    const {workbook, at, cellOf} = changed()
    const fourth = at("Spear size", "Sand Piece", "Mean diameter")
    enter(workbook, [{...fourth, row: fourth.row + 3}, null])
    // The line through the first three meets 9.5 mm 33.8 days after 4 May.
    expect(cellOf("Season plan", "Sand Piece", "Close")).toBe(day("2026-06-06"))
  })

  it("says “you” of a close typed over and counts the days to the earliest limit", () => {
    const {workbook, at, cellOf, check} = changed()
    enter(workbook, [at("Season plan", "Long Acre", "Close"), "2026-06-18"])
    expect(cellOf("Season plan", "Long Acre", "Held by")).toBe("you")
    expect(cellOf("Season plan", "Long Acre", "Slack")).toBe(-2)
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
      // 20 February 2025 to 25 April 2026: 429 days, with 425 allowed
      ...samples("North Bench", "Sampled").map((at): [CellAddress, Content] => [at, "2025-02-20"]),
      [{...spears, row: spears.row + 3}, "2026-05-26"],
      [at("Plantings", "Home Strip", "Planting"), "Brook End"],
    )
    expect(check("Samples too old at opening")).toEqual([1, "North Bench"])
    expect(check("Spear sizes dated after the plan")).toEqual([1, "Sand Piece"])
    for (const sheet of ["Season plan", "Reserve", "Expected crop", "Fern"])
      expect(check(`Plantings missing from ${sheet}`)).toEqual([1, "Brook End"])
    expect(check("Names on Season plan that are no planting")).toEqual([1, "Home Strip"])
    enter(workbook, [at("Plantings", "Brook End", "Planting"), "Long Acre"])
    expect(check("Planting names used twice")).toEqual([1, "Long Acre, Long Acre"])
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
})

describe("blank.json", () => {
  it("has the sheets, columns and formulas of the farm, and no planting", () => {
    const shape = ({sheets}: Document) =>
      sheets.map(({name, group, columns}) => [
        name,
        group,
        columns.map(({heading, formula, total, part, kind}) => [heading, formula, total, part, kind]),
      ])
    const document = documentIn("blank.json")
    expect(shape(document)).toEqual(shape(documentIn("hollow-brook-farm.json")))
    expect(document.sheets[sheetOf(document, "Plantings")]!.rows).toEqual([])
    expect(planOf(open("blank.json"))!.rows).toEqual([])
  })

  it("finds nothing to look at while nothing is in it", () => {
    const workbook = open("blank.json")
    const sheet = sheetOf(workbook.document, "Checks")
    const counts = workbook.document.sheets[sheet]!.rows.map((_, row) =>
      workbook.valueAt({sheet, row, col: 1}),
    )
    expect(new Set(counts)).toEqual(new Set([0]))
    expect(counts).toHaveLength(18)
  })

  it("works out the farm's values once the farm's rows are typed into it", () => {
    const farm = open("hollow-brook-farm.json")
    const workbook = open("blank.json")
    for (const [sheet, {name, columns, rows}] of farm.document.sheets.entries()) {
      if (["Read me", "Checks", "Sources"].includes(name)) continue
      const missing = rows.length - workbook.document.sheets[sheet]!.rows.length
      if (missing) workbook.revise({type: "insertRows", sheet, before: 0, count: missing})
      const typed = rows.flatMap((contents, row) =>
        contents.flatMap((content, col): [CellAddress, Content][] =>
          columns[col]!.formula ? [] : [[{sheet, row, col}, content]],
        ),
      )
      enter(workbook, ...typed)
    }
    let compared = 0
    for (const [sheet, {name, columns, rows}] of farm.document.sheets.entries()) {
      if (["Read me", "Sources"].includes(name)) continue
      for (const row of rows.keys())
        for (const [col, {heading}] of columns.entries()) {
          const [was, now] = [farm, workbook].map((one) => one.valueAt({sheet, row, col}))
          const at = `${name}, ${heading}, row ${row + 1}`
          if (isFault(was)) expect(now, at).toMatchObject({code: was.code})
          else expect(now, at).toEqual(was)
          compared++
        }
    }
    expect(compared).toBeGreaterThan(1000)
  }, 30_000)
})
