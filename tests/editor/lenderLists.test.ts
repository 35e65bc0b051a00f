import {describe, expect, it} from "vitest"
import {lenderLists} from "../../src/editor/lenderLists"
import type {Sheet} from "../../src/workbook/document"
import {Workbook} from "../../src/workbook/workbook"

const page: Sheet = {
  name: "Page",
  group: "g",
  columns: [
    {heading: "Line", kind: "typed", format: "text", part: "page line"},
    {heading: "Text", kind: "worked out", part: "page text"},
  ],
  rows: [["What", "=SUM(Costs!C:C)"]],
}
const costs: Sheet = {
  name: "Costs",
  group: "g",
  columns: [
    {heading: "Year", kind: "typed", format: "text"},
    {heading: "Cost", kind: "typed", unit: "money", format: 0},
    {heading: "Twice", kind: "worked out", formula: "=B1*2", unit: "money", format: 0},
    {heading: "Source", kind: "typed", format: "text"},
  ],
  rows: [
    [2026, 100, "=", "bill"],
    [2027, 200, 500, null],
  ],
  extras: [{row: 1, col: 2, note: {text: "as agreed", by: "R.T.", written: "2026-05-25T10:00"}}],
}
const aside: Sheet = {...costs, name: "Aside"}
const prices: Sheet = {
  name: "Prices",
  group: "g",
  columns: [
    {heading: "Week", kind: "typed", format: 0},
    {heading: "Price", kind: "typed", format: 2},
  ],
  rows: [[1, 3.65]],
}

describe("what a reader has to know of the numbers", () => {
  const listed = (...sheets: Sheet[]) => lenderLists(new Workbook({name: "x", sheets}), 0)

  it("names each number typed over, with its formula's value and the reason noted", () => {
    expect(listed(page, costs, aside).typedOver).toMatchObject([
      {
        name: "Twice of 2027, Costs",
        typed: "500\u00a0money",
        formula: "400\u00a0money",
        note: "as agreed (R.T.)",
      },
    ])
  })

  it("names each input whose source is blank, once, on the sheets that the page rests on", () => {
    expect(listed(page, costs, aside).unsourced).toMatchObject([
      {at: {sheet: 1, row: 1}, name: "Cost of 2027, Costs", value: "200\u00a0money"},
    ])
  })

  it("names the sheets that have no column for a source", () => {
    const usesPrices = {...page, rows: [["What", "=SUM(Prices!B:B)"]]}
    expect(listed(usesPrices, costs, prices).silent).toEqual(["Prices"])
    expect(listed(page, costs, prices).silent).toEqual([])
  })
})
