import {describe, expect, it} from "vitest"
import {findingsByStep} from "../../src/editor/checks"
import {toTheEnd} from "../../src/workbook/checks/checks"
import {isTypedOver, type CellAddress} from "../../src/workbook/document"
import {originOf} from "../../src/workbook/trace"
import {isFault} from "../../src/workbook/value"
import {openFarm} from "./farm"

describe("every number of the lender's copy", () => {
  it("leads to typed inputs in steps that each say what they use (LE7)", () => {
    const {workbook, at, sheets} = openFarm()
    const used = (from: CellAddress) => originOf(workbook, from).inputs.flatMap(({cells}) => cells)
    const headings = (cells: readonly CellAddress[]) =>
      cells.map(({sheet, col}) => `${sheets[sheet]!.name}, ${sheets[sheet]!.columns[col]!.heading}`)
    const cover = used(at("Cash and debt", 1, "Cover"))
    expect(headings(cover)).toEqual(
      expect.arrayContaining([
        "Cash and debt, Capacity",
        "Cash and debt, Interest",
        "Cash and debt, Principal",
      ]),
    )
    const interest = used(at("Cash and debt", 1, "Interest"))
    expect(headings(interest)).toContain("Debt by year, Interest")
    const first = interest.find(({sheet}) => sheets[sheet]!.name === "Debt by year")!
    const loan = used(at("Debt by year", first.row, "Interest"))
    expect(headings(loan)).toEqual(expect.arrayContaining(["Loans, Money", "Loans, Rate", "Loans, Years"]))
  })

  it("that is typed over is marked, with what its formula gives beside it (LE8)", () => {
    const {workbook, at, enter} = openFarm()
    const cover = at("Cash and debt", 1, "Cover")
    const own = workbook.valueAt(cover) as number
    enter([cover, 1.3])
    expect(isTypedOver(workbook.document, cover)).toBe(true)
    const found = toTheEnd(findingsByStep(workbook)).filter(({rule}) => rule === "typed over")
    expect(found.map(({sentence}) => sentence)).toEqual([
      `Cover of 2027 is typed over: 1.30 stands there, its formula gives ${own.toFixed(2)}`,
    ])
  })

  it("stays an answer when there are no loans and no balance sheet", () => {
    const {workbook, sheets, sheetOf} = openFarm()
    for (const name of ["Loans", "Balance sheet"]) {
      const sheet = sheetOf(name)
      workbook.revise({type: "removeRows", sheet, first: 0, count: sheets[sheet]!.rows.length})
    }
    const faults = [
      "Lender's page",
      "Cash and debt",
      "Cash by month",
      "Stress",
      "Stress by year",
      "Measures",
    ].flatMap((name) => {
      const sheet = sheetOf(name)
      return sheets[sheet]!.rows.flatMap((_, row) =>
        sheets[sheet]!.columns.flatMap(({heading}, col) =>
          isFault(workbook.valueAt({sheet, row, col})) ? [`${name}, ${heading}`] : [],
        ),
      )
    })
    expect([...new Set(faults)]).toEqual([])
  })

  it("is not known for the years to come while no crop is on record", () => {
    const {workbook, sheets, sheetOf, values} = openFarm()
    const sheet = sheetOf("Records")
    workbook.revise({type: "removeRows", sheet, first: 0, count: sheets[sheet]!.rows.length})
    expect(values("Cash and debt", "Crop").map(isFault)).toEqual([false, ...Array(9).fill(true)])
  })
})
