import {HyperFormula} from "hyperformula"
import {createStore} from "../../src/editor/store"
import {isGuarded} from "../../src/editor/commands/cells"
import type {CellMove} from "../../src/workbook/cellsMoved"
import {
  COLUMN_FORMULA,
  contentAt,
  isSameCell,
  type CellAddress,
  type Content,
  type Document,
} from "../../src/workbook/document"
import {editRefused, type Edit} from "../../src/workbook/edit"
import {readFile, writeFile} from "../../src/workbook/file"
import {columnLetters, sheetText} from "../../src/workbook/formula"
import {isFault, type Value} from "../../src/workbook/value"
import {addressText, formulaIn} from "../../src/workbook/cells"
import {revised} from "../../src/workbook/revised"
import {Workbook} from "../../src/workbook/workbook"
import {column, documentOf, seeded, sheet} from "./documents"

export const seeds = (count: number) => Array.from({length: count}, (_, i) => i + 1)
const EDITS = 12 // chosen: enough for edits to meet one another

/** Three sheets that look at one another in every way: the middle one has to be quoted, the last one names values. */
export const farm = documentOf(
  sheet(
    "Plan",
    [
      "Planting",
      column("Area", {unit: "ha"}),
      column("Twice", {formula: "=B1*2+Rate", total: "=SUM(C1:C4)+SUM('Root samples'!B:B)"}),
      column("Share", {formula: "=IF(SUM(B:B)=0,0,B1/SUM(B:B))"}),
      column("So far", {formula: "=SUM(B$1:B1)"}),
      column("Samples", {formula: "=SUM('Root samples'!$B$2:$B$5)+'Root samples'!C2"}),
      "Note",
    ],
    [
      ["Long Acre", 6.4, "=", "=", "=", "=", "=C1+1"],
      ["Well Field", 7.2, "=", "=", "=", "=", "007"],
      ["Sand Piece", 5, "=", 0.5, "=", "=", "2026-04-25"],
      ["Top Corner", 3, "=", "=", "=", "=B2+Fee", "=G3+7"],
    ],
  ),
  sheet(
    "Root samples",
    [
      column("Planting", {part: "picking planting"}),
      column("Reading", {kind: "measured", part: "picking weight"}),
      column("Sugar", {formula: "=B1*$B$1"}),
      "Note",
    ],
    [
      ["Long Acre", 412, "=", null],
      ["Long Acre", 388, "=", "=Plan!B3"],
      ["Well Field", null, "=", "=SUM(Plan!B1:B4)"],
      ["Well Field", 455, "=", "=SUM(Values!2:2)"],
      ["Sand Piece", 430, "=", "=SUM(Plan!E:E)"],
    ],
  ),
  sheet(
    "Values",
    ["Name", "Value"],
    [
      ["Rate", 0.95],
      ["Fee", "=Rate*10"],
      ["Start", "2026-04-25"],
    ],
    {names: true},
  ),
)

export type Random = () => number
export const below = (random: Random, count: number) => Math.floor(random() * count)
export const oneOf = <T>(random: Random, list: readonly T[]): T => list[below(random, list.length)]!

