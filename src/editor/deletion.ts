import {columnWith, isFormula, type CellAddress, type Document} from "../workbook/document"
import {withColumnsRemoved} from "../workbook/columns"
import {editRefused, type Edit} from "../workbook/edit"
import {revised} from "../workbook/revised"
import {withRowsRemoved} from "../workbook/rows"
import {withSheetRemoved} from "../workbook/sheets"
import {addressText, formulaIn} from "../workbook/cells"
import {chosenBlock} from "./block"
import {removeRows} from "./commands/rows"
import {namesMet} from "./namesInUse"
import {soughtAs} from "../workbook/plantingName"
import type {Store} from "./store"

/** What rests on rows that are to be taken out. */
export interface Uses {
  /** Formulas whose cell would be gone: they would say #REF!. */
  readonly broken: readonly CellAddress[]
  /** Rows of other sheets that go by the name of a row: the first of each sheet, and how many there are. */
  readonly named: readonly {readonly at: CellAddress; readonly name: string; readonly count: number}[]
}

/** The formulas that say #REF! afterwards and did not before, by where they stand now. `home` tells where a cell stood. */
export function newlyBroken(
  document: Document,
  after: Document,
  home: (at: CellAddress) => CellAddress = (at) => at,
): readonly CellAddress[] {
  const broken: CellAddress[] = []
  for (const [sheet, {rows}] of after.sheets.entries())
    for (const [row, contents] of rows.entries())
      for (const [col, content] of contents.entries()) {
        if (!isFormula(content)) continue
        const was = home({sheet, row, col})
        const lost = formulaIn(after, {sheet, row, col})?.includes("#REF!")
        if (lost && !formulaIn(document, was)?.includes("#REF!")) broken.push(was)
      }
  return broken
}

