import {describe, expect, it} from "vitest"
import {chooseBlock, chooseColumns, chooseRows, chosenBlock, type Block} from "../../src/editor/block"
import {emptied, filled} from "../../src/editor/blockActs"
import {copyChosen, pasteTable, readTable} from "../../src/editor/clipboard"
import {addCase, compareBy, putCaseIn, putInCase, removeCase} from "../../src/editor/commands/cases"
import {putFormulaBack} from "../../src/editor/commands/cells"
import {formatCells, keepColumns} from "../../src/editor/commands/columns"
import {fillDown, fillRight, fillSeries, STEPS} from "../../src/editor/commands/fill"
import {nameRefused, nameValue} from "../../src/editor/commands/names"
import {keepNote, settleNote} from "../../src/editor/commands/notes"
import {changeRegion} from "../../src/editor/commands/region"
import {insertRowsAbove} from "../../src/editor/commands/rows"
import {markCut} from "../../src/editor/cut"
import {deleteColumns, deleteRows, deleteSheet} from "../../src/editor/deletion"
import {answerRather, answerYes, keepEditing, startTyping} from "../../src/editor/editing"
import {findIn} from "../../src/editor/find"
import {replaceEdit, replacementsOf} from "../../src/editor/replace"
import {showAllRows, showOnlyLikeThis} from "../../src/editor/showOnly"
import {sortRows} from "../../src/editor/sortRows"
import {createStore, type Store} from "../../src/editor/store"
import type {Format} from "../../src/workbook/document"
import {editRefused, type Edit} from "../../src/workbook/edit"
import {readFile, writeFile} from "../../src/workbook/file"
import {seeded} from "../workbook/documents"
import {anyContent, below, farm, oneOf, reopened, seeds, valuesOf, type Random} from "../workbook/sessions"

const ACTS = 30 // chosen: each kind about once in a session

/** What a person types or another program has: numbers in both ways, dates, formulas, words that look like others. */
const anyText = (random: Random, {getState}: Store) =>
  oneOf(random, [
    () => String(Math.round(random() * 1000) / 8),
    () =>
      oneOf(random, ["3,5", "1,500", "12 kg", "10 ac", "50 %", "-2", "", " ", "'007", "TRUE", "=", "#N/A"]),
    () => oneOf(random, ["25 Apr", "2026-05-25", "3/4", "31/2", "Long Acre", "Rate", "It's \u201cso\u201d"]),
    () => oneOf(random, ["=SUM(", "=1/0", "=Rate*2", "=Nothing", "=B2", "=1.5;2", "=IF(B1>1;2;3)"]),
    () => String(anyContent(random, getState().document) ?? ""),
  ])()

const anyCell = (random: Random, {getState}: Store) => {
  const {document, cell} = getState()
  const sheet = random() < 0.2 ? below(random, document.sheets.length) : cell.sheet
  const {rows, columns} = document.sheets[sheet]!
  return {sheet, row: below(random, rows.length + 1), col: below(random, columns.length)}
}

function anyBlock(random: Random, store: Store): Block {
  const {sheet, row, col} = anyCell(random, store)
  const {rows, columns} = store.getState().document.sheets[sheet]!
  const to = (from: number, most: number) => Math.min(from + below(random, 4), most)
  return {sheet, rows: [row, to(row, rows.length)], cols: [col, to(col, columns.length - 1)]}
}

const anyFormat = (random: Random) =>
  oneOf<NonNullable<Format> | null>(random, [null, 2, "share", "date", "text"])

/** Makes an edit if it can be made, as the views ask before. */
const runAllowed = (store: Store, edit: Edit) =>
  editRefused(store.getState().document, edit) === null && store.run(() => edit)

