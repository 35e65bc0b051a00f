import {originOf} from "./trace"
import {formulaIn} from "./cells"
import {
  COLUMN_FORMULA,
  contentAt,
  type CellAddress,
  type Content,
  type Document,
  type Note,
  type Sheet,
} from "./document"
import {extraAt} from "./extras"

/** A cell that holds something else in two states of a workbook. */
export interface Difference {
  /** Where it stands in the one and in the other; null where its row, column or sheet is not there. */
  readonly was: CellAddress | null
  readonly now: CellAddress | null
  /** What it holds: a number, a word, a date, or a formula written out. */
  readonly before: Content
  readonly after: Content
  /** A formula on either side; else something typed. */
  readonly isFormula: boolean
}

/** A note of the one state that the other does not hold: there is none on that cell, or another. */
export interface NoteDifference {
  readonly now: CellAddress
  readonly before: Note
  readonly after: Note | null
}

/** What differs between two states: cells, notes, and what has come or gone as a whole. */
export interface Compared {
  readonly cells: readonly Difference[]
  readonly notes: readonly NoteDifference[]
  /** "sheet Losses", "row Brook End of Plantings", "column Why closed of Plantings". */
  readonly added: readonly string[]
  readonly removed: readonly string[]
}

/**
 * Compares two states of a workbook. Sheets are told by their names, rows by the name in their first column and, where it
 * stands several times, by which of them it is, columns by their headings: what was moved is no difference.
 */
export function compare(before: Document, after: Document): Compared {
  const cells: Difference[] = []
  const notes: NoteDifference[] = []
  const added: string[] = []
  const removed: string[] = []
  const sheetOf = ({sheets}: Document, name: string) => sheets.findIndex((one) => one.name === name)
  for (const {name} of before.sheets) if (sheetOf(after, name) < 0) removed.push(`sheet ${name}`)
  for (const [now, sheet] of after.sheets.entries()) {
    const was = sheetOf(before, sheet.name)
    if (was < 0) {
      added.push(`sheet ${sheet.name}`)
      continue
    }
    const [old, rows] = [rowsByKey(before.sheets[was]!), rowsByKey(sheet)]
    const [oldCols, cols] = [colsByHeading(before.sheets[was]!), colsByHeading(sheet)]
    for (const [key, row] of old) if (!rows.has(key)) removed.push(rowWords(key, row, sheet.name))
    for (const [key, row] of rows) if (!old.has(key)) added.push(rowWords(key, row, sheet.name))
    for (const heading of oldCols.keys())
      if (!cols.has(heading)) removed.push(`column ${heading} of ${sheet.name}`)
    for (const heading of cols.keys())
      if (!oldCols.has(heading)) added.push(`column ${heading} of ${sheet.name}`)
    for (const [key, row] of rows)
      for (const [heading, col] of cols) {
        const [oldRow, oldCol] = [old.get(key), oldCols.get(heading)]
        if (oldRow === undefined || oldCol === undefined) continue
        const at = {sheet: now, row, col}
        const from = {sheet: was, row: oldRow, col: oldCol}
        const difference = differenceOf(before, from, after, at)
        if (difference) cells.push(difference)
        const note = noteDifference(extraAt(before, from)?.note, extraAt(after, at)?.note ?? null)
        if (note) notes.push({now: at, ...note})
      }
  }
  return {cells, notes, added, removed}
}

/** On which side a cell was changed since the state that both began from, and what it held then. */
export interface Side {
  readonly side: "here" | "there" | "both"
  readonly began: Content
}

/** Tells of the differences between another copy and this workbook on which side each came about. */
export function sidesOf(base: Document, there: Document, here: Document): (one: Difference) => Side {
  const [ours, theirs] = [changedSince(base, here), changedSince(base, there)]
  return ({was, now}) => {
    const [own, other] = [ours.get(placeIn(now)), theirs.get(placeIn(was))]
    const began = (own ?? other)?.before ?? null
    if (!own === !other) return {side: "both", began}
    return {side: own ? "here" : "there", began}
  }
}

const changedSince = (base: Document, later: Document) =>
  new Map(compare(base, later).cells.map((one) => [placeIn(one.now), one]))

const placeIn = (at: CellAddress | null) => (at ? `${at.sheet} ${at.row} ${at.col}` : "")

/** A note that was brought in stands within the other, and is no difference any more. */
const noteDifference = (before: Note | undefined, after: Note | null) =>
  before && !after?.text.includes(before.text) ? {before, after} : null

/** A row that follows the formula of its column holds that: it differs where one was typed over, or the formula was changed. */
function differenceOf(
  before: Document,
  was: CellAddress,
  after: Document,
  now: CellAddress,
): Difference | null {
  const [old, held] = [contentAt(before, was), contentAt(after, now)]
  const [oldFormula, formula] = [formulaIn(before, was), formulaIn(after, now)]
  if (old === COLUMN_FORMULA && held === COLUMN_FORMULA) return columnDifference(before, was, after, now)
  if (old === held) return null
  if (oldFormula !== null && formula !== null && meanAlike(before, was, after, now)) return null
  return {
    was,
    now,
    before: oldFormula ?? old,
    after: formula ?? held,
    isFormula: oldFormula !== null || formula !== null,
  }
}

/** A changed formula of a column is one difference, told in its first row. */
function columnDifference(
  before: Document,
  was: CellAddress,
  after: Document,
  now: CellAddress,
): Difference | null {
  if (now.row !== 0) return null
  const [old, formula] = [
    before.sheets[was.sheet]!.columns[was.col]!.formula ?? null,
    after.sheets[now.sheet]!.columns[now.col]!.formula ?? null,
  ]
  return old === formula || meanAlike(before, was, after, now)
    ? null
    : {was, now, before: old, after: formula, isFormula: true}
}

/** Whether two formulas read the same in the words of the headings: what only moved is pointed at by other letters. */
const meanAlike = (before: Document, was: CellAddress, after: Document, now: CellAddress) =>
  originOf({document: before}, was).inWords === originOf({document: after}, now).inWords

/** The rows of a sheet by their names, each with a count where a name stands again. */
function rowsByKey({rows}: Sheet): ReadonlyMap<string, number> {
  const seen = new Map<string, number>()
  return new Map(
    rows.map((row, i) => {
      const name = typeof row[0] === "string" && row[0] !== COLUMN_FORMULA ? row[0] : String(row[0] ?? "")
      const count = (seen.get(name) ?? 0) + 1
      seen.set(name, count)
      return [`${name}\n${count}`, i]
    }),
  )
}

function rowWords(key: string, row: number, sheet: string): string {
  const [name] = key.split("\n")
  return `row ${name === "" || name === COLUMN_FORMULA ? row + 1 : name} of ${sheet}`
}

const colsByHeading = ({columns}: Sheet): ReadonlyMap<string, number> =>
  new Map(columns.map(({heading}, col) => [heading, col]))
