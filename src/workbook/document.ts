import {z} from "zod"
import {FIELD_PARTS, PARTS} from "./parts"

// The page's policy lets no text run as a program; without this the library tries whether it may.
z.config({jitless: true})

/**
 * What a cell holds: a number, a word, a truth value, a formula beginning with "=", an ISO date such as
 * "2026-04-25", or nothing. In a worked-out column the lone sign "=" stands for the formula of the column.
 */
export const contentSchema = z.union([z.number(), z.string(), z.boolean(), z.null()])
export type Content = z.infer<typeof contentSchema>

/** In a worked-out column: this row follows the column's formula. */
export const COLUMN_FORMULA = "="

/** What may be typed. A number outside `least` to `most` is stopped, and a word that is not in the list, where there is one. */
const ruleSchema = z.strictObject({
  least: z.number().optional(),
  most: z.number().optional(),
  /** The words that the column takes, and nothing else. */
  words: z.array(z.string().trim().min(1)).min(1).optional(),
  /** Outside these two it is questioned. */
  usual: z.tuple([z.number(), z.number()]).optional(),
  /** Far from the other numbers of the column, among rows of the same name where names are repeated, it is questioned. */
  nearOthers: z.literal(true).optional(),
  /** A questioned number is kept and marked without a question first. */
  onlyMarks: z.literal(true).optional(),
})

/** How values are shown: a count of decimals, a share as %, a date with its year ("date") or without ("day"). */
const formatSchema = z.union([
  z.literal("date"),
  z.literal("day"),
  z.literal("text"),
  z.literal("share"),
  z.number().int().min(0).max(9),
])

/** Whether a share is one of a time, as the rate of a loan is: its hundredths count, 5.25 % is not 5 %. */
export const isRate = (column: {readonly unit?: string | undefined} | undefined) =>
  column?.unit?.startsWith("share/") ?? false

/** A remark on one cell, in plain words. */
const noteSchema = z.strictObject({
  text: z.string().min(1),
  /** Who wrote it, as they sign. */
  by: z.string().optional(),
  /** When it was last written, in ISO form with the time. */
  written: z.string(),
  /** Nothing is left to do about it. */
  settled: z.literal(true).optional(),
})
export type Note = Readonly<z.infer<typeof noteSchema>>

/** What a single cell carries beside its content. */
const extraSchema = z.strictObject({
  row: z.number().int().min(0),
  col: z.number().int().min(0),
  note: noteSchema.optional(),
  /** How this cell is shown, where that differs from its column. */
  format: formatSchema.optional(),
  /** What it holds in cases, by their names, where that is something else. */
  cases: z.record(z.string(), contentSchema).optional(),
  /** The cases are compared by what this cell gives. */
  compared: z.literal(true).optional(),
  /** The act of the field that gave its row, by its id. */
  act: z.string().optional(),
})

const columnSchema = z.strictObject({
  heading: z.string().min(1),
  unit: z.string().optional(),
  kind: z.enum(["typed", "measured", "carried over", "worked out"]),
  /** For a worked-out column, the formula of its first row; other rows move its relative references along. */
  formula: z.string().startsWith("=").optional(),
  /** A formula for the line under the sheet, over whole columns. It is worked out beside the sheet, so it may use its own column. */
  total: z.string().startsWith("=").optional(),
  format: formatSchema.optional(),
  /** Width on screen, in rem. */
  width: z.number().positive().optional(),
  /** Begins a new group of columns: a rule is drawn before it. */
  starts: z.boolean().optional(),
  rule: ruleSchema.optional(),
  /** What the column stands for in the pictures, the studies and the printed plan: they find their numbers by it. */
  part: z.enum(PARTS).optional(),
  /** One or two sentences for the person who reads it: what it means, how it is worked out, what it rests on. */
  about: z.string().optional(),
})

