import {DetailedCellError, ExportedCellChange, HyperFormula, type ExportedChange} from "hyperformula"
import {registerCatalogue} from "../../functions/plugin"
import {registerStandardFunctions} from "../../functions/standardPlugin"
import {CellMap} from "./cellMap"
import {formulaIn} from "./cells"
import {contentAt, isFormula, type CellAddress, type Document} from "./document"
import {editRefused, type Edit} from "./edit"
import {mayBeDate} from "./engine/comparedWords"
import {takeEmptyRanges} from "./engine/emptyRanges"
import {endSheetAfter} from "./engine/endOfSheet"
import {engineFormula, engineRow} from "./engine/engineText"
import {takeFailedArrays} from "./engine/failedArrays"
import {makeQuicker} from "./engine/quicker"
import {waitingSheetsOf, type WaitingSheets} from "./engine/waitingSheets"
import {hasCellInBraces, isTooIntricate} from "./formula"
import {namesIn, type Named} from "./names"
import {revised} from "./revised"
import {sheetsBehind, sheetsBehindFormula} from "./sheetsBehind"
import {MOST} from "./size"
import {placesAfter} from "./sorting"
import {isFault, type Change, type Value} from "./value"

registerCatalogue()
registerStandardFunctions()
makeQuicker()
takeEmptyRanges()
takeFailedArrays()

const readDateTime = HyperFormula.defaultConfig.parseDateTime

const SETTINGS = {
  licenseKey: "gpl-v3", // the engine is used under GPL-3.0; without a key it refuses edits
  dateFormats: ["YYYY-MM-DD"], // ISO alone, so that no day and month can be swapped
  nullDate: {year: 1899, month: 12, day: 30}, // OpenFormula 4.11.6; functions/calendar.ts counts from it too
  useArrayArithmetic: true, // so that SUMPRODUCT((a=b)*c) and FILTER conditions work
  smartRounding: true, // 0.1 + 0.2 is 0.3
  precisionRounding: 14, // 10, the engine's default, would round what is typed
  maxRows: MOST.rows,
  parseDateTime,
  undoLimit: 0, // there is one history, that of the editor
}

