import {LAST_DAY} from "../../../functions/calendar"
import {formulaIn} from "../../workbook/cells"
import {isRate, keptInView, type CellAddress, type Column, type Document} from "../../workbook/document"
import {columnAt, extraAt} from "../../workbook/extras"
import {sentenceOf} from "../../workbook/faults"
import {columnLetters} from "../../workbook/formula"
import {namesIn} from "../../workbook/names"
import {originOf} from "../../workbook/trace"
import {isFault, type Fault, type Value} from "../../workbook/value"
import type {Workbook} from "../../workbook/workbook"
import {LIMITS} from "./limits"
import {columnEnd} from "./book"
import type {Book, BookCell, BookNote, BookRule, BookSheet, BookValue, Look, OutForm} from "./book"
import {inFile, type Counterpart} from "./bookFormula"
import {bookRule} from "./bookRule"
import {leftBehind} from "./leftBehind"

/** What goes out, and what of it a file of another program cannot hold, in sentences without a full stop. */
export interface Sent {
  readonly book: Book
  readonly left: readonly string[]
}

/** How numbers are shown where they are not shown as they are stored. */
export interface AsShown {
  number(at: CellAddress, stored: number): number
  unit(stored: string): string
  /** What a cell of words shows, which may be the name of a unit, or one with an error. */
  words(at: CellAddress, stored: string | Fault): string
  /** Decimals that are shown beyond those of the column. */
  moreDecimals(at: CellAddress): number
}

/** The whole workbook with its formulas. Numbers are metric, as they are stored, since the formulas work on those. */
export function fullCopy(workbook: Workbook, form: OutForm = "xlsx"): Sent {
  const {document} = workbook
  const left: string[] = []
  const names = namesOfSheets(document, left)
  // One row for all sheets, since columns of two may be taken together.
  const end = columnEnd(HEADS + Math.max(0, ...document.sheets.map(({rows}) => rows.length)))
  const there = (index: number) => (sheet: string | null) => counterpart(document, names, index, sheet)
  const sheets = document.sheets.map((_, sheet) =>
    sheetOf(workbook, sheet, names[sheet]!, {
      value: (_, value) => bookValue(value),
      formula(at) {
        const formula = formulaIn(document, at)
        const written = formula === null ? null : inFile(formula, there(sheet), end)
        if (formula !== null && (written === null || written.length > LONGEST_FORMULA))
          left.push(
            `${placeOf(document, at)}: its formula cannot be moved below a heading, so it is kept as its value`,
          )
        return written !== null && written.length <= LONGEST_FORMULA ? written : null
      },
      unit: (unit) => unit,
      moreDecimals: () => 0,
      rule: (column) => bookRule(column, form),
    }),
  )
  const named = namesIn(document).flatMap(({name, expression}) => {
    const formula = inFile(expression, there(0), end)
    return formula === null ? [] : [{name, formula}]
  })
  left.push(...leftBehind(document, form, "formulas"))
  return {book: bookFrom(document, sheets, named), left}
}

/** The values alone, in the units that are shown, and a sheet that says in words how each column is worked out. */
export function valuesCopy(workbook: Workbook, shown: AsShown, form: OutForm = "xlsx"): Sent {
  const {document} = workbook
  const left: string[] = []
  const names = namesOfSheets(document, left)
  const sheets = document.sheets.map((_, sheet) =>
    sheetOf(workbook, sheet, names[sheet]!, {
      value(at, value) {
        // An error as words, so that no other program takes it for one of its own.
        if (isFault(value)) return shown.words(at, value)
        if (typeof value === "number" && !isDay(workbook, at, value)) return shown.number(at, value)
        return typeof value === "string" ? shown.words(at, value) : (value ?? null)
      },
      formula: () => null,
      unit: shown.unit,
      moreDecimals: shown.moreDecimals,
      rule: () => null, // nothing is worked out from what would be typed there
    }),
  )
  const how = howSheet(workbook, names, shown)
  left.push(...leftBehind(document, form, "values"))
  return {book: bookFrom(document, [...sheets, how], []), left}
}

const bookFrom = (
  {name, season = "", about = ""}: Document,
  sheets: readonly BookSheet[],
  names: Book["names"],
) => ({
  title: name,
  subject: season,
  about,
  sheets,
  names,
})

/** Characters; the limit of ECMA-376 programs that is widely stated. */
const LONGEST_FORMULA = 8000

const HEADS = 1

function counterpart(
  {sheets}: Document,
  names: readonly string[],
  own: number,
  sheet: string | null,
): Counterpart | null {
  const index =
    sheet === null ? own : sheets.findIndex(({name}) => name.toLowerCase() === sheet.toLowerCase())
  return index < 0 ? null : {name: names[index]!, heads: HEADS}
}

/** The names of the sheets as other programs take them: no apostrophe at an end, none that is "History". */
function namesOfSheets({sheets}: Document, left: string[]): readonly string[] {
  const names: string[] = []
  for (const {name} of sheets) {
    const bare = name.replace(/^'+|'+$/g, "").trim() || "Sheet"
    const fit = /^history$/i.test(bare) ? `${bare} sheet` : bare
    const taken = (one: string) =>
      names.some((other) => other.toLowerCase() === one.toLowerCase()) ||
      (one !== name && sheets.some((other) => other.name.toLowerCase() === one.toLowerCase()))
    const free = taken(fit)
      ? Array.from({length: sheets.length + 1}, (_, n) => `${fit.slice(0, 27)} ${n + 2}`).find(
          (one) => !taken(one),
        )!
      : fit
    if (free !== name) left.push(`The sheet “${name}” is called “${free}” in it`)
    names.push(free)
  }
  return names
}

