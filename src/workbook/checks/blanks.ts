import {contentAt} from "../document"
import {isMeasuredOtherwise, usedOf} from "../trace"
import {isDateFormat, rowsByKey, type Checked} from "./checked"
import type {Finding} from "./finding"

/**
 * Measured ranges with a blank among them: the rows of one planting in a measured column. Where all are blank nothing was
 * measured, which is no slip.
 */
export function blanks({document, workbook}: Checked): Finding[] {
  const found: Finding[] = []
  for (const [index, sheet] of document.sheets.entries())
    for (const [col, {kind, format, heading}] of sheet.columns.entries()) {
      if (kind !== "measured" || isDateFormat(format) || col === 0) continue
      for (const [name, rows] of rowsByKey(sheet)) {
        const cells = rows
          .map((row) => ({sheet: index, row, col}))
          .filter((at) => contentAt(document, at) !== null || !isMeasuredOtherwise(document, at))
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
