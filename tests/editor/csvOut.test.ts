import {describe, expect, it} from "vitest"
import {csvOf} from "../../src/editor/csvOut"
import {createStore} from "../../src/editor/store"
import {column, documentOf, sheet} from "../workbook/documents"

const storeOf = (rows: (string | number | boolean | null)[][], region = {}) =>
  createStore({
    ...documentOf(
      sheet(
        "Pickings",
        [
          column("Planting", {format: "text"}),
          column("Day", {format: "date"}),
          column("Weight", {unit: "kg", format: 1}),
          column("Double", {formula: "=C1*2", unit: "kg", format: 0}),
        ],
        rows,
      ),
    ),
    region,
  })

const linesOf = (text: string) => text.slice(1).split("\r\n")

// Shafranovich, Y. (2005). Common Format and MIME Type for Comma-Separated Values (CSV) Files. RFC 4180, IETF, section 2.
describe("csvOf", () => {
  it("writes headings with units, a line for each row, CRLF at every end, and a byte-order mark", () => {
    const {text, parted} = csvOf(storeOf([["Long Acre", "2026-04-18", 148.5, "="]]), 0)
    expect(text).toBe("\ufeffPlanting,Day,Weight (kg),Double (kg)\r\nLong Acre,2026-04-18,148.5,297\r\n")
    expect(parted).toBe("")
  })

  it("parts fields by “;” where decimals take a comma, and says so", () => {
    const {text, parted} = csvOf(storeOf([["Long Acre", null, 148.5, "="]], {decimal: ","}), 0)
    expect(linesOf(text)[1]).toBe("Long Acre;;148,5;297")
    expect(parted).toBe("decimal-comma")
  })

  it("writes numbers in the units that are shown", () => {
    const {text} = csvOf(storeOf([["Long Acre", null, 45.359237, "="]], {measures: "US"}), 0)
    // A pound is 0.45359237 kg by definition.
    expect(linesOf(text).slice(0, 2)).toEqual(["Planting,Day,Weight (lb),Double (lb)", "Long Acre,,100,200"])
  })

  it("quotes commas, quotation marks and line ends", () => {
    const {text} = csvOf(storeOf([['a, "b"\nc']]), 0)
    expect(text).toContain('"a, ""b""\nc",,,')
  })

  it.each(["+1", "-1", "@SUM(A1)", "\tx", "'tis"])("puts an apostrophe before the words %j", (words) => {
    expect(csvOf(storeOf([[words]]), 0).text).toContain(`'${words}`)
  })

  it("leaves the sign of a number, and the code of an error has no formula's sign", () => {
    const {text} = csvOf(storeOf([["x", null, -5, "=1/0"]]), 0)
    expect(linesOf(text)[1]).toBe("x,,-5,#DIV/0!")
  })
})
