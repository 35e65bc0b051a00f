import type {Command} from "../store"

/** Puts a blank row above the chosen one. */
export const insertRowAbove: Command = ({cell: {sheet, row}}) => ({
  type: "insertRows",
  sheet,
  before: row,
  count: 1,
})

/** Takes the chosen row out. */
export const removeRow: Command = ({document, cell: {sheet, row}}) =>
  row < document.sheets[sheet]!.rows.length ? {type: "removeRows", sheet, first: row, count: 1} : null
