import {chosenBlock} from "../block"
import {onlyRows} from "../selection"
import type {Command, EditorState} from "../store"

/** How many rows are chosen, of those that are shown. */
function chosenRowCount(state: EditorState): number {
  const {sheet, rows} = chosenBlock(state)
  const shown = onlyRows(state, sheet)
  return shown?.filter((row) => rows[0] <= row && row <= rows[1]).length ?? rows[1] - rows[0] + 1
}

/** What the acts on the chosen rows are called. */
export function rowActs(state: EditorState): {readonly above: string; readonly removal: string} {
  const count = chosenRowCount(state)
  return count > 1
    ? {above: `Put ${count} rows in above`, removal: `Delete ${count} rows`}
    : {above: "Put a row in above", removal: "Delete row"}
}

/** Puts blank rows above the chosen ones, as many as are chosen. */
export const insertRowsAbove: Command = (state) => {
  const {sheet, rows} = chosenBlock(state)
  return {type: "insertRows", sheet, before: rows[0], count: chosenRowCount(state)}
}

/** Takes the chosen rows out. */
export const removeRows: Command = (state) => {
  const {sheet, rows} = chosenBlock(state)
  const last = Math.min(rows[1], state.document.sheets[sheet]!.rows.length - 1)
  return rows[0] <= last ? {type: "removeRows", sheet, first: rows[0], count: last - rows[0] + 1} : null
}
