import {
  DetailedCellError,
  ExportedCellChange,
  HyperFormula,
  type ExportedChange,
  type RawCellContent,
} from "hyperformula"
import {dayOf} from "../../functions/calendar"
import {registerCatalogue} from "../../functions/plugin"
import {withColumnsInserted, withColumnsRemoved} from "./columns"
import {
  COLUMN_FORMULA,
  contentAt,
  isFormula,
  sheetNamed,
  withSheet,
  type CellAddress,
  type Column,
  type Content,
  type Document,
} from "./document"
import {editRefused, type ColumnChange, type Edit, type Entry} from "./edit"
import {cellText, hasCellInBraces, movedDown, renamed, sheetText, withRowsAsCells} from "./formula"
import {recalculationOf, type Recalculation} from "./recalculation"
import {blankRow, withRowsInserted, withRowsRemoved} from "./rows"
import {withSheetAdded, withSheetCopied, withSheetMoved, withSheetRemoved, withSheetRenamed} from "./sheets"
import {sheetsBehind, sheetsBehindFormula} from "./sheetsBehind"
import {placesAfter, withRowsMoved} from "./sorting"
import {isFault, type Change, type Value} from "./value"

registerCatalogue()

const SETTINGS = {
  licenseKey: "gpl-v3", // the engine is used under GPL-3.0; without a key it refuses edits
  dateFormats: ["YYYY-MM-DD"], // ISO alone, so that no day and month can be swapped
  nullDate: {year: 1899, month: 12, day: 30}, // OpenFormula 4.11.6; functions/calendar.ts counts from it too
  useArrayArithmetic: true, // so that SUMPRODUCT((a=b)*c) and FILTER conditions work
  smartRounding: true, // 0.1 + 0.2 is 0.3
  precisionRounding: 14, // 10, the engine's default, would round what is typed
  maxRows: 100_000,
  undoLimit: 0, // there is one history, that of the editor
}

/** The formulas TRUE and FALSE are known to people without their brackets. */
const WORDS = [
  {name: "TRUE", expression: "=TRUE()"},
  {name: "FALSE", expression: "=FALSE()"},
]

/**
 * A document and its worked-out values. `revise` and `show` are the only ways to change either, and always
 * change both: the document is the only truth and the engine a calculator fed from it.
 */
export class Workbook {
  #document: Document
  #engine: HyperFormula
  #recalculation!: Recalculation
  /** The sheets whose values are owed until they are asked for. */
  #waiting: ReadonlySet<number> = new Set()
  #values = new Map<string, Value>()
  #changes: readonly Change[] = []

  constructor(document: Document) {
    this.#document = document
    this.#engine = this.#build()
  }

  get document() {
    return this.#document
  }

  /** The worked-out values that the last revision changed. */
  get changes() {
    this.#settle()
    return this.#changes
  }

