import {readsElsewhere, type FormulaPlace} from "../workbook/readsElsewhere"
import {sortOrder} from "../workbook/sorting"
import type {Document} from "../workbook/document"
import {addressText} from "../workbook/cells"
import {chosenBlock} from "./block"
import type {Store} from "./store"

const MOST_LINKS = 8

/** Sorts all rows of the open sheet by the chosen columns, the one on the left first; asks where formulas would read other cells. */
export function sortRows(store: Store, descending: boolean) {
  const {document, cell} = store.getState()
  const {sheet} = cell
  const {columns, rows} = document.sheets[sheet]!
  const [first, last] = chosenBlock(store.getState()).cols
  const keys = Array.from({length: last - first + 1}, (_, i) => ({col: first + i, descending}))
  const values = rows.map((_, row) => columns.map((_, col) => store.valueAt({sheet, row, col})))
  const order = sortOrder(values, keys)
  const mark = () => store.markSorted(sheet, keys)
  const markDone = () => {
    if (store.getState().document !== document) mark() // a reading copy asks instead
  }
  if (order.every((row, i) => row === i)) {
    mark()
    return store.turn(() => ({said: "The rows stand in that order already."}))
  }
  const edit = {type: "moveRows", sheet, order} as const
  const elsewhere = readsElsewhere(document, sheet, order)
  if (!elsewhere.length) {
    store.run(() => edit)
    return markDone()
  }
  const asks = `${elsewhere.length} ${elsewhere.length === 1 ? "formula reads" : "formulas read"} cells by their place and would read others then. Sort the rows all the same?`
  const links = elsewhere.slice(0, MOST_LINKS).map((place) => linkTo(document, place))
  store.turn(() => ({question: {asks, yes: "Sort the rows", edit, links, again: markDone}, said: asks}))
}

function linkTo(document: Document, {sheet, row, col}: FormulaPlace) {
  const {name, columns, rows} = document.sheets[sheet]!
  const at = {sheet, row: row ?? Math.max(0, rows.length - 1), col}
  return {at, words: row === null ? `total of ${columns[col]!.heading}, ${name}` : addressText(document, at)}
}
