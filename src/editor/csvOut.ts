import Papa from "papaparse"
import {isFault} from "../workbook/value"
import {decimalOf, regionOf} from "../workbook/region"
import {valueText} from "./clipboard"
import {measureOf} from "./measures"
import type {Store} from "./store"

/** A sheet as comma-separated text. */
export interface CsvCopy {
  readonly text: string
  /** What the decimals and the cells are parted by, for the name of the file; empty where both are the usual. */
  readonly parted: "" | "decimal-comma"
}

/**
 * A sheet as CSV (RFC 4180): headings with their units in the first line, a field for each column in every line, CRLF,
 * and a byte-order mark so that UTF-8 is known. Numbers are as they are shown, in full; where decimals take a comma,
 * fields are parted by ";". Words that another program could take for a formula begin with an apostrophe.
 */
export function csvOf(store: Store, sheet: number): CsvCopy {
  const {document} = store.getState()
  const {columns, rows} = document.sheets[sheet]!
  const region = regionOf(document)
  const headings = columns.map(({heading, unit}) =>
    guarded(headingWithUnit(heading, measureOf(unit, region).unit)),
  )
  const lines = rows.map((_, row) =>
    columns.map((_, col) => {
      const at = {sheet, row, col}
      const value = store.valueAt(at)
      const text = valueText(store, at)
      return typeof value === "string" || isFault(value) ? guarded(text) : text
    }),
  )
  const hasComma = decimalOf(document) === ","
  const text = Papa.unparse([headings, ...lines], {delimiter: hasComma ? ";" : ",", newline: "\r\n"})
  return {text: `\ufeff${text}\r\n`, parted: hasComma ? "decimal-comma" : ""}
}

/** "Area (ha)" */
export const headingWithUnit = (heading: string, unit: string) =>
  unit === "" ? heading : `${heading} (${unit})`

/** An apostrophe is doubled so that it is there again when the text is read. */
export const guarded = (text: string) => (/^[=+\-@\t\r']/.test(text) ? `'${text}` : text)

/** What was guarded, as it was. */
export const unguarded = (text: string) => text.replace(/^'(?=[=+\-@\t\r'])/, "")