  valueAt(at: CellAddress): Value {
    if (this.#waiting.has(at.sheet)) this.#settle()
    const formulaValue = this.#values.get(keyOf(at))
    return formulaValue === undefined ? this.#read(at) : formulaValue
  }

  /** Whether the engine knows the value of the cell as a date. */
  isDateAt(at: CellAddress): boolean {
    if (this.#waiting.has(at.sheet)) this.#settle()
    return this.#engine.getCellValueDetailedType(this.#engineAddress(at)).startsWith("NUMBER_DATE")
  }

  /** The formula that stands in a cell, that of its column included, or null. */
  formulaAt(at: CellAddress): string | null {
    return formulaIn(this.#document, at)
  }

  /** Works out a formula as if it stood on a sheet, without putting it there. */
  evaluate(formula: string, sheet: number): Value | readonly (readonly Value[])[] {
    if (!this.#isReadable(formula))
      return {code: "#ERROR!", reason: "This formula cannot be read", began: null}
    if (this.#waiting.size > 0)
      for (const behind of sheetsBehindFormula(this.#document, formula, sheet))
        if (this.#waiting.has(behind)) this.#settle()
    const result: unknown = this.#engine.calculateFormula(
      engineFormula(this.#document, formula, sheet),
      this.#sheetId(sheet),
    )
    return Array.isArray(result)
      ? result.map((row: unknown[]) => row.map((one) => this.#valueOf(one)))
      : this.#valueOf(result)
  }

  /** The names of all functions the engine knows, ours included. */
  readonly standardFunctions: readonly string[] = HyperFormula.getRegisteredFunctionNames("enGB")

  /** The formula spelt as the engine spells it, or null when it is not one. */
  normalized(formula: string): string | null {
    if (!this.#isReadable(formula)) return null
    const spelt = this.#engine.normalizeFormula(formula)
    // The engine takes the quotes off a sheet named "2026", and then cannot read it.
    return this.#engine.validateFormula(spelt) ? spelt : formula
  }

  #isReadable(formula: string) {
    return this.#engine.validateFormula(formula) && !hasCellInBraces(formula)
  }

  /** The cells whose formulas use this one directly: by itself, within a range, or by its name. */
  usersOf(at: CellAddress): readonly CellAddress[] {
    const users = new Map<string, CellAddress>()
    // The engine puts a name, and the ranges that a longer range is made of, between a cell and its users.
    const collect = (node: EngineAddress | EngineRange) => {
      for (const user of this.#engine.getCellDependents(node)) {
        if ("start" in user || user.sheet < 0) collect(user)
        else users.set(keyOf(user), this.#ownAddress(user))
      }
    }
    collect(this.#engineAddress(at))
    return [...users.values()]
  }

  /**
   * Makes the change, which must not be one that `editRefused`, and returns the new document. With a sheet that is `lookedAt`, sheets it does not rest on are
   * worked out when they are asked for, or by `changes`.
   */
  revise(edit: Edit, lookedAt?: number): Document {
    const refused = editRefused(this.#document, edit)
    if (refused !== null) throw new RangeError(refused)
    const next = revised(this.#document, edit)
    if (edit.type !== "moveRows") return this.show(next, lookedAt)
    this.#settle()
    const before = this.#valuesInOrder(edit.sheet, edit.order)
    this.show(next)
    this.#readChanges(before)
    return next
  }

  /** The values as they stand, by where their cells stand once the rows of a sheet are in another order. */
  #valuesInOrder(sheet: number, order: readonly number[]): ReadonlyMap<string, Value> {
    const {of} = placesAfter(order)
    const moved = new Map<string, Value>()
    this.#eachFormula((at) => {
      const home = at.sheet === sheet ? {...at, row: of(at.row)!} : at
      moved.set(keyOf(home), this.#values.get(keyOf(at)) ?? null)
    })
    return moved
  }

  /** Shows another document, such as an earlier one from the history. Throws, and shows what it did, when the engine cannot. */
  show(next: Document, lookedAt?: number): Document {
    this.#settle()
    const shown = this.#document
    const before = this.#values
    this.#document = next
    const sameSheets = haveSameSheets(shown, next)
    if (sameSheets && lookedAt !== undefined && haveSameRows(shown, next)) this.#letWait(lookedAt)
    const worked = sameSheets ? this.#update(shown, next) : null
    if (!worked) this.#rebuild(shown)
    if (worked && haveSameRows(shown, next)) {
      this.#forgetWhatIsNoFormula(shown)
      this.#changes = []
      this.#takeChanges(worked)
    } else if (sameSheets) this.#readChanges(before)
    if (!this.#recalculation.isOwing) this.#waiting = new Set()
    return next
  }

  #letWait(lookedAt: number) {
    const behind = sheetsBehind(this.#document, lookedAt)
    const waiting = [...this.#document.sheets.keys()].filter((sheet) => !behind.has(sheet))
    this.#waiting = new Set(waiting)
    this.#recalculation.letWait(new Set(waiting.map(this.#sheetId)))
  }

  /** Works out what was left for later. */
  #settle() {
    this.#waiting = new Set()
    const {isOwing} = this.#recalculation
    this.#recalculation.settle()
    if (isOwing) this.#takeChanges(this.#engine.batch(() => {}))
  }

  /** Gives the engine what changed and returns what it worked out; null when it could not: it then stands half changed. */
  #update(shown: Document, next: Document): readonly ExportedChange[] | null {
    try {
      return this.#engine.batch(() => {
        this.#name(namesIn(shown), namesIn(next))
        next.sheets.forEach((sheet, i) => sheet !== shown.sheets[i] && this.#write(i, shown, next))
      })
    } catch {
      return null
    }
  }

  #rebuild(shown: Document) {
    this.#engine.destroy()
    try {
      this.#engine = this.#build()
    } catch (fault) {
      this.#document = shown
      this.#engine = this.#build()
      throw fault
    }
  }

  #build(): HyperFormula {
    const contents = this.#document.sheets.map(({name, rows}, i) => [
      name,
      rows.map((_, row) => engineRow(this.#document, i, row)),
    ])
    const names = [...WORDS, ...namesIn(this.#document)]
    const engine = HyperFormula.buildFromSheets(Object.fromEntries(contents), SETTINGS, names)
    this.#recalculation = recalculationOf(engine)
    this.#waiting = new Set()
    this.#engine = engine
    this.#values = new Map()
    this.#changes = []
    this.#eachFormula((at) => this.#values.set(keyOf(at), this.#read(at)))
    return engine
  }

  /** Only cells that hold something else are given: the engine works out whatever it is given, and all that rests on it. */
  #write(index: number, shown: Document, next: Document) {
    const sheet = this.#sheetId(index)
    const [was, now] = [shown.sheets[index]!, next.sheets[index]!]
    const columnsChanged = now.columns.some(({formula}, col) => formula !== was.columns[col]?.formula)
    for (let row = 0; row < Math.max(was.rows.length, now.rows.length); row++) {
      if (!columnsChanged && now.rows[row] === was.rows[row]) continue
      const before = engineRow(shown, index, row)
      for (const [col, content] of engineRow(next, index, row).entries())
        if (content !== before[col]) this.#engine.setCellContents({sheet, row, col}, content)
    }
  }

  #name(was: readonly Named[], now: readonly Named[]) {
    for (const {name} of was)
      if (!now.some((other) => other.name === name)) this.#engine.removeNamedExpression(name)
    for (const {name, expression} of now) {
      const before = was.find((other) => other.name === name)
      if (!before) this.#engine.addNamedExpression(name, expression)
      else if (before.expression !== expression) this.#engine.changeNamedExpression(name, expression)
    }
  }

  /** A cell that held a formula and holds a number or words now is read from the document's side again. */
  #forgetWhatIsNoFormula(shown: Document) {
    for (const [sheet, {rows}] of this.#document.sheets.entries())
      for (const [row, contents] of rows.entries())
        if (contents !== shown.sheets[sheet]!.rows[row])
          for (const col of contents.keys())
            if (!isFormula(contents[col])) this.#values.delete(keyOf({sheet, row, col}))
  }

  /** Takes over what the engine worked out, where all cells stand where they stood. */
  #takeChanges(worked: readonly ExportedChange[]) {
    const changes = [...this.#changes]
    for (const one of worked) {
      if (!(one instanceof ExportedCellChange) || one.sheet < 0) continue
      const at = this.#ownAddress(one)
      if (!isFormula(contentAt(this.#document, at))) continue
      const was = this.#values.get(keyOf(at))
      const now = this.#valueOf(one.newValue)
      this.#values.set(keyOf(at), now)
      if (was !== undefined && !sameValue(was, now)) changes.push({at, was, now})
    }
    this.#changes = changes.sort((a, b) => inOrder(a.at, b.at))
  }

  /** Reads every value anew and compares it with the one that stood, or came, there. */
  #readChanges(before: ReadonlyMap<string, Value>) {
    const changes: Change[] = []
    this.#values = new Map()
    this.#eachFormula((at) => {
      const now = this.#read(at)
      const was = before.get(keyOf(at))
      this.#values.set(keyOf(at), now)
      if (was !== undefined && !sameValue(was, now)) changes.push({at, was, now})
    })
    this.#changes = changes
  }

  #eachFormula(visit: (at: CellAddress) => void) {
    for (const [sheet, {rows}] of this.#document.sheets.entries())
      for (const [row, contents] of rows.entries())
        for (const [col, content] of contents.entries()) if (isFormula(content)) visit({sheet, row, col})
  }

  #read = (at: CellAddress): Value => {
    const sheet = this.#document.sheets[at.sheet]
    return sheet ? this.#valueOf(this.#engine.getCellValue(this.#engineAddress(at))) : null
  }

  #valueOf(value: unknown): Value {
    if (!(value instanceof DetailedCellError)) return (value as Value) ?? null
    const began = value.address ? this.#addressOf(value.address) : null
    return {code: value.value, reason: value.message, began}
  }

  /** "'Root samples'!B3", as the engine names the cell where an error began. */
  #addressOf(text: string): CellAddress | null {
    const at = this.#engine.simpleCellAddressFromString(text, 0)
    return at ? this.#ownAddress(at) : null
  }

  #sheetId = (index: number) => this.#engine.getSheetId(this.#document.sheets[index]!.name)!

  #engineAddress = ({sheet, row, col}: CellAddress): EngineAddress => ({
    sheet: this.#sheetId(sheet),
    row,
    col,
  })

  #ownAddress({sheet, row, col}: EngineAddress): CellAddress {
    const name = this.#engine.getSheetName(sheet)
    return {sheet: this.#document.sheets.findIndex((one) => one.name === name), row, col}
  }
}

function revised(document: Document, edit: Edit): Document {
  switch (edit.type) {
    case "enter":
      return withContents(document, edit.cells)
    case "insertRows":
      return withRowsInserted(document, edit.sheet, edit.before, edit.count)
    case "removeRows":
      return withRowsRemoved(document, edit.sheet, edit.first, edit.count)
    case "changeColumn":
      return withColumnChanged(document, edit.sheet, edit.col, edit.change)
    case "moveRows":
      return withRowsMoved(document, edit.sheet, edit.order)
    case "insertColumns":
      return withColumnsInserted(document, edit.sheet, edit.before, edit.count)
    case "removeColumns":
      return withColumnsRemoved(document, edit.sheet, edit.first, edit.count)
    case "addSheet":
      return withSheetAdded(document, edit.name, edit.group)
    case "renameSheet":
      return withSheetRenamed(document, edit.sheet, edit.name)
    case "moveSheet":
      return withSheetMoved(document, edit.from, edit.to)
    case "copySheet":
      return withSheetCopied(document, edit.sheet, edit.name)
    case "removeSheet":
      return withSheetRemoved(document, edit.sheet)
  }
}

const haveSameSheets = ({sheets}: Document, next: Document) =>
  next.sheets.length === sheets.length &&
  next.sheets.every(
    ({name, columns}, i) => name === sheets[i]!.name && columns.length === sheets[i]!.columns.length,
  )

const haveSameRows = ({sheets}: Document, next: Document) =>
  next.sheets.every(({rows}, i) => rows.length === sheets[i]!.rows.length)

const inOrder = (a: CellAddress, b: CellAddress) => a.sheet - b.sheet || a.row - b.row || a.col - b.col

interface EngineAddress {
  sheet: number
  row: number
  col: number
}

interface EngineRange {
  start: EngineAddress
  end: EngineAddress
}

interface Named {
  readonly name: string
  readonly expression: string
  readonly at: CellAddress
}

/** The formula in a cell, that of its column included, or null. */
export function formulaIn(document: Document, at: CellAddress): string | null {
  const content = contentAt(document, at)
  if (!isFormula(content)) return null
  const {formula} = document.sheets[at.sheet]!.columns[at.col]!
  return content === COLUMN_FORMULA && formula !== undefined ? movedDown(formula, at.row) : content
}

/** The named values: each row of a naming sheet whose name is one the standard allows (OpenFormula 5.11) and stands first. */
export function namesIn({sheets}: Document): readonly Named[] {
  const found = new Map<string, Named>()
  for (const [sheet, {name: sheetName, names, rows}] of sheets.entries()) {
    if (!names) continue
    for (const [row, [name]] of rows.entries())
      if (typeof name === "string" && isUsableName(name) && !found.has(name.toLowerCase())) {
        const expression = `=${sheetText(sheetName)}!$B$${row + 1}`
        found.set(name.toLowerCase(), {name, expression, at: {sheet, row, col: 1}})
      }
  }
  return [...found.values()]
}

/**
 * Latin letters, digits and underscores, not TRUE or FALSE and not shaped like a cell: `Q10` and `Year1` are not
 * usable, nor are `RC` and `R1C1`, a cell by the numbers of its row and column. The engine refuses the same.
 */
export const isUsableName = (name: string) =>
  /^[A-Za-z\u00c0-\u02af_][A-Za-z0-9\u00c0-\u02af_]*$/.test(name) &&
  !/^([A-Za-z]+[0-9]+|r[0-9]*c[0-9]*|true|false)$/i.test(name)

function withContents(document: Document, entries: readonly Entry[]): Document {
  let next = document
  for (const {at, content} of entries) {
    const {columns, rows, names} = next.sheets[at.sheet]!
    const was = contentAt(next, at)
    const renames = names && at.col === 0 && was !== content && isName(content)
    const isRename = renames && standsFor(next, at) && !isTaken(next, content, at)
    const added = Array.from({length: Math.max(0, at.row + 1 - rows.length)}, () => blankRow(columns))
    const grown = [...rows, ...added]
    const row = [...grown[at.row]!]
    while (row.length <= at.col) row.push(null)
    row[at.col] = content
    next = withSheet(next, at.sheet, {rows: grown.with(at.row, row)})
    if (isRename) next = withNameChanged(next, was as string, content)
  }
  return next
}

function withColumnChanged(document: Document, sheet: number, col: number, change: ColumnChange): Document {
  const {columns} = document.sheets[sheet]!
  const changed = Object.entries({...columns[col]!, ...change}).filter(([, value]) => value !== undefined)
  return withSheet(document, sheet, {columns: columns.with(col, Object.fromEntries(changed) as Column)})
}

const isName = (content: Content): content is string => typeof content === "string" && isUsableName(content)

/** Whether the name in this cell is the one that formulas mean by it: a twin further down is not. */
const standsFor = (document: Document, {sheet, row}: CellAddress) =>
  namesIn(document).some(({at}) => at.sheet === sheet && at.row === row)

/** Whether another row has the name already: to rename into it would point formulas at another value. */
const isTaken = (document: Document, name: string, {sheet, row}: CellAddress) =>
  namesIn(document).some(
    (other) =>
      other.name.toLowerCase() === name.toLowerCase() && (other.at.sheet !== sheet || other.at.row !== row),
  )

function withNameChanged(document: Document, was: string, now: string): Document {
  const change = <T>(content: T) => (isFormula(content) ? (renamed(content, was, now) as T) : content)
  const sheets = document.sheets.map((sheet) => ({
    ...sheet,
    columns: sheet.columns.map((column) => ({
      ...column,
      ...(column.formula === undefined ? {} : {formula: change(column.formula)}),
      ...(column.total === undefined ? {} : {total: change(column.total)}),
    })),
    rows: sheet.rows.map((row) => row.map(change)),
  }))
  return {...document, sheets}
}

/** A row as the engine takes it: blank to the full width, so that a shorter row leaves nothing of a longer one behind. */
function engineRow(document: Document, sheet: number, row: number): RawCellContent[] {
  return document.sheets[sheet]!.columns.map((_, col) => {
    const at = {sheet, row, col}
    const formula = formulaIn(document, at)
    if (formula !== null) return engineFormula(document, formula, sheet)
    const content = contentAt(document, at)
    // Words are marked as such, since the engine would read "007", "50%" and "12:30" as numbers.
    return typeof content === "string" && dayOf(content) === null ? `'${content}` : content
  })
}

/**
 * A formula as the engine takes it. Whole rows go in as cells: where ranges of whole rows overlap, the engine
 * (3.5.0) throws "Range does not exist" or "Value of the formula cell is not computed", on opening as on an edit.
 */
const engineFormula = ({sheets}: Document, formula: string, sheet: number) =>
  hasCellInBraces(formula)
    ? UNREADABLE
    : withRowsAsCells(formula, (name) => {
        const own = name === null ? sheet : sheetNamed(sheets, name)
        return Math.max(0, (sheets[own]?.columns.length ?? 1) - 1)
      })

const UNREADABLE = "=("

const keyOf = ({sheet, row, col}: CellAddress) => `${sheet}:${row}:${col}`

const sameValue = (a: Value, b: Value) =>
  a === b || (isFault(a) && isFault(b) && a.code === b.code && a.reason === b.reason)

/** A cell's address in words a formula could use: "F2", or "'Root samples'!D3" from another sheet. */
export const addressText = ({sheets}: Document, {sheet, row, col}: CellAddress, from?: number) =>
  (sheet === from || !sheets[sheet] ? "" : `${sheetText(sheets[sheet].name)}!`) + cellText(row, col)
