import type {Document} from "./document"

/** How large a workbook may be. The rows are those the engine is set to; the others are chosen, far beyond a farm's. */
export const MOST = {sheets: 200, columns: 500, rows: 100_000} as const

/** Why a workbook is too large to be worked out here, in a sentence, or null. */
export function tooLarge({sheets}: Document): string | null {
  if (sheets.length > MOST.sheets) return `It has ${sheets.length} sheets, and ${MOST.sheets} are the most`
  for (const {name, rows, columns} of sheets) {
    if (rows.length > MOST.rows)
      return `Its sheet “${name}” has ${rows.length} rows, and ${MOST.rows} are the most`
    if (columns.length > MOST.columns)
      return `Its sheet “${name}” has ${columns.length} columns, and ${MOST.columns} are the most`
  }
  return null
}

/** How many cells its sheets have. */
export const cellsIn = ({sheets}: Document): number =>
  sheets.reduce((sum, {rows, columns}) => sum + rows.length * columns.length, 0)
