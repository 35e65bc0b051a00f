import {describe, expect, it} from "vitest"
import {addPlanting} from "../../src/editor/commands/plantings"
import {createStore} from "../../src/editor/store"
import {crownsOf} from "../../src/workbook/crowns"
import type {CellAddress, Content, Document} from "../../src/workbook/document"
import {planOf} from "../../src/workbook/plan"
import {isFault} from "../../src/workbook/value"
import {day, documentIn, enter, open, sheetOf, valueOf} from "./shipped"

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

  it("says of each limit that nothing is known of that it is not known yet, and counts it", () => {
    const {run, workbook} = createStore(documentIn("blank.json"))
    run(addPlanting({name: "First Field", planted: "2020-04-10", area: 2, opens: "2026-04-20"}, null))
    const limits = planOf(workbook)!.rows[0]!.limits
    expect(limits.map(({name, day}) => [name, day])).toEqual([
      ["weeks for its age", day("2026-06-14")], // eight weeks from 20 April
      ["reserve", null],
      ["fern days", null],
      ["spear size", null],
      ["price", null],
      ["crew", null],
      ["last date", null],
    ])
    expect(valueOf(workbook, "Season plan", "First Field", "crew")).toMatchObject({code: "#N/A"})
    expect(valueOf(workbook, "Season plan", "First Field", "last date")).toMatchObject({code: "#N/A"})
    expect(valueOf(workbook, "Checks", "Limits not known yet", "To look at")).toBe(
      "weeks 0, reserve 1, fern days 1, spear size 1, price 1, crew 1, last date 1",
    )
  })

  it("says where to look while its weather is not typed yet", () => {
    expect(crownsOf(open("blank.json"))).toMatchObject({
      refused:
        "Weather by day does not know its whole year yet: Where from of one of its days leads to what is missing",
    })
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
