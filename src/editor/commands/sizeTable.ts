import {columnWith, sheetWith, type Content, type Part} from "../../workbook/document"
import type {Entry} from "../../workbook/edit"
import {chosenWord} from "../selection"
import type {Command} from "../store"

/** Puts the classes of the chosen table in the place of those in use; rows left over, and prices of classes before, become blank. */
export const bringSizeTable: Command = (state) => {
  const {document, cell} = state
  const table = chosenWord(state, "size table")
  const into = sheetWith(document, "size class")
  if (table === null || into < 0) return null
  const {rows} = document.sheets[into]!
  const read = (row: (typeof rows)[number], part: Part) => row[columnWith(document, cell.sheet, part)] ?? null
  const classes = document.sheets[cell.sheet]!.rows.filter((row) => read(row, "size table") === table)
  const count = Math.max(classes.length, rows.length)
  const put = (row: number, target: Part, content: Content): Entry[] => {
    const col = columnWith(document, into, target)
    return col < 0 || (rows[row]?.[col] ?? null) === content ? [] : [{at: {sheet: into, row, col}, content}]
  }
  const cells = Array.from({length: count}).flatMap((_, row) => {
    const changed = PAIRS.flatMap(([part, target]) =>
      put(row, target, classes[row] ? read(classes[row], part) : null),
    )
    return changed.length ? [...changed, ...put(row, "size price", null)] : []
  })
  return cells.length ? {type: "enter", cells, name: `the size classes “${table}” put in use`} : null
}

const PAIRS = [
  ["table class", "size class"],
  ["table from", "size from"],
  ["table source", "size source"],
  ["table tag", "size tag"],
] as const
