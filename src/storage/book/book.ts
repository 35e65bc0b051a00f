import type {Format} from "../../workbook/document"

/** The forms of other programs that hold a whole workbook: ECMA-376, ISO/IEC 26300. */
export type OutForm = "xlsx" | "ods"

/** A workbook as the forms of other programs have it: sheets of cells, headings among them, formulas by their own addresses. */
export interface Book {
  readonly title: string
  /** What season or state it shows. */
  readonly subject: string
  readonly about: string
  readonly sheets: readonly BookSheet[]
  readonly names: readonly BookName[]
}

export interface BookSheet {
  readonly name: string
  /** Widths in characters; null where nothing is said. */
  readonly widths: readonly (number | null)[]
  /** Rows may be shorter than others, and cells may be missing. */
  readonly rows: readonly (readonly (BookCell | null | undefined)[])[]
  /** How many rows and columns stay in view. */
  readonly keeps: {readonly rows: number; readonly columns: number}
  /** Whether cells that are locked are guarded against typing. */
  readonly isGuarded: boolean
  /** What stops an entry, by column, for all rows below the heading; nothing where a column has none. */
  readonly rules: readonly (BookRule | null | undefined)[]
}

/** The words that a column takes, or the limits of its numbers; of its days where `isDay`. */
export type BookRule =
  | {readonly words: readonly string[]}
  | {readonly least: number | null; readonly most: number | null; readonly isDay: boolean}

export interface BookCell {
  /** What it shows: a day is a number, as in functions/calendar.ts. */
  readonly value: BookValue
  /** Written as ours are, from "=" on, with sheets as the file names them. */
  readonly formula: string | null
  readonly look: Look
  readonly isLocked: boolean
  readonly note: BookNote | null
}

export type BookValue = number | string | boolean | null | {readonly error: string}

export const isError = (value: BookValue): value is {readonly error: string} =>
  typeof value === "object" && value !== null

/** How it is shown; a rate is a share with hundredths of a per cent. */
export type Look = "plain" | "heading" | "words" | "rate" | NonNullable<Format>

export interface BookNote {
  readonly text: string
  readonly by: string
  /** In ISO form; null where the file does not say. */
  readonly written: string | null
}

/** A name for what a formula gives, "='Named values'!$B$5". */
export interface BookName {
  readonly name: string
  readonly formula: string
}

/** A number of rows that both forms have, so that "from row 2 to the last" is a column without its heading. */
export const LAST_ROW = 1_048_575

/**
 * The rows on which a whole column ends in a file, counted from 0: programs that go through all of them, for each cell or for each
 * rule for entry, took many minutes for a farm's workbook to the last row there is, and take seconds to the first. Chosen.
 */
export const COLUMN_ENDS = [9_999, 99_999, LAST_ROW]

/** Where whole columns end for a sheet of so many rows, which may grow to twice its rows. */
export const columnEnd = (rows: number) => COLUMN_ENDS.find((end) => end >= 2 * rows) ?? LAST_ROW

/** How wide a character is taken to be in .ods, which has lengths, in mm; chosen. */
export const CHARACTER = 2
