import type {Column} from "../workbook/document"

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