/** What a sheet may be called, so that a formula can point at it. */
export const SHEET_NAME = {longest: 31, without: "\\ / ? * [ ] :", signs: /^[^\\/?*[\]:]+$/}

const sheetSchema = z.strictObject({
  name: z
    .string()
    .min(1)
    .max(SHEET_NAME.longest)
    .regex(SHEET_NAME.signs, `must not hold ${SHEET_NAME.without}`),
  /** The group it stands under in the list of sheets. */
  group: z.string().min(1),
  /** What the sheet is for, in a sentence or two. */
  about: z.string().optional(),
  /** What each row of this sheet stands for, by the name in its first column: a new planting gets a row on all of them. */
  rowEach: z.literal("planting").optional(),
  /** It holds so many rows for each row of the sheet that has a column of this part; an edit that brings more adds its own. */
  rowsFor: z.strictObject({each: z.enum(PARTS), count: z.number().int().min(1)}).optional(),
  /** Each row of this sheet names a value: the name in column A, the value in column B. */
  names: z.boolean().optional(),
  /** How many columns stay in view while the others scroll sideways; the first one where nothing is said. */
  keeps: z.number().int().min(0).optional(),
  columns: z.array(columnSchema).min(1),
  rows: z.array(z.array(contentSchema)),
  /** Notes and formats of single cells, in no order. */
  extras: z.array(extraSchema).optional(),
})

/** How long the name of a device may be. */
export const LONGEST_DEVICE = 40

/** One act on the field page: a row that was added, or one that was taken back. */
const fieldEntrySchema = z.strictObject({
  /** No other act has it, on whatever device. */
  id: z.string().regex(/^[0-9a-f]{32}$/),
  /** The device it was entered on, as its owner calls it. */
  device: z.string().min(1).max(LONGEST_DEVICE),
  /** When it was entered, in ISO form with the time. */
  entered: z.iso.datetime(),
  /** What the row holds, by the parts of its columns. */
  row: z
    .partialRecord(z.enum(Object.values(FIELD_PARTS).flat()), z.union([z.number(), z.string()]))
    .optional(),
  /** The act that is taken back instead. */
  takesBack: z
    .string()
    .regex(/^[0-9a-f]{32}$/)
    .optional(),
  /** It came from another device. */
  brought: z.literal(true).optional(),
  /** A row like it stood here before it came, and is taken for it. */
  stood: z.literal(true).optional(),
})

/** How numbers and dates are typed and shown. What is left out: a decimal point, metric measures, no sign of money, and dates of two meanings are asked about. */
const regionSchema = z.strictObject({
  decimal: z.literal(",").optional(),
  measures: z.literal("US").optional(),
  /** A word or sign that stands for "money" in units. */
  currency: z.string().min(1).max(12).optional(),
  /** Which number of 3/4/2026 is the day. */
  dates: z.enum(["day first", "month first"]).optional(),
})

/** The mark of a reading copy: who made it, on which day, and the digests of what it held and what came out of it. */
const readingSchema = z.strictObject({
  madeBy: z.string().min(1),
  on: z.string(),
  /** SHA-256 of the saved text without this mark, and of its results, in hexadecimal digits. */
  digest: z.string().regex(/^[0-9a-f]{64}$/),
  results: z.string().regex(/^[0-9a-f]{64}$/),
})

/** The mark of a file copy: when it was kept and by whom, as they sign, and the earlier copies that it goes back to. */
const copySchema = z.strictObject({
  id: z.string().regex(/^[0-9a-f]{32}$/),
  kept: z.iso.datetime(),
  by: z.string().min(1).optional(),
  /** Their ids, the latest last: by them two copies find the state that both began from. */
  after: z.array(z.string().regex(/^[0-9a-f]{32}$/)),
})

