import {dayOf, FIRST_DAY, isoOf, LAST_DAY, monthsLater} from "../../../functions/calendar"
import {contentAt, isFormula, type CellAddress, type Content, type Document} from "../../workbook/document"
import type {Edit, Entry} from "../../workbook/edit"
import {moved} from "../../workbook/formula"
import {formulaIn} from "../../workbook/cells"
import {measureAt} from "../cellColumn"
import {cellsOf, chosenBlock, chosenCells, type Block} from "../block"
import {fitting} from "../editing"
import {onlyRows} from "../selection"
import type {EditorState} from "../store"
import {entering, type LeftOut} from "../words"
import {isGuarded} from "./cells"

/** What filling would do: the edit, and the cells that their column's rule leaves out. */
export interface Filling {
  readonly edit: Edit | null
  readonly leftOut: readonly LeftOut[]
}

export type Filler = (state: EditorState) => Filling

const NOTHING: Filling = {edit: null, leftOut: []}

/** Copies the first chosen row down over the others; with one row chosen, the row that is shown above it into it. */
export const fillDown: Filler = (state) => fill(state, "rows")

/** Copies the first chosen column to the right over the others; with one chosen, the one to its left into it. */
export const fillRight: Filler = (state) => fill(state, "cols")

function fill(state: EditorState, along: "rows" | "cols"): Filling {
  const block = chosenBlock(state)
  const [first, last] = block[along]
  const source = first < last ? first : along === "rows" ? rowAbove(state, block.sheet, first) : first - 1
  if (source < 0) return NOTHING
  const into: Block = {...block, [along]: [first < last ? first + 1 : first, last]}
  const {document} = state
  return filling(state, into, (at) => {
    const from = along === "rows" ? {...at, row: source} : {...at, col: source}
    const formula = formulaIn(document, from)
    return formula === null ? contentAt(document, from) : moved(formula, at.row - from.row, at.col - from.col)
  })
}

/** The row above of those that are shown, or -1. */
const rowAbove = (state: EditorState, sheet: number, row: number) =>
  (onlyRows(state, sheet) ?? [row - 1]).findLast((one) => one < row) ?? -1

export const STEPS = ["number", "days", "weeks", "months", "years", "working days"] as const
export type Step = (typeof STEPS)[number]

/**
 * Continues the first chosen cell of each column (or row) by a step: a number by a number in the unit that is shown, a
 * date by days, weeks, months or years of the calendar, or days from Monday to Friday. The end of a shorter month stands
 * for a day it does not have; beyond the last day of the calendar, or before its first, nothing is put in. Over so many
 * `cells` where that is given, else over those chosen; what lies below the last row is a new one, and beside the last
 * column there is none.
 */
export const fillSeries =
  (by: number, step: Step, along: "rows" | "cols", cells?: number): Filler =>
  (state) => {
    const block = chosenBlock(state)
    const {sheet} = block
    const first = block[along][0]
    const end = along === "rows" ? Infinity : state.document.sheets[sheet]!.columns.length - 1
    const last = Math.min(end, cells === undefined ? block[along][1] : first + cells - 1)
    if (first >= last) return NOTHING
    const into: Block = {...block, [along]: [first + 1, last]}
    return filling(state, into, (at) => {
      const from = along === "rows" ? {...at, row: first} : {...at, col: first}
      const count = along === "rows" ? rowsDown(state, sheet, first, at.row) : at.col - first
      const each = step === "number" ? by / measureAt(state.document, from).factor : by
      return stepped(contentAt(state.document, from), count * each, step)
    })
  }

/** How many rows lie from one down to another, of those that are shown. */
const rowsDown = (state: EditorState, sheet: number, from: number, to: number) =>
  onlyRows(state, sheet)?.filter((row) => from < row && row <= to).length ?? to - from

/** Whether the chosen cells begin with something that can be continued: numbers, or dates. */
export function seriesBegins(state: EditorState): "number" | "date" | null {
  const {sheet, rows, cols} = chosenBlock(state)
  const content = contentAt(state.document, {sheet, row: rows[0], col: cols[0]})
  if (typeof content === "number") return "number"
  return typeof content === "string" && dayOf(content) !== null ? "date" : null
}

/** A content some steps on; undefined where it cannot be continued so. */
function stepped(content: Content, by: number, step: Step): Content | undefined {
  if (step === "number")
    return typeof content === "number" && Number.isFinite(content + by)
      ? Number((content + by).toPrecision(15))
      : undefined
  const day = typeof content === "string" ? dayOf(content) : null
  if (day === null || !Number.isInteger(by)) return undefined
  const to = steppedDay(day, by, step)
  return isInCalendar(to) ? isoOf(to) : undefined
}

const isInCalendar = (day: number) => day >= FIRST_DAY && day <= LAST_DAY

function steppedDay(day: number, by: number, step: Exclude<Step, "number">): number {
  if (step === "working days") return workingDay(day, by)
  if (step === "days" || step === "weeks") return day + by * (step === "weeks" ? 7 : 1)
  return monthsLater(day, by * (step === "years" ? 12 : 1))
}

function workingDay(day: number, by: number): number {
  let at = day
  for (let left = Math.abs(by); left > 0 && isInCalendar(at);) {
    at += Math.sign(by)
    // Day 0, 30 December 1899, was a Saturday.
    if (at % 7 > 1) left--
  }
  return at
}

/** Gives cells of a block their content; worked-out cells stay as they are. */
function filling(
  state: EditorState,
  block: Block,
  contentOf: (at: CellAddress) => Content | undefined,
): Filling {
  const {document} = state
  const shown = onlyRows(state, block.sheet)
  const cells: Entry[] = []
  const leftOut: LeftOut[] = []
  for (const at of cellsOf(block)) {
    if (isGuarded(at)(state) || (shown && !shown.includes(at.row))) continue
    const content = contentOf(at)
    if (content === undefined || content === contentAt(document, at)) continue
    const entry = isFormula(content) ? {content} : fitting(document, at, content)
    if ("refused" in entry) leftOut.push({at, why: entry.refused})
    else cells.push({at, content: entry.content})
  }
  return {edit: entering(document, "fill", cells), leftOut}
}

/** The worked-out cells among those chosen: what fills and empties leaves alone. */
export const guardedCount = (state: EditorState): number =>
  [...chosenCells(state)].filter((at) => isGuarded(at)(state) && at.row < rowCount(state.document, at)).length

const rowCount = ({sheets}: Document, {sheet}: CellAddress) => sheets[sheet]!.rows.length
