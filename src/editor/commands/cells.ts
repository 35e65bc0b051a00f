import {COLUMN_FORMULA, contentAt, isTypedOver, type CellAddress, type Content} from "../../workbook/document"
import {chosenCells} from "../block"
import type {Command, EditorState} from "../store"
import {entering} from "../words"

/** Puts content in a cell; does nothing when the cell already holds it. */
export const enterContent =
  (at: CellAddress, content: Content): Command =>
  ({document}) =>
    contentAt(document, at) === content ? null : {type: "enter", cells: [{at, content}]}

/** Whether typing here would put a number over a formula of the column: such a cell is guarded. */
export const isGuarded =
  (at: CellAddress) =>
  ({document}: Pick<EditorState, "document">): boolean =>
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