interface Filling {
  value(at: CellAddress, value: Value): BookValue
  formula(at: CellAddress): string | null
  unit(stored: string): string
  moreDecimals(at: CellAddress): number
  rule(column: Column): BookRule | null
}

function sheetOf(workbook: Workbook, index: number, name: string, filling: Filling): BookSheet {
  const {document} = workbook
  const sheet = document.sheets[index]!
  const {columns, rows} = sheet
  const headings = columns.map(({heading, unit}): BookCell => {
    const shownUnit = unit === undefined ? "" : filling.unit(unit)
    const value = shownUnit === "" ? heading : `${heading} (${shownUnit})`
    return {value, formula: null, look: "heading", isLocked: true, note: null}
  })
  const cells = rows.map((_, row) =>
    columns.map((_, col) => {
      const at = {sheet: index, row, col}
      const value = workbook.valueAt(at)
      const note = noteOf(document, at)
      const formula = filling.formula(at)
      if (value === null && formula === null && !note) return null
      const given = filling.value(at, value)
      const look = lookOf(workbook, at, value, filling.moreDecimals(at))
      return {value: cut(given), formula, look, isLocked: formulaIn(document, at) !== null, note}
    }),
  )
  return {
    name,
    widths: columns.map(({heading, width}) =>
      width === undefined ? Math.max(9, heading.length + 3) : width * 2,
    ),
    rows: [headings, ...cells],
    keeps: {rows: HEADS, columns: keptInView(sheet)},
    isGuarded: columns.some(({formula}) => formula !== undefined),
    rules: columns.map(filling.rule),
  }
}

const bookValue = (value: Value): BookValue => (isFault(value) ? {error: value.code} : (value ?? null))

const cut = (value: BookValue) => (typeof value === "string" ? value.slice(0, LIMITS.text) : value)

function noteOf(document: Document, at: CellAddress): BookNote | null {
  const note = extraAt(document, at)?.note
  return note ? {text: note.text.slice(0, LIMITS.text), by: note.by ?? "", written: note.written} : null
}

function isDay(workbook: Workbook, at: CellAddress, value: number) {
  const format = columnAt(workbook.document, at)?.format
  return (
    (format === "date" || format === "day" || workbook.isDateAt(at)) && value >= 0 && value < LAST_DAY + 1
  )
}

function lookOf(workbook: Workbook, at: CellAddress, value: Value, moreDecimals: number): Look {
  const column = columnAt(workbook.document, at)
  const format = column?.format
  if (typeof value === "number" && isDay(workbook, at, value)) return format === "day" ? "day" : "date"
  if (format === "date" || format === "day") return typeof value === "number" ? "plain" : format
  if (format === "text") return typeof value === "string" ? "words" : "plain"
  if (format === "share" && isRate(column)) return "rate"
  return typeof format === "number" ? Math.min(9, format + moreDecimals) : (format ?? "plain")
}

const placeOf = ({sheets}: Document, {sheet, row, col}: CellAddress) =>
  `${sheets[sheet]!.name}, ${columnLetters(col)}${row + 1 + HEADS}`

const HOW_HEADINGS = ["Sheet", "Column", "How it was worked out", "First cell", "What cannot be worked out"]

/** A row for each worked-out column: the formula in words, where it stands, and the reasons of its errors. */
function howSheet(workbook: Workbook, names: readonly string[], shown: AsShown): BookSheet {
  const {document} = workbook
  const plain = (value: string, look: Look = "words"): BookCell => ({
    value: value.slice(0, LIMITS.text),
    formula: null,
    look,
    isLocked: true,
    note: null,
  })
  const lines: BookCell[][] = []
  for (const [sheet, {columns, rows}] of document.sheets.entries())
    for (const [col, {heading, unit}] of columns.entries()) {
      const cells = rows.map((_, row) => ({sheet, row, col})).filter((at) => formulaIn(document, at) !== null)
      const first = cells[0]
      if (!first) continue
      const faults = cells.flatMap((at) => {
        const value = workbook.valueAt(at)
        return isFault(value) ? [sentenceOf(value)] : []
      })
      const called = unit === undefined ? heading : `${heading} (${shown.unit(unit)})`
      const where = `${columnLetters(col)}${first.row + 1 + HEADS}`
      const words = [
        names[sheet]!,
        called,
        originOf(workbook, first).inWords ?? "",
        where,
        [...new Set(faults)].join("; "),
      ]
      lines.push(words.map((one) => plain(one)))
    }
  const taken = (name: string) => names.some((one) => one.toLowerCase() === name.toLowerCase())
  const own = HOW_HEADINGS[2]!
  return {
    name: taken(own) ? `${own} (2)` : own,
    widths: [20, 26, 100, 10, 50],
    rows: [HOW_HEADINGS.map((heading) => plain(heading, "heading")), ...lines],
    keeps: {rows: HEADS, columns: 2},
    isGuarded: true,
    rules: [],
  }
}
