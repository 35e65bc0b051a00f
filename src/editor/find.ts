import {isoOf} from "../../functions/calendar"
import type {CellAddress, Document} from "../workbook/document"
import {addressText} from "../workbook/cells"
import {extraAt} from "../workbook/extras"
import {decimalOf, regionOf} from "../workbook/region"
import {onScreen} from "../workbook/screenFormula"
import {type Workbook} from "../workbook/workbook"
import {cellColumn} from "./cellColumn"
import {dateText, textOf} from "./display"
import {readsAs} from "./entry"
import {cellName} from "./words"

/** What to look for, and where. */
export interface Search {
  readonly query: string
  /** "values" is what cells show, with the headings and the names of sheets; "formulas" what works them out. */
  readonly where: "values" | "formulas" | "notes" | "all"
  /** Only what is all that stands there. */
  readonly wholeCell: boolean
  readonly matchCase: boolean
  /** One sheet alone. */
  readonly sheet?: number
}

/** A place that holds what is looked for. */
export interface Hit {
  readonly sheet: number
  /** Null for the heading of a column and the name of a sheet. */
  readonly row: number | null
  /** Null for the name of a sheet. */
  readonly col: number | null
  readonly inFormula: boolean
  readonly inNote: boolean
  /** The text that holds it: what the cell shows, or the formula, date or digits behind that. */
  readonly text: string
  /** Where in the text it first stands. */
  readonly from: number
  readonly to: number
}

type Searched = Pick<Workbook, "document" | "valueAt" | "isDateAt" | "formulaAt">

/**
 * The places that hold what is looked for, in the order of sheets, rows and columns; a cell is one place, however
 * often it holds it, and its note another. A value is found by what is seen, and a date by its whole or ISO form, a number by its digits.
 */
export function findIn(workbook: Searched, search: Search): readonly Hit[] {
  if (search.query === "") return []
  const pattern = patternOf(search)
  const hits: Hit[] = []
  const look = (
    place: Pick<Hit, "sheet" | "row" | "col">,
    texts: readonly string[],
    {inFormula = false, inNote = false} = {},
  ): boolean => {
    for (const text of texts) {
      const from = text.search(pattern)
      if (from < 0) continue
      hits.push({...place, inFormula, inNote, text, from, to: from + text.match(pattern)![0].length})
      return true
    }
    return false
  }
  for (const [sheet, {name, columns, rows}] of workbook.document.sheets.entries()) {
    if (search.sheet !== undefined && search.sheet !== sheet) continue
    const [inValues, inFormulas, inNotes] = (["values", "formulas", "notes"] as const).map(
      (one) => search.where === "all" || search.where === one,
    )
    if (inValues) {
      look({sheet, row: null, col: null}, [name])
      for (const [col, {heading}] of columns.entries()) look({sheet, row: null, col}, [heading])
    }
    for (const row of rows.keys())
      for (const col of columns.keys()) {
        const at = {sheet, row, col}
        const note = inNotes && extraAt(workbook.document, at)?.note
        if (note) look(at, [note.text], {inNote: true})
        if (inValues && look(at, textsOf(workbook, at))) continue
        const formula = inFormulas ? workbook.formulaAt(at) : null
        if (formula !== null) look(at, [onScreen(formula, decimalOf(workbook.document))], {inFormula: true})
      }
  }
  return hits
}

/** What is looked for as a pattern; a plain space, sign and apostrophe stand for their printed forms too. */
export function patternOf({query, wholeCell, matchCase}: Omit<Search, "where">): RegExp {
  const exact = query
    .replaceAll(/[\\^$.*+?()[\]{}|/]/g, String.raw`\$&`)
    .replaceAll("-", "[-\u2212]")
    .replaceAll("'", "['\u2019]")
    .replaceAll(/\s/g, String.raw`\s`)
  return new RegExp(wholeCell ? `^${exact}$` : exact, matchCase ? "gu" : "giu")
}

/** What a cell shows, then the other forms in which a person may know its value. */
function textsOf(workbook: Searched, at: CellAddress): readonly string[] {
  const value = workbook.valueAt(at)
  if (value === null) return []
  const region = regionOf(workbook.document)
  const column = cellColumn(workbook.document, at)!
  if (typeof value !== "number") return [textOf(value, column, false, region)]
  const isDate = column.format === "date" || column.format === "day" || workbook.isDateAt(at)
  const shown = textOf(value, column, isDate, region)
  const whole = dateText(value)
  // A number that no calendar holds stays a number.
  if (isDate && /[a-z]/i.test(whole)) return [shown, whole, isoOf(value)]
  return [shown, readsAs(value, column, null, region), String(value)]
}

/** The cell to go to: for a heading or a name of a sheet the first one under it. */
export const cellOfHit = ({sheet, row, col}: Hit): CellAddress => ({sheet, row: row ?? 0, col: col ?? 0})

/** Where the walk over the hits begins: at the next one from the chosen cell on, or before it, and round the end. */
export function hitBeside(hits: readonly Hit[], cell: CellAddress, step: 1 | -1): number {
  const from = (hit: Hit) =>
    hit.sheet - cell.sheet || (hit.row ?? -1) - cell.row || (hit.col ?? -1) - cell.col
  const found =
    step > 0 ? hits.findIndex((hit) => from(hit) >= 0) : hits.findLastIndex((hit) => from(hit) <= 0)
  return found >= 0 ? found : step > 0 ? 0 : hits.length - 1
}

/** What a hit is called: "Season plan E2, Open of Long Acre". */
export function hitName(document: Document, hit: Hit): string {
  const {name} = document.sheets[hit.sheet]!
  if (hit.col === null) return "Name of a sheet"
  if (hit.row === null) return `Heading in ${name}`
  const at = cellOfHit(hit)
  return `${name} ${addressText(document, at, at.sheet)}, ${cellName(document, at)}${hit.inFormula ? ", formula" : hit.inNote ? ", note" : ""}`
}

/** The found words of a hit with some of what stands round them. */
export function excerpt({text, from, to}: Pick<Hit, "text" | "from" | "to">): {
  readonly before: string
  readonly found: string
  readonly after: string
} {
  const start = from > MOST_ROUND + 10 ? from - MOST_ROUND : 0
  const end = text.length > to + MOST_ROUND + 10 ? to + MOST_ROUND : text.length
  return {
    before: (start > 0 ? "\u2026" : "") + text.slice(start, from),
    found: text.slice(from, to),
    after: text.slice(to, end) + (end < text.length ? "\u2026" : ""),
  }
}

const MOST_ROUND = 40 // letters on each side; chosen, so that a hit takes two lines
