import {COLUMN_FORMULA, contentAt, isTypedOver, type CellAddress, type Content} from "../../workbook/document"
import type {Command} from "../store"

/** Puts content in a cell; does nothing when the cell already holds it. */
export const enterContent =
  (at: CellAddress, content: Content): Command =>
  ({document}) =>
    contentAt(document, at) === content ? null : {type: "enter", cells: [{at, content}]}

/** Whether typing here would put a number over a formula of the column: such a cell is guarded. */
export const isGuarded =
  (at: CellAddress) =>
  ({document}: Parameters<Command>[0]): boolean =>
    document.sheets[at.sheet]?.columns[at.col]?.formula !== undefined &&
    (contentAt(document, at) === COLUMN_FORMULA || at.row >= document.sheets[at.sheet]!.rows.length)

/** Empties the chosen cell. A guarded cell stays as it is. */
export const clearCell: Command = (state) =>
  isGuarded(state.cell)(state) ? null : enterContent(state.cell, null)(state)

/** Gives a typed-over cell the formula of its column again. */
export const putFormulaBack: Command = ({document, cell}) =>
  isTypedOver(document, cell) ? {type: "enter", cells: [{at: cell, content: COLUMN_FORMULA}]} : null
