import {piecesOf} from "../formula"
import type {Reader, ReadFormula} from "./insides"

/**
 * Formulas of one form are read once: those down a column differ in nothing but the rows that move along with them, and the engine
 * holds a formula by how far away it points. It would take apart the text of each.
 */
export function readFormsOnce(reader: Reader) {
  const {parse} = reader
  if (!parse) return
  const held = new WeakMap<Reader, Map<string, Held>>()
  reader.parse = function (formula, at) {
    const forms = held.get(this) ?? new Map<string, Held>()
    held.set(this, forms)
    const form = `${at.sheet} ${at.col} ${formOf(formula, at.row)}`
    const found = forms.get(form)
    if (found?.sheets.every(([name, id]) => this.resolveSheetReference(name) === id)) return found.read
    const read = parse.call(this, formula, at)
    if (read.errors.length > 0 || turnsRound(read.ast)) return read
    if (forms.size >= MOST_HELD) forms.clear()
    forms.set(form, {
      read,
      sheets: sheetsNamedIn(formula).map((name) => [name, this.resolveSheetReference(name)]),
    })
    return read
  }
}

interface Held {
  readonly read: ReadFormula
  /** The sheets it names, with the engine's numbers: one that does not exist has another each time it is named again. */
  readonly sheets: readonly (readonly [string, number])[]
}

const sheetsNamedIn = (formula: string) => [
  ...new Set(
    piecesOf(formula).flatMap((piece) =>
      typeof piece === "string" || piece.sheet === null ? [] : piece.sheet,
    ),
  ),
]

const MOST_HELD = 5000 // chosen: more than a workbook has columns

/** Words and sheets in quotes, and cells whose row moves along. */
const CELL = /"[^"]*"|'[^']*'|(?<![\p{L}\p{N}_.$])(\$?[A-Za-z]{1,3})([1-9][0-9]*)(?![\p{L}\p{N}_.(!])/gu

/** A formula with the rows of its cells told from the row where it stands. */
export const formOf = (formula: string, from: number) =>
  formula.replace(CELL, (text, col?: string, row?: string) => (col ? `${col}[${Number(row) - from}]` : text))

/** Whether one end of a range moves along and the other stays: the engine then puts the upper one first, which may be either. */
function turnsRound(part: unknown): boolean {
  if (typeof part !== "object" || part === null) return false
  if (Array.isArray(part)) return part.some(turnsRound)
  if (isRange(part) && part.start.isRowAbsolute() !== part.end.isRowAbsolute()) return true
  return Object.values(part).some(turnsRound)
}

interface End {
  isRowAbsolute(): boolean
}

const isRange = (part: object): part is {start: End; end: End} =>
  "type" in part && part.type === "CELL_RANGE" && "start" in part && "end" in part
