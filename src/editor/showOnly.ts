import {regionOf} from "../workbook/region"
import {cellColumn} from "./cellColumn"
import {planSheet} from "../workbook/plan"
import {textOf} from "./display"
import type {Store} from "./store"

/** Shows only the rows that have in the chosen column what the chosen cell has. */
export function showOnlyLikeThis(store: Store) {
  const {document, cell} = store.getState()
  if (planSheet(document) === cell.sheet)
    return store.turn(() => ({said: "The season plan shows all its plantings, beside their calendar."}))
  const {columns, rows} = document.sheets[cell.sheet]!
  const column = columns[cell.col]!
  const text = (row: number) => {
    const at = {...cell, row}
    return textOf(
      store.valueAt(at),
      cellColumn(document, at),
      store.workbook.isDateAt(at),
      regionOf(document),
    )
  }
  if (cell.row >= rows.length) return store.turn(() => ({said: "The next row to fill is like no other."}))
  const alike = [...rows.keys()].filter((row) => text(row) === text(cell.row))
  const words = `${column.heading} is ${text(cell.row) || "blank"}`
  store.turn(() => ({
    only: {sheet: cell.sheet, rows: alike, words},
    reach: null,
    said: `${alike.length} of ${rows.length} rows shown: ${words}.`,
  }))
}

export const showAllRows = (store: Store) =>
  store.turn(() => ({only: null, reach: null, said: "All rows are shown."}))
