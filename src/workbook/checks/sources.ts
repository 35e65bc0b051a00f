import {isFormula, type Sheet} from "../document"
import type {Checked} from "./checked"
import type {Finding} from "./finding"

/** Headings under which a sheet says where its inputs are from. */
const SOURCE = new Set(["source", "from", "document"])
/** What a column of sources is not about: the name of the row, and words. */
export const isInput = ({columns}: Sheet, col: number) =>
  col > 0 && columns[col]!.kind !== "worked out" && columns[col]!.format !== "text"

/** The column in which a sheet says where its inputs are from, or -1. */
export const sourceColumn = ({columns}: Sheet) =>
  columns.findIndex(({heading, format}) => format === "text" && SOURCE.has(heading.toLowerCase()))

/** Rows with an input and no source, or no date, on sheets that have a column for it. */
export function sources({document, words}: Checked): Finding[] {
  return document.sheets.flatMap((sheet, index) => {
    const source = sourceColumn(sheet)
    if (source < 0) return []
    const date = sheet.columns.findIndex(
      ({heading, format}) => format === "date" && heading.toLowerCase() === "date",
    )
    return sheet.rows.flatMap((contents, row): Finding[] => {
      const isBlank = (col: number) => col >= 0 && (contents[col] ?? null) === null
      const input = sheet.columns.findIndex(
        (_, col) => col !== date && isInput(sheet, col) && !isBlank(col) && !isFormula(contents[col]),
      )
      const missing = [source, date].filter(isBlank)
      if (input < 0 || missing.length === 0) return []
      const told = missing.map((col) => sheet.columns[col]!.heading.toLowerCase()).join(" and no ")
      return [
        {
          rule: "no source",
          cells: [
            {sheet: index, row, col: missing[0]!},
            {sheet: index, row, col: input},
          ],
          sentence: `${words.name({sheet: index, row, col: input})} has no ${told}`,
          alike: `are blank: the inputs beside them have no ${told}`,
        },
      ]
    })
  })
}
