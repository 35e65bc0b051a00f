import type {CellAddress, Document} from "../workbook/document"
import type {Entry} from "../workbook/edit"
import {cellsWith} from "../workbook/extras"
import {columnWith} from "../workbook/document"
import {planSheet} from "../workbook/plan"
import type {Value} from "../workbook/value"
import {Workbook} from "../workbook/workbook"

/** What a cell gives as the workbook stands, and in each case, in the order of the cases. */
export interface Compared {
  readonly at: CellAddress
  readonly isDate: boolean
  readonly now: Value
  readonly inCases: readonly Value[]
}

/** The cells that a case changes, with what they hold in it. */
export const caseCells = (document: Document, name: string): readonly Entry[] =>
  cellsWith(document, ({cases}) => cases?.[name]).map(({at, found}) => ({at, content: found}))

/** The cells by which cases are compared: those that were chosen for it, else the close and the crop of each planting. */
export function comparedCells(document: Document): readonly CellAddress[] {
  const chosen = cellsWith(document, ({compared}) => compared).map(({at}) => at)
  const sheet = planSheet(document)
  if (chosen.length > 0 || sheet < 0) return chosen
  const cols = (["close", "crop"] as const)
    .map((part) => columnWith(document, sheet, part))
    .filter((col) => col >= 0)
  return document.sheets[sheet]!.rows.flatMap((_, row) => cols.map((col) => ({sheet, row, col})))
}

/** What every case gives, worked out on a copy of the workbook: each begins from the workbook as it stands. */
export function compareCases(document: Document): readonly Compared[] {
  const workbook = new Workbook(document)
  const cells = comparedCells(document)
  const read = () => cells.map((at) => workbook.valueAt(at))
  const now = read()
  const isDate = cells.map((at) => workbook.isDateAt(at))
  const inCases = (document.cases ?? []).map((name) => {
    workbook.revise({type: "enter", cells: caseCells(document, name)})
    const values = read()
    workbook.show(document)
    return values
  })
  return cells.map((at, i) => ({
    at,
    isDate: isDate[i]!,
    now: now[i]!,
    inCases: inCases.map((values) => values[i]!),
  }))
}
