import {chosenBlock} from "../block"
import type {Command} from "../store"

/** Puts blank rows above the chosen ones, as many as are chosen. */
export const insertRowsAbove: Command = (state) => {
  const {sheet, rows} = chosenBlock(state)
  return {type: "insertRows", sheet, before: rows[0], count: rows[1] - rows[0] + 1}
}

/** Takes the chosen rows out. */
export const removeRows: Command = (state) => {
  const {sheet, rows} = chosenBlock(state)
  const last = Math.min(rows[1], state.document.sheets[sheet]!.rows.length - 1)
  return rows[0] <= last ? {type: "removeRows", sheet, first: rows[0], count: last - rows[0] + 1} : null
}
