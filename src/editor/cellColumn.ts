import {isFormula, type CellAddress, type Column, type Document} from "../workbook/document"
import {columnAt} from "../workbook/extras"
import {regionOf} from "../workbook/region"
import {isMeasured, measureOf, type Measure} from "./measures"

/**
 * The column as its cell takes and shows numbers, with the format of the cell: on a sheet of named values each row has its own unit, and the cell
 * of that unit holds the name of a unit.
 */
export type CellColumn = Column & {readonly holdsUnit?: true}

export function cellColumn(document: Document, at: CellAddress): CellColumn | undefined {
  const {row, col} = at
  const {names, rows} = document.sheets[at.sheet] ?? NO_SHEET
  const column = columnAt(document, at)
  if (!names || !column || (col !== VALUE_COL && col !== UNIT_COL)) return column
  if (col === UNIT_COL) return asUnit(column)
  const unit = rows[row]?.[UNIT_COL]
  if (unit === "date" || unit === "year") return ofKind(column, unit)
  return typeof unit === "string" && !isFormula(unit) && isMeasured(unit) ? inUnit(column, unit) : column
}

const NO_SHEET: Pick<Document["sheets"][number], "names" | "rows"> = {rows: []}

const VALUE_COL = 1
const UNIT_COL = 2

function asUnit(column: Column): CellColumn {
  const found = unitColumns.get(column)
  if (found) return found
  const made: CellColumn = {...column, holdsUnit: true}
  unitColumns.set(column, made)
  return made
}
const unitColumns = new WeakMap<Column, CellColumn>()

/** The years that a year is taken from, as in the other columns that hold years. */
const YEARS = {least: 1900, most: 2200}

/** A date is taken and shown as one also before any stands there; a year is a number, shown without groups of thousands. */
function ofKind(column: Column, kind: "date" | "year"): CellColumn {
  let made = kindColumns.get(column)
  if (!made) {
    made = {date: {...column, format: "date"}, year: {...column, format: "text", rule: YEARS}}
    kindColumns.set(column, made)
  }
  return made[kind]
}
const kindColumns = new WeakMap<Column, Record<"date" | "year", CellColumn>>()

function inUnit(column: Column, unit: string): CellColumn {
  let made = rowColumns.get(column)
  if (!made) rowColumns.set(column, (made = new Map()))
  const found = made.get(unit)
  if (found) return found
  const one: CellColumn = {...column, unit}
  made.set(unit, one)
  return one
}
const rowColumns = new WeakMap<Column, Map<string, CellColumn>>()

/** How the numbers of a cell are shown. */
export const measureAt = (document: Document, at: CellAddress): Measure =>
  measureOf(cellColumn(document, at)?.unit, regionOf(document))
