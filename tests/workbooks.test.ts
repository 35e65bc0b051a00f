import {readdirSync, readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {dayOf} from "../functions/calendar"
import type {CropValue} from "../functions/cropValue"
import {cropValues} from "../functions/cropValues"
import {sources} from "../functions/sources"
import {agreePlan} from "../src/editor/commands/season"
import type {CellAddress, Content, Document} from "../src/workbook/document"
import {readFile, writeFile} from "../src/workbook/file"
import {tokens} from "../src/workbook/formula"
import {planOf} from "../src/workbook/plan"
import {originOf} from "../src/workbook/trace"
import {isFault, type Value} from "../src/workbook/value"
import {namesIn} from "../src/workbook/names"
import {Workbook} from "../src/workbook/workbook"

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

// In a workbook the end of the fern follows the date on Named values, counted from the start of the model year.
const YEAR_START = 29
const FERN_END = `=DAYS(Fern_end_date,DATE(Season,B${YEAR_START},1))+1`

/** What stays without an answer in a shipped workbook, by sheet, row and columns, and why. */
const UNANSWERED: Record<string, {why: string; sheet: string; rows: string[]; columns: string[]}[]> = {
  "blank.json": [
    {
      why: "no season is typed and no normals",
      sheet: "Weather by day",
      rows: Array.from({length: 365}, () => "="),
      columns: ["Day", "Air", "Soil", "Sun"],
    },
  ],
  "hollow-brook-farm.json": [
    {
      why: "only Sand Piece has been measured so far: a limit without data takes no part",
      sheet: "Season plan",
      rows: ["North Bench", "Long Acre", "Well Field", "Home Strip"],
      columns: ["spear size"],
    },
    {
      why: "Top Corner is not sampled, not opened, and has no floor yet",
      sheet: "Crowns",
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
        "Structure at start",
        "Store by the sample",
        "Store at start",
        "Sugar at opening",
        "Reserve at opening",
        "Your floor",
        "Draw a day",
        "Soil while cutting",
        "Floor at close",
        "Middle",
        "Floor by hand",
      ],
    },
    {
      why: "the fern days of Top Corner rest on its reserve and floor",
      sheet: "Fern",
      rows: ["Top Corner"],
      columns: ["To come back to", "Your floor", "Room to refill", "Days needed", "Last close"],
    },
    {
      why: "Top Corner is not cut",
      sheet: "One week more",
      rows: ["Top Corner"],
      columns: [
        "With one more",
        "As planned",
        "Crop now",
        "Refill as planned",
        "Refill with one more",
        "Lowest as planned",
        "Lowest with one more",
        "Next spring as planned",
        "Next spring with one more",
      ],
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
      formulas
        .flatMap((formula) => tokens(formula))
        .flatMap(({kind, text}) => (kind === "name" && text !== "TRUE" ? [text] : [])),
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
      ([name, {value, unit, limits, likely = [null, null], label, tag, from}]) => {
        const [least = null, most = null] = [limits.min ?? limits.above, limits.max ?? limits.below]
        const number = name === "Fern_end" ? FERN_END : value
        return [name, number, unit, ...likely, least, most, label, tag, from]
      },
    )
    const {rows} = document.sheets[sheetOf(document, "Crop values")]!
    expect(rows).toEqual(listed)
    expect(rows.findIndex(([name]) => name === "Year_start")).toBe(YEAR_START - 1)
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

  // What rests on the daily balance comes from a separate calculation of its equations, with the same sample, normals
  // and dates. The rest is worked by hand. A tolerance is half of the last digit given.
  const dates: [planting: string, close: string, heldBy: string, slack: number][] = [
    // Price. Season crop 2 786.9 kg/ha in 56 days: 49.77 a day. Stop price (.95 + .03 + .86·.45 + 60/49.77)/.86 = 2.99:
    // week 5 brings 3.00, week 6 2.85. 25 April and 5 weeks: 29 May. Next is the age, 25 April and 8 weeks: 19 June.
    ["North Bench", "2026-05-29", "price", 21],
    // Reserve: its lowest by the balance is 1 607 kg/ha after a close on 10 June. Next is the age, 19 June.
    ["Long Acre", "2026-06-10", "reserve", 9],
    // Spear size: the line through the four means meets 9.5 mm 34.1 days after 4 May. Next is the age, 17 June.
    ["Sand Piece", "2026-06-07", "spear size", 10],
    // Crew: the last day booked. Next is the age: 27 April and 8 weeks.
    ["Well Field", "2026-06-20", "crew", 1],
    // Two weeks at age 2, from 28 April. Next is the price: 3.15 in week 4 is not below 3.153, so 3.30 in week 3: 18 May.
    ["Home Strip", "2026-05-11", "weeks for its age", 7],
  ]
  it.each(dates)("closes %s on %s, held by %s", (planting, close, heldBy, slack) => {
    expect(cellOf("Season plan", planting, "Close")).toBe(day(close))
    expect(cellOf("Season plan", planting, "Held by")).toBe(heldBy)
    expect(cellOf("Season plan", planting, "Slack")).toBe(slack)
  })

  it("says that prices end, where the price limit is the end of the sheet Prices and not a price too low", () => {
    // Week 4 brings 3.15, above the stop price of 2.99; without later weeks the limit is its end, 25 April and 28 days.
    const short = open("hollow-brook-farm.json")
    const blanks = [5, 6, 7, 8, 9, 10].flatMap((week) => {
      const at = place(short.document, "Prices", week, "Week from opening")
      return [at, {...at, col: at.col + 1}]
    })
    expect(cellOf("Season plan", "North Bench", "One more day")).toBeTypeOf("number")
    enter(short, ...blanks.map((at): [CellAddress, Content] => [at, null]))
    const now = ["Close", "Held by", "One more day"].map((heading) =>
      valueOf(short, "Season plan", "North Bench", heading),
    )
    expect(now).toEqual([day("2026-05-22"), "price", "prices end"])
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
    ["Crowns", "Long Acre", "Taken", 10, 0],
    ["Crowns", "Long Acre", "Used", 10, 0],
    ["Crowns", "Long Acre", "Sugar", 408.9, 1e-9],
    ["Crowns", "Long Acre", "Spread", 28.2, 0.05],
    ["Crowns", "Long Acre", "Lower", 396.6, 0.05],
    ["Crowns", "Long Acre", "Upper", 421.2, 0.05],
    // Normal quantile of 90 %: (1.645·28.2/15)² = 9.6, rounded up.
    ["Crowns", "Long Acre", "Plants to sample", 10, 0],
    // 600 g · 18 400 = 11 040 kg/ha of dry root, of which .4089 is sugar.
    ["Crowns", "Long Acre", "Structure", 6525.7, 0.05],
    ["Crowns", "Long Acre", "Reserve when sampled", 4514.3, 0.05],
    ["Crowns", "Long Acre", "Days to opening", 51, 0], // 5 March to 25 April
    // Carried back over the 64 days to 1 January: 6 525.7/.99972^64, and the upkeep of each day put back.
    ["Crowns", "Long Acre", "Structure at start", 6643.76, 0.005],
    ["Crowns", "Long Acre", "Store at start", 4806.35, 0.005],
    ["Crowns", "Long Acre", "Sugar at opening", 397.93, 0.005],
    ["Crowns", "Long Acre", "Reserve at opening", 4253.1, 0.05],
    ["Season plan", "Long Acre", "reserve", day("2026-06-10"), 0],
    ["Season plan", "Long Acre", "fern days", day("2026-06-30"), 0],
    ["Season plan", "Sand Piece", "reserve", day("2026-06-23"), 0],
    ["Season plan", "Well Field", "fern days", day("2026-06-26"), 0],
    // By hand: 83.138 kg/ha a day · .20832 = 17.32, and upkeep at (7.0 + 10.6 + 14.0)/3 = 10.53 °C, 7.45.
    ["Crowns", "Long Acre", "Draw a day", 24.77, 0.005],
    ["Crowns", "Long Acre", "Floor at close", 2857.1, 0.05], // 1 600/.56
    ["Crowns", "Long Acre", "Floor by hand", day("2026-06-20"), 0], // (4 253.1 - 2 857.1)/24.77 = 56.4 days
    ["Expected crop", "Long Acre", "By the balance", 5289, 0.05],
    // Record 5 150 + 5 320 + 5 610, balance 3·6 107.2 for 24 April to 28 June: 1 + 3/5·(.8777 - 1).
    ["Expected crop", "Long Acre", "Factor", 0.9266, 0.00005],
    ["Expected crop", "Long Acre", "Ageing", 0.95, 0],
    ["Expected crop", "Long Acre", "Season crop", 4655.7, 0.05],
    ["Expected crop", "Long Acre", "A day", 83.138, 0.0005],
    ["Expected crop", "North Bench", "Factor", 1.1981, 0.00005],
    ["Expected crop", "North Bench", "Ageing", 0.625, 0.00005], // ×.95 from age 9 to 11, ×.90 after: .95³·.9³
    // Foretold from the years before: 15.0 and 13.5 % too low; 1.6 and 7.8 % too low for Well Field.
    ["Expected crop", "North Bench", "Foretold within", 0.1423, 0.00005],
    ["Expected crop", "Well Field", "Foretold within", 0.0473, 0.00005],
    ["Expected crop", "Home Strip", "Factor", 1, 0], // no record
    ["Expected crop", "Home Strip", "Season crop", 624.8, 0.05],
    // (5 150 + 5 320 + 5 610)/3, all at full bearing: what would be taken without a root sample.
    ["Expected crop", "Long Acre", "At full bearing", 5360, 1e-9],
    // No record: mean of the farm's twelve at full bearing, (3988.8 + 3901.0 + 4002.9 + 5150 + 5320 + 5610 + 5600 +
    // 5536.8 + 5540 + 4133.3 + 4960 + 5437.5)/12 = 4931.7.
    ["Expected crop", "Home Strip", "At full bearing", 4931.7, 0.05],
    // Limits that do not hold: 25 April and 8 weeks.
    ["Season plan", "Long Acre", "weeks for its age", day("2026-06-19"), 0],
    // Stop price (.98 + .387 + 60/83.138)/.86 = 2.43: week 9 brings 2.50, week 10 2.40. 25 April and 9 weeks.
    ["Season plan", "Long Acre", "Stop price", 2.429, 0.0005],
    ["Season plan", "Long Acre", "price", day("2026-06-26"), 0],
    // 25 April to 10 June: 47 days. Air (9.1 + 13.9 + 17.6)/3 = 13.53 °C: a gap of ln(30/16)/(.05·8.53) = 1.47, rounded
    // up 2 days: 46/2 and the first.
    ["Season plan", "Long Acre", "Weeks", 47 / 7, 1e-9],
    ["Season plan", "Long Acre", "Pickings", 24, 0],
    ["Season plan", "Long Acre", "Yield", 3894.8, 0.05],
    // 3 894.8 · 6.4 ha is 24.93; the frost took 80 % of what stood: the crop of two days out of 47, some 3 %.
    ["Season plan", "Long Acre", "Crop", 24.93 * (1 - (0.8 * 2) / 47), 0.2],
    // 30 May lies in week 6: 49.77·.86·(2.85 - .98/.86 - .45) - 60.
    ["Season plan", "North Bench", "One more day", -6.05, 0.05],
    // One week more from 10 to 17 June, and the year after.
    ["One week more", "Long Acre", "Crop now", 597.3, 0.05],
    ["One week more", "Long Acre", "Refill as planned", day("2026-08-10"), 0],
    ["One week more", "Long Acre", "Refill with one more", day("2026-08-21"), 0],
    ["One week more", "Long Acre", "Lowest as planned", 1607.1, 0.05],
    ["One week more", "Long Acre", "Lowest with one more", 1448.4, 0.05],
    ["One week more", "Long Acre", "Next spring as planned", 5117.3, 0.05],
    ["One week more", "Long Acre", "Next spring with one more", 4774.9, 0.05],
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
    // 1 693.7·4.1 + 3 894.8·6.4 + 4 649.2·5.0 + 5 703.6·7.2 + 624.8·2.3 kg; the range is three tenths either way.
    const crop = 97.62 - 0.75 - 0.21 // less the frost night: 24.93 · 3.0 % on Long Acre, 6.94 · 3.1 % on North Bench
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
    holds(used(at("Season plan", "reserve")), at("Crowns", "Store at start"))
    holds(used(at("Crowns", "Store at start")), at("Crowns", "Sugar"))
    const found = used(at("Crowns", "Sugar"))
    const {sheet, col} = at("Root samples", "Sugar used")
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

  it("draws the crop by day as the sheets spread it", () => {
    const {daily} = planOf(workbook)!
    const on = (day: number) =>
      workbook.evaluate(
        `=SEASON.CROP_ON(${day},'Picking plan'!B:B,'Picking plan'!C:C,'Picking plan'!D:D,'Picking plan'!E:E,'Picking plan'!F:F,'Weather by day'!C:E,'Crop values'!A:B)`,
        0,
      )
    for (const {day, kg} of daily.filter((_, i) => i % 9 === 0)) expect(kg).toBeCloseTo(on(day) as number, 6)
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
      ["Days to come short of cutters", 3, "first on 2026-05-26"], // six leave on 25 May
      ["Days to come over the cooler", 8, "first on 2026-05-26"],
      // Worked out day by day in the test of the lender's page.
      ["Months that run out of cash", 1, "lowest −17286 in May"],
      ["Loads that waited too long", 1, "Sand Piece"],
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

  it("has no year over its dates: its season is yours to type", () => {
    const units = documentIn("blank.json").sheets.flatMap(({columns}) => columns.map(({unit}) => unit))
    expect(units.filter((unit) => /^\d{4}$/.test(unit ?? ""))).toEqual([])
  })

  it("finds nothing to look at while nothing is in it", () => {
    const workbook = open("blank.json")
    const sheet = sheetOf(workbook.document, "Checks")
    const counts = workbook.document.sheets[sheet]!.rows.map((_, row) =>
      workbook.valueAt({sheet, row, col: 1}),
    )
    expect(new Set(counts)).toEqual(new Set([0]))
    expect(counts).toHaveLength(36)
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