/** What uses the rows from `first`, `count` of them, beyond ranges, which shrink. */
export function usesOfRows(document: Document, sheet: number, first: number, count: number): Uses {
  const after = withRowsRemoved(document, sheet, first, count)
  const broken = newlyBroken(document, after, (at) =>
    at.sheet === sheet && at.row >= first ? {...at, row: at.row + count} : at,
  )
  const gone = document.sheets[sheet]!.rows.slice(first, first + count)
  const names = new Map(
    gone.flatMap(([key]) =>
      typeof key === "string" && key && !isFormula(key) ? [[soughtAs(key), key] as const] : [],
    ),
  )
  for (const [key] of document.sheets[sheet]!.rows.toSpliced(first, count)) names.delete(soughtAs(key))
  const named = document.sheets.flatMap(({rows}, s) =>
    s === sheet
      ? []
      : [...names].flatMap(([sought, name]) => {
          const places = rows.flatMap(([key], row) => (soughtAs(key) === sought ? [row] : []))
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
  const met = namesMet(document, edit)
  if (!broken.length && !named.length && !met) return void store.run(removeRows)
  const {rows} = chosenBlock(state)
  const what = rows[0] === rows[1] ? "this row" : "these rows"
  const plantings = broken.length ? null : plantingsGone(document, edit, named)
  const links = [
    ...named.map(({at, name, count}) => ({
      at,
      words: `${name} on ${document.sheets[at.sheet]!.name}${count > 1 ? `, ${count} rows` : ""}`,
    })),
    ...broken.slice(0, MOST_LINKS).map((at) => ({at, words: addressText(document, at)})),
    ...(met?.links ?? []),
  ]
  const sentences = [
    met?.asks,
    plantings?.asks ?? (named.length ? `What is in ${what} goes by its name on other sheets too.` : ""),
    broken.length
      ? `${broken.length} ${broken.length === 1 ? "formula points" : "formulas point"} at ${what} alone and would say #REF!.`
      : "",
    plantings ? "" : `Delete ${what} all the same?`,
  ]
  const asks = sentences.filter(Boolean).join(" ")
  const yes = plantings ? "Here alone" : edit.count === 1 ? "Delete the row" : `Delete ${edit.count} rows`
  const rather = plantings && {
    words: edit.count === 1 ? "Delete it everywhere" : "Delete them everywhere",
    edit: plantings.edit,
  }
  store.turn(() => ({question: {asks, yes, edit, links, ...(rather && {rather})}, said: asks}))
}

/**
 * The edit that takes plantings out of the sheet of plantings and with them every row that goes by their names, and what
 * to ask of it; null on other sheets, and where a formula would lose its cell by it.
 */
function plantingsGone(document: Document, edit: Edit & {type: "removeRows"}, named: Uses["named"]) {
  const {sheets} = document
  const own = columnWith(document, edit.sheet, "name of planting")
  if (own < 0 || named.length === 0) return null
  const names = new Set(named.map(({name}) => soughtAs(name)))
  const {heading} = sheets[edit.sheet]!.columns[own]!
  const others = sheets.flatMap(({columns, rows}, sheet) => {
    const cols = columns.flatMap((column, col) => (col === 0 || column.heading === heading ? [col] : []))
    const places = rows.flatMap((row, r) => (cols.some((col) => names.has(soughtAs(row[col]))) ? [r] : []))
    return places.length && sheet !== edit.sheet ? [{sheet, places}] : []
  })
  const edits = others.flatMap(({sheet, places}) =>
    places.toReversed().map((first) => ({type: "removeRows", sheet, first, count: 1}) as const),
  )
  const gone = new Map(others.map(({sheet, places}) => [sheet, places]))
  gone.set(edit.sheet, span(edit.first, edit.count))
  const isOne = names.size === 1
  const who = isOne ? named[0]!.name : `${names.size} plantings`
  const several: Edit = {type: "several", edits: [edit, ...edits], name: `${who} deleted`}
  const home = (at: CellAddress) => ({...at, row: rowBefore(at.row, gone.get(at.sheet) ?? [])})
  if (newlyBroken(document, revised(document, several), home).length) return null
  const rows = edits.length === 1 ? "1 other row" : `${edits.length} other rows`
  const on = others.length === 1 ? "1 sheet" : `${others.length} sheets`
  const [stands, it, its] = isOne ? ["stands", "it", "its name"] : ["stand", "them", "their names"]
  const asks =
    `${who} ${stands} in ${rows} on ${on}, which find ${it} by ${its}. ` +
    `Delete ${it} there too, with all that was measured and recorded of ${it}?`
  return {edit: several, asks}
}

/** Where a row stood before others, in rising order, were taken out. */
const rowBefore = (row: number, gone: readonly number[]) =>
  gone.reduce((before, one) => (one <= before ? before + 1 : before), row)

/** Takes the chosen columns out; where formulas or pictures rest on them, says so and asks first. */
export function deleteColumns(store: Store) {
  const {document, cell} = store.getState()
  const {sheet} = cell
  const [first, last] = chosenBlock(store.getState()).cols
  const count = last - first + 1
  const edit = {type: "removeColumns", sheet, first, count} as const
  const refused = editRefused(document, edit)
  if (refused !== null) return store.turn(() => ({said: `${refused}.`}))
  const broken = newlyBroken(document, withColumnsRemoved(document, sheet, first, count), (at) =>
    at.sheet === sheet && at.col >= first ? {...at, col: at.col + count} : at,
  )
  const gone = document.sheets[sheet]!.columns.slice(first, last + 1)
  const inPictures = gone.some(({part}) => part !== undefined)
  if (!broken.length && !inPictures) return void store.run(() => edit)
  const what = count === 1 ? `column ${gone[0]!.heading}` : `${count} columns`
  ask(store, edit, broken, [
    inPictures ? "The pictures and studies take numbers from there." : "",
    brokenWords(broken.length, what),
    `Delete ${what} all the same?`,
  ])
}

/** Takes the open sheet out; says which formulas rest on it and asks first. */
export function deleteSheet(store: Store) {
  const {document, cell} = store.getState()
  const edit = {type: "removeSheet", sheet: cell.sheet} as const
  const refused = editRefused(document, edit)
  if (refused !== null) return store.turn(() => ({said: `${refused}.`}))
  const {name, rows} = document.sheets[cell.sheet]!
  const broken = newlyBroken(document, withSheetRemoved(document, cell.sheet), (at) =>
    at.sheet >= cell.sheet ? {...at, sheet: at.sheet + 1} : at,
  )
  ask(store, edit, broken, [
    `Sheet ${name} goes, with its ${rows.length} ${rows.length === 1 ? "row" : "rows"}.`,
    brokenWords(broken.length, "it"),
    "Delete it?",
  ])
}

const brokenWords = (count: number, what: string) =>
  count ? `${count} ${count === 1 ? "formula points" : "formulas point"} at ${what} and would say #REF!.` : ""

function ask(store: Store, edit: Edit, broken: readonly CellAddress[], sentences: readonly string[]) {
  const {document} = store.getState()
  const asks = sentences.filter(Boolean).join(" ")
  const links = broken.slice(0, MOST_LINKS).map((at) => ({at, words: addressText(document, at)}))
  store.turn(() => ({question: {asks, yes: "Delete", edit, links}, said: asks}))
}

const span = (first: number, count: number) => Array.from({length: count}, (_, i) => first + i)

const MOST_LINKS = 8