/** As the engine reads dates and times, but what begins like no date is none at once: it asks so of all words it compares. */
function parseDateTime(...given: Parameters<typeof readDateTime>) {
  return mayBeDate(given[0]) ? readDateTime(...given) : undefined
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
  /** The engine's numbers of the sheets, in their order. */
  #sheetIds: readonly number[] = []
  #waiting!: WaitingSheets
  #values = new CellMap<Value>()
  /** The formulas that had no room for all they give. */
  #withoutRoom = new Map<string, CellAddress>()
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
    if (this.#isOwed(at)) this.#settle()
    const formulaValue = this.#values.get(at)
    if (formulaValue !== undefined) return formulaValue
    const content = contentAt(this.#document, at)
    // A blank cell may show what spills into it, and words may be a date.
    return typeof content === "number" || typeof content === "boolean" ? content : this.#read(at)
  }

  /** Whether the engine knows the value of the cell as a date. */
  isDateAt(at: CellAddress): boolean {
    if (this.#isOwed(at)) this.#settle()
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
    if (this.#waiting.isWaiting)
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

  /** Whether each function of a formula, as if it stood on a sheet, has as many arguments as it takes. */
  takesItsArguments(formula: string, sheet: number): boolean {
    const value = this.evaluate(formula, sheet)
    return !isFault(value) || !/^Wrong number of arguments|^\S+ takes .* arguments?, not /.test(value.reason)
  }

  #isReadable(formula: string) {
    return !isTooIntricate(formula) && this.#engine.validateFormula(formula) && !hasCellInBraces(formula)
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
  #valuesInOrder(sheet: number, order: readonly number[]): CellMap<Value> {
    const {of} = placesAfter(order)
    const moved = new CellMap<Value>()
    this.#eachFormula((at) => {
      const home = at.sheet === sheet ? {...at, row: of(at.row)!} : at
      moved.set(home, this.#values.get(at) ?? null)
    })
    return moved
  }

  /** Shows another document, such as an earlier one from the history. Throws, and shows what it did, when the engine cannot. */
  show(next: Document, lookedAt?: number): Document {
    const shown = this.#document
    const sameSheets = haveSameSheets(shown, next)
    const behind = sameSheets && lookedAt !== undefined ? sheetsBehind(next, lookedAt) : null
    // Steps that follow quickly, as of a date that is dragged, leave the same sheets waiting.
    if (!behind || !this.#waiting.isAllBeside(next, behind)) this.#settle()
    const before = this.#values
    this.#document = next
    if (behind) this.#waiting.letWait(next, behind)
    const worked = sameSheets && !isBuiltSooner(shown, next) ? this.#update(shown, next) : null
    if (!worked) this.#rebuild(shown)
    if (worked) {
      this.#forgetWhatIsNoFormula(shown)
      this.#changes = []
      this.#takeChanges(worked)
    } else if (sameSheets) this.#readChanges(before)
    this.#waiting.waitNoMoreThanOwed()
    return next
  }

  #isOwed = (at: CellAddress) => this.#waiting.isOwedAt(this.#document, at)

  /** Whether sheets are left for later. */
  get isOwing() {
    return this.#waiting.isWaiting
  }

  /** Works out what was left for later, for about so long, ms. Says whether that was all. */
  settleFor(time: number): boolean {
    const {isOwing} = this.#waiting
    this.#waiting.settle(time)
    if (isOwing) this.#takeChanges(this.#engine.batch(() => {}))
    this.#waiting.waitNoMoreThanOwed()
    return !this.isOwing
  }

  #settle() {
    this.settleFor(Infinity)
  }

  /** Gives the engine what changed and returns what it worked out; null when it could not: it then stands half changed. */
  #update(shown: Document, next: Document): readonly ExportedChange[] | null {
    try {
      return this.#engine.batch(() => {
        this.#name(namesIn(shown), namesIn(next))
        next.sheets.forEach((sheet, i) => sheet !== shown.sheets[i] && this.#write(i, shown, next))
        this.#lookForRoom()
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
    this.#sheetIds = this.#document.sheets.map(({name}) => engine.getSheetId(name)!)
    this.#waiting = waitingSheetsOf(engine, this.#sheetId)
    this.#engine = engine
    this.#values = new CellMap()
    this.#withoutRoom.clear()
    this.#changes = []
    this.#eachFormula((at) => this.#keep(at, this.#read(at)))
    return engine
  }

  /** Only cells that hold something else are given: the engine works out whatever it is given, and all that rests on it. */
  #write(index: number, shown: Document, next: Document) {
    const sheet = this.#sheetId(index)
    const [was, now] = [shown.sheets[index]!, next.sheets[index]!]
    const columnsChanged = now.columns.some(({formula}, col) => formula !== was.columns[col]?.formula)
    const filled: (() => void)[] = []
    for (let row = 0; row < Math.max(was.rows.length, now.rows.length); row++) {
      if (!columnsChanged && now.rows[row] === was.rows[row]) continue
      const before = engineRow(shown, index, row)
      for (const [col, content] of engineRow(next, index, row).entries()) {
        if (content === before[col]) continue
        const write = () => this.#engine.setCellContents({sheet, row, col}, content)
        if (content === null) write()
        else filled.push(write)
      }
    }
    // What a formula spilled into is free before one of the same spills there from another row.
    for (const write of filled) write()
    const holds = (row: number) => engineRow(next, index, row).some((content) => content !== null)
    endSheetAfter(this.#engine, sheet, now.rows.findLastIndex((_, row) => holds(row)) + 1)
  }

  #keep(at: CellAddress, value: Value) {
    this.#values.set(at, value)
    if (isFault(value) && value.code === "#SPILL!") this.#withoutRoom.set(keyOf(at), at)
  }

  /** The engine does not see that what stood in the way of a formula has gone: the formula is given to it again. */
  #lookForRoom() {
    const places = [...this.#withoutRoom.values()]
    this.#withoutRoom.clear()
    for (const at of places)
      if (isFormula(contentAt(this.#document, at))) {
        const content = engineRow(this.#document, at.sheet, at.row)[at.col]!
        this.#engine.setCellContents(this.#engineAddress(at), content)
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
    for (const [sheet, {rows}] of shown.sheets.entries()) {
      const now = this.#document.sheets[sheet]!.rows
      for (const [row, contents] of rows.entries())
        if (contents !== now[row])
          for (const col of contents.keys())
            if (!isFormula(now[row]?.[col] ?? null)) this.#values.delete({sheet, row, col})
    }
  }

  /** Takes over what the engine worked out: where rows came or went, a place is compared with what stood there. */
  #takeChanges(worked: readonly ExportedChange[]) {
    const changes = new Map(this.#changes.map((one) => [keyOf(one.at), one]))
    for (const one of worked) {
      if (!(one instanceof ExportedCellChange) || one.sheet < 0) continue
      const at = this.#ownAddress(one)
      if (!isFormula(contentAt(this.#document, at))) continue
      const key = keyOf(at)
      const held = changes.get(key) // it may be worked out again, on values that were owed before
      const was = held ? held.was : this.#values.get(at)
      const now = this.#read(at) // of a formula that gives a whole range the engine tells what its cells hold
      this.#keep(at, now)
      if (was === undefined || sameValue(was, now)) changes.delete(key)
      else changes.set(key, {at, was, now})
    }
    this.#changes = [...changes.values()].sort((a, b) => inOrder(a.at, b.at))
  }

  /** Reads every value anew and compares it with the one that stood, or came, there. */
  #readChanges(before: CellMap<Value>) {
    const changes: Change[] = []
    this.#values = new CellMap()
    this.#eachFormula((at) => {
      const now = this.#read(at)
      const was = before.get(at)
      this.#keep(at, now)
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

  #sheetId = (index: number) => this.#sheetIds[index]!

  #engineAddress = ({sheet, row, col}: CellAddress): EngineAddress => ({
    sheet: this.#sheetId(sheet),
    row,
    col,
  })

  #ownAddress({sheet, row, col}: EngineAddress): CellAddress {
    return {sheet: this.#sheetIds.indexOf(sheet), row, col}
  }
}

const haveSameSheets = ({sheets}: Document, next: Document) =>
  next.sheets.length === sheets.length &&
  next.sheets.every(
    ({name, columns}, i) => name === sheets[i]!.name && columns.length === sheets[i]!.columns.length,
  )

/**
 * Whether building anew costs less than to give the engine each cell that changed, with some time of its own. Chosen by what
 * they took, in millionths of a second: a cell that is given later, and, built anew, a formula and any other cell.
 */
function isBuiltSooner({sheets}: Document, next: Document): boolean {
  let [given, formulas, others] = [0, 0, 0]
  for (const [i, {rows, columns}] of next.sheets.entries()) {
    const before = sheets[i]!.rows
    if (rows !== before)
      for (const [row, one] of rows.entries()) if (one !== before[row]) given += columns.length
    // Counted by the first row: the others are like it.
    const inRow = rows[0]?.filter(isFormula).length ?? 0
    formulas += rows.length * inRow
    others += rows.length * (columns.length - inRow)
  }
  return given > 500 && given * 15 > formulas * 50 + others
}

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

const keyOf = ({sheet, row, col}: CellAddress) => `${sheet}:${row}:${col}`

const sameValue = (a: Value, b: Value) =>
  a === b || (isFault(a) && isFault(b) && a.code === b.code && a.reason === b.reason)
