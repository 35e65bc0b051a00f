import type {Document} from "../workbook/document"
import {sortOrder, type SortKey} from "../workbook/sorting"
import type {Workbook} from "../workbook/workbook"

/** What the rows of each sheet were sorted by, for as long as they stand in that order. */
export function sortMarks(workbook: Workbook) {
  const marks = new Map<string, {readonly keys: readonly SortKey[]; readonly headings: readonly string[]}>()
  let known: {readonly document: Document; readonly found: Map<number, SortKey | null>} | null = null

  const headingsOf = (sheet: number, keys: readonly SortKey[]) =>
    keys.map(({col}) => workbook.document.sheets[sheet]!.columns[col]?.heading ?? "")

  const lookUp = (sheet: number): SortKey | null => {
    const {name = "", rows = []} = workbook.document.sheets[sheet] ?? {} // it may have been taken out
    const mark = marks.get(name)
    if (!mark || headingsOf(sheet, mark.keys).join("\n") !== mark.headings.join("\n")) return null
    const values = rows.map((_, row) => mark.keys.map(({col}) => workbook.valueAt({sheet, row, col})))
    const keys = mark.keys.map(({descending}, col) => ({col, descending}))
    return sortOrder(values, keys).every((row, i) => row === i) ? mark.keys[0]! : null
  }

  return {
    mark(sheet: number, keys: readonly SortKey[]) {
      marks.set(workbook.document.sheets[sheet]!.name, {keys, headings: headingsOf(sheet, keys)})
      known = null
    },
    forget() {
      marks.clear()
      known = null
    },
    /** The first column of the keys, or null where the rows stand otherwise; looked up once for each document. */
    of(sheet: number): SortKey | null {
      if (known?.document !== workbook.document) known = {document: workbook.document, found: new Map()}
      if (!known.found.has(sheet)) known.found.set(sheet, lookUp(sheet))
      return known.found.get(sheet)!
    },
  }
}