/** What a person does at the sheet and beside it, on what is chosen; some of it does nothing, or asks. */
const acts: Record<string, (store: Store, random: Random) => unknown> = {
  type(store, random) {
    store.turn(startTyping(anyText(random, store)))
    if (!keepEditing(store, oneOf(random, [0, 1]), oneOf(random, [0, 1]))) answer(store, random)
    if (store.getState().editing) keepEditing(store, 1, 0) // Enter again: it may be sure now
    store.turn(() => ({editing: null}))
  },
  pasteFromHere(store, random) {
    const {plain} = copyChosen(store)
    if (random() < 0.3) emptied(store)
    store.turn(chooseBlock(anyBlock(random, store)))
    pasteTable(store, readTable(plain), {valuesOnly: random() < 0.3})
    answer(store, random)
    if (random() < 0.3) store.getState().offer?.act(store)
  },
  move(store, random) {
    const {plain, cells} = copyChosen(store)
    store.turn(markCut(cells))
    store.turn(chooseBlock(anyBlock(random, store)))
    pasteTable(store, readTable(plain))
    answer(store, random)
    if (random() < 0.3) pasteTable(store, readTable(plain)) // again, as copied
    answer(store, random)
  },
  pasteFromElsewhere(store, random) {
    const line = () => Array.from({length: 1 + below(random, 3)}, () => anyText(random, store)).join("\t")
    const plain = Array.from({length: 1 + below(random, 3)}, line).join("\r\n")
    pasteTable(store, readTable(plain))
    answer(store, random)
  },
  fillDown: (store) => filled(store, fillDown),
  fillRight: (store) => filled(store, fillRight),
  fillSeries: (store, random) =>
    filled(
      store,
      fillSeries(oneOf(random, [1, -7, 2]), oneOf(random, STEPS), oneOf(random, ["rows", "cols"])),
    ),
  empty: (store) => emptied(store),
  putFormulaBack: (store) => store.run(putFormulaBack),
  insertRows: (store) => store.run(insertRowsAbove),
  insertColumn(store) {
    const {sheet, col} = store.getState().cell
    runAllowed(store, {type: "insertColumns", sheet, before: col, count: 1})
  },
  deleteRows(store, random) {
    deleteRows(store)
    answer(store, random)
  },
  deleteColumns(store, random) {
    deleteColumns(store)
    answer(store, random)
  },
  sort(store, random) {
    sortRows(store, random() < 0.5)
    answer(store, random)
  },
  showOnly: (store) => showOnlyLikeThis(store),
  showAll: (store) => showAllRows(store),
  wholeRows: (store) => store.turn(chooseRows),
  wholeColumns: (store) => store.turn(chooseColumns),
  note(store, random) {
    const {document, cell} = store.getState()
    if (cell.row < document.sheets[cell.sheet]!.rows.length)
      store.run(keepNote(cell, oneOf(random, ["", "Ask the buyer", "two\nlines"]), "Ann"))
  },
  settle: (store) => store.run(settleNote(store.getState().cell)),
  format: (store, random) => store.run(formatCells(anyFormat(random))),
  keepColumns: (store) => store.run(keepColumns(store.getState().cell.col)),
  name(store, random) {
    const {document, cell} = store.getState()
    const name = oneOf(random, ["Price", "SUM", "Own_value", "Rate", "B2"])
    if (nameRefused(document, name, store.workbook.standardFunctions) === null)
      store.run(nameValue(cell, name))
  },
  rule(store, random) {
    const {sheet, col} = store.getState().cell
    const rule = oneOf(random, [{least: 0}, {least: 1, most: 40}, undefined])
    const change = {
      rule,
      format: anyFormat(random) ?? undefined,
      unit: oneOf(random, ["ha", "kg", undefined]),
    }
    store.run(() => ({type: "changeColumn", sheet, col, change}))
  },
  replace(store, random) {
    const query = oneOf(random, ["1", "Long", "Rate", "B", "note"])
    const by = oneOf(random, ["2", "", "Short", "=", "Fee"])
    const search = {query, where: "all", wholeCell: false, matchCase: false} as const
    const hits = findIn(store.workbook, search)
    const edit = replaceEdit(replacementsOf(store.workbook, hits, search, by), query, by)
    if (edit) store.run(() => edit)
  },
  region: (store, random) =>
    store.run(
      changeRegion(
        oneOf(random, [
          {decimal: ","},
          {decimal: undefined},
          {measures: "US"},
          {measures: undefined},
        ] as const),
      ),
    ),
  cases(store, random) {
    const {document, cell} = store.getState()
    const names = document.cases ?? []
    if (!names.length || cell.row >= document.sheets[cell.sheet]!.rows.length)
      return store.run(addCase(oneOf(random, ["Frost", "Low price"])))
    const name = oneOf(random, names)
    const commands = [
      putInCase(name, cell, below(random, 9)),
      compareBy(cell),
      putCaseIn(name),
      removeCase(name),
    ]
    return store.run(oneOf(random, commands))
  },
  copySheet: (store) =>
    runAllowed(store, {type: "copySheet", sheet: store.getState().cell.sheet, name: "Copy"}),
  deleteSheet(store, random) {
    if (random() < 0.3) deleteSheet(store)
    answer(store, random)
  },
  undo: (store) => store.undo(),
  redo: (store) => store.redo(),
}

