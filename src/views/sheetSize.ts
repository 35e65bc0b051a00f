import {measureOf} from "../editor/measures"
import type {Store} from "../editor/store"
import type {Column, Region} from "../workbook/document"
import {regionOf} from "../workbook/region"
import {cellViewAt, TOTAL_ROW} from "./cellView"

/** Heights in px; the calendar beside the season plan is drawn to them. */
export const HEAD_HEIGHT = 70
export const ROW_HEIGHT = 36

/** A sheet of up to this many rows shows them all; a longer one scrolls within itself. */
export const MOST_ROWS_SHOWN = 13

/** Width in px of the numbers of the rows. */
export const NUMBERS_WIDTH = 30

/** What a width of 1 stands for, in px. */
export const REM = 16

/** Width of a column in px. */
export const columnWidth = ({width}: Column, col: number) => REM * (width ?? (col === 0 ? 8 : 6))

const DIGIT = 8 // px, about
const BOLD_DIGIT = 9 // px, about
const LETTER = 7 // px of the unit in the head, about
const PADDING = 16

/** Width of a column in px as it is drawn: in other units it may need room for more digits and a longer unit. */
export function drawnWidth(column: Column, col: number, region: Region): number {
  const width = columnWidth(column, col)
  const {unit, factor, moreDecimals} = measureOf(column.unit, region)
  if (factor === 1) return width
  const moreDigits = moreDecimals + (factor > 1 ? 1 : 0)
  return Math.max(width + moreDigits * DIGIT, PADDING + unit.length * LETTER)
}

/** Width in px of a column of a workbook's sheet as it is drawn: its total is never cut. */
export function widthOnSheet(store: Store, sheet: number, col: number): number {
  const {document} = store.getState()
  const column = document.sheets[sheet]!.columns[col]!
  const total = column.total === undefined ? "" : cellViewAt(store, {sheet, row: TOTAL_ROW, col}).text
  const forTotal = total === "" ? 0 : PADDING + total.length * BOLD_DIGIT
  return Math.max(drawnWidth(column, col, regionOf(document)), forTotal)
}

/** Width in px of a sheet as far as a column, from the numbers of the rows. */
export const widthAsFarAs = (store: Store, sheet: number, last: number) =>
  Array.from({length: last + 1}, (_, col) => widthOnSheet(store, sheet, col)).reduce(
    (sum, width) => sum + width,
    NUMBERS_WIDTH,
  )
