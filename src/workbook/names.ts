import {isFormula, type CellAddress, type Content, type Document} from "./document"
import {renamed, sheetText} from "./formula"
import type {Value} from "./value"
import type {Workbook} from "./workbook"

/** A value that formulas may call by its name. */
export interface Named {
  readonly name: string
  readonly expression: string
  readonly at: CellAddress
}

/**
 * The named values: each row of a naming sheet whose name is one the standard allows (OpenFormula 5.11) and stands first. Read
 * once for each document.
 */
export function namesIn(document: Document): readonly Named[] {
  const found = read.get(document) ?? readNames(document)
  read.set(document, found)
  return found
}

const read = new WeakMap<Document, readonly Named[]>()

function readNames({sheets}: Document): readonly Named[] {
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

/** The value of a named value; null where there is none of the name. */
export function valueNamed(workbook: Workbook, wanted: string): Value {
  const at = namesIn(workbook.document).find(({name}) => name.toLowerCase() === wanted.toLowerCase())?.at
  return at ? workbook.valueAt(at) : null
}

/** The same where it is a number, else null. */
export function numberNamed(workbook: Workbook, wanted: string): number | null {
  const value = valueNamed(workbook, wanted)
  return typeof value === "number" ? value : null
}

/**
 * Latin letters, digits and underscores, not TRUE or FALSE and not shaped like a cell: `Q10` and `Year1` are not
 * usable, nor are `RC` and `R1C1`, a cell by the numbers of its row and column. The engine refuses the same.
 */
export const isUsableName = (name: string) =>
  /^[A-Za-z\u00c0-\u02af_][A-Za-z0-9\u00c0-\u02af_]*$/.test(name) &&
  !/^([A-Za-z]+[0-9]+|r[0-9]*c[0-9]*|true|false)$/i.test(name)

/** Whether a content can be the name of a value. */
export const isName = (content: Content): content is string =>
  typeof content === "string" && isUsableName(content)

/** Whether the name in this cell is the one that formulas mean by it: a twin further down is not. */
export const standsFor = (document: Document, {sheet, row}: CellAddress) =>
  namesIn(document).some(({at}) => at.sheet === sheet && at.row === row)

/** Whether another row has the name already: to rename into it would point formulas at another value. */
export const isTaken = (document: Document, name: string, {sheet, row}: CellAddress) =>
  namesIn(document).some(
    (other) =>
      other.name.toLowerCase() === name.toLowerCase() && (other.at.sheet !== sheet || other.at.row !== row),
  )

/** The document with every use of a named value given its new name. */
export function withNameChanged(document: Document, was: string, now: string): Document {
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
