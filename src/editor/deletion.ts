import {isFormula, type CellAddress, type Document} from "../workbook/document"
import {withRowsRemoved} from "../workbook/rows"
import {addressText, formulaIn} from "../workbook/workbook"
import {chosenBlock} from "./block"
import {removeRows} from "./commands/rows"
import type {Store} from "./store"

/** What rests on rows that are to be taken out. */
export interface Uses {
  /** Formulas whose cell would be gone: they would say #REF!. */
  readonly broken: readonly CellAddress[]
  /** Rows of other sheets that go by the name of a row: the first of each sheet, and how many there are. */
  readonly named: readonly {readonly at: CellAddress; readonly name: string; readonly count: number}[]
}

/** What uses the rows from `first`, `count` of them, beyond ranges, which shrink. */
export function usesOfRows(document: Document, sheet: number, first: number, count: number): Uses {
  const after = withRowsRemoved(document, sheet, first, count)
  const broken: CellAddress[] = []
  for (const [s, {rows}] of after.sheets.entries())
    for (const [r, contents] of rows.entries())
      for (const [col, content] of contents.entries()) {
        if (!isFormula(content)) continue
        const row = s === sheet && r >= first ? r + count : r
        const now = formulaIn(after, {sheet: s, row: r, col})
        if (!now?.includes("#REF!") || formulaIn(document, {sheet: s, row, col})?.includes("#REF!")) continue
        broken.push({sheet: s, row, col})
      }
  const gone = document.sheets[sheet]!.rows.slice(first, first + count)
  const names = new Set(
    gone.flatMap(([key]) => (typeof key === "string" && key && !isFormula(key) ? [key] : [])),
  )
  const still = new Set(document.sheets[sheet]!.rows.toSpliced(first, count).map(([key]) => key))
  const named = document.sheets.flatMap(({rows}, s) =>
    s === sheet
      ? []
      : [...names].flatMap((name) => {
          const places = rows.flatMap(([key], row) => (key === name && !still.has(name) ? [row] : []))
          return places.length ? [{at: {sheet: s, row: places[0]!, col: 0}, name, count: places.length}] : []
        }),
  )
  return {broken, named}
}

/** Takes the chosen rows out; where something rests on them, says what and asks first. */
export function deleteRows(store: Store) {
  const state = store.getState()
  const edit = removeRows(state)
  if (edit?.type !== "removeRows") return
  const {document, only} = state
  const hidden =
    only?.sheet === edit.sheet && span(edit.first, edit.count).some((row) => !only.rows.includes(row))
  if (hidden) {
    store.turn(() => ({
      said: "Between the chosen rows there are some that are not shown: show all rows, or choose one.",
    }))
    return
  }
  const {broken, named} = usesOfRows(document, edit.sheet, edit.first, edit.count)
  if (!broken.length && !named.length) return void store.run(removeRows)
  const {rows} = chosenBlock(state)
  const what = rows[0] === rows[1] ? "this row" : "these rows"
  const links = [
    ...named.map(({at, name, count}) => ({
      at,
      words: `${name} on ${document.sheets[at.sheet]!.name}${count > 1 ? `, ${count} rows` : ""}`,
    })),
    ...broken.slice(0, MOST_LINKS).map((at) => ({at, words: addressText(document, at)})),
  ]
  const sentences = [
    named.length ? `What is in ${what} goes by its name on other sheets too.` : "",
    broken.length
      ? `${broken.length} ${broken.length === 1 ? "formula points" : "formulas point"} at ${what} alone and would say #REF!.`
      : "",
    `Delete ${what} all the same?`,
  ]
  const asks = sentences.filter(Boolean).join(" ")
  store.turn(() => ({
    question: {asks, yes: edit.count === 1 ? "Delete the row" : `Delete ${edit.count} rows`, edit, links},
    said: asks,
  }))
}

const span = (first: number, count: number) => Array.from({length: count}, (_, i) => first + i)

const MOST_LINKS = 8
