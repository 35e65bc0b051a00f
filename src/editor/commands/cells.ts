import {isoDate} from "../../workbook/clock"
import {
  COLUMN_FORMULA,
  columnWith,
  contentAt,
  isFormula,
  isTypedOver,
  type CellAddress,
  type Content,
  type Document,
  type Part,
} from "../../workbook/document"
import type {Entry} from "../../workbook/edit"
import {chosenCells} from "../block"
import type {Command} from "../store"
import {entering, entryName} from "../words"

/**
 * Puts content in a cell; does nothing when the cell already holds it. A named value that is set anew has the day of `now` and,
 * where it had another tag, is tagged as typed.
 */
export const enterContent =
  (at: CellAddress, content: Content, now = new Date()): Command =>
  ({document}) => {
    if (contentAt(document, at) === content) return null
    const cells = [{at, content}, ...setAnew(document, at, content, now)]
    const name = entryName(document, cells.slice(0, 1))
    return {type: "enter", cells, ...(cells.length > 1 ? {name} : {})}
  }

/** What goes with the value of a named value: its day and its tag. */
function setAnew(document: Document, at: CellAddress, content: Content, now: Date): Entry[] {
  const sheet = document.sheets[at.sheet]
  if (!sheet?.names || at.col !== 1 || content === null || isFormula(content)) return []
  const put = (part: Part, what: string): Entry[] => {
    const col = columnWith(document, at.sheet, part)
    const held = {...at, col}
    return col < 0 || contentAt(document, held) === what ? [] : [{at: held, content: what}]
  }
  return [...put("named on", isoDate(now)), ...put("named tag", "typed")]
}

/** Whether typing here would put a number over a formula of the column: such a cell is guarded. */
export const isGuarded =
  (at: CellAddress) =>
  ({document}: Parameters<Command>[0]): boolean =>
    document.sheets[at.sheet]?.columns[at.col]?.formula !== undefined &&
    (contentAt(document, at) === COLUMN_FORMULA || at.row >= document.sheets[at.sheet]!.rows.length)

/** Empties the chosen cells. Worked-out cells stay as they are. */
export const clearCells: Command = (state) => {
  const cells = [...chosenCells(state)].filter(
    (at) => !isGuarded(at)(state) && contentAt(state.document, at) !== null,
  )
  return entering(
    state.document,
    "emptying",
    cells.map((at) => ({at, content: null})),
  )
}

/** Gives the chosen cells that are typed over the formula of their column again. */
export const putFormulaBack: Command = (state) => {
  const cells = [...chosenCells(state)].filter((at) => isTypedOver(state.document, at))
  return entering(
    state.document,
    "formulas",
    cells.map((at) => ({at, content: COLUMN_FORMULA})),
  )
}