/** Answers what is asked: mostly yes, at times with what was meant instead, or not at all. */
function answer(store: Store, random: Random) {
  if (random() < 0.7) answerYes(store, "counted twice", new Date("2026-05-25T08:00:00Z"))
  else if (random() < 0.5) answerRather(store)
  store.turn(() => ({question: null}))
}

/** What a row holds, for rows that nobody sees: a sort moves them, and rows that come or go show all again. */
const hiddenRows = ({getState}: Store) => {
  const {only, document} = getState()
  return only && document.sheets[only.sheet]!.rows.filter((_, row) => !only.rows.includes(row))
}
/** Acts that reach what is chosen alone. */
const ON_CHOSEN = new Set([
  "type",
  "pasteFromHere",
  "pasteFromElsewhere",
  "fillDown",
  "fillRight",
  "fillSeries",
  "empty",
])

/** Whether the chosen cells and the rows that are shown alone are there. */
function isInside({getState}: Store): boolean {
  const {document, only, ...state} = getState()
  const {rows, cols} = chosenBlock(state)
  const {rows: all, columns} = document.sheets[state.cell.sheet]!
  const isShown = !only || only.rows.every((row) => row < document.sheets[only.sheet]!.rows.length)
  return isShown && rows[1] <= all.length && cols[1] < columns.length
}

/** Runs a session of acts, and notes the acts that wrote where nobody looks. */
function session(seed: number) {
  const random = seeded(seed)
  const store = createStore(farm)
  const wroteUnseen: string[] = []
  for (let i = 0; i < ACTS; i++) {
    if (random() < 0.7) store.turn(chooseBlock(anyBlock(random, store)))
    const act = oneOf(random, Object.keys(acts))
    const [{only}, was] = [store.getState(), hiddenRows(store)]
    acts[act]!(store, random)
    const isSame = only && store.getState().only === only && ON_CHOSEN.has(act)
    if (isSame && JSON.stringify(hiddenRows(store)) !== JSON.stringify(was)) wroteUnseen.push(`${i} ${act}`)
  }
  return {store, wroteUnseen}
}

describe("what a person does", () => {
  it.each(seeds(60))("is undone to the very workbook, and done again to what it left (seed %i)", (seed) => {
    const {store, wroteUnseen} = session(seed)
    const {document, undoable} = store.getState()
    const left = valuesOf(store.workbook)
    expect(wroteUnseen).toEqual([])
    expect(isInside(store)).toBe(true)
    expect(left).toEqual(valuesOf(reopened(document)))
    expect(readFile(writeFile(document))).toEqual({document})

    while (store.undo());
    expect(store.getState().document).toBe(farm)
    expect(valuesOf(store.workbook)).toEqual(valuesOf(reopened(farm)))

    for (const _ of undoable) expect(store.redo()).toBe(true)
    expect(store.getState().document).toBe(document)
    expect(valuesOf(store.workbook)).toEqual(left)
  })
})