/** A reference of any form, on the sheet itself or another. */
export function anyReference(random: Random, {sheets}: Document, wholeRows = true): string {
  const {name, columns} = oneOf(random, sheets)
  const dollar = () => (random() < 0.3 ? "$" : "")
  const col = below(random, columns.length)
  const row = 1 + below(random, 6)
  const corner = (c: number, r: number) => `${dollar()}${columnLetters(c)}${dollar()}${r}`
  const to = Math.min(columns.length - 1, col + below(random, 2))
  const text = [
    () => corner(col, row),
    () => `SUM(${corner(col, row)}:${corner(to, row + below(random, 4))})`,
    () => `SUM(${dollar()}${columnLetters(col)}:${dollar()}${columnLetters(to)})`,
    ...(wholeRows ? [() => `SUM(${dollar()}${row}:${dollar()}${row + below(random, 3)})`] : []),
  ]
  const written = oneOf(random, text)()
  return random() < 0.5 ? written : written.replace(/^(SUM\()?/, `$1${sheetText(name)}!`)
}

export function anyContent(random: Random, document: Document): Content {
  const contents: readonly (() => Content)[] = [
    () => Math.round(random() * 1000) / 8,
    () => oneOf(random, ["Long Acre", "007", "50%", "12:30", "1/2", "TRUE", "'", " x "]),
    () => `2026-0${1 + below(random, 9)}-1${below(random, 10)}`,
    () => `=${anyReference(random, document)}+${anyReference(random, document)}*2`,
    () => `=IF(${anyReference(random, document)}>1,Rate,Fee)`,
    () => oneOf(random, [null, true, COLUMN_FORMULA]),
  ]
  return oneOf(random, contents)()
}

/** How each kind of edit is made up; null when there is nothing it could change. */
const acts: Record<Edit["type"], (random: Random, document: Document, sheet: number) => Edit | null> = {
  insertRows: (random, {sheets}, sheet) => ({
    type: "insertRows",
    sheet,
    before: below(random, sheets[sheet]!.rows.length + 1),
    count: 1 + below(random, 2),
  }),
  moveCells(random, document, sheet) {
    const {rows, columns} = document.sheets[sheet]!
    const target = random() < 0.6 ? sheet : below(random, document.sheets.length)
    const from = {sheet, row: below(random, rows.length + 1), col: below(random, columns.length)}
    const to = {
      sheet: target,
      row: below(random, document.sheets[target]!.rows.length + 1),
      col: below(random, document.sheets[target]!.columns.length),
    }
    const moves = movesOf(document, from, to, [1 + below(random, 3), 1 + below(random, 2)])
    return moves.length && !isSameCell(from, to) ? {type: "moveCells", moves} : null
  },
  removeRows(random, {sheets}, sheet) {
    const {length} = sheets[sheet]!.rows
    if (length < 2) return null
    const first = below(random, length)
    return {type: "removeRows", sheet, first, count: Math.min(1 + below(random, 2), length - first)}
  },
  moveRows: (random, {sheets}, sheet) => ({
    type: "moveRows",
    sheet,
    order: anyOrder(random, sheets[sheet]!.rows.length),
  }),
  insertColumns: (random, {sheets}, sheet) => ({
    type: "insertColumns",
    sheet,
    before: below(random, sheets[sheet]!.columns.length + 1),
    count: 1 + below(random, 2),
  }),
  removeColumns(random, {sheets}, sheet) {
    const {length} = sheets[sheet]!.columns
    const first = below(random, length)
    return {type: "removeColumns", sheet, first, count: Math.min(1 + below(random, 2), length - first)}
  },
  changeColumn: (random, {sheets}, sheet) => ({
    type: "changeColumn",
    sheet,
    col: below(random, sheets[sheet]!.columns.length),
    change: {
      heading: `Heading ${below(random, 90)}`,
      width: 3 + below(random, 9),
      unit: oneOf(random, ["ha", undefined]),
    },
  }),
  several(random, document) {
    const kinds = ["enter", "insertRows", "changeColumn"] as const
    const first = anyEdit(random, document, kinds)
    const second = anyEdit(random, revised(document, first), kinds)
    return {type: "several", edits: [first, second], name: "two at once"}
  },
  changeCases(random, {sheets}, sheet) {
    const {rows, columns} = sheets[sheet]!
    if (!rows.length) return null
    const at = {sheet, row: below(random, rows.length), col: below(random, columns.length)}
    const names = oneOf(random, [[], ["Low price"], ["Low price", "Frost"]])
    const changes = names.length
      ? [
          {at, cases: {[names[0]!]: random()}},
          {at, compared: true as const},
        ]
      : []
    return {type: "changeCases", names, changes, name: "cases"}
  },
  keepColumns: (random, {sheets}, sheet) => ({
    type: "keepColumns",
    sheet,
    count: below(random, sheets[sheet]!.columns.length),
  }),
  changeExtras(random, {sheets}, sheet) {
    const {rows, columns} = sheets[sheet]!
    if (!rows.length) return null
    const at = {sheet, row: below(random, rows.length), col: below(random, columns.length)}
    const note = oneOf(random, [{text: `Note ${below(random, 90)}`, written: "2026-05-25T08:00:00Z"}, null])
    return {
      type: "changeExtras",
      changes: [{at, ...oneOf(random, [{note}, {format: 2}, {note, format: null}])}],
    }
  },
  addSheet: (random) => ({type: "addSheet", name: anySheetName(random), group: "Trial"}),
  renameSheet: (random, _, sheet) => ({type: "renameSheet", sheet, name: anySheetName(random)}),
  moveSheet: (random, {sheets}, from) => ({type: "moveSheet", from, to: below(random, sheets.length)}),
  copySheet: (random, _, sheet) => ({type: "copySheet", sheet, name: anySheetName(random)}),
  removeSheet: (_, __, sheet) => ({type: "removeSheet", sheet}),
  setRegion: (random) => ({
    type: "setRegion",
    region: oneOf(random, [{}, {decimal: ","}, {measures: "US", currency: "$"}, {dates: "day first"}]),
  }),
  makeOwn: () => ({type: "makeOwn"}),
  addField(random, {field = []}) {
    const id = below(random, 40).toString(16).padStart(32, "0")
    const entered = "2026-05-25T06:12:00.000Z"
    const takesBack = field.length && random() < 0.3 ? oneOf(random, field).id : undefined
    const row = {
      "picking planting": oneOf(random, ["key 1", "Long Acre"]),
      "picking day": "2026-05-25",
      "picking weight": below(random, 3),
    }
    const entry = {id, device: "Phone", entered, ...(takesBack === undefined ? {row} : {takesBack})}
    return {
      type: "addField",
      entries: [entry],
      from: oneOf(random, ["here", "elsewhere"]),
      name: "field rows",
    }
  },
  enter(random, document, sheet) {
    const {rows, columns, names} = document.sheets[sheet]!
    const cells = Array.from({length: 1 + below(random, 2)}, () => {
      const at = {sheet, row: below(random, rows.length + 1), col: below(random, columns.length)}
      if (names && at.col === 0)
        return {at, content: oneOf(random, ["Rate", "Fee", "Price", "rate", "Q10", "RC", null])}
      const content = anyContent(random, document)
      const isFormulaless = content === COLUMN_FORMULA && columns[at.col]!.formula === undefined
      return {at, content: isFormulaless ? null : content}
    })
    return {type: "enter", cells}
  },
}

export const EVERY_KIND = Object.keys(acts) as readonly Edit["type"][]

/** One act of a planner, anywhere in the document; now and then on a name or on the row below the last. */
export function anyEdit(random: Random, document: Document, kinds = EVERY_KIND): Edit {
  for (;;) {
    const kind = random() < 0.4 ? "enter" : oneOf(random, kinds)
    const edit = acts[kind](random, document, below(random, document.sheets.length))
    if (edit && editRefused(document, edit) === null) return edit
  }
}

/** The moves of a block of so many rows and columns, of the cells that are not worked out, to those that are not. */
export function movesOf(document: Document, from: CellAddress, to: CellAddress, [height, width]: number[]) {
  const canHold = ({sheet, row, col}: CellAddress) =>
    document.sheets[sheet]!.columns[col] !== undefined && !isGuarded({sheet, row, col})({document})
  return Array.from({length: height! * width!}, (_, i): CellMove => {
    const [down, right] = [Math.floor(i / width!), i % width!]
    const at = {...from, row: from.row + down, col: from.col + right}
    return {
      from: at,
      to: {...to, row: to.row + down, col: to.col + right},
      content: contentAt(document, at),
    }
  }).filter((one) => canHold(one.from) && canHold(one.to))
}

/** The numbers below `count`, each once. */
export function anyOrder(random: Random, count: number): number[] {
  const left = Array.from({length: count}, (_, i) => i)
  return Array.from({length: count}, () => left.splice(below(random, left.length), 1)[0]!)
}

/** Some have to be quoted in a formula, some look like a cell or a word of the engine. */
const anySheetName = (random: Random) =>
  oneOf(random, [
    "Beds",
    "Two words",
    "It's",
    "2026",
    "\u00d6fen",
    "B2",
    "x-y",
    "TRUE",
    "plan",
    "Beds!",
    "a.b",
  ])

/** All values of a workbook, by address, and its totals; of an error its code and sentence. */
export function valuesOf(workbook: Workbook): Record<string, unknown> {
  const values: Record<string, unknown> = {}
  for (const [index, {rows, columns}] of workbook.document.sheets.entries())
    for (const row of rows.keys())
      for (const col of columns.keys()) {
        const at = {sheet: index, row, col}
        const value = workbook.valueAt(at)
        values[addressText(workbook.document, at)] = plain(value)
      }
  for (const [index, {name, columns}] of workbook.document.sheets.entries())
    for (const {heading, total} of columns)
      if (total !== undefined)
        values[`${name}, total of ${heading}`] = plain(workbook.evaluate(total, index) as Value)
  return values
}

export function reopened(document: Document): Workbook {
  const reading = readFile(writeFile(document))
  if ("refused" in reading) throw new Error(reading.refused)
  return new Workbook(reading.document)
}

const plain = (value: Value) => (isFault(value) ? `${value.code} ${value.reason}` : value)

/** The very same document; where acts of the field came, they stay known, and the rest is the same. */
function isSame(one: Document, other: Document): boolean {
  const rest = (document: Document) =>
    JSON.stringify(document, (key, value: unknown) => (["field", "act"].includes(key) ? undefined : value))
  return one === other || (one.field !== undefined && rest(one) === rest(other))
}

/**
 * Runs a session of edits of these kinds, undo and redo among them. What it leaves should be the values of the saved
 * workbook opened afresh; undone, the very document it began with, with its values; redone, what it left.
 */
export function session(seed: number, kinds = EVERY_KIND) {
  const random = seeded(seed)
  const store = createStore(farm)
  const before = valuesOf(store.workbook)
  for (let i = 0; i < EDITS; i++) {
    const act = random()
    if (act < 0.15) store.undo()
    else if (act < 0.25) store.redo()
    else store.run(({document}) => anyEdit(random, document, kinds))
  }
  const {document, undoable} = store.getState()
  const left = valuesOf(store.workbook)
  while (store.undo());
  const undone = {isStart: isSame(store.getState().document, farm), values: valuesOf(store.workbook)}
  for (const _ of undoable) store.redo()
  const redone = {isEnd: isSame(store.getState().document, document), values: valuesOf(store.workbook)}
  return {
    found: {left, undone, redone},
    wanted: {
      left: valuesOf(reopened(document)),
      undone: {isStart: true, values: before},
      redone: {isEnd: true, values: left},
    },
  }
}

/** The formulas of every cell, written out, by address. */
export function formulasOf(document: Document): Map<string, string> {
  const found = new Map<string, string>()
  for (const [index, {rows}] of document.sheets.entries())
    for (const [row, contents] of rows.entries())
      for (const col of contents.keys()) {
        const at = {sheet: index, row, col}
        const formula = formulaIn(document, at)
        if (formula !== null) found.set(addressText(document, at), formula)
      }
  return found
}

/** The engine's own copy of a document, every formula written out; it rewrites references by itself when its rows move. */
export function plainCopy(document: Document): HyperFormula {
  const written = document.sheets.map(({name, rows}, index) => [
    name,
    rows.map((contents, row) =>
      contents.map((content, col) => formulaIn(document, {sheet: index, row, col}) ?? content),
    ),
  ])
  return HyperFormula.buildFromSheets(Object.fromEntries(written), {
    licenseKey: "gpl-v3",
    useArrayArithmetic: true,
  })
}

/** The formulas of the engine's copy, by the addresses of the document. */
export function engineFormulas(engine: HyperFormula, document: Document): Map<string, string> {
  const found = new Map<string, string>()
  for (const [index, {name, rows, columns}] of document.sheets.entries())
    for (const row of rows.keys())
      for (const col of columns.keys()) {
        const formula = engine.getCellFormula({sheet: engine.getSheetId(name)!, row, col})
        if (formula !== undefined) found.set(addressText(document, {sheet: index, row, col}), formula)
      }
  return found
}

/**
 * A document with formulas of every form in free columns, the last row of each sheet filled so that the engine keeps
 * it. Without whole rows: where they overlap, the engine throws by itself.
 */
export function crowded(random: Random): Document {
  const sheets = farm.sheets.map((one) => ({
    ...one,
    rows: Array.from({length: 7}, (_, row) =>
      one.columns.map(({formula}, col) => {
        if (formula !== undefined && random() < 0.7) return COLUMN_FORMULA
        if (col === 0) return `key ${row}`
        return random() < 0.7
          ? `=${anyReference(random, farm, false)}+${anyReference(random, farm, false)}`
          : 1
      }),
    ),
  }))
  return {...farm, sheets}
}
