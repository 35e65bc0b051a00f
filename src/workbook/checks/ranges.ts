import {contentAt, isFormula, sheetNamed, type CellAddress, type Content, type Document} from "../document"
import {formulaText, moved, piecesOf, referenceText, type Reference} from "../formula"
import {formulaIn, piecesIn} from "../cells"
import {writtenName, type Checked, type Written} from "./checked"
import type {Finding} from "./finding"

/**
 * Ranges of fixed rows that stop short of their block, or run past it over a blank row, or count a total together with its
 * parts. A range that moves along with its row, as in a running mean, is meant to be of its length.
 */
export function ranges(checked: Checked): Finding[] {
  return checked.written.flatMap((written) =>
    piecesOf(written.formula).flatMap((piece): Finding[] => {
      const range = typeof piece === "string" ? null : spanOf(checked.document, written, piece)
      if (!range || isRunning(checked.document, written, range.reference)) return []
      const odd = shortOf(checked, written, range) ?? pastBlock(checked, range) ?? totalWithin(checked, range)
      if (!odd) return []
      const sentence = `${writtenName(checked, written)} reads ${referenceText(range.reference)}: ${odd.why}`
      return [{rule: "range", cells: [written.at], sentence, ...(odd.fix && {fix: odd.fix})}]
    }),
  )
}

interface Span {
  readonly reference: Reference
  readonly sheet: number
  readonly top: number
  readonly bottom: number
  readonly cols: readonly number[]
}

interface Odd {
  readonly why: string
  readonly fix?: Finding["fix"]
}

function spanOf(document: Document, {at}: Written, reference: Reference): Span | null {
  const {from, to, isRange} = reference
  if (!isRange || from.row === null || to.row === null || from.col === null || to.col === null) return null
  const sheet = reference.sheet === null ? at.sheet : sheetNamed(document.sheets, reference.sheet)
  if (sheet < 0 || from.row === to.row) return null
  const [top, bottom] = [Math.min(from.row, to.row), Math.max(from.row, to.row)]
  const [first, last] = [Math.min(from.col, to.col), Math.max(from.col, to.col)]
  const cols = Array.from({length: last - first + 1}, (_, i) => first + i)
  return {reference, sheet, top, bottom, cols}
}

/** Whether the range moves along from row to row. */
function isRunning(document: Document, {at, formula, stands}: Written, {from, to}: Reference): boolean {
  if (from.rowFixed && to.rowFixed) return false
  if (stands !== "cell") return stands === "column"
  return [-1, 1].some((down) => contentAt(document, {...at, row: at.row + down}) === moved(formula, down, 0))
}

/** Numbers just above or below the range, of the kind that it holds at that end. */
function shortOf({document}: Checked, written: Written, range: Span): Odd | null {
  const {reference, sheet, top, bottom, cols} = range
  const goesOn = (end: number, row: number) =>
    cols.every((col) => {
      const [inside, beside] = [
        {sheet, row: end, col},
        {sheet, row, col},
      ].map((at) => contentAt(document, at))
      return isLike(inside!, beside!) && !readsColumn(document, {sheet, row, col}, range)
    }) && !(written.stands === "cell" && written.at.sheet === sheet && written.at.row === row)
  let [first, last] = [top, bottom]
  while (goesOn(bottom, last + 1)) last++
  while (first > 0 && goesOn(top, first - 1)) first--
  if (first === top && last === bottom) return null
  const [missed, end] = last > bottom ? [bottom + 1, last] : [first, top - 1]
  const rows = missed === end ? `row ${missed + 1} holds` : `rows ${missed + 1} to ${end + 1} hold`
  const wider = widened(reference, first, last)
  const isCell = written.stands === "cell"
  return {
    why: `it stops short, ${rows} numbers too`,
    ...(isCell && {
      fix: {
        words: `Widen it to ${referenceText(wider)}`,
        edit: {
          type: "enter",
          cells: [{at: written.at, content: withRange(written.formula, reference, wider)}],
        },
      },
    }),
  }
}

const isLike = (inside: Content, beside: Content) =>
  inside !== null &&
  beside !== null &&
  (typeof beside === "number" || isFormula(beside)) &&
  isFormula(inside) === isFormula(beside)

/** Whether a cell reads its own column within the range, as a total does. */
const readsColumn = (document: Document, at: CellAddress, range: Span) =>
  (piecesIn(document, at) ?? []).some((piece) => {
    if (typeof piece === "string" || piece.from.col !== at.col || !piece.isRange) return false
    const sheet = piece.sheet === null ? at.sheet : sheetNamed(document.sheets, piece.sheet)
    return (
      sheet === at.sheet && (piece.from.row ?? 0) <= range.bottom && (piece.to.row ?? Infinity) >= range.top
    )
  })

function widened({from, to, ...rest}: Reference, first: number, last: number): Reference {
  const isDown = (from.row ?? 0) <= (to.row ?? 0)
  return {
    ...rest,
    from: {...from, row: isDown ? first : last},
    to: {...to, row: isDown ? last : first},
  }
}

const withRange = (formula: string, was: Reference, now: Reference) =>
  formulaText(piecesOf(formula).map((piece) => (piece === was ? now : piece)))

/** A wholly blank row parts two blocks. */
function pastBlock({document}: Checked, {sheet, top, bottom, cols}: Span): Odd | null {
  const {rows} = document.sheets[sheet]!
  const isBlank = (row: number) => (rows[row] ?? []).every((content) => content === null)
  const holds = (row: number) => cols.some((col) => (rows[row]?.[col] ?? null) !== null)
  for (let row = top + 1; row < Math.min(bottom, rows.length); row++)
    if (isBlank(row) && holds(row - 1))
      for (let next = row + 1; next <= bottom; next++)
        if (holds(next)) return {why: `it runs past its block, over the blank row ${row + 1}`}
  return null
}

/** A cell within the range that sums others of it. */
function totalWithin({document}: Checked, range: Span): Odd | null {
  for (let row = range.top; row <= range.bottom; row++)
    for (const col of range.cols) {
      const at = {sheet: range.sheet, row, col}
      const formula = formulaIn(document, at)
      if (formula !== null && /^=SUM\(/i.test(formula) && readsColumn(document, at, range))
        return {why: `it counts the total in row ${row + 1} together with its parts`}
    }
  return null
}
