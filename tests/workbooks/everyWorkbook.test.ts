import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import type {CropValue} from "../../functions/cropValue"
import {cropValues} from "../../functions/cropValues"
import {sources} from "../../functions/sources"
import {writeFile} from "../../src/workbook/file"
import {tokens} from "../../src/workbook/formula"
import {isFault} from "../../src/workbook/value"
import {namesIn} from "../../src/workbook/names"
import {folder, files, textOf, documentIn, open, sheetOf} from "./shipped"

// In a workbook the model year follows the latitude on Named values, and the end of the fern the date there, counted from
// the start of that year.
const YEAR_START = 30
const BY_SITE = new Map([
  ["Year_start", "=IF(N(Latitude)<0,7,1)"],
  ["Fern_end", `=IF(OR(Fern_end_date="",Season=""),"",DAYS(Fern_end_date,DATE(Season,B${YEAR_START},1))+1)`],
])

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
      columns: ["spear size", "mean diameter"],
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

  it.each(files)("%s has room for the year in every column of dates that shows it", (file) => {
    const dates = documentIn(file).sheets.flatMap(({name, columns}) =>
      columns.flatMap(({heading, format, width = 0}) =>
        format === "date" ? [{at: `${name}, ${heading}`, width}] : [],
      ),
    )
    expect(dates.length).toBeGreaterThan(10)
    // As measured in the browser, "24 May 2031" is cut off in a narrower column.
    expect(dates.filter(({width}) => width < 6.8)).toEqual([])
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
        const number = BY_SITE.get(name) ?? value
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
