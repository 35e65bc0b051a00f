import {DetailedCellError, HyperFormula, type RawCellContent} from "hyperformula"
import {keepUnchanged} from "./keepUnchanged"
import {dayOf} from "../../functions/calendar"
import {registerCatalogue} from "../../functions/plugin"
import {
  COLUMN_FORMULA,
  contentAt,
  type CellAddress,
  type Content,
  type Document,
  type Sheet,
} from "./document"
import type {Edit, Entry} from "./edit"
import {cellText, movedDown, renamed, sheetText, withRowsAsCells} from "./formula"
import {blankRow, withRowsInserted, withRowsRemoved, withSheet} from "./rows"
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
    return this.#changes
  }

  valueAt(at: CellAddress): Value {
    const formulaValue = this.#values.get(keyOf(at))
    return formulaValue === undefined ? this.#read(at) : formulaValue
  }

  /** Whether the engine knows the value of the cell as a date. */
  isDateAt(at: CellAddress): boolean {
    return this.#engine.getCellValueDetailedType(this.#engineAddress(at)).startsWith("NUMBER_DATE")
  }

  /** The formula that stands in a cell, that of its column included, or null. */
  formulaAt(at: CellAddress): string | null {
    return formulaIn(this.#document, at)
  }

  /** Works out a formula as if it stood on a sheet, without putting it there. */
  evaluate(formula: string, sheet: number): Value | readonly (readonly Value[])[] {
    if (!this.#engine.validateFormula(formula))
      return {code: "#ERROR!", reason: "This formula cannot be read", began: null}
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
    if (!this.#engine.validateFormula(formula)) return null
    const spelt = this.#engine.normalizeFormula(formula)
    // The engine takes the quotes off a sheet named "2026", and then cannot read it.
    return this.#engine.validateFormula(spelt) ? spelt : formula
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

  /** Makes the change and returns the new document. */
  revise(edit: Edit): Document {
    switch (edit.type) {
      case "enter":
        return this.show(withContents(this.#document, edit.cells))
      case "insertRows":
        return this.show(withRowsInserted(this.#document, edit.sheet, edit.before, edit.count))
      case "removeRows":
        return this.show(withRowsRemoved(this.#document, edit.sheet, edit.first, edit.count))
    }
  }

  /** Shows another document, such as an earlier one from the history. Throws, and shows what it did, when the engine cannot. */
  show(next: Document): Document {
    const shown = this.#document
    const before = this.#values
    this.#document = next
    const sameSheets = haveSameSheets(shown, next)
    if (!sameSheets || !this.#update(shown, next)) this.#rebuild(shown)
    if (sameSheets) this.#readChanges(before)
    return next
  }

  /** Gives the engine what changed. Says whether it took it; if not, it stands half changed and has to be made anew. */
  #update(shown: Document, next: Document): boolean {
    try {
      this.#engine.batch(() => {
        this.#name(namesIn(shown), namesIn(next))
        next.sheets.forEach(
          (sheet, i) => sheet !== shown.sheets[i] && this.#write(i, shown.sheets[i]!, sheet),
        )
      })
      return true
    } catch {
      return false
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
    keepUnchanged(engine)
    this.#engine = engine
    this.#values = new Map()
    this.#changes = []
    this.#eachFormula((at) => this.#values.set(keyOf(at), this.#read(at)))
    return engine
  }

  #write(index: number, was: Sheet, now: Sheet) {
    const sheet = this.#sheetId(index)
    const columnsChanged = now.columns.some(({formula}, col) => formula !== was.columns[col]?.formula)
    for (let row = 0; row < Math.max(was.rows.length, now.rows.length); row++)
      if (columnsChanged || now.rows[row] !== was.rows[row])
        this.#engine.setCellContents({sheet, row, col: 0}, [engineRow(this.#document, index, row)])
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

  /** Compares the values with those of before. All are read: an edit that moves rows moves values without changing them. */
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
        for (const [col, content] of contents.entries())
          if (typeof content === "string" && content.startsWith("=")) visit({sheet, row, col})
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

const haveSameSheets = ({sheets}: Document, next: Document) =>
  next.sheets.length === sheets.length &&
  next.sheets.every(
    ({name, columns}, i) => name === sheets[i]!.name && columns.length === sheets[i]!.columns.length,
  )

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
  if (typeof content !== "string" || !content.startsWith("=")) return null
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
  const change = <T>(content: T) =>
    typeof content === "string" && content.startsWith("=") ? (renamed(content, was, now) as T) : content
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
  withRowsAsCells(formula, (name) => {
    const own = name === null ? sheet : sheetNamed(sheets, name)
    return Math.max(0, (sheets[own]?.columns.length ?? 1) - 1)
  })

const sheetNamed = (sheets: readonly Sheet[], name: string) =>
  sheets.findIndex((one) => one.name.toLowerCase() === name.toLowerCase())

const keyOf = ({sheet, row, col}: CellAddress) => `${sheet}:${row}:${col}`

const sameValue = (a: Value, b: Value) =>
  a === b || (isFault(a) && isFault(b) && a.code === b.code && a.reason === b.reason)

/** A cell's address in words a formula could use: "F2", or "'Root samples'!D3" from another sheet. */
export const addressText = ({sheets}: Document, {sheet, row, col}: CellAddress, from?: number) =>
  (sheet === from || !sheets[sheet] ? "" : `${sheetText(sheets[sheet].name)}!`) + cellText(row, col)