/** The saved workbook. Rows may be shorter than the columns; what is missing is blank. */
export const documentSchema = z.strictObject({
  name: z.string().min(1),
  /** What season or state it shows, for the head of the page. */
  season: z.string().optional(),
  /** One sentence: who made it up, or whose it is. */
  about: z.string().optional(),
  /** Names of cases: other contents of some cells, to be compared with what the cells hold. */
  cases: z.array(z.string().min(1)).optional(),
  region: regionSchema.optional(),
  /** It is for reading only, until somebody makes a copy of their own. */
  reading: readingSchema.optional(),
  /** The file copy that it was opened from. */
  copy: copySchema.optional(),
  /** What was entered in the field and has come here, on this device or in a file: only ever added to. */
  field: z.array(fieldEntrySchema).optional(),
  sheets: z.array(sheetSchema).min(1),
})

type DeepReadonly<T> = T extends object ? {readonly [K in keyof T]: DeepReadonly<T[K]>} : T
export type Document = DeepReadonly<z.infer<typeof documentSchema>>
export type ReadingMark = NonNullable<Document["reading"]>
export type CopyMark = NonNullable<Document["copy"]>
export type Sheet = Document["sheets"][number]
export type Column = Sheet["columns"][number]
export type Format = Column["format"]
export type Extra = NonNullable<Sheet["extras"]>[number]
export type FieldEntry = NonNullable<Document["field"]>[number]
export type Region = NonNullable<Document["region"]>

/** A cell by the position of its sheet, row and column, counted from 0. */
export interface CellAddress {
  readonly sheet: number
  readonly row: number
  readonly col: number
}

export const isFieldEntry = (one: unknown): one is FieldEntry => fieldEntrySchema.safeParse(one).success

export const isSameCell = (a: CellAddress, b: CellAddress): boolean =>
  a.sheet === b.sheet && a.row === b.row && a.col === b.col

/** How many columns of a sheet stay in view while the others scroll sideways. */
export const keptInView = ({keeps = 1, columns}: Sheet) => Math.min(keeps, columns.length)

/** What a column stands for in the pictures, the studies and the acts that put something in. */
export type Part = NonNullable<Column["part"]>

/** The columns of a sheet by what they stand for; where several stand for the same, the first. */
export function partsOf({columns}: Pick<Sheet, "columns">): ReadonlyMap<Part, number> {
  const known = parts.get(columns)
  if (known) return known
  const found = new Map<Part, number>()
  for (const [col, {part}] of columns.entries()) if (part && !found.has(part)) found.set(part, col)
  parts.set(columns, found)
  return found
}
const parts = new WeakMap<readonly Column[], ReadonlyMap<Part, number>>()

/** The first sheet that has a column of this part, or -1. */
export const sheetWith = ({sheets}: Document, part: Part) =>
  sheets.findIndex((sheet) => partsOf(sheet).has(part))

/** The column of this part on a sheet, or -1. */
export const columnWith = ({sheets}: Document, sheet: number, part: Part) =>
  partsOf(sheets[sheet]!).get(part) ?? -1

export const isFormula = (content: unknown): content is string =>
  typeof content === "string" && content.startsWith("=")

export const contentAt = ({sheets}: Document, {sheet, row, col}: CellAddress): Content =>
  sheets[sheet]?.rows[row]?.[col] ?? null

/** The position of the sheet that a formula means by a name, or -1. */
export const sheetNamed = (sheets: readonly Sheet[], name: string) =>
  sheets.findIndex((sheet) => sheet.name.toLowerCase() === name.toLowerCase())

/** The document with one sheet changed. */
export const withSheet = (document: Document, index: number, change: Partial<Sheet>): Document => ({
  ...document,
  sheets: document.sheets.with(index, {...document.sheets[index]!, ...change}),
})

/** Whether a cell of a worked-out column holds something else than the column's formula. */
export function isTypedOver(document: Document, at: CellAddress): boolean {
  const sheet = document.sheets[at.sheet]
  return (
    sheet?.columns[at.col]?.formula !== undefined &&
    at.row < sheet.rows.length &&
    contentAt(document, at) !== COLUMN_FORMULA
  )
}
