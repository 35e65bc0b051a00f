import {contentAt, type CellAddress} from "../document"
import {usedOf} from "../trace"
import {isDateFormat, wordsIn, type Checked} from "./checked"
import type {Finding} from "./finding"

/**
 * Measured ranges with a blank among them: the rows of one planting in a measured column. Where all are blank nothing was
 * measured, which is no slip.
 */
export function blanks({document, workbook}: Checked): Finding[] {
  const found: Finding[] = []
  for (const [sheet, {columns, rows}] of document.sheets.entries())
    for (const [col, {kind, format, heading}] of columns.entries()) {
      if (kind !== "measured" || isDateFormat(format) || col === 0) continue
      const ranges = new Map<string, CellAddress[]>()
      for (const [row, [key]] of rows.entries()) {
        const name = wordsIn(key ?? null)
        if (name === null) continue
        ranges.set(name, [...(ranges.get(name) ?? []), {sheet, row, col}])
      }
      for (const [name, cells] of ranges) {
        const [first, ...more] = cells.filter((at) => contentAt(document, at) === null)
        if (!first || more.length + 1 === cells.length) continue
        found.push({
          rule: "blank in a range",
          cells: [first, ...more],
          sentence: `${heading} of ${name}: ${usedOf(cells, (at) => workbook.valueAt(at))}; ${more.length ? "the first is" : "it is"} in row ${first.row + 1}`,
        })
      }
    }
  return found
}
